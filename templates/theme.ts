import type { Style, StyleDictionary } from 'pdfmake/interfaces';
import { checkAccent, isHexColour } from './colour.ts';

export type Paper = 'A4' | 'LETTER';

/** Page width and height in points (ISO 216; ANSI Letter). */
export const PAPER_SIZE = {
  A4: { width: 595.28, height: 841.89 },
  LETTER: { width: 612, height: 792 },
} as const satisfies Record<Paper, { width: number; height: number }>;

/** Page margins in points: left, top, right, bottom. Header and footer lie inside top and bottom. */
export const MARGIN = { left: 51, top: 46, right: 51, bottom: 62 } as const;

/** Width of the text, in points. */
export function textWidth(paper: Paper): number {
  return PAPER_SIZE[paper].width - MARGIN.left - MARGIN.right;
}

/** Ink and paper. Only `accent` may differ from practice to practice. */
export interface Palette {
  readonly ink: string;
  readonly muted: string;
  readonly rule: string;
  readonly tint: string;
  readonly accent: string;
}

const DEFAULT_ACCENT = '#1d5b52';

const INK = { ink: '#1c211f', muted: '#55605b', rule: '#b9c2bd', tint: '#f1f4f2' } as const;

/** The palette with the practice's accent, darkened where it would be too faint on paper. */
export function palette(accent: string | null | undefined): Palette {
  const wanted = accent && isHexColour(accent) ? accent : DEFAULT_ACCENT;
  return { ...INK, accent: checkAccent(wanted).readable };
}

export const BODY: Style = { font: 'Sans', fontSize: 10.5, lineHeight: 1.1, color: INK.ink };

/** Named styles of every handout. */
export function styles(colours: Palette): StyleDictionary {
  return {
    practice: { font: 'Serif', fontSize: 13, color: colours.accent, lineHeight: 1.05 },
    contact: { fontSize: 8.5, color: colours.muted, lineHeight: 1.02 },
    eyebrow: { fontSize: 9.5, bold: true, color: colours.accent, characterSpacing: 0.4 },
    title: { font: 'Serif', fontSize: 24, lineHeight: 1.05 },
    lead: { fontSize: 11.5, lineHeight: 1.12 },
    heading: { font: 'Serif', fontSize: 14, color: colours.ink, lineHeight: 1.1 },
    subheading: { fontSize: 10.5, bold: true },
    tableHead: { fontSize: 8.5, bold: true, color: colours.muted, lineHeight: 1.1 },
    small: { fontSize: 9, color: colours.muted, lineHeight: 1.08 },
    foot: { fontSize: 8, color: colours.muted, lineHeight: 1.08 },
    strong: { bold: true },
    big: { font: 'Serif', fontSize: 30, lineHeight: 1 },
  };
}
