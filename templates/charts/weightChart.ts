import type { Content } from 'pdfmake/interfaces';
import type { WeightSeries } from '../../core/nutrition.ts';
import type { Format } from '../format.ts';
import type { Palette } from '../theme.ts';
import { CHART_HEIGHT, chartFrame, type ChartFrame } from './chartFrame.ts';
import { drawing, label, TEXT_HEIGHT, type Layer } from './label.ts';
import {
  bandArea,
  bandSwatch,
  dayMark,
  dot,
  grid,
  line,
  targetStyle,
  trendLine,
  trendStyle,
  weighing,
} from './marks.ts';
import { spread } from './scale.ts';

export interface ChartWords {
  readonly weighing: string;
  readonly trend: string;
  readonly flagged: string;
  readonly corridor: string;
  readonly target: string;
}

/** Room that a day under the axis needs, in points. */
const DAY_WIDTH = 58;

/**
 * The weight record as a vector drawing. Kinds of marks differ by shape and line, not by colour
 * alone, so that the chart reads on a black-and-white printer.
 */
export function weightChart(
  series: WeightSeries,
  words: ChartWords,
  format: Format,
  colours: Palette,
  width: number,
): Content {
  const frame = chartFrame(series, format, width);
  const days = dayAxis(series, frame, format, colours);
  const key = legend(series, words, frame, colours);
  const { targetKg } = series;
  const svg = [
    bandArea(series.corridor, frame, colours),
    bandArea(heldBand(series), frame, colours),
    grid(frame, colours),
    days.svg,
    targetKg === null ? '' : targetLine(targetKg, frame, colours),
    trendLine(series.trend, frame, colours),
    ...series.points.map((point) => weighing(point, frame, colours)),
    key.svg,
  ].join('');
  const labels = [...weightAxis(frame, format), ...days.labels, ...key.labels];
  return drawing({ svg, labels }, width, CHART_HEIGHT);
}

/** Where the weight is to hold, from end to end. */
const heldBand = ({ hold, days }: WeightSeries) =>
  hold === null ? [] : days!.map((day) => ({ ...hold, day }));

function weightAxis(frame: ChartFrame, format: Format): readonly Content[] {
  const decimals = frame.axis.step < 1 ? 1 : 0;
  return [
    label(format.weightUnit, 0, frame.top, 'left'),
    ...frame.axis.ticks.map((tick) =>
      label(format.number(tick, decimals), frame.left - 6, frame.tickY(tick), 'right'),
    ),
  ];
}

function dayAxis(
  { points, corridor }: WeightSeries,
  frame: ChartFrame,
  format: Format,
  colours: Palette,
): Layer {
  const all = [...points, ...corridor].map((item) => item.day);
  const days = [...new Set(all)].sort();
  const roomy: string[] = [];
  for (const day of spread(days, 7)) {
    const previous = roomy.at(-1);
    if (previous === undefined || frame.x(day) - frame.x(previous) > DAY_WIDTH) roomy.push(day);
  }
  return {
    svg: roomy.map((day) => dayMark(frame.x(day), frame, colours)).join(''),
    labels: roomy.map((day) =>
      label(format.day(day), frame.x(day), frame.bottom + TEXT_HEIGHT, 'center'),
    ),
  };
}

function targetLine(targetKg: number, frame: ChartFrame, colours: Palette): string {
  const y = frame.y(targetKg);
  return line(frame.left, y, frame.right, y, targetStyle(colours));
}

/** Kinds of marks that the data holds, drawn and named in two columns under the chart. */
function legend(
  { points, trend, targetKg, corridor, hold }: WeightSeries,
  words: ChartWords,
  frame: ChartFrame,
  colours: Palette,
): Layer {
  const stroke = (style: string) => (x: number, y: number) => line(x, y, x + 20, y, style);
  const kinds = [
    {
      shown: true,
      text: words.weighing,
      draw: (x: number, y: number) => dot(x + 10, y, false, colours),
    },
    { shown: trend.length > 1, text: words.trend, draw: stroke(trendStyle(colours)) },
    { shown: targetKg !== null, text: words.target, draw: stroke(targetStyle(colours)) },
    {
      shown: corridor.length > 1 || hold !== null,
      text: words.corridor,
      draw: (x: number, y: number) => bandSwatch(x, y, colours),
    },
    {
      shown: points.some(({ flag }) => flag !== ''),
      text: words.flagged,
      draw: (x: number, y: number) => dot(x + 10, y, true, colours),
    },
  ].filter((kind) => kind.shown);
  const place = (index: number) => ({
    x: frame.left + (index % 2) * ((frame.right - frame.left) / 2),
    y: frame.bottom + 27 + Math.floor(index / 2) * 12,
  });
  return {
    svg: kinds.map((kind, index) => kind.draw(place(index).x, place(index).y)).join(''),
    labels: kinds.map((kind, index) =>
      label(kind.text, place(index).x + 26, place(index).y, 'left'),
    ),
  };
}
