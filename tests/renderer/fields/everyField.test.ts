import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import QuantityField from '../../../renderer/components/fields/QuantityField.vue';
import { fromBase, toBase, unitsOf, type Dimension } from '../../../renderer/units/dimensions.ts';
import { LIMITS, type Limit, type LimitName } from '../../../electron/contract/limits.ts';
import type { Practice } from '../../../electron/contract/records.ts';
import { mountField } from '../support/mountField.ts';
import { FIELD_ROWS, NOT_TYPED, type FieldRow } from './fieldRows.ts';

const METRIC = {
  weightUnit: 'kg',
  energyUnit: 'kcal',
  distanceUnit: 'km',
  temperatureUnit: 'C',
} as const satisfies Partial<Practice>;
const IMPERIAL = {
  weightUnit: 'lb',
  energyUnit: 'kJ',
  distanceUnit: 'mi',
  temperatureUnit: 'F',
} as const satisfies Partial<Practice>;
type Choices = typeof METRIC | typeof IMPERIAL;
const PRACTICES = [
  ['kg, kcal, km, °C', METRIC],
  ['lb, kJ, mi, °F', IMPERIAL],
] as const;

/**
 * What may be typed in any practice, and what it is in the base unit. Worked by hand from the exact
 * definitions (S): 1 lb = 0.45359237 kg, 1 in = 2.54 cm, 1 ft = 0.3048 m, 1 mi = 1.609344 km (the
 * international yard and pound, 1959); 1 kcal = 4.184 kJ (thermochemical calorie).
 */
const TYPED: Readonly<Record<Dimension, readonly (readonly [string, number])[]>> = {
  weight: [
    ['62 lb', 28.1227],
    ['28,4 kg', 28.4],
    ['62 lb 4 oz', 28.2361],
    [' 62lbs ', 28.1227],
  ],
  scaleStep: [
    ['50 g', 0.05],
    ['2 oz', 0.0567],
    ['0,1 kg', 0.1],
  ],
  length: [
    ['20 in', 50.8],
    ['0,6 m', 60],
    ['58 cm', 58],
  ],
  grams: [
    ['4 oz', 113.3981],
    ['0,5 kg', 500],
    ['120 g', 120],
  ],
  energy: [],
  energyPer100g: [
    ['1500 kJ', 358.5086],
    ['350 kcal', 350],
    ['350,5 kcal/100 g', 350.5],
  ],
  energyPerDay: [
    ['4000 kJ', 956.0229],
    ['900 kcal/day', 900],
  ],
  distance: [
    ['3 mi', 4.828],
    ['5,5 km', 5.5],
  ],
  climb: [
    ['300 ft', 91.44],
    ['90 m', 90],
  ],
  pace: [
    ['6:30 min/km', 6.5],
    ['10:00 /mi', 6.2137],
    ['6,5 /km', 6.5],
  ],
  minutes: [
    ['0,5 h', 30],
    ['12,5 min', 12.5],
  ],
  months: [
    ['1,5 years', 18],
    ['18 mo', 18],
  ],
  percent: [['12,5 %', 12.5]],
  temperature: [
    ['70 °F', 21.1111],
    ['21,5 C', 21.5],
  ],
  temperatureShift: [
    ['9 °F', 5],
    ['2,5 C', 2.5],
  ],
  girth: [
    ['12 in', 30.48],
    ['310 mm', 31],
    ['31,5 cm', 31.5],
  ],
  degrees: [['95 deg', 95]],
  count: [],
};

const limitOf = ({ limit }: FieldRow): Limit => (typeof limit === 'string' ? LIMITS[limit] : limit);
const nameOf = (row: FieldRow): string => row.label ?? limitOf(row).label;
const unitOf = (row: FieldRow, choices: Choices) => unitsOf(row.dimension, choices)[0];
/** The unit as the field says it; a plain number has the words of its limit. */
const wordsOf = (row: FieldRow, choices: Choices): string =>
  unitOf(row, choices).name || limitOf(row).unit;

function mountRow(row: FieldRow, choices: Choices, start: number | null = null) {
  const props = {
    limit: row.limit,
    dimension: row.dimension,
    ...(row.label === undefined ? {} : { label: row.label }),
  };
  const values: { it: number | null } = { it: start };
  const { wrapper, form } = mountField(QuantityField, values, 'it', props, choices);
  const input = wrapper.get('input');
  return {
    form,
    wrapper,
    text: () => (input.element as HTMLInputElement).value,
    problem: () =>
      wrapper.find('.problem').exists()
        ? wrapper.get('.problem').text().replaceAll('\u00a0', ' ')
        : null,
    async type(typed: string) {
      await input.setValue(typed);
      await input.trigger('blur');
    },
  };
}

