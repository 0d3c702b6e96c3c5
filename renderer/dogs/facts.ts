import { monthsBetween } from '../../core/day.ts';
import type { Dog } from '../../electron/contract/records.ts';

/** The age in words: months until two years, then years. */
export function ageText(birthDay: string, today: string): string {
  if (today === '' || birthDay > today) return '';
  const months = monthsBetween(birthDay, today);
  if (months < 24) return months === 1 ? '1 month old' : `${months} months old`;
  return `${Math.floor(months / 12)} years old`;
}

/** One line about a dog: "Collie cross, neutered female, 4 years old". */
export function dogLine(dog: Dog, today: string): string {
  const neuter = dog.neuter === 'unknown' ? '' : `${dog.neuter} `;
  return [dog.breed, `${neuter}${dog.sex}`, ageText(dog.birthDay, today)]
    .filter((part) => part !== '')
    .join(', ');
}
