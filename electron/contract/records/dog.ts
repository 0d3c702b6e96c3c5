import { NEUTER_STATUSES } from '../../../core/energy/maintenance.ts';
import type { Fields } from './fieldKinds.ts';

const SEXES = ['female', 'male'] as const;
const COATS = ['ordinary', 'thick', 'dark', 'thick and dark'] as const;

/** What is known of a dog itself. */
export const DOG = {
  clientId: { kind: 'id', label: 'Owner, by the number of the record', since: 1 },
  name: { kind: 'text', label: 'Name of the dog', as: 'required line', since: 1 },
  breed: { kind: 'text', label: 'Breed', as: 'line', since: 1 },
  birthDay: { kind: 'day', label: 'Day of birth', since: 1 },
  sex: { kind: 'word', label: 'Sex', words: SEXES, since: 1 },
  neuter: {
    kind: 'word',
    label: 'Neuter status',
    words: NEUTER_STATUSES,
    blank: 'unknown',
    since: 1,
  },
  neuteredAtMonths: {
    kind: 'number',
    label: 'Age when neutered',
    unit: 'months',
    min: 1,
    max: 240,
    nullable: true,
    since: 1,
  },
  adultWeightKg: {
    kind: 'number',
    label: 'Expected adult weight',
    unit: 'kg',
    min: 0.5,
    max: 150,
    nullable: true,
    since: 1,
  },
  withersCm: {
    kind: 'number',
    label: 'Height at the withers',
    unit: 'cm',
    min: 10,
    max: 120,
    nullable: true,
    since: 1,
  },
  coat: { kind: 'word', label: 'Coat', words: COATS, blank: 'ordinary', since: 1 },
  shortNosed: { kind: 'flag', label: 'Short-nosed', since: 1 },
  sighthound: { kind: 'flag', label: 'Sighthound build', since: 1 },
  chip: { kind: 'text', label: 'Chip number', as: 'chip', since: 4 },
  notes: { kind: 'text', label: 'Notes on the dog', as: 'notes', since: 1 },
} as const satisfies Fields;