/** What the field takes, as its refusals begin. */
const demandOf = (row: FieldRow): string =>
  `${nameOf(row)} must be ${limitOf(row).whole === true ? 'a whole number ' : ''}from `;

/** Just outside the range, in the practice's own unit. */
function outside(row: FieldRow, choices: Choices): readonly string[] {
  const unit = unitOf(row, choices);
  const [low, high] = [fromBase(limitOf(row).min, unit), fromBase(limitOf(row).max, unit)];
  return [low > 0 ? low * 0.95 : low - 1, high * 1.05].map((amount) => amount.toFixed(6));
}

afterEach(() => {
  document.body.innerHTML = '';
});

describe.each(PRACTICES)('in a practice of %s', (_name, choices) => {
  const rows = FIELD_ROWS.map(
    (row, index) => [`${nameOf(row)} (${row.file}, ${index + 1})`, row] as const,
  );

  describe.each(rows)('%s', (_title, row) => {
    it('has its label, its unit and its range beside it', () => {
      const { wrapper } = mountRow(row, choices);
      expect(wrapper.get('label').text()).toBe(nameOf(row));
      expect(wrapper.get('.unit').text()).toBe(wordsOf(row, choices));
      expect(wrapper.get('.hint').text()).toMatch(/^[−\d.-]+ to [\d.]+/);
    });

    it('refuses what lies below and above, naming label, unit and range', async () => {
      for (const typed of outside(row, choices)) {
        const field = mountRow(row, choices);
        await field.type(typed);
        const said = field.problem() ?? '';
        expect(said.startsWith(demandOf(row)), `${typed}: ${said}`).toBe(true);
        expect(said.endsWith(` ${wordsOf(row, choices)}.`), `${typed}: ${said}`).toBe(true);
        expect(field.text()).toBe(typed);
        expect(field.form.values.it).toBeNull();
        expect(field.form.attempt()).toBe(false);
      }
    });

    it('takes both ends of the range it names', async () => {
      const field = mountRow(row, choices);
      await field.type(outside(row, choices)[1]!);
      const [, low, high] = / from (\S+) to (\S+)/.exec(field.problem() ?? '') ?? [];
      for (const end of [low!, high!]) {
        await field.type(end);
        expect(field.problem(), end).toBeNull();
        const { min, max } = limitOf(row);
        expect(field.form.values.it).toBeGreaterThanOrEqual(min);
        expect(field.form.values.it).toBeLessThanOrEqual(max);
      }
    });

    it('takes other units, and a comma for the point, and keeps the text', async () => {
      const isWhole = limitOf(row).whole === true;
      const wanted = TYPED[row.dimension].filter(([, kept]) => !isWhole || Number.isInteger(kept));
      for (const [typed, kept] of wanted) {
        const field = mountRow(row, choices);
        await field.type(typed);
        expect(field.problem(), typed).toBeNull();
        expect(field.form.values.it, typed).toBeCloseTo(kept, 3);
        expect(field.text()).toBe(typed);
      }
    });

    it('takes a bare number as one of the practice’s own unit', async () => {
      const unit = unitOf(row, choices);
      const { min, max } = limitOf(row);
      const steps = limitOf(row).whole === true ? 1 : 10;
      const middle = Math.round(fromBase((min + max) / 2, unit) * steps) / steps;
      const field = mountRow(row, choices);
      await field.type(String(middle).replace('.', ','));
      expect(field.problem()).toBeNull();
      expect(field.form.values.it).toBeCloseTo(toBase(middle, unit), 9);
    });

    it('takes an empty field as no answer', async () => {
      const { min, max } = limitOf(row);
      const field = mountRow(row, choices, (min + max) / 2);
      await field.type('  ');
      expect(field.problem()).toBeNull();
      expect(field.form.values.it).toBeNull();
      expect(field.form.attempt()).toBe(true);
    });

    it('refuses a word, with an example that it would take', async () => {
      const field = mountRow(row, choices);
      await field.type('plenty');
      const said = field.problem() ?? '';
      expect(said).toContain(`${nameOf(row)}: write a number, for example `);
      expect(field.text()).toBe('plenty');
      expect(field.form.attempt()).toBe(false);
      await field.type(said.replace(/^.* for example /, '').replace(/\.$/, ''));
      expect(field.problem(), said).toBeNull();
      expect(field.form.values.it).not.toBeNull();
    });

    it('refuses a unit it does not know', async () => {
      const field = mountRow(row, choices);
      await field.type('12 stone');
      expect(field.problem()).toContain(`${nameOf(row)}: the unit “stone” is not known here`);
      expect(field.text()).toBe('12 stone');
      expect(field.form.values.it).toBeNull();
    });
  });

  it.each([
    ['6:30', 6.5],
    ['7:05', 7 + 5 / 60],
  ])('a pace of %s is minutes and seconds in the practice’s own unit', async (typed, minutes) => {
    const row = FIELD_ROWS.find(({ limit }) => limit === 'paceMinPerKm')!;
    const field = mountRow(row, choices);
    await field.type(typed);
    expect(field.problem()).toBeNull();
    // 1 mi = 1.609344 km, exact by definition (S).
    const perKm = choices.distanceUnit === 'mi' ? minutes / 1.609344 : minutes;
    expect(field.form.values.it).toBeCloseTo(perKm, 9);
  });
});

