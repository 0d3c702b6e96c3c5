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
  'dogs/count',
  'dogs/offCourse',
  'dogs/due',
  'dogs/save',
  'dogs/saveWithOwner',
  'dogs/amendWithOwner',
  'dogs/file',
  'visits/save',
  'weighings/save',
  'weighings/drop',
  'weighings/restore',
  'sessions/save',
  'sessions/drop',
  'history/list',
  'bin/check',
  'bin/put',
  'bin/restore',
  'bin/list',
  'bin/empty',
  'dogs/archive',
  'keeping/get',
  'keeping/set',
  'clients/eraseCheck',
  'clients/erase',
  'erasures/list',
  'erasures/finish',
  'plans/review',
  'plans/edit',
  'rules/set',
  'drafts/list',
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
