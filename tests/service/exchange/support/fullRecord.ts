import { Readable } from 'node:stream';
import { expect } from 'vitest';
import { FILE_PURPOSES } from '../../../../electron/contract/files/purposes.ts';
import type { Visit } from '../../../../electron/contract/contract.ts';
import type { Dog, SessionInput } from '../../../../electron/contract/records.ts';
import { pngOf, SMALL_PDF } from '../../../support/pictures.ts';
import type { TestDesk } from '../../support/desk.ts';
import { dogOf, seenWithPlan, soundVisit } from '../../support/records.ts';

export const WEIGHING = {
  day: '2026-02-20',
  weightKg: 23.6,
  weighingMethod: 'same scale',
  scaleStepKg: 0.1,
  note: 'at the feed shop',
} as const;
export const SESSION: SessionInput = {
  day: '2026-02-24',
  outcome: 'done',
  runMinutes: 6,
  longestRunMinutes: null,
  runKm: null,
  climbedM: null,
  nextDay: 'normal',
  signs: [],
  note: 'on grass',
};

export async function attach(
  desk: TestDesk,
  visitId: string,
  bytes: Buffer,
  name: string,
): Promise<string> {
  const { maxBytes } = FILE_PURPOSES.attachment;
  const taken = await desk.service.takeIn(name, Readable.from([bytes]), maxBytes);
  if (!taken.ok) expect.fail(taken.error.message);
  const { token } = taken.value;
  const isPicture = name.endsWith('.png');
  const thumbnail = isPicture ? pngOf(2, 2).toString('base64') : null;
  const kind = isPicture ? 'photo from the left' : 'letter of the vet';
  const { id } = await desk.ok('attachments/add', { visitId, token, kind, name, thumbnail });
  return id;
}

export interface FullRecord {
  readonly dog: Dog;
  readonly visit: Visit;
  readonly binnedVisitId: string;
  readonly weighingId: string;
  readonly droppedId: string;
  readonly fileIds: readonly string[];
}

/** An owner and a dog with something in every list of a bundle. */
export async function fullRecord(desk: TestDesk, owner: string, name: string): Promise<FullRecord> {
  const dog = await dogOf(desk, owner, name);
  const { visit } = await seenWithPlan(desk, dog.id, '2026-02-16');
  const amended = await desk.ok('visits/save', {
    id: visit.id,
    basedOn: 1,
    reason: 'The scale was read again.',
    visit: { ...soundVisit(dog.id, '2026-02-16'), weightKg: 24.2, signs: ['cough'] },
    plan: null,
    food: null,
  });
  const second = await desk.ok('visits/save', {
    id: null,
    visit: soundVisit(dog.id, '2026-02-27'),
    plan: null,
    food: null,
  });
  await desk.ok('bin/put', { kind: 'visit', id: second.visit.id, reason: 'of another dog' });
  const weighing = await desk.ok('weighings/save', { dogId: dog.id, weighing: WEIGHING });
  const dropped = await desk.ok('weighings/save', {
    dogId: dog.id,
    weighing: { ...WEIGHING, day: '2026-02-21', weightKg: 32.6 },
  });
  await desk.ok('weighings/drop', { id: dropped.id });
  await desk.ok('sessions/save', { dogId: dog.id, session: SESSION });
  const fileIds = [
    await attach(desk, visit.id, pngOf(16, 8), 'gait.png'),
    await attach(
      desk,
      visit.id,
      Buffer.concat([SMALL_PDF, Buffer.from(`%${name}\n`)]),
      'letter.pdf',
    ),
  ];
  return {
    dog,
    visit: amended.visit,
    binnedVisitId: second.visit.id,
    weighingId: weighing.id,
    droppedId: dropped.id,
    fileIds,
  };
}
