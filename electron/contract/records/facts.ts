import { only } from './blank.ts';
import { CLIENT } from './client.ts';
import { DOG } from './dog.ts';
import type { Fields, ValuesOf } from './fieldKinds.ts';
import { SESSION } from './session.ts';
import { VISIT } from './visit.ts';
import { WEIGHING } from './weighing.ts';

// The part of a record that was entered, of anything that holds it, such as a stored one.

/** The records whose changes are read field by field. */
export const RECORDS = {
  client: CLIENT,
  dog: DOG,
  visit: VISIT,
  session: SESSION,
  weighing: WEIGHING,
} as const satisfies Readonly<Record<string, Fields>>;
export type ChangingKind = keyof typeof RECORDS;

/** What is kept of each kind of record, so that an earlier state can be read again. */
export type KeptFacts = {
  readonly [K in ChangingKind]: ValuesOf<(typeof RECORDS)[K]>;
};

export const factsOf = <K extends ChangingKind>(kind: K, record: KeptFacts[K]): KeptFacts[K] =>
  only<Fields>(RECORDS[kind], record) as KeptFacts[K];

type FactsOf<K extends ChangingKind> = (record: KeptFacts[K]) => KeptFacts[K];
export const visitFactsOf: FactsOf<'visit'> = (visit) => factsOf('visit', visit);
export const dogFactsOf: FactsOf<'dog'> = (dog) => factsOf('dog', dog);
export const clientFactsOf: FactsOf<'client'> = (client) => factsOf('client', client);
export const sessionFactsOf: FactsOf<'session'> = (session) => factsOf('session', session);
export const weighingFactsOf: FactsOf<'weighing'> = (weighing) => factsOf('weighing', weighing);
