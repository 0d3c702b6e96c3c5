import { ArgumentError, inRange, oneOf, weightInRange, wholeInRange } from '../check.ts';
import { dayNumber } from '../day.ts';
import { MUSCLE_CONDITIONS } from '../condition/bodyCondition.ts';
import { GAITS, INJURY_KINDS, SIDES, YES_NO } from './record.ts';
import { RED_FLAGS } from './signs.ts';
import { LIMBS, type Limb, type ScreeningInput } from './types.ts';

const FLAGS = [
  'shortNosed',
  'airwayDisease',
  'airwayClearance',
  'radiographicClearance',
  'longRunClearance',
  'historyAsked',
] as const;

/** @throws RangeError naming the first argument that is out of range or an unknown word. */
export function checkInput(input: ScreeningInput): void {
  checkNumbers(input);
  checkDays(input);
  checkWords(input);
  checkLameness(input);
  checkClearances(input);
  checkHistory(input);
}

function checkNumbers(input: ScreeningInput): void {
  const { ageMonths, weightKg, adultWeightKg, bcs, neuteredAtMonths, goalMinutes } = input;
  if (ageMonths !== undefined) inRange('ageMonths', ageMonths, 'months', { min: 0, max: 360 });
  if (weightKg !== undefined) weightInRange('weightKg', weightKg);
  if (adultWeightKg !== undefined) weightInRange('adultWeightKg', adultWeightKg);
  if (bcs !== undefined) wholeInRange('bcs', bcs, 'of 9', { min: 1, max: 9 });
  if (goalMinutes !== undefined) {
    inRange('goalMinutes', goalMinutes, 'min', { min: 0, max: 1440 });
  }
  if (neuteredAtMonths !== undefined) {
    inRange('neuteredAtMonths', neuteredAtMonths, 'months', { min: 1, max: 240 });
  }
}

function checkDays({ day, birthDay, consent }: ScreeningInput): void {
  if (day !== undefined) dayNumber(day, 'day');
  if (birthDay !== undefined) dayNumber(birthDay, 'birthDay');
  if (consent?.day != null) dayNumber(consent.day, 'consent.day');
  if (consent?.expiryDay != null) dayNumber(consent.expiryDay, 'consent.expiryDay');
}

function checkWords(input: ScreeningInput): void {
  const { surgery, walkBase, conditioning } = input;
  const signIds = RED_FLAGS.map(({ id }) => id as string);
  for (const sign of input.signs ?? []) oneOf('signs', sign, signIds);
  if (surgery !== undefined) {
    oneOf('surgery', surgery, ['none', 'cleared in writing', 'not cleared']);
  }
  if (walkBase !== undefined) oneOf('walkBase', walkBase, ['passed', 'failed', 'not tested']);
  if (conditioning !== undefined) {
    oneOf('conditioning', conditioning, ['conditioned', 'unconditioned', 'post-injury']);
  }
  for (const name of FLAGS) yesOrNo(name, input[name]);
  if (input.consent !== undefined) yesOrNo('consent.given', input.consent.given);
}

/** A word such as "yes" must not pass for either answer. */
function yesOrNo(argument: string, value: boolean | undefined): void {
  if (value === undefined || typeof value === 'boolean') return;
  throw new ArgumentError(
    argument,
    '',
    undefined,
    `${argument} must be true or false, but is ${String(value)}`,
  );
}

function checkLameness({ lameness }: ScreeningInput): void {
  for (const gait of ['walk', 'trot'] as const) {
    for (const [limb, grade] of Object.entries(lameness?.[gait] ?? {})) {
      oneOf(`lameness.${gait}`, limb as Limb, LIMBS);
      if (grade == null) continue;
      wholeInRange(`lameness.${gait}.${limb}`, grade, 'of 5', { min: 0, max: 5 });
    }
  }
}

function checkClearances({ lamenessClearances = [] }: ScreeningInput): void {
  for (const { gait, limb, grade, day } of lamenessClearances) {
    oneOf('lamenessClearances.gait', gait, GAITS);
    oneOf('lamenessClearances.limb', limb, LIMBS);
    wholeInRange('lamenessClearances.grade', grade, 'of 5', { min: 0, max: 5 });
    dayNumber(day, 'lamenessClearances.day');
  }
}

function checkHistory({
  injuries = [],
  disease,
  heatIllness,
  muscle,
  thighGirthCm,
}: ScreeningInput): void {
  for (const { kind, side, day } of injuries) {
    oneOf('injuries.kind', kind, INJURY_KINDS);
    oneOf('injuries.side', side, SIDES);
    if (day !== null) dayNumber(day, 'injuries.day');
  }
  for (const organ of ['joints', 'spine', 'heart'] as const) {
    const told = disease?.[organ];
    if (told != null) oneOf(`disease.${organ}`, told, YES_NO);
  }
  if (heatIllness?.had != null) oneOf('heatIllness.had', heatIllness.had, YES_NO);
  if (heatIllness?.day != null) dayNumber(heatIllness.day, 'heatIllness.day');
  if (muscle !== undefined) oneOf('muscle', muscle, MUSCLE_CONDITIONS);
  for (const [limb, girth] of Object.entries(thighGirthCm ?? {})) {
    inRange(`thighGirthCm.${limb}`, girth, 'cm', { min: 1, max: 100 });
  }
}
