import { leastDifference, PALPATION_WORDS } from '../../../core/readiness/record.ts';
import type { IsoDay } from '../../../core/day.ts';
import type { Field } from '../history/change.ts';
import type { ValuesOf } from './fieldKinds.ts';
import { notedIn } from './noted.ts';
import { VISIT } from './visit.ts';
import { questionnaireLabel } from './visitTold.ts';

// What was told and found at a visit beside gait, weight and signs, for whoever reads it as text:
// the letter, the record, the timeline. Labels and order are those of the declaration.

/** A piece of a fact; without a label where the fact's own says it. */
interface ToldPart {
  readonly label: string;
  readonly value: string | { readonly day: IsoDay };
}

/** One thing that was noted. */
export interface Told {
  readonly label: string;
  readonly parts: readonly ToldPart[];
  /** How to read it. */
  readonly note?: string;
}

/** The fields that are told this way, by where they belong. */
const PARTS = {
  history: [
    'referral',
    'diagnosis',
    'injuries',
    'disease',
    'medicine',
    'heatIllness',
    'usedToWarmth',
    'wellSince',
    'lamenessClearances',
    'longRunClearance',
  ],
  found: ['palpation', 'sitToStand', 'lieToStand', 'questionnaires'],
  feeding: ['feeding', 'appetite', 'thirst', 'stool'],
} as const satisfies Readonly<Record<string, readonly (keyof typeof VISIT)[]>>;
export type ToldPlace = keyof typeof PARTS;
type ToldName = (typeof PARTS)[ToldPlace][number];

export type ToldVisit = Pick<ValuesOf<typeof VISIT>, ToldName>;

const PALPATION_NOTE = `Our own grades: ${PALPATION_WORDS.map((words, grade) => `${grade} ${words}`).join('; ')}.`;

/** How to read a fact; undefined where it reads by itself. */
function noteOf(name: ToldName, label: string, visit: ToldVisit): string | undefined {
  if (name === 'palpation') return PALPATION_NOTE;
  const total = visit.questionnaires.find((one) => questionnaireLabel(one.name) === label);
  const least = total === undefined ? null : leastDifference(total.name);
  return least === null ? undefined : `A change of ${least} points or more counts.`;
}

/** What was noted, a fact for each field or entry of a list; nothing where nothing was. */
export function toldAt(visit: ToldVisit, place: ToldPlace): Told[] {
  return PARTS[place].flatMap((name) => factsOf(name, visit));
}

/** The same without what is kept from visit to visit and stood at the visit before already. */
export function toldAnew(visit: ToldVisit, before: ToldVisit | null, place: ToldPlace): Told[] {
  return PARTS[place].flatMap((name) => {
    const facts = factsOf(name, visit);
    if (before === null || !('carried' in VISIT[name])) return facts;
    const stood = new Set(factsOf(name, before).map((fact) => JSON.stringify(fact)));
    return facts.filter((fact) => !stood.has(JSON.stringify(fact)));
  });
}

/** Asked for each, and none is known. */
const isFreeOf = ({ joints, spine, heart, words }: ToldVisit['disease']): boolean =>
  [joints, spine, heart].every((known) => known === 'no') && words.trim() === '';

function factsOf(name: ToldName, visit: ToldVisit): Told[] {
  if (name === 'palpation' && Object.values(visit.palpation).every((grade) => grade === 0)) {
    return [{ label: VISIT.palpation.label, parts: [{ label: '', value: 'none in any region' }] }];
  }
  if (name === 'disease' && isFreeOf(visit.disease)) {
    return [
      {
        label: VISIT.disease.label,
        parts: [{ label: '', value: 'none of joints, spine or heart' }],
      },
    ];
  }
  return notedIn({ [name]: VISIT[name] }, { [name]: visit[name] }).map(({ label, parts }) => {
    const note = noteOf(name, label, visit);
    return {
      label,
      parts: parts.map(({ label: of, field }) => ({ label: of, value: valueOf(field) })),
      ...(note === undefined ? {} : { note }),
    };
  });
}

function valueOf({ measure, value }: Field): ToldPart['value'] {
  if (value === true) return 'yes';
  if (measure === 'day') return { day: String(value) };
  if (measure === 'lameness grade') return `${String(value)} of 5`;
  return measure.startsWith('in ') ? `${String(value)} ${measure.slice(3)}` : String(value);
}

/** The fact in one line, its days written by `writeDay`. */
export const toldText = (parts: Told['parts'], writeDay: (day: IsoDay) => string): string =>
  parts
    .map(({ label, value }) => {
      const text = typeof value === 'string' ? value.trim() : writeDay(value.day);
      return label === '' ? text : `${label}: ${text}`;
    })
    .join('; ');
