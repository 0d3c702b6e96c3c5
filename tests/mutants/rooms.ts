import { globSync } from 'node:fs';

// What is mutated: the science, and the files of the service that decide something of a dog, a plan or
// a backup. What only passes records on is held by types and by the contract's tests.

interface Room {
  readonly files: readonly string[];
  readonly tests: readonly string[];
}

const service = (path: string): string => `electron/service/${path}.ts`;

export const ROOMS = {
  core: {
    files: globSync('core/**/*.ts').filter((file) => !/\/(index|types|\w+Types)\.ts$/.test(file)),
    tests: ['tests/core/**/*.test.ts', 'tests/outside/!(backup|placeOfRecords).test.ts'],
  },
  service: {
    files: [
      'backup/container',
      'backup/contents',
      'backup/format1',
      'backup/keeping',
      'backup/manifest',
      'backup/unpack',
      'dogs/due',
      'dogs/presentLines',
      'food/decisions',
      'plans/edit',
      'plans/plans',
      'plans/review',
      'plans/sessions',
      'visits/assessment',
      'visits/plan',
      'visits/visits',
      'visits/write',
      'weighings/weighings',
    ].map(service),
    tests: [
      'tests/service/{backup,dogs,food,plans,runs,visits,weighings}/*.test.ts',
      // Replaying needs more draws than a mutant is given.
      'tests/service/history/!(replay).test.ts',
      'tests/service/mainJob.test.ts',
    ],
  },
} satisfies Record<string, Room>;

export type RoomName = keyof typeof ROOMS;
