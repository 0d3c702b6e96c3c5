import type { Content } from 'pdfmake/interfaces';
import type { Format } from '../format.ts';
import type { Palette } from '../theme.ts';
import {
  CHART_HEIGHT,
  chartFrame,
  nearCorridor,
  type ChartFrame,
  type WeightChartData,
} from './chartFrame.ts';
import {
  corridorArea,
  corridorSwatch,
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

/** Room that a day under the axis needs, and the height of a line of small text. */
const DAY_WIDTH = 58;
const TEXT_HEIGHT = 11;

/** A drawing and the text over it, both measured from the chart's top left corner. */
interface Layer {
  readonly svg: string;
  readonly labels: readonly Content[];
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
  const shown = { ...data, corridor: nearCorridor(data) };
  const frame = chartFrame(shown, format, width);
  const { points, line: fitted, flagged } = data.trend;
  const days = dayAxis(shown, frame, format, colours);
  const key = legend(shown, words, frame, colours);
  const target = data.targetKg === null ? '' : targetLine(data.targetKg, frame, colours);
  const drawing = [
    corridorArea(shown.corridor, frame, colours),
    grid(frame, colours),
    days.svg,
    target,
    trendLine(fitted, frame, colours),
    ...points.map((point) =>
      weighing(
        point,
        flagged.some((other) => other.day === point.day),
        frame,
        colours,
      ),
    ),
    key.svg,
  ].join('');
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${CHART_HEIGHT}" viewBox="0 0 ${width} ${CHART_HEIGHT}">${drawing}</svg>`;
  return {
    stack: [
      ...weightAxis(frame, format),
      ...days.labels,
      ...key.labels,
      { svg, width, height: CHART_HEIGHT },
    ],
    margin: [0, 2, 0, 2],
  };
}

/** Text on the drawing; `x` is its left, middle or right end. */
function label(
  text: string,
  x: number,
  y: number,
  alignment: 'left' | 'center' | 'right',
  style = 'foot',
): Content {
  const width = 230;
  const left = { left: x, center: x - width / 2, right: x - width }[alignment];
  return {
    columns: [{ width, text, alignment, style, noWrap: true }],
    relativePosition: { x: left, y: y - TEXT_HEIGHT / 2 },
  };
}

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
  data: WeightChartData,
  frame: ChartFrame,
  format: Format,
  colours: Palette,
): Layer {
  const all = [...data.trend.points, ...data.corridor].map((item) => item.day);
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
  data: WeightChartData,
  words: ChartWords,
  frame: ChartFrame,
  colours: Palette,
): Layer {
  const { trend, targetKg, corridor } = data;
  const stroke = (style: string) => (x: number, y: number) => line(x, y, x + 20, y, style);
  const kinds = [
    {
      shown: true,
      text: words.weighing,
      draw: (x: number, y: number) => dot(x + 10, y, false, colours),
    },
    { shown: trend.line.length > 1, text: words.trend, draw: stroke(trendStyle(colours)) },
    { shown: targetKg !== null, text: words.target, draw: stroke(targetStyle(colours)) },
    {
      shown: corridor.length > 1,
      text: words.corridor,
      draw: (x: number, y: number) => corridorSwatch(x, y, colours),
    },
    {
      shown: trend.flagged.length > 0,
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
