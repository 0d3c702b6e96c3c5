import type { ClientInput, DogInput, SessionInput } from '../records.ts';
import type { WeighingInput } from '../weighing.ts';
import type { Field } from './change.ts';
import { noted, one, readFields, type Reads } from './fields.ts';

const DOG: Reads<DogInput> = {
  clientId: one('clientId', 'Owner, by the number of the record', 'text'),
  name: one('name', 'Name of the dog', 'text'),
  breed: one('breed', 'Breed', 'text'),
  birthDay: one('birthDay', 'Day of birth', 'day'),
  sex: one('sex', 'Sex', 'word'),
  neuter: one('neuter', 'Neuter status', 'word'),
  neuteredAtMonths: one('neuteredAtMonths', 'Age when neutered', 'months'),
  adultWeightKg: one('adultWeightKg', 'Expected adult weight', 'kg'),
  withersCm: one('withersCm', 'Height at the withers', 'cm'),
  coat: one('coat', 'Coat', 'word'),
  shortNosed: one('shortNosed', 'Short-nosed', 'yes or no'),
  sighthound: one('sighthound', 'Sighthound build', 'yes or no'),
  notes: one('notes', 'Notes on the dog', 'text'),
};

const CLIENT: Reads<ClientInput> = {
  name: one('name', 'Name of the owner', 'text'),
  phone: one('phone', 'Phone', 'text'),
  email: one('email', 'E-mail', 'text'),
  address: one('address', 'Address', 'text'),
  vetPractice: one('vetPractice', 'Vet practice', 'text'),
  vetName: one('vetName', 'Treating vet', 'text'),
  vetContact: one('vetContact', 'Contact of the vet', 'text'),
  notes: one('notes', 'Notes on the owner', 'text'),
};

const SESSION: Reads<SessionInput> = {
  day: one('day', 'Day of the session', 'day'),
  outcome: one('outcome', 'Outcome', 'word'),
  runMinutes: one('runMinutes', 'Time run', 'minutes'),
  nextDay: one('nextDay', 'The next day', 'word'),
  signs: noted('signs', 'the stop signs', (sign) => `Stop sign: ${sign}`),
  note: one('note', 'Note', 'text'),
};

const WEIGHING: Reads<WeighingInput> = {
  day: one('day', 'Day of the weighing', 'day'),
  weightKg: one('weightKg', 'Body weight', 'kg'),
  weighingMethod: one('weighingMethod', 'How weighed', 'word'),
  scaleStepKg: one('scaleStepKg', 'Step of the scale', 'kg of a scale'),
  note: one('note', 'Note', 'text'),
};

export const dogFields = (facts: DogInput): Field[] => readFields(DOG, facts);
export const clientFields = (facts: ClientInput): Field[] => readFields(CLIENT, facts);
export const sessionFields = (facts: SessionInput): Field[] => readFields(SESSION, facts);
export const weighingFields = (facts: WeighingInput): Field[] => readFields(WEIGHING, facts);
