import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect } from 'vitest';
import type { CallName, InputOf, ResultOf } from '../../../electron/contract/contract.ts';
import type { AppError } from '../../../electron/contract/errors.ts';
import { createPrinter } from '../../../electron/service/handouts/printer.ts';
import { createService, type Service } from '../../../electron/service/service.ts';

export const FONTS = join(import.meta.dirname, '../../../templates/fonts');

/** One for all desks of a worker: its thread reads the fonts once. */
export const PRINTER = createPrinter();

const undo: (() => void | Promise<void>)[] = [];

afterEach(async () => {
  for (const step of undo.splice(0).reverse()) await step();
});

/** A new empty folder that is removed after the test. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'trotwell-test-'));
  undo.push(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export interface TestDesk {
  readonly service: Service;
  readonly folder: string;
  readonly log: string[];
  /** Moves the service's clock. */
  setDay(day: string): void;
  /** Calls and expects success. */
  ok<N extends CallName>(name: N, input: InputOf<N>): Promise<ResultOf<N>>;
  /** Calls with anything and expects an error. */
  refused(name: CallName, input: unknown): Promise<AppError>;
}

/** A real service on a real file in a folder, at noon of a given day; whoever asks closes it. */
export function serviceOn(folder: string, day: string, printer = PRINTER): TestDesk {
  let today = day;
  const log: string[] = [];
  const service = createService({
    folder,
    fontsFolder: FONTS,
    printer,
    version: '0.0.0-test',
    clock: () => new Date(`${today}T12:00:00`),
    log: (line) => log.push(line),
  });
  return {
    service,
    folder,
    log,
    setDay(next) {
      today = next;
    },
    async ok(name, input) {
      const answer = await service.call(name, input);
      if (!answer.ok) expect.fail(`${name}: ${JSON.stringify(answer.error)}`);
      return answer.value;
    },
    async refused(name, input) {
      const answer = await service.call(name, input as never);
      if (answer.ok) expect.fail(`${name} accepted ${JSON.stringify(input).slice(0, 200)}`);
      return answer.error;
    },
  };
}

/** The same in a new folder; it is closed after the test. */
export function testService(
  folder: string = temporaryFolder(),
  day = '2026-03-02',
  printer = PRINTER,
): TestDesk {
  const desk = serviceOn(folder, day, printer);
  undo.push(() => desk.service.close());
  return desk;
}

/** A service with the own practice open. */
export async function openOwn(folder?: string, day?: string): Promise<TestDesk> {
  const desk = testService(folder, day);
  await desk.ok('app/open', { which: 'own' });
  return desk;
}
