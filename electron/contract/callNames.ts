import type { CallName } from './contract.ts';

/**
 * Every call's name, apart from the schemas, so that the Electron preload carries no schema library.
 * The type below fails to compile when one is missing.
 */
export const CALL_NAMES = [
  'app/status',
  'app/open',
  'practice/save',
  'practice/setLogo',
  'clients/list',
  'clients/save',
  'dogs/list',
  'dogs/due',
  'dogs/save',
  'dogs/saveWithOwner',
  'dogs/file',
  'visits/save',
  'sessions/save',
  'sessions/drop',
  'plans/review',
  'plans/edit',
  'rules/set',
  'drafts/get',
  'drafts/put',
  'drafts/drop',
  'handouts/render',
  'handouts/bundle',
  'work/state',
  'work/cancel',
] as const satisfies readonly CallName[];

/** Only `true` while every call of the contract is in the list; asserted in a test. */
export type EveryCallIsNamed = CallName extends (typeof CALL_NAMES)[number] ? true : false;
