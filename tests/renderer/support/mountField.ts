import { mount, type VueWrapper } from '@vue/test-utils';
import { defineComponent, h, type Component } from 'vue';
import type { Practice } from '../../../electron/contract/records.ts';
import { useForm, type Form } from '../../../renderer/composables/useForm.ts';
import { appPlugins } from './plugins.ts';

export interface Mounted<T extends object> {
  readonly wrapper: VueWrapper;
  readonly form: Form<T>;
}

/** Mounts one field inside a form of the given values, in a practice of the given settings. */
export function mountField<T extends object>(
  field: Component,
  values: T,
  key: keyof T & string,
  props: Record<string, unknown>,
  settings: Partial<Practice> = {},
): Mounted<T> {
  let form: Form<T> | undefined;
  const Frame = defineComponent(() => {
    form = useForm(values);
    const state = form.values as Record<string, unknown>;
    return () =>
      h(field, {
        path: key,
        ...props,
        modelValue: state[key],
        'onUpdate:modelValue': (value: unknown) => {
          state[key] = value;
        },
      });
  });
  const wrapper = mount(Frame, {
    global: { plugins: appPlugins(settings) },
    attachTo: document.body,
  });
  return { wrapper, form: form! };
}
