import type { Fields } from './fieldKinds.ts';
import { VISIT } from './visit.ts';

/** A weighing between visits, as it is typed. */
export const WEIGHING = {
  day: { kind: 'day', label: 'Day of the weighing', since: 2 },
  weightKg: { ...VISIT.weightKg, nullable: false, since: 2 },
  weighingMethod: { ...VISIT.weighingMethod, since: 2 },
  scaleStepKg: { ...VISIT.scaleStepKg, since: 2 },
  note: { kind: 'text', label: 'Note on the weighing', as: 'notes', since: 2 },
} as const satisfies Fields;

const WEIGHING_ORIGINS = ['typed', 'imported'] as const;
export const ORIGIN = {
  origin: { kind: 'word', label: 'Origin', words: WEIGHING_ORIGINS, since: 2 },
} as const satisfies Fields;
