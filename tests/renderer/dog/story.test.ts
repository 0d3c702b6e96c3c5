import { describe, expect, it } from 'vitest';
import { blankClient, blankDog, blankVisit } from '../../../electron/contract/blank.ts';
import type { DogFile, Visit } from '../../../electron/contract/contract.ts';
import { changesSince, comingNext } from '../../../renderer/dog/story.ts';
import { DEFAULT_CHOICES, shownWith } from '../../../renderer/units/shown.ts';

const stored = { id: 'd', createdAt: '', updatedAt: '', revision: 1 };
const visit = (day: string, facts: Partial<Visit> = {}): Visit => ({
  ...blankVisit('d', day),
  ...stored,
  author: '',
  ...facts,
});
const fileOf = (visits: Visit[]): DogFile => ({
  dog: { ...blankDog(), ...stored, archivedAt: null, clientId: 'c' },
  client: { ...blankClient(), ...stored },
  visits,
  plans: [],
  foodDecisions: [],
  sessions: [],
  weighings: [],
  assessment: null,
});
const shown = shownWith(DEFAULT_CHOICES);
const plain = (text: string) => text.replace(/\u00a0/g, ' ');

describe('what changed since the visit before', () => {
  it('is told in sentences with units', () => {
    const lame = { leftFore: null, rightFore: null, leftHind: 2, rightHind: 0 };
    const file = fileOf([
      visit('2026-01-05', { weightKg: 26, bcs: 7, lamenessTrot: lame }),
      visit('2026-02-02', { weightKg: 25.5, bcs: 6, lamenessTrot: { ...lame, leftHind: 1 } }),
    ]);
    expect(changesSince(file, shown).map(plain)).toEqual([
      'The weight is 0.5 kg lower.',
      'The condition score went from 7 to 6 of 9.',
      'Lameness at trot, left hind: better, grade 2 to 1 of 5.',
    ]);
  });

  it('is nothing at the first visit, and nothing is made of what was not measured', () => {
    expect(changesSince(fileOf([visit('2026-01-05', { weightKg: 26 })]), shown)).toEqual([]);
    const unweighed = [visit('2026-01-05', { weightKg: 26 }), visit('2026-02-02')];
    expect(changesSince(fileOf(unweighed), shown)).toEqual([]);
  });
});

describe('what comes next', () => {
  it('holds the next weighing and the end of a consent, in order of days', () => {
    const consent = {
      given: true,
      vet: 'Dr C. Vet',
      day: '2026-01-05',
      scope: '',
      expiryDay: '2026-01-20',
    };
    const file = fileOf([visit('2026-01-05', { weightKg: 26, consent })]);
    expect(comingNext(file, '2026-01-06')).toEqual([
      { day: '2026-01-20', words: 'Last day of the vet’s consent' },
      { day: '2026-02-02', words: 'Weigh again' },
    ]);
    expect(comingNext(file, '2026-01-21').map(({ words }) => words)).toEqual(['Weigh again']);
  });
});
