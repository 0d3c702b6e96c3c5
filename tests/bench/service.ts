import { fileURLToPath } from 'node:url';
import type { CallName, InputOf, ResultOf } from '../../electron/contract/contract.ts';
import { createService, type Service } from '../../electron/service/service.ts';
import { clock } from './practice.ts';

export const FONTS = fileURLToPath(new URL('../../templates/fonts', import.meta.url));

export const startService = (folder: string): Service =>
  createService({ folder, fontsFolder: FONTS, version: '0.0.0-bench', clock });

/** The value of an answer. @throws Error where the service refuses: the figures would be wrong. */
export async function ask<N extends CallName>(
  service: Service,
  name: N,
  input: InputOf<N>,
): Promise<ResultOf<N>> {
  const answer = await service.call(name, input);
  if (!answer.ok) throw new Error(`${name}: ${answer.error.message}`);
  return answer.value;
}
