import {
  computed,
  inject,
  provide,
  reactive,
  ref,
  type ComputedRef,
  type InjectionKey,
  type Ref,
} from 'vue';
import type { AppError } from '../../electron/contract/errors.ts';
import { fieldsOf, type FieldsOf } from './fieldsOf.ts';
import { plainCopy } from './plainCopy.ts';

/** One refused field, as the summary above the form lists it. */
export interface Problem {
  readonly path: string;
  readonly message: string;
}

/** What a field component needs from the form around it. */
export interface FieldContext {
  /** Stands in the ids of the fields, so that several forms on a page do not share them. */
  readonly name: string;
  /** Text as typed, by path, where it differs from the value's own spelling ("62 lb"). */
  readonly typed: Record<string, string>;
  /** True after the first attempt to save: every problem is shown from then on. */
  readonly attempted: Readonly<Ref<boolean>>;
  problemAt(path: string): string | undefined;
  /** Called by a field whose text cannot be read. Blocks saving. */
  refuse(path: string, message: string): void;
  /** Refuses what two fields say together: shown at once, since leaving one field settles nothing. */
  refuseNow(path: string, message: string): void;
  /** True where a problem is to be seen before the field is left. */
  isLive(path: string): boolean;
  /** Called by a field whose text is fine again. */
  clear(path: string): void;
  /** Clears all problems whose path begins with `prefix`. */
  clearUnder(prefix: string): void;
}

export interface Form<T extends object> extends FieldContext {
  readonly values: T;
  /** Binds a field to one of the values. */
  readonly at: FieldsOf<T>;
  /** What is to be shown above the form: nothing before the first attempt to save. */
  readonly problems: ComputedRef<readonly Problem[]>;
  /** How many attempts to save have failed. */
  readonly failures: Readonly<Ref<number>>;
  /** Puts an answer's refused fields beside their inputs. */
  takeError(error: AppError): void;
  /** Marks an attempt to save. @returns true when nothing stands in the way. */
  attempt(): boolean;
  /** Replaces everything, e.g. by a draft. */
  replace(values: T, typed?: Record<string, string>): void;
}

const FIELDS: InjectionKey<FieldContext> = Symbol('fields');

/**
 * The state of one form: values, text as typed, and problems by path of the call's input. `name`
 * tells it from other forms on the same page that have a field of the same path.
 */
export function useForm<T extends object>(initial: T, name = ''): Form<T> {
  const values = reactive(plainCopy(initial)) as T;
  const typed = reactive<Record<string, string>>({});
  const messages = reactive<Record<string, string>>({});
  const live = reactive<Record<string, string>>({});
  const attempted = ref(false);
  const failures = ref(0);

  const form: Form<T> = {
    name,
    values,
    at: fieldsOf(values),
    typed,
    attempted,
    failures,
    problems: computed(() =>
      attempted.value ? Object.entries(messages).map(([path, message]) => ({ path, message })) : [],
    ),
    problemAt: (path) => messages[path],
    refuse: (path, message) => {
      messages[path] = message;
    },
    refuseNow: (path, message) => {
      messages[path] = message;
      live[path] = message;
    },
    isLive: (path) => messages[path] !== undefined && live[path] === messages[path],
    clear: (path) => {
      delete messages[path];
    },
    clearUnder: (prefix) => {
      for (const path of Object.keys(messages)) if (path.startsWith(prefix)) delete messages[path];
    },
    takeError(error) {
      attempted.value = true;
      for (const field of error.fields ?? []) messages[field.path] = field.said ?? field.message;
      failures.value++;
    },
    attempt() {
      attempted.value = true;
      const clear = Object.keys(messages).length === 0;
      if (!clear) failures.value++;
      return clear;
    },
    replace(next, nextTyped = {}) {
      Object.assign(values, plainCopy(next));
      for (const path of Object.keys(typed)) delete typed[path];
      Object.assign(typed, nextTyped);
      for (const path of Object.keys(messages)) delete messages[path];
      attempted.value = false;
    },
  };
  provide(FIELDS, form);
  return form;
}

export function useFieldContext(): FieldContext {
  const context = inject(FIELDS);
  if (context === undefined) throw new Error('A field stands outside a form.');
  return context;
}

/** The id of the element that takes the focus for a field of the form of that name. */
export function fieldId(path: string, formName = ''): string {
  const whole = formName === '' ? path : `${formName}.${path}`;
  return `field-${whole.replaceAll(/[^A-Za-z0-9]+/g, '-')}`;
}
