import type { Client, ClientInput, Dog, DogInput, SessionInput, VisitFacts } from './records.ts';
import type { SessionRecord, Visit } from './results.ts';
import type { WeighingInput } from './weighing.ts';

// The part of a record that was entered, without what the service adds to it.

export function visitFactsOf(visit: Visit): VisitFacts {
  const { id: _id, createdAt: _created, updatedAt: _updated, ...rest } = visit;
  const { revision: _revision, author: _author, ...facts } = rest;
  return facts;
}

export function dogFactsOf(dog: Dog): DogInput {
  const { id: _id, createdAt: _created, updatedAt: _updated, ...rest } = dog;
  const { revision: _revision, archivedAt: _archived, ...facts } = rest;
  return facts;
}

export function clientFactsOf(client: Client): ClientInput {
  const { id: _id, createdAt: _created, updatedAt: _updated, ...rest } = client;
  const { revision: _revision, ...facts } = rest;
  return facts;
}

export function sessionFactsOf(session: SessionRecord): SessionInput {
  const { day, outcome, runMinutes, nextDay, signs, note } = session;
  return { day, outcome, runMinutes, nextDay, signs, note };
}

/** Of anything that holds the facts of a weighing, such as a stored one. */
export function weighingFactsOf(weighing: WeighingInput): WeighingInput {
  const { day, weightKg, weighingMethod, scaleStepKg, note } = weighing;
  return { day, weightKg, weighingMethod, scaleStepKg, note };
}
