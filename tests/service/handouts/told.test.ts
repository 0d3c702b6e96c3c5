import { describe, expect, test } from 'vitest';
import {
  blankClient,
  blankDog,
  blankPlanRequest,
  blankPractice,
  blankVisit,
} from '../../../electron/contract/records/forms.ts';
import type { HandoutKind, VisitFacts } from '../../../electron/contract/records.ts';
import { readPdf } from '../../templates/support/readPdf.ts';
import { openOwn, type TestDesk } from '../support/desk.ts';
import { dogOf, seenWithPlan, soundVisit, tellAllDone } from '../support/records.ts';

// What the intake asks for beside the numbers, on the two sheets for professionals.

const DAY = '2026-03-02';
const SHEETS = ['vet-letter', 'assessment-record'] as const;

async function seen(facts: Partial<VisitFacts>): Promise<{ desk: TestDesk; dogId: string }> {
  const desk = await openOwn(undefined, DAY);
  await desk.ok('practice/save', { ...blankPractice(), name: 'Practice of the test' });
  const { id } = await dogOf(desk, 'Ada Sample', 'Bess');
  const visit = { ...soundVisit(id, DAY), ...facts };
  await desk.ok('visits/save', { id: null, visit, plan: null, food: null });
  return { desk, dogId: id };
}

/** The text of a sheet without its line ends. */
async function textOf(desk: TestDesk, kind: HandoutKind, dogId: string): Promise<string> {
  const { base64 } = await desk.ok('handouts/render', { kind, dogId, paper: null });
  const { text } = await readPdf(Buffer.from(base64, 'base64'));
  return text.replaceAll(/\s+/g, ' ');
}

describe.each(SHEETS)('the %s', (kind) => {
  async function record(disease: VisitFacts['disease']) {
    const { desk, dogId } = await seen({ disease });
    return [desk, kind, dogId] as const;
  }

  test('tells all that was told and found, with days as the practice writes them', async () => {
    const blank = blankVisit('', DAY);
    const { desk, dogId } = await seen({
      referral: 'Fitness after weight loss',
      diagnosis: 'Old rupture of the left stifle',
      surgery: 'cleared in writing',
      injuries: [
        { kind: 'surgery', structure: 'cruciate', side: 'left', day: '2023-04-01', done: 'plate' },
      ],
      disease: { joints: 'yes', spine: 'no', heart: null, words: 'mild wear of the hips' },
      medicine: 'Joint tablets',
      heatIllness: { had: 'yes', day: '2024-07-01' },
      lamenessTrot: { ...blank.lamenessTrot, leftHind: 1 },
      lamenessClearances: [
        { vet: 'Dr Fenn', day: DAY, gait: 'trot', limb: 'leftHind', grade: 1, scope: 'runs' },
      ],
      palpation: { ...blank.palpation, 'left hind': 1, back: 0 },
      sitToStand: 'leans left',
      questionnaires: [{ name: 'LOAD', day: '2026-03-01', total: 12 }],
      feeding: { ...blank.feeding, fedBy: 'Kim', scavenges: 'yes' },
      stool: 'soft',
    });
    const text = await textOf(desk, kind, dogId);
    for (const told of [
      'Reason for the referral | Fitness after weight loss',
      'Diagnosis | Old rupture of the left stifle',
      'Surgery, cruciate | side: left; day: 2023-04-01; what was done: plate',
      'disease of joints: yes; disease of the spine: no; disease in words: mild wear of the hips',
      'Medicine | Joint tablets',
      'Earlier heat illness | yes; day of the heat illness: 2024-07-01',
      'Lameness cleared at trot, left hind | grade: 1 of 5; vet: Dr Fenn; day: 2026-03-02; for: runs',
      'Pain on palpation | back: 0 of 4; left hind: 1 of 4',
      '1 turns or tenses, once',
      'Sit to stand | leans left',
      'Questionnaire LOAD | total: 12 points; day: 2026-03-01 A change of 4 points or more counts.',
      'who feeds the dog: Kim; scavenges: yes',
      'Stool | soft',
    ]) {
      expect(text).toContain(told);
    }
    expect(text).not.toContain('heart: ');
  });

  test('says once that no region hurts', async () => {
    const { palpation } = blankVisit('', DAY);
    const none = Object.fromEntries(Object.keys(palpation).map((region) => [region, 0]));
    const { desk, dogId } = await seen({ palpation: none as typeof palpation });
    const text = await textOf(desk, kind, dogId);
    expect(text).toContain('Pain on palpation | none in any region');
    expect(text).not.toContain('0 of 4');
  });

  test('says once that no disease is known', async () => {
    const none = { joints: 'no', spine: 'no', heart: 'no', words: '' } as const;
    const text = await textOf(...(await record(none)));
    expect(text).toContain('Known disease | none of joints, spine or heart');
    const asked = await textOf(...(await record({ ...none, heart: null })));
    expect(asked).toContain('Known disease | disease of joints: no; disease of the spine: no');
  });

  test('says nothing of what was not noted', async () => {
    const { desk, dogId } = await seen({});
    const text = await textOf(desk, kind, dogId);
    for (const label of ['Diagnosis', 'Medicine |', 'Pain on palpation', 'Stool', 'Lie to stand']) {
      expect(text).not.toContain(label);
    }
    expect(text).toContain('No warning signs were noted.');
    expect(text).not.toMatch(/have not been asked about|not looked or asked for/);
  });

  test('does not take silence for a finding', async () => {
    const { desk, dogId } = await seen({ signsAsked: false, historyAsked: false });
    const text = await textOf(desk, kind, dogId);
    expect(text).not.toMatch(
      /No warning signs|No surgery or injury|Surgery \| none|Airway disease/,
    );
    expect(text).toContain('Warning signs were not looked or asked for at this visit.');
    expect(text).toContain('medicine and heat illness have not been asked about.');
  });

  test('names the exercises that were chosen, with their dose', async () => {
    const { desk, dogId } = await seen({ exercises: ['sit-to-stand'] });
    expect(await textOf(desk, kind, dogId)).toContain('Sit to stand, 2 × 5 times, 3 days a week');
  });

  test('names how the owner runs without the dog, where it was told', async () => {
    const { desk, dogId } = await seen({});
    expect(await textOf(desk, kind, dogId)).not.toContain('The owner runs');
    const goal = { continuousMinutes: 20 };
    const plan = { ...blankPlanRequest(DAY, 'unconditioned' as const), goal, ownerMinutes: 15 };
    const visit = soundVisit(dogId, DAY);
    await desk.ok('visits/save', { id: null, visit, plan, food: null });
    expect(await textOf(desk, kind, dogId)).toContain('The owner runs 15 min without a break.');
  });

  test('does not read the tick of earlier releases as a clearance', async () => {
    const { desk, dogId } = await seen({
      trotLamenessAssessed: true,
      lamenessTrot: { ...blankVisit('', DAY).lamenessTrot, leftHind: 1 },
    });
    expect(await textOf(desk, kind, dogId)).not.toMatch(/has assessed|assessed by a vet/);
  });
});

