import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import {
  adjustFood,
  chooseFoodEnergy,
  heatBand,
  heatTable,
  HOT_GROUND,
  inUnits,
  SPORT_LIMIT_NOTE,
  weightTrend,
  type FoodGoal,
} from '../../core/index.ts';
import { amountInUnits, raised, saying, type Saying } from '../../core/quantityText.ts';
import { expectToReadInAnyUnits, FOREIGN, OTHER } from '../support/otherUnits.ts';

describe('a sentence in other units', () => {
  // International pound and mile, thermochemical calorie: exact by definition (C).
  it.each([
    ['Below {1000 kcal} a day.', 'Below 1,000 kcal a day.', 'Below 4,184 kJ a day.'],
    ['{700 to 920 kcal}', '700 to 920 kcal', '2,929 to 3,849 kJ'],
    ['{98 ± 29 kcal}/kg^0.75', '98 ± 29 kcal/kg^0.75', '410 ± 121 kJ/kg^0.75'],
    [
      '{28.0 to 30.1 kg}, over {50 kg}.',
      '28.0 to 30.1 kg, over 50 kg.',
      '61.7 to 66.4 lb, over 110.2 lb.',
    ],
    ['usual to {10 °C}, at {−5 °C}', 'usual to 10 °C, at −5 °C', 'usual to 50 °F, at 23 °F'],
    ['The bands lie {3 °C lower}.', 'The bands lie 3 °C lower.', 'The bands lie 5.4 °F lower.'],
    ['about {1 °C off}', 'about 1 °C off', 'about 1.8 °F off'],
    ['{4.5 km}, then {0.2 km}', '4.5 km, then 0.2 km', '2.8 mi, then 0.12 mi'],
    ['under {0.4 cm}, of {41 cm}', 'under 0.4 cm, of 41 cm', 'under 0.16 in, of 16.1 in'],
  ])('%s', (said, text, other) => {
    expect(saying(said)).toEqual({ text, said });
    expect(inUnits(said, OTHER)).toBe(other);
  });

  it('leaves alone what is not marked, as in old records, and braces around something else', () => {
    for (const text of ['Below 920 kcal a day, 2 kg^0.75.', '{12 min} of {kg} and {a lot}']) {
      expect(saying(text)).toEqual({ text });
      expect(inUnits(text, OTHER)).toBe(text);
    }
  });

  it('converts a figure by its unit', () => {
    const { value, unit } = amountInUnits(100, 'kcal/day', OTHER);
    expect([value.toFixed(6), unit]).toEqual(['418.400000', 'kJ/day']);
    expect(amountInUnits(1, 'kcal per 100 g', OTHER).unit).toBe('kJ per 100 g');
    expect(amountInUnits(1.2, '% a week', OTHER)).toEqual({ value: 1.2, unit: '% a week' });
  });
});

const core = fileURLToPath(new URL('../../core', import.meta.url));
/** Properties whose text is no sentence: figures carry units and formulas as data. */
const DATA = ['unit', 'formula', 'reference', 'label'];
/** Functions whose text is for programmers, or carries the unit as data. */
const CALLS = ['inRange', 'wholeInRange', 'ArgumentError', 'ranged'];

/** Every sentence in core's source that names a unit, with 12 in place of each value. */
function sentencesIn(file: string): string[] {
  const source = ts.createSourceFile(
    file,
    readFileSync(file, 'utf8'),
    ts.ScriptTarget.Latest,
    true,
  );
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isPropertyAssignment(node) && DATA.includes(node.name.getText())) return;
    if (ts.isCallExpression(node) || ts.isNewExpression(node)) {
      if (CALLS.includes(node.expression.getText())) return;
    }
    if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) found.push(node.text);
    if (ts.isTemplateExpression(node)) {
      found.push(
        node.head.text + node.templateSpans.map(({ literal }) => `12${literal.text}`).join(''),
      );
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found.filter((text) => text.includes(' ') && FOREIGN.test(text));
}

describe('core’s sentences', () => {
  const files = readdirSync(core, { recursive: true, encoding: 'utf8' })
    .filter(
      (file) => file.endsWith('.ts') && !/^(check|units|sources|quantityText)\.ts$/.test(file),
    )
    .map((file) => join(core, file));
  const sentences = files.flatMap(sentencesIn);

  it('all mark their amounts so that other practices can read them', () => {
    expect(sentences.length).toBeGreaterThan(20);
    const left = sentences.map((text) => inUnits(text, OTHER)).filter((text) => FOREIGN.test(text));
    expect(left).toEqual([]);
  });
});

