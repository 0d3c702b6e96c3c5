import type { WeighedPoint, WeightBand } from '../../core/nutrition.ts';
import type { Palette } from '../theme.ts';
import type { ChartFrame } from './chartFrame.ts';

// SVG pieces of the weight chart. No text: pdfmake sets that, so that fonts and glyph check hold.

const BAND_FILL = '#e6ebe8';
const at = (value: number) => value.toFixed(2);

export function line(x1: number, y1: number, x2: number, y2: number, style: string): string {
  return `<line x1="${at(x1)}" y1="${at(y1)}" x2="${at(x2)}" y2="${at(y2)}" ${style}/>`;
}

const solid = (colour: string, width: number) => `stroke="${colour}" stroke-width="${width}"`;
export const trendStyle = (colours: Palette) => solid(colours.ink, 1.2);
export const targetStyle = (colours: Palette) =>
  `${solid(colours.accent, 1.6)} stroke-dasharray="9 3 2 3"`;
const bandEdge = (colours: Palette) => `${solid(colours.muted, 0.8)} stroke-dasharray="4 3"`;

/** Level lines; the lowest is the axis. */
export function grid(frame: ChartFrame, colours: Palette): string {
  return frame.axis.ticks
    .map((tick) => {
      const y = frame.tickY(tick);
      const colour = tick === frame.axis.min ? colours.ink : colours.rule;
      return line(frame.left, y, frame.right, y, solid(colour, 0.6));
    })
    .join('');
}

export function dayMark(x: number, frame: ChartFrame, colours: Palette): string {
  return line(x, frame.bottom, x, frame.bottom + 4, solid(colours.ink, 0.6));
}

/** What is between two lines: the corridor, or where the weight is to hold. */
export function bandArea(
  band: readonly Omit<WeightBand, 'mid'>[],
  frame: ChartFrame,
  colours: Palette,
): string {
  if (band.length < 2) return '';
  const edge = (end: 'high' | 'low') =>
    band.map((point) => `${at(frame.x(point.day))},${at(frame.y(point[end]))}`);
  const [high, low] = [edge('high'), edge('low')];
  return (
    `<polygon points="${[...high, ...low.toReversed()].join(' ')}" fill="${BAND_FILL}"/>` +
    [high, low]
      .map((points) => `<polyline points="${points.join(' ')}" fill="none" ${bandEdge(colours)}/>`)
      .join('')
  );
}

/** A band in the legend. */
export function bandSwatch(x: number, y: number, colours: Palette): string {
  return `<rect x="${at(x)}" y="${at(y - 4)}" width="20" height="8" fill="${BAND_FILL}" ${bandEdge(colours)}/>`;
}

/** The line through the weighings, point by point. */
export function trendLine(
  points: readonly WeightBand[],
  frame: ChartFrame,
  colours: Palette,
): string {
  if (points.length < 2) return '';
  const path = points.map((point) => `${at(frame.x(point.day))},${at(frame.y(point.mid))}`);
  return `<polyline points="${path.join(' ')}" fill="none" ${trendStyle(colours)}/>`;
}

/** A weighing with a bar of one standard deviation of its error up and down. */
export function weighing(
  { day, kg, errorKg, flag }: WeighedPoint,
  frame: ChartFrame,
  colours: Palette,
): string {
  const x = frame.x(day);
  const [top, bottom] = [frame.y(kg + errorKg), frame.y(kg - errorKg)];
  const thin = solid(colours.ink, 0.8);
  return (
    line(x, top, x, bottom, thin) +
    line(x - 3, top, x + 3, top, thin) +
    line(x - 3, bottom, x + 3, bottom, thin) +
    dot(x, frame.y(kg), flag !== '', colours)
  );
}

/** A disc, or an open diamond for a weighing that was set apart. */
export function dot(x: number, y: number, flagged: boolean, colours: Palette): string {
  if (!flagged) return `<circle cx="${at(x)}" cy="${at(y)}" r="3.4" fill="${colours.ink}"/>`;
  const corners = [
    [x, y - 4.5],
    [x + 4.5, y],
    [x, y + 4.5],
    [x - 4.5, y],
  ].map(([cx, cy]) => `${at(cx ?? 0)},${at(cy ?? 0)}`);
  return `<polygon points="${corners.join(' ')}" fill="#ffffff" ${solid(colours.ink, 1.1)}/>`;
}
