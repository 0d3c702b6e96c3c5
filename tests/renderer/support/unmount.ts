import { disableAutoUnmount, enableAutoUnmount } from '@vue/test-utils';
import { afterAll, afterEach, vi } from 'vitest';

// Runs before each file, as files share a worker: a page left mounted would go on answering, and its
// dialogs would hold the focus, in the tests after it.
disableAutoUnmount();
enableAutoUnmount(afterEach);

// A page fetches ahead what comes next: it must not arrive when the file’s window is gone.
afterAll(() => vi.dynamicImportSettled());
