import { describe, expect, it } from 'vitest';
import { adjustFood, heatTable } from '../../core/index.ts';
import { assessmentRecord, vetLetter } from './support/alone.ts';
import { renderPdf } from '../../templates/render.ts';
import type { PracticePrint } from '../../templates/index.ts';
import { fontsFolder } from './support/folders.ts';
import { INSTANT } from './support/handouts.ts';
import { letter, letterWords, record } from './support/letters.ts';
import { readPdf } from './support/readPdf.ts';

const american = {
  weightUnit: 'lb',
  energyUnit: 'kJ',
  distanceUnit: 'mi',
  temperatureUnit: 'F',
} as const;
/** kg^0.75 is the metabolic weight of a published formula. */
const FOREIGN = /(?<![\w/])(?:kg|kcal|km)(?![\w^⁰])(?! \/ \(1)|°C/;

const inAmerica = <T extends { readonly practice: PracticePrint }>(data: T): T => ({
  ...data,
  practice: { ...data.practice, ...american },
});

/** Reasons full of quantities, as a screening would hold them. */
const reasons = [
  ...adjustFood({ day: '2025-12-01', goal: 'lose', weightKg: 24, targetWeightKg: 24 }).reasons,
  ...adjustFood({ day: '2025-12-01', goal: 'lose', weightKg: 24, targetWeightKg: 22 }).warnings,
  ...heatTable({ dog: { bcs: 7, weightKg: 60 } }).reasons,
].map((reason) => ({ ...reason, gate: 'note' as const, unseen: false, overriddenBecause: null }));

describe('sheets for professionals in lb, kJ, miles and °F', () => {
  const told = inAmerica(letter('A4'));
  const kept = { ...inAmerica(record('A4')), notes: '' };
  it.each([
    [
      'letter',
      () => vetLetter({ ...told, screening: { ...told.screening, reasons } }, letterWords),
    ],
    [
      'record',
      () => assessmentRecord({ ...kept, screening: { ...kept.screening, reasons } }, letterWords),
    ],
  ] as const)('name no other unit: %s', async (_, build) => {
    const { bytes } = await renderPdf(build(), { fontsFolder, instant: INSTANT });
    const { text } = await readPdf(bytes);
    expect(text).toMatch(/\d lb|\d\u00a0lb/);
    // A source is quoted as it stands.
    const lines = text.split('\n').filter((line) => !/^\d+\. \|/.test(line));
    const foreign = lines.filter((line) => FOREIGN.test(line));
    expect(foreign).toEqual([]);
  });
});
