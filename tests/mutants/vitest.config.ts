import { defineConfig } from 'vitest/config';
import { ROOMS, type RoomName } from './rooms.ts';

// Stryker wants one project, and only the tests that a mutant of the room can fail.
const room = process.env['MUTANTS_ROOM'] as RoomName;
const only = process.env['MUTANTS_TESTS'];

export default defineConfig({
  test: {
    environment: 'node',
    isolate: false,
    include: only === undefined ? [...ROOMS[room].tests] : [only],
    testTimeout: 60_000,
    // A mutant that needs many draws to show is met by the whole tests; here most of them are saved.
    env: { LAWS_SHARE: '0.1' },
  },
});
