import { Readable } from 'node:stream';
import { flushPromises, mount, type VueWrapper } from '@vue/test-utils';
import { createPinia, type Pinia } from 'pinia';
import { expect, vi } from 'vitest';
import { ref, type Component } from 'vue';
import type { Router } from 'vue-router';
import type { Answer } from '../../../electron/contract/errors.ts';
import type { TakenFile } from '../../../electron/contract/files/purposes.ts';
import type { Practice } from '../../../electron/contract/records.ts';
import type { FileAtHand as ToTake } from '../../../renderer/api/files.ts';
import type { Client } from '../../../renderer/api/client.ts';
import { useNotice } from '../../../renderer/stores/notice.ts';
import { usePractice } from '../../../renderer/stores/practice.ts';
import type { TestDesk } from '../../service/support/desk.ts';
import { appPlugins } from './plugins.ts';

const WAIT = { timeout: 20_000, interval: 10 };

/** A file as the practitioner has it at hand. */
export interface FileAtHand {
  readonly name: string;
  readonly content: string | Buffer;
}

/** The way to a real service; `atHand` is what the practitioner chooses in the file dialogue. */
export function deskClient(
  desk: TestDesk,
  atHand: () => FileAtHand | readonly FileAtHand[] | null = () => null,
): Client {
  const take = ({ name, content }: FileAtHand): Promise<Answer<TakenFile>> =>
    desk.service.takeIn(name, Readable.from([Buffer.from(content)]), 1e8);
  const chosen = (): readonly FileAtHand[] => [atHand() ?? []].flat();
  return {
    refused: ref(null),
    lockedAnswers: ref(0),
    call: (name, input) => desk.service.call(name, input),
    files: {
      async chooseFile() {
        const [file] = chosen();
        return file === undefined ? { ok: true, value: null } : take(file);
      },
      async chooseFiles() {
        const value = chosen().map((file): ToTake => ({ name: file.name, take: () => take(file) }));
        return { ok: true, value };
      },
      sendFile: async (file) =>
        take({ name: file.name, content: Buffer.from(await file.arrayBuffer()) }),
      saveProduced: async () => 'not saved',
    },
  };
}

export interface AtDesk {
  readonly wrapper: VueWrapper;
  readonly router: Router;
  /** What the bar above every page says. */
  readonly notice: ReturnType<typeof useNotice>;
  /** What outlives a change of page. */
  readonly pinia: Pinia;
}

interface Surroundings {
  readonly path?: string;
  readonly settings?: Partial<Practice>;
  /** That of an earlier page, to go on from it. */
  readonly pinia?: Pinia;
}

/** Mounts a component or page with a real service behind it. */
export async function mountAtDesk(
  component: Component,
  client: Client,
  props: Record<string, unknown> = {},
  { path = '/', settings = {}, pinia = createPinia() }: Surroundings = {},
): Promise<AtDesk> {
  const plugins = appPlugins(settings, client, pinia);
  const status = await client.call('app/status', {});
  // The day of the service counts, as in the program.
  if (status.ok) usePractice().status = { ...usePractice().status!, today: status.value.today };
  const router = plugins.find((plugin) => 'currentRoute' in plugin) as unknown as Router;
  const notice = useNotice();
  await router.push(path);
  const wrapper = mount(component, { props, global: { plugins }, attachTo: document.body });
  await flushPromises();
  return { wrapper, router, notice, pinia };
}

/** Waits until the page shows that text. */
export async function shows(wrapper: VueWrapper, text: string | RegExp): Promise<void> {
  const shown = () => wrapper.text().replaceAll(/[\u00a0\u202f]/g, ' ');
  await vi.waitFor(() => expect(shown()).toMatch(text), WAIT);
}

/** Waits for the button of that text, and presses it. */
export async function press(wrapper: VueWrapper, text: string): Promise<void> {
  const found = await vi.waitFor(() => {
    const all = wrapper.findAll('button, a.button, [role="menuitem"]');
    const one = all.find((each) => each.text() === text || each.attributes('aria-label') === text);
    if (one === undefined) throw new Error(`There is no button “${text}”.`);
    return one;
  }, WAIT);
  await found.trigger('click');
}

/** Waits for the choice that begins with that text, and takes it. */
export async function pick(wrapper: VueWrapper, label: string): Promise<void> {
  const found = await vi.waitFor(() => {
    const one = wrapper.findAll('label.choice').find((each) => each.text().startsWith(label));
    if (one === undefined) throw new Error(`There is no choice “${label}”.`);
    return one;
  }, WAIT);
  await found.get('input').trigger('change');
}

/** Waits until something holds in the records. */
export async function comesTrue(check: () => Promise<void>): Promise<void> {
  await vi.waitFor(check, WAIT);
}
