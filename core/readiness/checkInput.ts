import { ArgumentError, inRange, oneOf, weightInRange, wholeInRange } from '../check.ts';
import { dayNumber } from '../day.ts';
import { RED_FLAGS } from './signs.ts';
import type { Limb, ScreeningInput } from './types.ts';

const LIMBS: readonly Limb[] = ['leftFore', 'rightFore', 'leftHind', 'rightHind'];
const FLAGS = [
  'shortNosed',
  'airwayDisease',
  'airwayClearance',
  'trotLamenessAssessed',
  'radiographicClearance',
] as const;

/** @throws RangeError naming the first argument that is out of range or an unknown word. */
export function checkInput(input: ScreeningInput): void {
  checkNumbers(input);
  checkDays(input);
  checkWords(input);
  checkLameness(input);
}

function checkNumbers(input: ScreeningInput): void {
  const { ageMonths, weightKg, adultWeightKg, bcs, neuteredAtMonths } = input;
  if (ageMonths !== undefined) inRange('ageMonths', ageMonths, 'months', { min: 0, max: 360 });
  if (weightKg !== undefined) weightInRange('weightKg', weightKg);
  if (adultWeightKg !== undefined) weightInRange('adultWeightKg', adultWeightKg);
  if (bcs !== undefined) wholeInRange('bcs', bcs, 'of 9', { min: 1, max: 9 });
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
