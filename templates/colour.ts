/** Body text and small accents need this against paper (WCAG 2.2, success criterion 1.4.3). */
export const TEXT_CONTRAST = 4.5;

const WHITE = '#ffffff';
const HEX = /^#[0-9a-f]{6}$/i;
const DARKEN_STEP = 0.94;

/** True for a colour written `#rrggbb`. */
export function isHexColour(text: string): boolean {
  return HEX.test(text);
}

function channels(hex: string): readonly [number, number, number] {
  if (!isHexColour(hex)) throw new RangeError(`colour must be written #rrggbb, but is ${hex}`);
  const at = (from: number) => Number.parseInt(hex.slice(from, from + 2), 16);
  return [at(1), at(3), at(5)];
}

/** Relative luminance, 0 black to 1 white (WCAG 2.2, definition of relative luminance). */
export function luminance(hex: string): number {
  const [r, g, b] = channels(hex).map((value) => {
    const share = value / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Contrast ratio of two colours, 1 to 21 (WCAG 2.2). */
export function contrastRatio(a: string, b: string): number {
  const [dark, light] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

export interface AccentCheck {
  readonly ok: boolean;
  /** Contrast with white paper. */
  readonly ratio: number;
  /** The colour itself, or the same hue darkened until it is readable. */
  readonly readable: string;
}

/**
 * Whether a practice's accent colour can be read as text on white paper, and the nearest darker one
 * that can.
 * @throws RangeError when the colour is not written `#rrggbb`.
 */
export function checkAccent(hex: string): AccentCheck {
  const ratio = contrastRatio(hex, WHITE);
  let readable = hex.toLowerCase();
  while (contrastRatio(readable, WHITE) < TEXT_CONTRAST) {
    const darker = channels(readable).map((value) => Math.floor(value * DARKEN_STEP));
    readable = `#${darker.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
  }
  return { ok: ratio >= TEXT_CONTRAST, ratio, readable };
}
