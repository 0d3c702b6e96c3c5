import type { FieldKind, Fields, ValuesOf } from './fieldKinds.ts';
import { entriesOf } from './fieldKinds.ts';

/** Fields that each have a value to begin with: a number or word that cannot be null names it. */
export type Begun<F> = {
  readonly [K in keyof F]: F[K] extends { readonly kind: 'number' | 'word' }
    ? F[K] extends { readonly nullable: true } | { readonly blank: number | string }
      ? F[K]
      : never
    : F[K];
};

/** The record before anything is entered: null or empty, never a guess taken for a finding. */
export function blankOf<const F extends Fields>(fields: F & Begun<F>): ValuesOf<F> {
  return Object.fromEntries(
    entriesOf(fields).map(([name, field]) => [name, blankValue(field)]),
  ) as ValuesOf<F>;
}

/** What a field holds before anything is entered. */
export function blankValue(field: FieldKind): unknown {
  if (field.kind === 'group') return blankOf(field.of);
  if (field.kind === 'flag') return false;
  if (field.kind === 'text') return '';
  if (field.kind === 'json' || field.kind === 'tables') return field.empty();
  if (field.nullable === true) return null;
  return field.kind === 'number' || field.kind === 'word' ? field.blank : '';
}

/** The part of a record that a next one begins with. */
export function carriedOf<const F extends Fields>(
  fields: F,
  record: ValuesOf<F>,
): Partial<ValuesOf<F>> {
  return Object.fromEntries(
    entriesOf(fields)
      .filter(([, field]) => field.carried === true)
      .map(([name]) => [name, record[name as keyof F]]),
  ) as Partial<ValuesOf<F>>;
}

/** The declared fields of anything that holds them, without what else it holds. */
export function only<const F extends Fields>(fields: F, record: ValuesOf<F>): ValuesOf<F> {
  return Object.fromEntries(
    Object.keys(fields).map((name) => [name, record[name as keyof F]]),
  ) as ValuesOf<F>;
}
