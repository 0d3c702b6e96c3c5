import { config } from 'zod';

// Before any schema is made: zod tries whether it may compile code, which the page's policy forbids
// and the browser reports as a breach of it.
config({ jitless: true });
