import { disableAutoUnmount, enableAutoUnmount } from '@vue/test-utils';
import { afterEach } from 'vitest';

// Runs before each file, as files share a worker: a page left mounted would go on answering, and its
// dialogs would hold the focus, in the tests after it.
disableAutoUnmount();
enableAutoUnmount(afterEach);