test('a plan under way is printed from the week of today on, with what was done so far', async () => {
  const desk = await openOwn();
  await desk.ok('practice/save', { ...blankPractice(), name: 'Practice of the test' });
  const { id: dogId } = await dogOf(desk, 'Dana Owner', 'Rusk');
  const { plan } = await seenWithPlan(desk, dogId, '2026-03-02');
  const [, , third] = plan!.ramp.weeks;
  await tellAllDone(desk, dogId, third!.startDay);
  const text = await textOf(desk, 'running-plan', dogId);
  expect(text).toMatch(/So far: 6 of 6 outings done\. The longest: \d+ min\./);
  expect(text).toMatch(/Week 3\s/);
  expect(text).not.toMatch(/Week [12]\s+\d/);
  // Where one step back leads may lie before: it stands on the sheet that was printed first.
  expect(text).toContain('one step back: week 2');
});

test('the tips for the first runs wait where the vet comes first', async () => {
  const kit = { kind: 'kit-sheet', paper: null } as const;
  const ill = await seen({ signs: ['fever'] });
  const refused = await ill.desk.refused('handouts/render', { ...kit, dogId: ill.dogId });
  expect(refused.message).toContain('The vet sees Bess first');
  const well = await seen({});
  expect(await textOf(well.desk, 'kit-sheet', well.dogId)).toContain('The harness');
});

test('the record says by which scale once there is another weight to compare with', async () => {
  const { desk, dogId } = await seen({});
  expect(await textOf(desk, 'assessment-record', dogId)).not.toContain('Weighed |');
  const visit = { ...soundVisit(dogId, DAY), kind: 'follow-up' as const };
  await desk.ok('visits/save', { id: null, visit, plan: null, food: null });
  expect(await textOf(desk, 'assessment-record', dogId)).toContain('Weighed | same scale');
  const unweighed = { ...visit, weightKg: null };
  await desk.ok('visits/save', { id: null, visit: unweighed, plan: null, food: null });
  expect(await textOf(desk, 'assessment-record', dogId)).not.toContain('Weighed |');
});

test('the sheets of a growing dog speak of growth, not of keeping its weight', async () => {
  const { desk, dogId } = await seen({});
  const sheets = async () => [
    await textOf(desk, 'feeding-sheet', dogId),
    await textOf(desk, 'vet-letter', dogId),
  ];
  const accepted = { decision: 'accepted', kcalPerDay: null, foodSwitch: null, note: '' } as const;
  const visit = { ...soundVisit(dogId, DAY), kind: 'follow-up', foodGoal: 'hold' } as const;
  await desk.ok('visits/save', { id: null, visit, plan: null, food: accepted });
  for (const text of await sheets()) expect(text).toMatch(/keep the weight|Weight maintenance/);
  const dog = {
    ...blankDog('female'),
    name: 'Bess',
    birthDay: '2025-08-01',
    adultWeightKg: 30,
  };
  await desk.ok('dogs/amendWithOwner', {
    id: dogId,
    dogBasedOn: 1,
    reason: 'Born later.',
    dog,
    client: { ...blankClient(), name: 'Ada Sample' },
    clientBasedOn: 1,
  });
  const [feeding, letter] = await sheets();
  expect(feeding).toContain('Aim: grow steadily');
  expect(feeding).toContain('A growing dog like Bess needs');
  expect(letter).toContain('Growth: ');
});
