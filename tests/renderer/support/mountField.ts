import { mount, type VueWrapper } from '@vue/test-utils';
import { createPinia, setActivePinia } from 'pinia';
import { createApp, defineComponent, h, type Component } from 'vue';
import { blankPractice } from '../../../electron/contract/blank.ts';
import type { AppStatus } from '../../../electron/contract/contract.ts';
import type { Practice } from '../../../electron/contract/records.ts';
import { provideClient, type Client } from '../../../renderer/api/client.ts';
import { useForm, type Form } from '../../../renderer/composables/useForm.ts';
import { usePractice } from '../../../renderer/stores/practice.ts';
import { ref } from 'vue';

/** A transport that answers nothing; the components under test must not need the service. */
const silent: Client = {
  refused: ref(false),
  call: async () => ({ ok: false, error: { kind: 'unreachable', message: 'No service here.' } }),
};

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
  const pinia = createPinia();
  const host = createApp({});
  provideClient(host, silent);
  host.use(pinia);
  setActivePinia(pinia);
  const status: AppStatus = {
    version: '0',
    open: 'own',
    ownExists: true,
    today: '2025-03-29',
    folder: '',
    logo: null,
    practice: { ...blankPractice(), ...settings },
  };
  host.runWithContext(() => {
    usePractice().status = status;
  });

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
  const wrapper = mount(Frame, { global: { plugins: [pinia] }, attachTo: document.body });
  return { wrapper, form: form! };
}
