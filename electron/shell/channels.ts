import type { CallName } from '../contract/contract.ts';

/** The front end's address inside the window. */
export const APP_SCHEME = 'trotwell';
export const APP_ORIGIN = `${APP_SCHEME}://app`;

/** The IPC channel of one contract call; there is no channel that takes a call's name. */
export const callChannel = (name: CallName): string => `call:${name}`;

export const SAVE_FILE_CHANNEL = 'shell:save-file';
export const CHOOSE_FILE_CHANNEL = 'shell:choose-file';
export const CHOOSE_FILES_CHANNEL = 'shell:choose-files';
export const DROP_FILE_CHANNEL = 'shell:drop-file';
export const SAVE_PRODUCED_CHANNEL = 'shell:save-produced';

/** Main asks the page to hand over what was typed last; the page says that it has. */
export const LEAVE_CHANNEL = 'shell:leave';
export const LEFT_CHANNEL = 'shell:left';
