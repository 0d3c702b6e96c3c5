import {
  NEXT_DAY_RESPONSES,
  SESSION_OUTCOMES,
  type StopSign,
} from '../../../core/ramp/reviewTypes.ts';
import { noted } from '../history/fields.ts';
import { json, type Fields } from './fieldKinds.ts';

/** What the owner tells of one planned session. */
export const SESSION = {
  day: { kind: 'day', label: 'Day of the session', since: 1 },
  outcome: { kind: 'word', label: 'Outcome', words: SESSION_OUTCOMES, since: 1 },
  /** Null where it was not told. */
  runMinutes: {
    kind: 'number',
    label: 'Time run',
    unit: 'min',
    min: 0,
    max: 600,
    nullable: true,
    since: 1,
  },
  /** Run-minutes of the longest outing of the day; it counts for the cap of a single session. */
  longestRunMinutes: {
    kind: 'number',
    label: 'Time run in the longest outing',
    unit: 'min',
    min: 0,
    max: 600,
    nullable: true,
    since: 4,
  },
  /** Run, the walks between left out. */
  runKm: {
    kind: 'number',
    label: 'Distance run',
    unit: 'km',
    min: 0,
    max: 200,
    nullable: true,
    since: 4,
  },
  /** Of the whole outing. */
  climbedM: {
    kind: 'number',
    label: 'Climbed',
    unit: 'm',
    min: 0,
    max: 5000,
    nullable: true,
    since: 4,
  },
  nextDay: {
    kind: 'word',
    label: 'The next day',
    words: NEXT_DAY_RESPONSES,
    nullable: true,
    since: 1,
  },
  signs: json<StopSign[]>({
    label: 'Stop signs',
    empty: () => [],
    read: noted('the stop signs', 'Stop sign', (sign) => sign),
    since: 1,
  }),
  note: { kind: 'text', label: 'Note', as: 'notes', since: 1 },
} as const satisfies Fields;
