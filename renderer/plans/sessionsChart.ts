import { dayNumber } from '../../core/day.ts';
import {
  longestBefore,
  NEXT_DAY_RESPONSES,
  sessionCap,
  type RampRuleValues,
  type RampSession,
} from '../../core/index.ts';
import type { SessionInput } from '../../electron/contract/records.ts';
import type { ChartSpec, LineSeries, Point } from '../chart/spec.ts';
import type { ChartTable } from '../chart/table.ts';
import type { Shown } from '../units/shown.ts';
import { NEXT_DAY_WORDS, OUTCOME_WORDS, STOP_SIGN_WORDS } from '../words.ts';
import { minutesDone } from './timeline.ts';

/** A session that was told of, under the most the rules allowed on that day. */
export interface SessionRun {
  readonly day: string;
  /** Run-minutes planned; null for a run of its own. */
  readonly planned: number | null;
  /** Run-minutes done; null where they were not told. */
  readonly done: number | null;
  /** By the longest run of the last 30 days; null where there is none. */
  readonly cap: number | null;
  readonly result: SessionInput;
}

/** Every session that was told of, oldest first. */
export function sessionsRun(
  planned: readonly RampSession[],
  results: readonly SessionInput[],
  rules: RampRuleValues,
): readonly SessionRun[] {
  const told = results
    .toSorted((a, b) => a.day.localeCompare(b.day))
    .map((result) => {
      const session = planned.find(({ day }) => day === result.day) ?? null;
      const done = session === null ? result.runMinutes : minutesDone(session, result);
      return { day: result.day, session, result, done };
    });
  const runs = told.map(({ day, done, result }) => ({
    day,
    // Of several outings in a day the longest counts.
    minutes: result.longestRunMinutes ?? done ?? 0,
    response: 'other' as const,
  }));
  return told.map(({ day, session, result, done }) => {
    const longest = longestBefore(runs, day, rules);
    const cap = longest === 0 ? null : sessionCap(longest, rules);
    return { day, planned: session?.runMinutes ?? null, done, cap, result };
  });
}

/** Stop signs stand above every answer of the next day. */
const SIGNS = NEXT_DAY_RESPONSES.length;
const levelOf = ({ nextDay, signs }: SessionInput): number | null =>
  signs.length > 0 ? SIGNS : nextDay === null ? null : NEXT_DAY_RESPONSES.indexOf(nextDay);

const signsText = ({ signs }: SessionInput): string =>
  signs.map((sign) => STOP_SIGN_WORDS[sign]).join(', ');
const nextDayText = (result: SessionInput): string =>
  [signsText(result), result.nextDay === null ? '' : NEXT_DAY_WORDS[result.nextDay]]
    .filter((words) => words !== '')
    .join(', ');

function sessionPoint({ day, planned, done, cap, result }: SessionRun, shown: Shown): Point {
  const minutes = (value: number): string => shown.figure(value, 'min');
  const parts = [
    `${shown.day(day)}: ${OUTCOME_WORDS[result.outcome].toLowerCase()}`,
    done === null ? 'minutes not told' : `${minutes(done)} run`,
    planned === null ? 'not planned' : `${minutes(planned)} planned`,
    ...(cap === null ? [] : [`at most ${minutes(cap)} by the last 30 days`]),
  ];
  const held = result.outcome === 'held';
  const shape = held ? { shape: 'diamond' as const, hollow: true } : {};
  return { x: dayNumber(day), y: done, text: parts.join(', '), ...shape };
}

/** Short words of the strip, in the order of the answers. */
const STRIP_WORDS = ['normal', 'under 24 h', 'over 24 h', 'came back', 'over 48 h', 'stop sign'];

const dayAxis = (shown: Shown): ChartSpec['x'] => ({
  kind: 'day',
  format: (day) => shown.day(day),
});

/** The values of both charts stand in line, one below the other. */
const AXIS_PX = 100;

function minutesChart(runs: readonly SessionRun[], shown: Shown): ChartSpec {
  const planned = runs.filter((run) => run.planned !== null);
  return {
    label: 'Run-minutes of each session',
    title: 'Sessions, min',
    heightPx: 230,
    x: dayAxis(shown),
    y: { unit: 'min', min: 0, roomPx: AXIS_PX },
    series: [
      {
        kind: 'line',
        name: 'done',
        ink: 'accent',
        line: 'none',
        shape: 'dot',
        points: runs.map((run) => sessionPoint(run, shown)),
      },
      {
        kind: 'line',
        name: 'planned',
        ink: 'soft',
        line: 'none',
        shape: 'ring',
        points: planned.map((run) => ({ x: dayNumber(run.day), y: run.planned, text: '' })),
      },
      ...heldKey(runs),
      {
        kind: 'line',
        name: 'the most by the last 30 days',
        ink: 'ink',
        line: 'steps',
        shape: 'none',
        points: runs.map(({ day, cap }) => ({ x: dayNumber(day), y: cap, text: '' })),
      },
    ],
  };
}

/** An entry of the key alone: those held back stay in their own row, to be walked along with it. */
const heldKey = (runs: readonly SessionRun[]): LineSeries[] =>
  runs.every(({ result }) => result.outcome !== 'held')
    ? []
    : [
        {
          kind: 'line',
          name: 'held back, by the weather or the owner',
          ink: 'accent',
          line: 'none',
          shape: 'diamond',
          hollow: true,
          points: [],
        },
      ];

function nextDayPoint({ day, result }: SessionRun, shown: Shown): Point {
  const level = levelOf(result);
  return {
    x: dayNumber(day),
    y: level,
    text: level === null ? '' : `${shown.day(day)}: ${nextDayText(result)}`,
    ...(level !== null && level > 0 ? { shape: 'triangle' as const } : {}),
  };
}

const nextDayStrip = (runs: readonly SessionRun[], shown: Shown): ChartSpec => ({
  label: 'How the dog was on the next day',
  title: 'The next day',
  heightPx: 190,
  x: dayAxis(shown),
  y: {
    unit: '',
    min: -0.5,
    max: SIGNS + 0.5,
    words: (level) => STRIP_WORDS[level] ?? '',
    roomPx: AXIS_PX,
  },
  series: [
    {
      kind: 'line',
      name: '',
      ink: 'accent',
      line: 'none',
      shape: 'dot',
      points: runs.map((run) => nextDayPoint(run, shown)),
    },
  ],
});

/** The sessions under the 30-day cap, and what the next day said of each as a strip. */
export const sessionsCharts = (runs: readonly SessionRun[], shown: Shown): ChartSpec[] => [
  minutesChart(runs, shown),
  nextDayStrip(runs, shown),
];

export function sessionsTable(runs: readonly SessionRun[]): ChartTable {
  const minutes = { unit: 'min', kind: 'number', digits: 1 } as const;
  return {
    columns: [
      { head: 'Day', unit: '', kind: 'day' },
      { head: 'Session', unit: '', kind: 'text' },
      { head: 'Planned running', ...minutes },
      { head: 'Done', ...minutes },
      { head: 'Most by the last 30 days', ...minutes },
      { head: 'The next day', unit: '', kind: 'text' },
    ],
    rows: runs.map(({ day, planned, done, cap, result }) => [
      day,
      OUTCOME_WORDS[result.outcome],
      planned,
      done,
      cap,
      nextDayText(result),
    ]),
  };
}
