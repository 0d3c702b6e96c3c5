import { expect, test } from 'vitest';
import { blankVisit } from '../../../electron/contract/records/forms.ts';
import { bundleRecords } from '../../../electron/contract/exchange/bundle.ts';
import type { Fields } from '../../../electron/contract/records/fieldKinds.ts';
import { completed, withFieldsSince } from '../../../electron/service/exchange/bundleEarlier.ts';

const FIELDS: Fields = {
  name: { kind: 'text', label: 'Name', as: 'line', since: 1 },
  walkMin: {
    kind: 'number',
    label: 'Walk',
    unit: 'min',
    min: 0,
    max: 600,
    nullable: true,
    since: 3,
  },
};

test('a record of an earlier form gets the blank of what it did not know, and only that', () => {
  expect(withFieldsSince(FIELDS, { name: 'Rusk' }, 2)).toEqual({ name: 'Rusk', walkMin: null });
  expect(withFieldsSince(FIELDS, { name: 'Rusk', walkMin: 20 }, 2)).toEqual({
    name: 'Rusk',
    walkMin: 20,
  });
  // What its own form had to have stays missing, and is refused.
  expect(withFieldsSince(FIELDS, { walkMin: 20 }, 2)).toEqual({ walkMin: 20 });
  expect(withFieldsSince(FIELDS, { name: 'Rusk' }, 3)).toEqual({ name: 'Rusk' });
  expect(withFieldsSince(FIELDS, [1], 2)).toEqual([1]);
});

const ID = '00000000-0000-4000-8000-000000000001';
const AT = '2026-03-02T12:00:00.000Z';
/** The fields each form of the bundle did not know of a visit. */
const SINCE_FORM_3 = [
  'historyAsked',
  'injuries',
  'diagnosis',
  'referral',
  'disease',
  'medicine',
  'heatIllness',
  'usedToWarmth',
  'longRunClearance',
  'signsAsked',
  'lamenessClearances',
  'palpation',
  'sitToStand',
  'lieToStand',
  'questionnaires',
  'feeding',
  'appetite',
  'thirst',
  'stool',
  'exercises',
] as const;

test.each([1, 2])('a visit of form %i is read, with nothing told of what came later', (form) => {
  const visit = {
    ...blankVisit(ID, '2026-03-02'),
    ...{ id: ID, createdAt: AT, updatedAt: AT, revision: 1, author: '', binnedAt: null },
  };
  const older: Record<string, unknown> = { ...visit };
  for (const name of SINCE_FORM_3) delete older[name];
  const { element } = bundleRecords.shape.visits;
  expect(element.safeParse(older).success).toBe(false);
  expect(element.parse(completed('visits', older, form))).toEqual(visit);
});