describe.each(
  FIELD_ROWS.filter((row) => limitOf(row).whole === true).map((row) => [nameOf(row), row] as const),
)('%s, a whole number', (_name, row) => {
  it.each(['.5', ',5'])('refuses a part of one, %s, by its whole range', async (part) => {
    const field = mountRow(row, METRIC);
    const typed = `${limitOf(row).min + 1}${part}`;
    await field.type(typed);
    expect(field.problem()).toContain(demandOf(row));
    expect(field.text()).toBe(typed);
    expect(field.form.values.it).toBeNull();
    expect(field.form.attempt()).toBe(false);
  });
});

describe('the list of fields', () => {
  const folder = join(import.meta.dirname, '../../../renderer');
  const source = (file: string) => readFileSync(join(folder, file), 'utf8');

  it('has every quantity field of every page, with its dimension and label', () => {
    const found = globSync('**/*.vue', { cwd: folder }).flatMap((file) =>
      [...source(file).matchAll(/<QuantityField\b([^]*?)\/>/g)].map(([, attributes]) => {
        const attribute = (name: string) =>
          new RegExp(`\\s(:?)${name}="([^"]*)"`).exec(attributes!)?.slice(1);
        const [, limit] = attribute('limit') ?? [];
        const [boundDimension, dimension] = attribute('dimension') ?? [];
        const [boundLabel, label] = attribute('label') ?? [];
        return { file, limit, boundDimension, dimension, boundLabel, label };
      }),
    );
    for (const use of found) {
      const row = FIELD_ROWS.find(
        ({ file, written, dimension, label }) =>
          file === use.file &&
          written === use.limit &&
          (use.boundDimension === ':' || dimension === use.dimension) &&
          (use.boundLabel === ':' || label === use.label),
      );
      expect(row, `no row for ${JSON.stringify(use)}`).toBeDefined();
    }
    for (const row of FIELD_ROWS) {
      const used = found.some(({ file, limit }) => file === row.file && limit === row.written);
      expect(used, `${row.written} is no field of ${row.file}`).toBe(true);
    }
  });

  it('has the ranges a page keeps to itself as the page has them', () => {
    const kept = FIELD_ROWS.filter(({ written }) => /^[A-Z]+$/.test(written));
    for (const row of kept) {
      const { label, unit, min, max, whole } = limitOf(row);
      const end = whole === true ? ', whole: true }' : ' }';
      const line = `const ${row.written} = { label: '${label}', unit: '${unit}', min: ${min}, max: ${max}${end}`;
      expect(source(row.file)).toContain(line);
    }
    expect(kept).toHaveLength(9);
  });

  it('takes parts of one where the record takes them, and nowhere else', () => {
    for (const row of FIELD_ROWS.filter(({ dimension }) => dimension === 'count')) {
      const { whole, unit } = limitOf(row);
      expect(whole === true || unit === '%', `${row.file}: ${row.written}`).toBe(true);
    }
  });

  it('has a field in the units of its limit, wherever it names one', () => {
    const named = FIELD_ROWS.filter(({ written, limit }) => written === limit);
    expect(named.length).toBeGreaterThan(30);
    for (const row of named.filter(({ dimension }) => dimension !== 'count')) {
      const [base] = unitsOf(row.dimension, METRIC);
      const unit = limitOf(row).unit.replace(' per ', '/');
      expect([unit, unit.replace(/ a day$/, ''), unit.replace(' a ', '/')]).toContain(base.name);
    }
  });

  it('leaves out no limit without a reason', () => {
    const typed = new Set(FIELD_ROWS.map(({ limit }) => limit));
    for (const name of Object.keys(LIMITS) as LimitName[]) {
      const [inField, reason] = [typed.has(name), NOT_TYPED[name] !== undefined];
      expect(inField !== reason, `${name}: typed in a field, or listed with a reason`).toBe(true);
    }
  });
});