const kg = fc.integer({ min: 20, max: 700 }).map((tenths) => tenths / 10);
const asked = fc.record({
  goal: fc.constantFrom<FoodGoal>('lose', 'hold', 'gain'),
  weightKg: kg,
  targetWeightKg: kg,
  earlierKg: fc.array(kg, { maxLength: 2 }),
  bcs: fc.integer({ min: 3, max: 9 }),
  onPlan: fc.boolean(),
  growing: fc.boolean(),
  adultWeightKg: fc.constant(30),
  currentKcal: fc.integer({ min: 0, max: 3000 }),
  runningKcalPerDay: fc.integer({ min: 0, max: 200 }),
  foods: fc.constant([
    { name: 'Dry food', kcalPer100g: 360, gramsPerDay: 300 },
    { name: 'Biscuit', kcalPer100g: 400, gramsPerDay: 80, treat: true },
  ]),
});

/** Codes whose sentence holds a quantity. */
const WITH_QUANTITY = [
  'below-floor',
  'diet-outside-range',
  'gain-target-reached',
  'growth-food',
  'heat-bands',
  'heat-heavy',
  'heat-short-nosed',
  'heat-shift-capped',
  'methods-differ',
  'nutrient-floor',
  'running-food',
  'running-on-loss',
  'still-below-floor',
  'target-below-range',
  'target-not-above',
  'target-not-below',
  'target-reached',
  'treats',
];

describe('reasons as they are given', () => {
  it('read in lb, kJ and °F, every code that holds a quantity', () => {
    const told = new Map<string, string[]>();
    const tell = (reasons: readonly (Saying & { readonly code: string })[]) => {
      expectToReadInAnyUnits(reasons);
      for (const { code, text, said } of reasons) {
        told.set(code, [...(told.get(code) ?? []), said ?? text]);
      }
    };
    const note = (code: string, said: string) => tell([{ code, ...saying(said) }]);
    fc.assert(
      fc.property(asked, (input) => {
        const { reasons, warnings, figure } = adjustFood({ ...input, day: '2026-06-01' });
        tell([...reasons, ...warnings]);
        for (const text of figure?.notes ?? []) note('note', text);
      }),
      { seed: 1, numRuns: 3000 },
    );
    for (const dog of [
      { bcs: 8, weightKg: 60, coat: 'thick' as const, senior: true, acclimatised: false },
      { shortNosed: true, cleared: true },
    ]) {
      const rules = { heatShiftC: 4, heatCautionToC: 14, heatShiftMostC: 7 };
      for (const table of [heatTable({ dog }), heatTable({ dog, rules })]) {
        tell(table.reasons);
      }
      const band = heatBand({ tempC: 17, humidityPct: 90, dog });
      tell(band.reasons);
      for (const text of Object.values(band.figures).flatMap((figure) => figure?.notes ?? []))
        note('note', text);
    }
    tell([...HOT_GROUND, SPORT_LIMIT_NOTE]);
    const label = { proteinPct: 26, fatPct: 15, fibrePct: 3, moisturePct: 9, ashPct: 7 };
    const { warning } = chooseFoodEnergy({ declaredKcalPer100g: 300, label });
    tell([warning!]);
    const days = ['2026-01-01', '2026-01-15', '2026-02-01', '2026-02-15', '2026-03-01'];
    const outlier = weightTrend(
      days.map((day, index) => ({ day, weightKg: index === 2 ? 24.5 : 30 })),
    );
    note('trend', outlier.sentence);
    expect([...told.keys()]).toEqual(expect.arrayContaining(WITH_QUANTITY));
    expect(told.get('trend')!.join()).toContain('{24.5 kg}');
  });
});

describe('a power on paper', () => {
  it('is raised, and nothing else is changed', () => {
    expect(raised('70 × kg^0.75')).toBe('70 × kg⁰·⁷⁵');
    expect(raised('m^2 and e^(−0.87 p)')).toBe('m² and e^(−0.87 p)');
  });
});
