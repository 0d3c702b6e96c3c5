import type { RampSession } from '../../core/index.ts';
import type { OutingRead } from '../../electron/contract/calls/runs.ts';
import type { ChartSpec, Series } from '../chart/spec.ts';
import type { ChartTable } from '../chart/table.ts';
import { minutesSeconds } from '../units/shown.ts';

/** How the practice writes a speed: kilometres or miles an hour. */
export interface SpeedUnit {
  readonly name: string;
  /** One metre a second in it. */
  readonly perMps: number;
}

type Outing = OutingRead['outing'];

/** Minutes from the start, halfway through the stretch. */
const MINUTE_S = 60;
const LEAST_SPAN_KMH = 8;

/** Where the planned runs would lie, laid from the first run on: warm-ups differ from day to day. */
function plannedRuns(
  session: RampSession,
  { bouts }: Outing,
): readonly (readonly [number, number])[] {
  const first = bouts.find(({ kind }) => kind === 'run')?.fromS ?? session.warmUpMin * MINUTE_S;
  const turn = session.runMin + session.walkMin;
  return Array.from({ length: session.repeats }, (_, at) => {
    const from = first / MINUTE_S + at * turn;
    return [from, from + session.runMin] as const;
  });
}

function plannedBand(session: RampSession, outing: Outing, top: number): Series {
  const points = plannedRuns(session, outing).flatMap(([from, to]) => [
    { x: from, low: 0, high: 0 },
    { x: from, low: 0, high: top },
    { x: to, low: 0, high: top },
    { x: to, low: 0, high: 0 },
  ]);
  return {
    kind: 'band',
    name: 'planned runs, from the first run on',
    ink: 'soft',
    planned: true,
    points,
  };
}

/** Speed over the minutes of an outing, its runs as points to walk along, the planned ones behind. */
export function runChart(
  { outing, speeds, startsAt }: OutingRead,
  planned: RampSession | null,
  unit: SpeedUnit,
): ChartSpec {
  const inUnit = (mps: number): number => mps * unit.perMps;
  const all = speeds.mps.map(inUnit);
  const top = Math.max(LEAST_SPAN_KMH, ...all) * 1.05;
  const lastMinute = outing.seconds / MINUTE_S;
  const runs = outing.bouts.filter(({ kind }) => kind === 'run');
  return {
    label: `Speed of the outing at ${startsAt}`,
    title: `At ${startsAt}`,
    heightPx: 220,
    x: { kind: 'count', name: 'minutes from the start' },
    y: { unit: unit.name, min: 0, max: top },
    series: [
      ...(planned === null || planned.kind === 'walk' ? [] : [plannedBand(planned, outing, top)]),
      {
        kind: 'line',
        name: 'speed',
        ink: 'accent',
        line: 'solid',
        shape: 'none',
        points: all.map((y, at) => ({ x: ((at + 0.5) * speeds.everyS) / MINUTE_S, y, text: '' })),
      },
      {
        kind: 'line',
        name: 'run from here on',
        ink: 'soft',
        line: 'dashes',
        shape: 'none',
        points: [0, lastMinute].map((x) => ({ x, y: inUnit(outing.splitMps), text: '' })),
      },
      ...(runs.length === 0
        ? []
        : [
            {
              kind: 'line' as const,
              name: 'a run',
              ink: 'ink' as const,
              line: 'none' as const,
              shape: 'dot' as const,
              points: runs.map(({ fromS, seconds, distanceM }, at) => ({
                x: (fromS + seconds / 2) / MINUTE_S,
                y: inUnit(distanceM / seconds),
                text:
                  `Run ${at + 1}, from minute ${clock(fromS)}: ${clock(seconds)} min ` +
                  `at ${inUnit(distanceM / seconds).toFixed(1)} ${unit.name}`,
              })),
            },
          ]),
    ],
  };
}

const clock = (seconds: number): string => minutesSeconds(seconds / MINUTE_S);

/** The bouts of a day's outings, one line each. */
export function boutTable(outings: readonly OutingRead[], unit: SpeedUnit): ChartTable {
  return {
    columns: [
      { head: 'Outing at', unit: '', kind: 'text' },
      { head: 'Gait', unit: '', kind: 'text' },
      { head: 'From', unit: 'min', kind: 'number', digits: 1 },
      { head: 'Time', unit: 'min', kind: 'number', digits: 1 },
      { head: 'Distance', unit: 'm', kind: 'number', digits: 0 },
      { head: 'Speed', unit: unit.name, kind: 'number', digits: 1 },
    ],
    rows: outings.flatMap(({ startsAt, outing }) =>
      outing.bouts.map(({ kind, fromS, seconds, distanceM }) => [
        startsAt,
        kind,
        fromS / MINUTE_S,
        seconds / MINUTE_S,
        distanceM,
        (distanceM / seconds) * unit.perMps,
      ]),
    ),
  };
}
