import { LIMBS, type LimbGrades } from '../../core/readiness/types.ts';
import { fill, type Format } from '../format.ts';
import type { Findings } from '../model.ts';
import type { OwnerWords } from '../words/words.ts';
import type { Fact } from './layout.ts';

type FindingWords = OwnerWords['findings'];

/** Lameness at one gait: "moves evenly", the limbs with their grades, or "not looked at". */
function gaitText(grades: LimbGrades, words: FindingWords): string {
  const seen = LIMBS.filter((limb) => grades[limb] !== null);
  if (seen.length === 0) return words.notSeen;
  const lame = seen.filter((limb) => (grades[limb] ?? 0) > 0);
  if (lame.length === 0) return words.sound;
  const named = lame.map((limb) =>
    fill(words.grade, { limb: words.limbs[limb], grade: grades[limb] ?? 0 }),
  );
  return fill(words.lame, { limbs: named.join(', ') });
}

function consentText(findings: Findings, words: FindingWords, format: Format): string {
  const { consent } = findings;
  if (!consent.given) return words.consentMissing;
  return fill(words.consentGiven, {
    vet: consent.vet || words.theVet,
    day: consent.day === null ? words.dayUnknown : format.day(consent.day),
  });
}

/** Weight, condition and muscles, as names and values; what was not looked at says so. */
export function bodyFacts(
  findings: Findings,
  words: FindingWords,
  format: Format,
): readonly Fact[] {
  const { weightKg, weighedOn, targetWeightKg, bcs, muscle } = findings;
  const or = <T>(value: T | null, write: (value: T) => string) =>
    value === null ? words.notSeen : write(value);
  const weighed = (kg: number): string =>
    weighedOn === null ? format.weight(kg) : `${format.weight(kg)} (${format.day(weighedOn)})`;
  return [
    { name: words.weight, value: or(weightKg, weighed) },
    ...(targetWeightKg === null
      ? []
      : [{ name: words.target, value: format.weight(targetWeightKg) }]),
    { name: words.bcs, value: or(bcs, (score) => fill(words.bcsValue, { score })) },
    { name: words.muscle, value: or(muscle, (loss) => words.muscleValues[loss]) },
  ];
}

export function gaitFacts(findings: Findings, words: FindingWords): readonly Fact[] {
  return [
    { name: words.walk, value: gaitText(findings.lamenessWalk, words) },
    { name: words.trot, value: gaitText(findings.lamenessTrot, words) },
  ];
}

export function consentFact(findings: Findings, words: FindingWords, format: Format): Fact {
  return { name: words.consent, value: consentText(findings, words, format) };
}
