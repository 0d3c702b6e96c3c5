/** The colours a series may have, as the page's tokens name them. */
export type Ink = 'ink' | 'accent' | 'soft' | 'ochre';
export type Shape = 'dot' | 'diamond' | 'ring' | 'triangle' | 'none';

/** A value of a chart; what it says is read out, and shown beside it. */
export interface Point {
  /** A day's number (`dayNumber`), or a count. */
  readonly x: number;
  /** Null parts the line. */
  readonly y: number | null;
  readonly text: string;
  /** Half the height of its error bar, in the chart's unit. */
  readonly error?: number;
  /** Drawn hollow: to be looked at twice. */
  readonly hollow?: boolean;
  readonly shape?: Shape;
}

/** Values over time, joined or not. */
export interface LineSeries {
  readonly kind: 'line';
  /** Its entry in the key; '' for none. */
  readonly name: string;
  readonly points: readonly Point[];
  readonly ink: Ink;
  readonly line: 'solid' | 'dashes' | 'steps' | 'none';
  readonly shape: Shape;
  /** Its sample in the key is drawn hollow. */
  readonly hollow?: boolean;
}

/** A stretch between two lines. */
export interface BandSeries {
  readonly kind: 'band';
  readonly name: string;
  readonly points: readonly { readonly x: number; readonly low: number; readonly high: number }[];
  readonly ink: Ink;
  /** An outline in dashes: a plan, not a finding. */
  readonly planned?: boolean;
}

export interface BarSeries {
  readonly kind: 'bar';
  readonly name: string;
  readonly points: readonly Point[];
  readonly ink: Ink;
  readonly look: 'outline' | 'wash' | 'full';
}

export type Series = LineSeries | BandSeries | BarSeries;

/** Something that happened on a day: an upright line with its word. */
export interface Upright {
  readonly x: number;
  readonly words: string;
}

/** A chart as it is to be drawn, whatever draws it. */
export interface ChartSpec {
  /** What it shows, for those who do not see it. */
  readonly label: string;
  /** Stands over this one of several charts; '' for a chart alone. */
  readonly title: string;
  readonly x:
    | { readonly kind: 'day'; readonly format: (day: string) => string }
    | {
        readonly kind: 'count';
        readonly name: string;
        /** In place of the number, for every whole step. */
        readonly words?: (count: number) => string;
      };
  readonly y: {
    readonly unit: string;
    readonly min?: number;
    readonly max?: number;
    /** Counts: no parts of one on the axis. */
    readonly whole?: boolean;
    /** Least height of the axis, in its unit, so that noise does not look like change. */
    readonly span?: number;
    /** In place of the number, for every whole step. */
    readonly words?: (value: number) => string;
    /** Least room for the axis, px: charts one below the other stand in line. */
    readonly roomPx?: number;
  };
  readonly series: readonly Series[];
  readonly uprights?: readonly Upright[];
  readonly heightPx: number;
}

/** Where a value stands in a spec. */
export interface Place {
  readonly series: number;
  readonly point: number;
}

const pointsOf = (series: Series | undefined): readonly Point[] =>
  series === undefined || series.kind === 'band' ? [] : series.points;

/** The value at a place; null where the line is parted or nothing is said. */
export function pointAt(spec: ChartSpec, { series, point }: Place): Point | null {
  const found = pointsOf(spec.series[series])[point];
  return found === undefined || found.y === null || found.text === '' ? null : found;
}

/** The values of a series that have something to say, by their index. */
function stops(spec: ChartSpec, series: number): readonly number[] {
  return pointsOf(spec.series[series]).flatMap((_, point) =>
    pointAt(spec, { series, point }) === null ? [] : [point],
  );
}

/** Series with values to stop at, by their index. */
const rows = (spec: ChartSpec): readonly number[] =>
  spec.series.flatMap((_, series) => (stops(spec, series).length > 0 ? [series] : []));

/** The last value of the first series: where walking begins. Null for an empty chart. */
export function firstPlace(spec: ChartSpec): Place | null {
  const [series] = rows(spec);
  return series === undefined ? null : { series, point: stops(spec, series).at(-1)! };
}

/**
 * Where an arrow key leads: left and right along a series, up and down to the nearest value of
 * another, Home and End to its ends. Null for any other key.
 */
export function walkFrom(spec: ChartSpec, { series, point }: Place, key: string): Place | null {
  const own = stops(spec, series);
  const along = (to: number | undefined): Place => ({ series, point: to ?? point });
  const across = (step: number): Place => {
    const all = rows(spec);
    const next = all[all.indexOf(series) + step];
    return next === undefined ? { series, point } : { series: next, point: nearest(spec, next) };
  };
  const x = pointAt(spec, { series, point })?.x ?? 0;
  const nearest = (of: ChartSpec, to: number): number =>
    stops(of, to).reduce((best, now) => {
      const off = (index: number) => Math.abs(pointsOf(of.series[to])[index]!.x - x);
      return off(now) < off(best) ? now : best;
    });
  switch (key) {
    case 'ArrowRight':
      return along(own.find((index) => index > point));
    case 'ArrowLeft':
      return along(own.findLast((index) => index < point));
    case 'Home':
      return along(own[0]);
    case 'End':
      return along(own.at(-1));
    case 'ArrowDown':
      return across(1);
    case 'ArrowUp':
      return across(-1);
    default:
      return null;
  }
}
