import type { Field, FieldValue, Measure } from '../history/change.ts';
import {
  entriesOf,
  type FieldKind,
  type Fields,
  type PlainField,
  type ValuesOf,
} from './fieldKinds.ts';

/** How the history shows a number in this unit; another unit is written as it stands. */
const MEASURE_OF_UNIT: Readonly<Record<string, Measure>> = {
  kg: 'kg',
  cm: 'cm',
  months: 'months',
  min: 'minutes',
  g: 'g',
  'g a day': 'g a day',
  'kcal per 100 g': 'kcal per 100 g',
  '%': '%',
  degrees: 'degrees',
};

/** The fields of a record as its history tells them apart, in the order of the form. */
export function readRecord<const F extends Fields>(
  fields: F,
  record: ValuesOf<F>,
  prefix = '',
): Field[] {
  return entriesOf(fields).flatMap(([name, field]) => {
    const value: unknown = record[name as keyof F];
    // A state that was kept before the program knew a field does not have it.
    if (field.fixed === true || value === undefined) return [];
    return readField(`${prefix}${name}`, field, value);
  });
}

function readField(path: string, field: FieldKind, value: unknown): readonly Field[] {
  if (field.kind === 'group') return readRecord(field.of, value as never, `${path}.`);
  if (field.kind === 'json' || field.kind === 'tables') return field.read(path, value as never);
  return [{ path, label: field.label, measure: measureOf(field), value: value as FieldValue }];
}

function measureOf(field: PlainField): Measure {
  switch (field.kind) {
    case 'number':
      return field.measure ?? MEASURE_OF_UNIT[field.unit] ?? `in ${field.unit}`;
    case 'flag':
      return 'yes or no';
    case 'word':
    case 'day':
      return field.kind;
    case 'text':
    case 'instant':
    case 'id':
      return 'text';
  }
}
