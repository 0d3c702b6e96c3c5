import type { Content } from 'pdfmake/interfaces';
import { addDays, dayNumber, type IsoDay } from '../../core/day.ts';
import { lbFromKg } from '../../core/units.ts';
import type { CorridorPoint } from '../../core/weight/corridor.ts';
import type { TrendPoint, WeightTrend } from '../../core/weight/trend.ts';
import type { MeasuredWeight } from '../../core/weight/weighing.ts';
import type { Format } from '../format.ts';
import type { Palette } from '../theme.ts';
import { axis, spread, type Axis } from './scale.ts';

export interface WeightChartData {
  /** The weighings with their errors, the line through them and those set apart. */
  readonly trend: WeightTrend;
  /** Empty when there is no course to hold. */
  readonly corridor: readonly CorridorPoint[];
  readonly targetKg: number | null;
}

export interface ChartWords {
  readonly weighing: string;
  readonly trend: string;
  readonly flagged: string;
  readonly corridor: string;
  readonly target: string;
}

const HEIGHT = 232;
const PLOT = { left: 46, top: 10, right: 12, bottom: 54 } as const;

interface Frame {
  readonly x: (day: IsoDay) => number;
  readonly y: (kg: number) => number;
  readonly yAxis: Axis;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/**
 * The weight record as a vector drawing. Kinds of marks differ by shape and line, not by colour
 * alone, so that the chart reads on a black-and-white printer.
 */
export function weightChart(
  data: WeightChartData,
  words: ChartWords,
  format: Format,
  colours: Palette,
  width: number,
): Content {
  const unit = (kg: number) => (format.weightUnit === 'lb' ? lbFromKg(kg) : kg);
  const { points, line: trendLine, flagged } = data.trend;
  const shown = { ...data, corridor: nearCorridor(data) };
  const frame = chartFrame(shown, unit, width);
  const parts = [
    corridorArea(shown.corridor, unit, frame, colours),
    gridLines(frame, format, colours),
    dayLabels(shown, frame, format, colours),
    targetLine(data.targetKg, unit, frame, colours),
    trendLineDrawing(trendLine, unit, frame, colours),
    ...points.map((point) =>
      weighing(
        point,
        flagged.some((other) => other.day === point.day),
        unit,
        frame,
        colours,
      ),
    ),
    legend(shown, words, frame, colours),
  ];
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${HEIGHT}" viewBox="0 0 ${width} ${HEIGHT}">${parts.join('')}</svg>`;
  return { svg, width, height: HEIGHT, font: 'Sans', margin: [0, 4, 0, 4] };
}

/** How far past the last weighing the course is drawn. */
const DAYS_AHEAD = 56;

/** The corridor up to some weeks ahead: a course of a year would squeeze the record into a corner. */
function nearCorridor(data: WeightChartData): readonly CorridorPoint[] {
  const last = data.trend.points.at(-1);
  if (last === undefined) return data.corridor;
  const end = addDays(last.day, DAYS_AHEAD);
  return data.corridor.filter((point) => point.day <= end);
}

function chartFrame(data: WeightChartData, unit: (kg: number) => number, width: number): Frame {
  const days = [...data.trend.points, ...data.corridor].map((item) => dayNumber(item.day));
  const first = Math.min(...days);
  const last = Math.max(...days, first + 14);
  const values = [
    ...data.trend.points.flatMap((p) => [p.weightKg - p.sdKg, p.weightKg + p.sdKg]),
    ...data.corridor.flatMap((c) => [c.low, c.high]),
    ...(data.targetKg === null ? [] : [data.targetKg]),
  ].map(unit);
  const yAxis = axis(Math.min(...values), Math.max(...values));
  const [left, right] = [PLOT.left, width - PLOT.right];
  const [top, bottom] = [PLOT.top, HEIGHT - PLOT.bottom];
  const pad = 10;
  return {
    x: (day) => left + pad + ((dayNumber(day) - first) / (last - first)) * (right - left - 2 * pad),
    y: (value) => bottom - ((value - yAxis.min) / (yAxis.max - yAxis.min)) * (bottom - top),
    yAxis,
    left,
    right,
    top,
    bottom,
  };
}

const at = (value: number) => value.toFixed(2);

function escapeXml(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');
}

function label(
  text: string,
  x: number,
  y: number,
  colour: string,
  anchor: 'start' | 'middle' | 'end' = 'start',
): string {
  return `<text x="${at(x)}" y="${at(y)}" font-family="Sans" font-size="8.5" fill="${colour}" text-anchor="${anchor}">${escapeXml(text)}</text>`;
}

function line(x1: number, y1: number, x2: number, y2: number, style: string): string {
  return `<line x1="${at(x1)}" y1="${at(y1)}" x2="${at(x2)}" y2="${at(y2)}" ${style}/>`;
}

function gridLines(frame: Frame, format: Format, colours: Palette): string {
  const decimals = frame.yAxis.step < 1 ? 1 : 0;
  return frame.yAxis.ticks
    .map((tick) => {
      const y = frame.y(tick);
      const text = format.number(tick, decimals);
      const edge = tick === frame.yAxis.min ? colours.ink : colours.rule;
      return (
        line(frame.left, y, frame.right, y, `stroke="${edge}" stroke-width="0.6"`) +
        label(text, frame.left - 6, y + 3, colours.muted, 'end')
      );
    })
    .concat(label(format.weightUnit, 0, frame.top + 3, colours.muted))
    .join('');
}

function dayLabels(data: WeightChartData, frame: Frame, format: Format, colours: Palette): string {
  const days = [
    ...new Set([...data.trend.points, ...data.corridor].map((item) => item.day)),
  ].sort();
  const roomy: string[] = [];
  for (const day of spread(days, 7)) {
    const previous = roomy.at(-1);
    if (previous === undefined || frame.x(day) - frame.x(previous) > 58) roomy.push(day);
  }
  return roomy
    .map(
      (day) =>
        line(
          frame.x(day),
          frame.bottom,
          frame.x(day),
          frame.bottom + 4,
          `stroke="${colours.ink}" stroke-width="0.6"`,
        ) + label(format.day(day), frame.x(day), frame.bottom + 14, colours.muted, 'middle'),
    )
    .join('');
}

function corridorArea(
  corridor: readonly CorridorPoint[],
  unit: (kg: number) => number,
  frame: Frame,
  colours: Palette,
): string {
  if (corridor.length < 2) return '';
  const edge = (value: (point: CorridorPoint) => number) =>
    corridor.map((point) => `${at(frame.x(point.day))},${at(frame.y(unit(value(point))))}`);
  const high = edge((point) => point.high);
  const low = edge((point) => point.low);
  const dashed = `fill="none" stroke="${colours.muted}" stroke-width="0.8" stroke-dasharray="4 3"`;
  return (
    `<polygon points="${[...high, ...low.toReversed()].join(' ')}" fill="#e6ebe8"/>` +
    `<polyline points="${high.join(' ')}" ${dashed}/>` +
    `<polyline points="${low.join(' ')}" ${dashed}/>`
  );
}

function targetLine(
  targetKg: number | null,
  unit: (kg: number) => number,
  frame: Frame,
  colours: Palette,
): string {
  if (targetKg === null) return '';
  const y = frame.y(unit(targetKg));
  return line(frame.left, y, frame.right, y, targetStyle(colours));
}

const targetStyle = (colours: Palette) =>
  `stroke="${colours.accent}" stroke-width="1.6" stroke-dasharray="9 3 2 3"`;

function trendLineDrawing(
  points: readonly TrendPoint[],
  unit: (kg: number) => number,
  frame: Frame,
  colours: Palette,
): string {
  const [from, to] = points;
  if (from === undefined || to === undefined) return '';
  return line(
    frame.x(from.day),
    frame.y(unit(from.kg)),
    frame.x(to.day),
    frame.y(unit(to.kg)),
    trendStyle(colours),
  );
}

const trendStyle = (colours: Palette) => `stroke="${colours.ink}" stroke-width="1.2"`;

/** A weighing with a bar of one standard deviation of its error up and down. */
function weighing(
  point: MeasuredWeight,
  flagged: boolean,
  unit: (kg: number) => number,
  frame: Frame,
  colours: Palette,
): string {
  const x = frame.x(point.day);
  const y = frame.y(unit(point.weightKg));
  const top = frame.y(unit(point.weightKg + point.sdKg));
  const bottom = frame.y(unit(point.weightKg - point.sdKg));
  const thin = `stroke="${colours.ink}" stroke-width="0.8"`;
  const bars =
    line(x, top, x, bottom, thin) +
    line(x - 3, top, x + 3, top, thin) +
    line(x - 3, bottom, x + 3, bottom, thin);
  return bars + mark(x, y, flagged, colours);
}

function mark(x: number, y: number, flagged: boolean, colours: Palette): string {
  if (!flagged) return `<circle cx="${at(x)}" cy="${at(y)}" r="3.4" fill="${colours.ink}"/>`;
  const diamond = `${at(x)},${at(y - 4.5)} ${at(x + 4.5)},${at(y)} ${at(x)},${at(y + 4.5)} ${at(x - 4.5)},${at(y)}`;
  return `<polygon points="${diamond}" fill="#ffffff" stroke="${colours.ink}" stroke-width="1.1"/>`;
}

function legend(data: WeightChartData, words: ChartWords, frame: Frame, colours: Palette): string {
  const row = (index: number) => HEIGHT - 22 + Math.floor(index / 3) * 13;
  const column = (index: number) => frame.left + (index % 3) * ((frame.right - frame.left) / 3);
  const entries: { readonly draw: (x: number, y: number) => string; readonly text: string }[] = [
    { draw: (x, y) => mark(x + 10, y - 3, false, colours), text: words.weighing },
  ];
  if (data.trend.line.length > 1) {
    entries.push({
      draw: (x, y) => line(x, y - 3, x + 20, y - 3, trendStyle(colours)),
      text: words.trend,
    });
  }
  if (data.targetKg !== null) {
    entries.push({
      draw: (x, y) => line(x, y - 3, x + 20, y - 3, targetStyle(colours)),
      text: words.target,
    });
  }
  if (data.corridor.length > 1) {
    entries.push({
      draw: (x, y) =>
        `<rect x="${at(x)}" y="${at(y - 7)}" width="20" height="8" fill="#e6ebe8" stroke="${colours.muted}" stroke-width="0.8" stroke-dasharray="4 3"/>`,
      text: words.corridor,
    });
  }
  if (data.trend.flagged.length > 0) {
    entries.push({ draw: (x, y) => mark(x + 10, y - 3, true, colours), text: words.flagged });
  }
  return entries
    .map(
      (entry, index) =>
        entry.draw(column(index), row(index)) +
        label(entry.text, column(index) + 26, row(index), colours.ink),
    )
    .join('');
}
