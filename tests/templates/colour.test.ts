import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkAccent, contrastRatio, luminance, TEXT_CONTRAST } from '../../templates/colour.ts';
import { palette } from '../../templates/theme.ts';
import { holds } from '../support/laws.ts';

const hex = fc
  .integer({ min: 0, max: 0xffffff })
  .map((value) => `#${value.toString(16).padStart(6, '0')}`);

describe('contrast', () => {
  // WCAG 2.2 (W3C Recommendation, 2023): the ends of the scale are 21:1 and 1:1, and #767676 on white
  // is the well-known lightest grey that passes 4.5:1 (mark M).
  it('spans 1 to 21', () => {
    expect(contrastRatio('#000000', '#ffffff')).toBeCloseTo(21, 10);
    expect(contrastRatio('#123456', '#123456')).toBe(1);
    expect(contrastRatio('#767676', '#ffffff')).toBeGreaterThanOrEqual(4.5);
    expect(contrastRatio('#777777', '#ffffff')).toBeLessThan(4.5);
  });

  it('refuses what is not a colour', () => {
    expect(() => luminance('green')).toThrow(/#rrggbb/);
  });
});

describe('accent colour of a practice', () => {
  it('is kept when it can be read on paper', () => {
    expect(checkAccent('#1d5b52')).toMatchObject({ ok: true, readable: '#1d5b52' });
  });

  it('is darkened until it can be read', () => {
    holds(
      fc.property(hex, (colour) => {
        const { readable, ok } = checkAccent(colour);
        expect(contrastRatio(readable, '#ffffff')).toBeGreaterThanOrEqual(TEXT_CONTRAST);
        if (ok) expect(readable).toBe(colour);
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it('falls back to our own where none or nonsense is set', () => {
    expect(palette('teal').accent).toBe(palette(null).accent);
  });

  it('leaves every ink readable on paper and on the tint, in grey as in colour', () => {
    const { ink, muted, accent, tint } = palette('#ffee00');
    for (const colour of [ink, muted, accent]) {
      expect(contrastRatio(colour, '#ffffff')).toBeGreaterThanOrEqual(TEXT_CONTRAST);
      // Luminance is what a grey printer keeps, so the same ratio holds in greyscale.
    }
    expect(contrastRatio(muted, tint)).toBeGreaterThanOrEqual(TEXT_CONTRAST);
  });
});
