import { describe, expect, it } from 'vitest';
import { screenForRunning, type ScreeningInput } from '../../../core/index.ts';
import { unclearedGrades } from '../../../core/readiness/lameness.ts';
import type { Injury } from '../../../core/readiness/record.ts';
import { redFlagLabel } from '../../../core/readiness/signs.ts';
import { DAY, READY, SOUND } from './inputs.ts';

// When what was told holds, and what is said of it.

const screened = (changes: ScreeningInput) => screenForRunning({ ...READY, ...changes });
const reasonOf = (changes: ScreeningInput, code: string) =>
  screened(changes).reasons.find((reason) => reason.code === code);

describe('a consent carries known disease only while it holds', () => {
  const consent = READY.consent!;
  const { day: _, ...undated } = { ...READY, disease: { heart: 'yes' } } as const;
  const gate = (given: ScreeningInput['consent'], day: string | undefined = DAY) =>
    screenForRunning({
      ...undated,
      ...(day === '' ? {} : { day }),
      ...(given === undefined ? {} : { consent: given }),
    }).reasons.find(({ code }) => code === 'disease-heart')!.gate;

  it.each<[string, ScreeningInput['consent'], string, 'note' | 'vet first']>([
    ['in force', consent, DAY, 'note'],
    ['on its first day', { ...consent, day: DAY }, DAY, 'note'],
    ['before it', { ...consent, day: '2026-03-03' }, DAY, 'vet first'],
    ['on its last day', { ...consent, expiryDay: DAY }, DAY, 'note'],
    ['after it', { ...consent, expiryDay: '2026-03-01' }, DAY, 'vet first'],
    ['without days', { given: true, vet: 'Dr A. Invented' }, DAY, 'note'],
    ['of nobody', { ...consent, vet: ' ' }, DAY, 'vet first'],
    ['not given', { ...consent, given: false }, DAY, 'vet first'],
    ['that ends, on a day nobody knows', consent, '', 'vet first'],
    ['that does not end, on such a day', { ...consent, expiryDay: null }, '', 'note'],
  ])('%s', (_, given, day, expected) => {
    expect(gate(given, day)).toBe(expected);
  });

  it('and is told with its day where it does not', () => {
    const later = reasonOf({ consent: { ...consent, day: '2026-03-03' } }, 'consent-later');
    expect(later).toMatchObject({ params: { day: '2026-03-03' } });
    const ended = reasonOf({ consent: { ...consent, expiryDay: '2026-03-01' } }, 'consent-expired');
    expect(ended).toMatchObject({ params: { day: '2026-03-01' } });
    const incomplete = (given: ScreeningInput['consent']) =>
      reasonOf({ consent: given }, 'consent-incomplete')?.text;
    expect(incomplete({ ...consent, scope: ' ' })).toContain('what it covers not');
    expect(incomplete({ given: true })).toContain('the vet, the day, what it covers not');
  });
});

describe('a limb that was not looked at', () => {
  it('is cleared by no vet, and a sound one stays sound', () => {
    const cleared = (grade: number, day: string) =>
      [{ vet: 'Dr A. Invented', day, gait: 'trot', limb: 'leftHind', grade, scope: '' }] as const;
    const grades = { leftHind: null, leftFore: 0 };
    expect(unclearedGrades(grades, 'trot', cleared(5, DAY), DAY)).toEqual(grades);
    // A clearance of the same day holds.
    expect(unclearedGrades({ leftHind: 1 }, 'trot', cleared(1, DAY), DAY)).toEqual({ leftHind: 0 });
    const later = unclearedGrades({ leftHind: 1 }, 'trot', cleared(1, '2026-03-03'), DAY);
    expect(later).toEqual({ leftHind: 1 });
  });

  it('is told by its grade where it is lame at walk', () => {
    const lameness = { walk: { ...SOUND, leftFore: 3, rightHind: 1 }, trot: SOUND };
    expect(reasonOf({ lameness }, 'lameness-walk')).toMatchObject({ params: { grade: 3 } });
  });
});

