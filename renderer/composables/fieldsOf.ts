import { toValue, type MaybeRefOrGetter } from 'vue';

/** Where a value stands in a record: "medicine", "consent.day". Of a list only the whole has a place. */
type Place<T> = {
  [K in keyof T & string]-?: NonNullable<T[K]> extends
    string | number | boolean | readonly unknown[]
    ? K
    : K | `${K}.${Place<NonNullable<T[K]>>}`;
}[keyof T & string];

type ValueAt<T, P extends string> = P extends `${infer First}.${infer Rest}`
  ? First extends keyof T
    ? ValueAt<T[First], Rest>
    : never
  : P extends keyof T
    ? T[P]
    : never;

export type FieldsOf<T> = <P extends Place<T>>(
  place: P,
) => {
  readonly path: string;
  readonly modelValue: ValueAt<T, P>;
  readonly 'onUpdate:modelValue': (value: ValueAt<T, P>) => void;
};

type Holder = Record<string, unknown>;

/**
 * What a field takes (`v-bind="at('consent.day')"`) to show and change a value of a record where it
 * stands. `path` is where the record itself stands in the call's input.
 */
export const fieldsOf =
  <T extends object>(record: MaybeRefOrGetter<T>, path = ''): FieldsOf<T> =>
  <P extends Place<T>>(place: P) => {
    const steps = place.split('.');
    const name = steps.pop()!;
    const holder = () =>
      steps.reduce((part, step) => part[step] as Holder, toValue(record) as Holder);
    return {
      path: path === '' ? place : `${path}.${place}`,
      modelValue: holder()[name] as ValueAt<T, P>,
      'onUpdate:modelValue': (value) => {
        holder()[name] = value;
      },
    };
  };
