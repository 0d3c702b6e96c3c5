import type { Chart, Plugin } from 'chart.js';
import type { Dataset } from './datasets.ts';
import type { Look } from './look.ts';

/** Width of a sample, the gap after it, and the gap after an entry, px. */
const SAMPLE = 24;
const GAP = 8;
const APART = 20;

interface Entry {
  readonly set: Dataset;
  readonly words: string;
  readonly left: number;
  readonly row: number;
}

const lineHeight = (look: Look): number => look.size + 10;
const fontOf = (look: Look): string => `${look.size}px ${look.font}`;

/** The entries of the key, in as many rows as the chart's width asks for. */
function entriesOf(chart: Chart, look: Look): Entry[] {
  chart.ctx.font = fontOf(look);
  let [left, row] = [0, 0];
  return (chart.data.datasets as unknown as Dataset[]).flatMap((set): Entry[] => {
    const words = set.label ?? '';
    if (words === '' || set.mark === undefined) return [];
    const length = SAMPLE + GAP + chart.ctx.measureText(words).width;
    if (left > 0 && left + length > chart.width - 8) [left, row] = [0, row + 1];
    const entry = { set, words, left, row };
    left += length + APART;
    return [entry];
  });
}

/**
 * The key below a chart: each entry with a sample drawn as in the chart. (chart.js's own legend
 * stretches dots to the length of its lines.)
 */
export const keyBelow = (look: Look): Plugin<'line' | 'bar'> => ({
  id: 'key',
  beforeLayout(chart) {
    const rows = (entriesOf(chart, look).at(-1)?.row ?? -1) + 1;
    const padding = chart.options.layout!.padding as Record<string, number>;
    padding['bottom'] = rows * lineHeight(look) + (rows === 0 ? 0 : 8);
  },
  afterDraw(chart) {
    const { ctx } = chart;
    const entries = entriesOf(chart, look);
    const rows = (entries.at(-1)?.row ?? -1) + 1;
    const top = chart.height - rows * lineHeight(look);
    ctx.save();
    ctx.textBaseline = 'middle';
    for (const { set, words, left, row } of entries) {
      const y = top + (row + 0.5) * lineHeight(look);
      sample(ctx, set, left + SAMPLE / 2, y, look);
      ctx.setLineDash([]);
      ctx.font = fontOf(look);
      ctx.fillStyle = look.ink;
      ctx.fillText(words, left + SAMPLE + GAP, y + 1);
    }
    ctx.restore();
  },
});

function sample(ctx: CanvasRenderingContext2D, set: Dataset, x: number, y: number, look: Look) {
  const colour = String(set.borderColor);
  const dash = (set as { borderDash?: number[] }).borderDash ?? [];
  ctx.strokeStyle = colour;
  ctx.fillStyle = colour;
  ctx.lineWidth = Math.max(1, Number(set.borderWidth ?? 1));
  ctx.setLineDash(dash);
  if (set.mark === 'box') {
    ctx.fillStyle = String(set.backgroundColor);
    ctx.fillRect(x - 9, y - 6, 18, 12);
    if (Number(set.borderWidth) > 0) ctx.strokeRect(x - 9, y - 6, 18, 12);
    return;
  }
  if ((set as { showLine?: boolean }).showLine !== false) {
    ctx.beginPath();
    ctx.moveTo(x - SAMPLE / 2, y);
    ctx.lineTo(x + SAMPLE / 2, y);
    ctx.stroke();
  }
  if (set.mark === 'line') return;
  ctx.setLineDash([]);
  ctx.lineWidth = 2;
  ctx.beginPath();
  const corners = CORNERS[set.mark as keyof typeof CORNERS];
  if (corners === undefined) ctx.arc(x, y, set.mark === 'ring' ? 5.5 : 4.5, 0, 2 * Math.PI);
  else for (const [dx, dy] of corners) ctx.lineTo(x + dx, y + dy);
  ctx.closePath();
  if (set.hollow === true) {
    ctx.fillStyle = look.paper;
    ctx.fill();
    ctx.stroke();
  } else ctx.fill();
}

/** Of the samples that are no circle, px from their middle. */
const CORNERS = {
  diamond: [
    [0, -6],
    [6, 0],
    [0, 6],
    [-6, 0],
  ],
  triangle: [
    [0, -7],
    [6, 4],
    [-6, 4],
  ],
} as const;
