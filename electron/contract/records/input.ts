import { z } from 'zod';
import {
  address,
  chip,
  choice,
  day,
  flag,
  id,
  line,
  notes,
  number,
  requiredLine,
} from '../fields.ts';
import {
  entriesOf,
  type FieldKind,
  type Fields,
  type PlainField,
  type PartsOf,
  type ValueOf,
} from './fieldKinds.ts';

type Schema<T> = z.ZodType<T, T>;
export type Shape<F> = { -readonly [K in keyof F]: Schema<ValueOf<F[K]>> };

const TEXTS = { line, 'required line': requiredLine, address, notes, chip } as const;

/**
 * The schema of a record's input. `parts` are the schemas of the fields that have one of their own:
 * the type asks for exactly these, each of the type its field holds.
 */
export function inputOf<const F extends Fields>(
  fields: F,
  parts: { readonly [K in keyof PartsOf<F>]: Schema<PartsOf<F>[K]> },
): z.ZodObject<Shape<F>> {
  return z.object(shapeOf(fields, parts));
}

/** As `inputOf`, the schemas by field. */
export function shapeOf<const F extends Fields>(
  fields: F,
  parts: { readonly [K in keyof PartsOf<F>]: Schema<PartsOf<F>[K]> },
): Shape<F> {
  const given = parts as Readonly<Record<string, z.ZodType>>;
  return Object.fromEntries(
    entriesOf(fields).map(([name, field]) => [name, given[name] ?? schemaOf(name, field)]),
  ) as unknown as Shape<F>;
}

function schemaOf(name: string, field: FieldKind): z.ZodType {
  if (field.kind === 'group') return inputOf(field.of, {});
  if (field.kind === 'json' || field.kind === 'tables') throw new Error(`${name} has no schema.`);
  const schema = plainSchema(field);
  return 'nullable' in field && field.nullable === true ? schema.nullable() : schema;
}

function plainSchema(field: PlainField): z.ZodType {
  const { label } = field;
  switch (field.kind) {
    case 'number':
      return number(field);
    case 'word':
      return choice(label, field.words);
    case 'text':
      return TEXTS[field.as](label);
    case 'day':
      return day(label);
    case 'id':
      return id(label);
    case 'instant':
      return z.iso.datetime({ error: `${label} must be a UTC instant.` });
    case 'flag':
      return flag(label);
  }
}
