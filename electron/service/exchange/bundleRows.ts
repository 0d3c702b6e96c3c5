import type { ClientInput, DogInput } from '../../contract/records.ts';
import { clientFactsOf, dogFactsOf, visitFactsOf } from '../../contract/facts.ts';
import { searchable } from '../clients.ts';
import { dogToRow } from '../dogs.ts';
import type {
  AttachmentRow,
  ClientRow,
  DogRow,
  FoodDecisionRow,
  PlanRow,
  SessionResultRow,
  VisitRow,
  WeighingRow,
} from '../schema.ts';
import { visitToRow } from '../visitRows.ts';
import type { Named } from './bundleNames.ts';

// A record of a bundle as a row of its table; the way back from bundleRecords.ts.

export function ownerRow(owner: Named<'owners'>): ClientRow {
  return { ...owner, searchText: searchable(owner) };
}

export function dogRow(dog: Named<'dogs'>): DogRow {
  const { id, createdAt, updatedAt, revision, archivedAt, binnedAt } = dog;
  const kept = { id, createdAt, updatedAt, revision, archivedAt, binnedAt };
  return { ...dogToRow(dogFacts(dog)), ...kept };
}

export function visitRow(visit: Named<'visits'>): VisitRow {
  const { id, createdAt, updatedAt, revision, author, binnedAt } = visit;
  return { ...visitToRow(visit), id, createdAt, updatedAt, revision, author, binnedAt };
}

export function planRow(plan: Named<'plans'>): PlanRow {
  return {
    ...plan,
    current: plan.current ? 1 : 0,
    request: JSON.stringify(plan.request),
    ramp: JSON.stringify(plan.ramp),
    review: textOrNull(plan.review),
    keptBreaches: JSON.stringify(plan.keptBreaches),
  };
}

export function sessionRow(session: Named<'sessions'>): SessionResultRow {
  return { ...session, signs: JSON.stringify(session.signs) };
}

export function foodDecisionRow(decision: Named<'foodDecisions'>): FoodDecisionRow {
  return {
    ...decision,
    ration: textOrNull(decision.ration),
    foodSwitch: textOrNull(decision.foodSwitch),
    changeover: textOrNull(decision.changeover),
    proposal: JSON.stringify(decision.proposal),
    known: JSON.stringify(decision.known),
  };
}

export const weighingRow = (weighing: Named<'weighings'>): WeighingRow => ({ ...weighing });

export function attachmentRow(file: Named<'attachments'>): AttachmentRow {
  const { mediaType: _mediaType, bytes: _bytes, thumbnail, ...row } = file;
  return { ...row, thumbnail: thumbnail === null ? null : Buffer.from(thumbnail, 'base64') };
}

const textOrNull = (value: unknown): string | null =>
  value === null ? null : JSON.stringify(value);

/** What was entered of an owner, as its history keeps it. */
export function ownerFacts(owner: Named<'owners'>): ClientInput {
  const { binnedAt: _binnedAt, ...client } = owner;
  return clientFactsOf(client);
}

export function dogFacts(record: Named<'dogs'>): DogInput {
  const { binnedAt: _binnedAt, ...dog } = record;
  return dogFactsOf(dog);
}

export function visitFacts(record: Named<'visits'>) {
  const { binnedAt: _binnedAt, ...visit } = record;
  return visitFactsOf(visit);
}
