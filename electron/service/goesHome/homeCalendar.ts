import {
  dayNumber,
  outingMinutes,
  plannedSessions,
  underWay,
  type RampSession,
} from '../../../core/index.ts';
import {
  createFormat,
  fill,
  OWNER_WORDS,
  sessionText,
  wordsFor,
  type Format,
  type OwnerWords,
} from '../../../templates/index.ts';
import type { Language } from '../../contract/records.ts';
import type { Material } from '../handouts/material.ts';
import { calendarFile, type CalendarDay } from './calendar.ts';

interface Asked {
  readonly language: Language;
  readonly alarmHour: number | null;
  readonly today: string;
  readonly instant: Date;
}

/** What the record announces from today on, and what an earlier version did and this one does not. */
export function homeCalendar(material: Material, { language, alarmHour, today, instant }: Asked) {
  const { file, state, context } = material;
  const words = OWNER_WORDS[language];
  const format = createFormat(context.practice, words.frame.numbers);
  const outing = (session: RampSession): CalendarDay =>
    outingDay(session, context.dog.name, words, format);
  const going = underWay(state.programme);
  const announced = going === null ? [] : plannedSessions([going.plan]);
  const outings = announced.filter(({ day }) => day >= today).map(outing);
  const kept = new Set(outings.map(({ key }) => key));
  // Whatever any version said of a day that is still ahead may stand in the owner's calendar.
  const earlier = file.plans
    .flatMap((plan) => plannedSessions([plan]))
    .filter(({ day }) => day >= today)
    .map(outing)
    .filter(({ key }) => !kept.has(key));
  const last = announced.at(-1)?.day;
  const weigh = state.due.find(({ what }) => what === 'weigh');
  const days = [
    ...outings,
    ...(weigh === undefined ? [] : [movingDay('weigh', weigh.day, context.dog.name, words)]),
    ...(last === undefined || last < today
      ? []
      : [movingDay('review', last, context.dog.name, words)]),
  ];
  const end = file.plans.flatMap((plan) => plannedSessions([plan]).map(({ day }) => day)).sort();
  const ended = end.at(-1);
  const cancelled = [
    ...new Map(earlier.map((day) => [day.key, day])).values(),
    ...(last === undefined && ended !== undefined && ended >= today
      ? [movingDay('review', ended, context.dog.name, words)]
      : []),
  ];
  const text = calendarFile({
    dogId: file.dog.id,
    name: context.dog.name,
    language,
    sequence: sequenceOf(material, today),
    days,
    cancelled,
    alarmHour,
    instant,
  });
  return { text, days: days.length, cancelled: cancelled.length };
}

/** Changes of a record that a day holds, at most. */
const MOST_A_DAY = 1000;

/**
 * A later file counts above an earlier one: by the day it is made on, and within the day by what the
 * record holds. A visit that went to the bin must not make tomorrow's file the older one.
 */
function sequenceOf({ file }: Material, today: string): number {
  const { plans, foodDecisions, visits, weighings } = file;
  const held = plans.length + foodDecisions.length + visits.length + weighings.length;
  return dayNumber(today) * MOST_A_DAY + Math.min(held, MOST_A_DAY - 1);
}

function outingDay(
  session: RampSession,
  dog: string,
  words: OwnerWords,
  format: Format,
): CalendarDay {
  const { goesHome, plan } = wordsFor(words, session.kind === 'walk' ? 'walking' : 'running');
  return {
    key: `outing-${session.day}`,
    day: session.day,
    summary: fill(goesHome.outing, { dog, text: sessionText(session, plan, format) }),
    lines: [
      fill(goesHome.whole, { minutes: format.minutes(outingMinutes(session)) }),
      plan.warmUp,
      plan.ground,
      plan.coolDown,
    ],
  };
}

/** One entry that moves with the record: the next weighing, and the review at the end of the plan. */
const movingDay = (
  key: 'weigh' | 'review',
  day: string,
  dog: string,
  { goesHome }: OwnerWords,
): CalendarDay => ({ key, day, summary: fill(goesHome[key], { dog }), lines: [] });
