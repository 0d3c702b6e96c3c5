import fc from 'fast-check';
import { z } from 'zod';

/**
 * Near-valid inputs of any schema, made from the schema alone: every leaf takes what of the words
 * given it accepts, so that most samples reach the handler, with ids and days of real records.
 */
export function samplesOf(schema: z.ZodType, words: readonly unknown[]): fc.Arbitrary<unknown> {
  const inner = (of: unknown): fc.Arbitrary<unknown> => samplesOf(of as z.ZodType, words);
  if (schema instanceof z.ZodObject) return objectOf(schema, inner);
  if (schema instanceof z.ZodArray) {
    return fc.array(inner(schema.element), { maxLength: 3 });
  }
  if (schema instanceof z.ZodTuple) {
    return fc.tuple(...(schema.def.items as unknown[]).map(inner));
  }
  if (schema instanceof z.ZodRecord) {
    const key = inner(schema.keyType).map(String);
    return fc.dictionary(key, inner(schema.valueType), { maxKeys: 3 });
  }
  if (schema instanceof z.ZodUnion) {
    return fc.oneof(...(schema.options as unknown[]).map(inner));
  }
  if (schema instanceof z.ZodNullable) {
    return fc.oneof(
      { weight: 1, arbitrary: fc.constant(null) },
      { weight: 2, arbitrary: inner(schema.unwrap()) },
    );
  }
  if (schema instanceof z.ZodOptional || schema instanceof z.ZodDefault) {
    return inner(schema.unwrap());
  }
  if (schema instanceof z.ZodPipe && !(schema.in instanceof z.ZodTransform)) {
    return acceptedBy(schema, words) ?? inner(schema.in);
  }
  return leafOf(schema, words);
}

function objectOf(
  schema: z.ZodObject,
  inner: (of: unknown) => fc.Arbitrary<unknown>,
): fc.Arbitrary<unknown> {
  const fields = Object.entries(schema.shape as Record<string, unknown>);
  const optional = new Set(
    fields
      .filter(([, field]) => field instanceof z.ZodOptional || field instanceof z.ZodDefault)
      .map(([name]) => name),
  );
  const requiredKeys = fields.map(([name]) => name).filter((name) => !optional.has(name));
  const model = Object.fromEntries(fields.map(([name, field]) => [name, inner(field)]));
  return fc.record(model, { requiredKeys, noNullPrototype: true });
}

function leafOf(schema: z.ZodType, words: readonly unknown[]): fc.Arbitrary<unknown> {
  if (schema instanceof z.ZodEnum) return fc.constantFrom(...(schema.options as unknown[]));
  if (schema instanceof z.ZodLiteral) return fc.constantFrom(...[...schema.values]);
  if (schema instanceof z.ZodBoolean) return fc.boolean();
  if (schema instanceof z.ZodNull) return fc.constant(null);
  const edges =
    schema instanceof z.ZodNumber ? [schema.minValue, schema.maxValue, middleOf(schema)] : [];
  return acceptedBy(schema, [...edges, ...words]) ?? fc.constantFrom(...words);
}

const middleOf = ({ minValue, maxValue }: z.ZodNumber): number =>
  Math.round(((minValue ?? 0) + (maxValue ?? 100)) / 2);

/** Those of the words that a schema accepts; null when it accepts none. */
function acceptedBy(schema: z.ZodType, words: readonly unknown[]): fc.Arbitrary<unknown> | null {
  const fitting = words.filter((word) => schema.safeParse(word).success);
  return fitting.length === 0 ? null : fc.constantFrom(...fitting);
}