describe('an injury', () => {
  const knee: Injury = {
    kind: 'injury',
    structure: 'cruciate ligament',
    side: 'left',
    day: '2025-10-01',
    done: '',
  };
  const old: Injury = { ...knee, structure: 'iliopsoas', day: '2020-01-01' };

  it('is named while it counts, and not the one that is history', () => {
    const reason = reasonOf({ injuries: [old, knee] }, 'after-injury');
    expect(reason).toMatchObject({ params: { months: 12 } });
    expect(reason?.text).toContain('cruciate');
    expect(reason?.text).not.toContain('iliopsoas');
    // Twelve months to the day are over.
    expect(
      reasonOf({ injuries: [{ ...knee, day: '2025-03-02' }] }, 'after-injury'),
    ).toBeUndefined();
    expect(reasonOf({ injuries: [{ ...knee, day: '2025-03-03' }] }, 'after-injury')).toBeDefined();
  });

  it('counts as recent where nobody knows the day of today', () => {
    const { day: _, consent: __, ...unknown } = READY;
    const codes = screenForRunning({ ...unknown, injuries: [old] }).reasons.map(({ code }) => code);
    expect(codes).toContain('after-injury');
  });

  it('without its day is told by what it was', () => {
    const text = (injuries: readonly Injury[], surgery: ScreeningInput['surgery'] = 'none') =>
      reasonOf({ injuries, surgery }, 'injury-day-missing')?.text;
    expect(text([{ ...knee, day: null }])).toContain('day of an injury is');
    expect(text([knee], 'cleared in writing')).toContain('day of a surgery is');
    expect(text([{ ...knee, day: null }], 'cleared in writing')).toMatch(
      /an injury and of a surgery/,
    );
    expect(text([knee])).toBeUndefined();
  });

  it('asks for both thighs, after a surgery as after an injury', () => {
    const thighGirthCm = { leftHind: 38, rightHind: 36 };
    const thinner = (changes: ScreeningInput) =>
      reasonOf({ thighGirthCm, ...changes }, 'thigh-thinner');
    expect(thinner({})).toBeUndefined();
    expect(thinner({ surgery: 'cleared in writing' })).toMatchObject({
      params: { side: 'right', lessCm: 2 },
    });
    expect(thinner({ injuries: [old] })).toBeDefined();
  });
});

describe('what was told', () => {
  const unasked: ScreeningInput = { historyAsked: false };
  const asksOf = (told: ScreeningInput) => reasonOf({ ...unasked, ...told }, 'history-not-asked');

  it.each<[ScreeningInput, boolean]>([
    [{ disease: { spine: 'yes' } }, true],
    [{ disease: { spine: 'no', heart: null } }, false],
    [{ disease: { words: ' ' } }, false],
    [{ medicine: ' ' }, false],
    [{ surgery: 'none', injuries: [] }, false],
  ])('%o counts as asked for: %s', (told, counts) => {
    expect(asksOf(told) === undefined).toBe(counts);
  });

  it('of disease and heat is repeated where there is any', () => {
    const heart = (words: string) =>
      reasonOf({ disease: { heart: 'yes', words } }, 'disease-heart')?.text;
    expect(heart(' Murmur, 2.5 of 6. ')).toBe('Disease of the heart is known: Murmur, 2.5 of 6.');
    expect(heart(' ')).toBe('Disease of the heart is known.');
    const heat = (day: string | null) =>
      reasonOf({ heatIllness: { had: 'yes', day } }, 'heat-illness')?.text;
    expect(heat('2024-07-01')).toContain('before, on 2024-07-01: it');
    expect(heat(null)).toContain('before: it');
    expect(reasonOf({ medicine: '2.5 mg a day. ' }, 'medicine')?.text).toMatch(
      /^Medicine: 2\.5 mg a day\. It/,
    );
  });

  it('of breath: a short nose by its odds, airway disease by its own words', () => {
    const airway = (changes: ScreeningInput) => reasonOf(changes, 'airway');
    expect(airway({ shortNosed: true })).toMatchObject({ evidence: 'A', mark: 'S' });
    expect(airway({ shortNosed: true })?.text).toContain('more than twice the odds');
    expect(airway({ airwayDisease: true })).toMatchObject({ evidence: 'D', mark: 'CP' });
    expect(airway({ airwayDisease: true })?.text).toContain('Airway disease');
  });

  it('as a sign that nobody knows has no label', () => {
    expect(redFlagLabel('ataxia')).toContain('ataxia');
    expect(redFlagLabel('limping')).toBeUndefined();
  });
});

describe('the goal that is too far for a dog', () => {
  const goal = (changes: ScreeningInput) => reasonOf({ goalMinutes: 60, ...changes }, 'goal-limit');

  it('is told with why, and with what would change it', () => {
    const heavy = goal({ bcs: 6 });
    expect(heavy?.text).toContain('30 min, the most with body condition 6 of 9.');
    expect(heavy?.change).toContain('more once the body condition is 5 or lower');
    expect(heavy?.rules).toEqual(['goalShortMinutes', 'goalHeavyFromBcs']);
    const nose = goal({ shortNosed: true });
    expect(nose?.text).toContain('30 min, the most with a short nose.');
    expect(nose?.change).not.toContain('body condition');
    const both = goal({ shortNosed: true, bcs: 7 });
    expect(both?.text).toContain('a short nose and body condition 7 of 9');
    expect(both?.change).not.toContain('body condition');
  });

  it('by the limit of every dog names both figures', () => {
    expect(reasonOf({ goalMinutes: 120 }, 'goal-long')).toMatchObject({
      params: { minutes: 120, limit: 90 },
    });
  });
});
