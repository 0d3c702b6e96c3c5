import { DOGS, OWNERS, SESSIONS, VISITS, WEIGHINGS } from '../../contract/exchange/bundle.ts';
import { toRow } from '../../contract/records/columns.ts';
import { searchable } from '../dogs/clients.ts';
import { dogToRow } from '../dogs/dogs.ts';
import type {
  AttachmentRow,
  ClientRow,
  DogRow,
  FoodDecisionRow,
  PlanRow,
  SessionResultRow,
  VisitRow,
  WeighingRow,
} from '../database/schema.ts';
import type { Named } from './bundleNames.ts';

// A record of a bundle as a row of its table; the way back from bundleRecords.ts.

export const ownerRow = (owner: Named<'owners'>): ClientRow => ({
  ...toRow(OWNERS, owner),
  searchText: searchable(owner),
});

export const dogRow = (dog: Named<'dogs'>): DogRow => ({ ...toRow(DOGS, dog), ...dogToRow(dog) });

export const visitRow = (visit: Named<'visits'>): VisitRow => toRow(VISITS, visit);

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

export const sessionRow = (session: Named<'sessions'>): SessionResultRow =>
  toRow(SESSIONS, session);

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

export const weighingRow = (weighing: Named<'weighings'>): WeighingRow =>
  toRow(WEIGHINGS, weighing);

export function attachmentRow(file: Named<'attachments'>): AttachmentRow {
  const { mediaType: _mediaType, bytes: _bytes, thumbnail, ...row } = file;
  return { ...row, thumbnail: thumbnail === null ? null : Buffer.from(thumbnail, 'base64') };
}

const textOrNull = (value: unknown): string | null =>
  value === null ? null : JSON.stringify(value);
