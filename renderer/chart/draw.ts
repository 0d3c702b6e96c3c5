import {
  BarController,
  BarElement,
  Chart,
  Filler,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
  Tooltip,
  type ChartConfiguration,
  type Plugin,
} from 'chart.js';
import { axisOf, yAxisOf } from './axes.ts';
import type { Look } from './look.ts';
import { setsOf, type Dataset, type Datum } from './datasets.ts';
import { keyBelow } from './key.ts';
import type { ChartSpec, Place } from './spec.ts';

Chart.register(
  BarController,
  BarElement,
  Filler,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
  Tooltip,
);

export type Drawn = Chart<'line' | 'bar', Datum[]>;
/** The error at each value that has one, over the bands and under the value. */
const errorBars: Plugin<'line' | 'bar'> = {
  id: 'errorBars',
  beforeDatasetDraw({ ctx, data, scales, chartArea }, { index }) {
    const set = data.datasets[index]!;
    ctx.save();
    ctx.beginPath();
    ctx.rect(chartArea.left, chartArea.top, chartArea.width, chartArea.height);
    ctx.clip();
    ctx.strokeStyle = String(set.borderColor);
    ctx.lineWidth = 1.5;
    for (const { x, y, at } of set.data as unknown as Datum[]) {
      if (at?.error === undefined || y === null) continue;
      const px = scales['x']!.getPixelForValue(x);
      ctx.beginPath();
      ctx.moveTo(px, scales['y']!.getPixelForValue(y - at.error));
      ctx.lineTo(px, scales['y']!.getPixelForValue(y + at.error));
      ctx.stroke();
    }
    ctx.restore();
  },
};

/** What happened, as upright lines whose words stand in turn on two lines above the drawing. */
const uprightsOf = (spec: ChartSpec, look: Look): Plugin<'line' | 'bar'> => ({
  id: 'uprights',
  beforeDatasetsDraw({ ctx, chartArea, scales }) {
    ctx.save();
    ctx.strokeStyle = look.soft;
    ctx.fillStyle = look.soft;
    ctx.font = `${look.size - 1}px ${look.font}`;
    ctx.textBaseline = 'alphabetic';
    let free = [-Infinity, -Infinity];
    for (const { x, words } of spec.uprights ?? []) {
      const px = scales['x']!.getPixelForValue(x);
      if (px < chartArea.left - 1 || px > chartArea.right + 1) continue;
      ctx.setLineDash([1, 3]);
      ctx.beginPath();
      ctx.moveTo(px, chartArea.top);
      ctx.lineTo(px, chartArea.bottom);
      ctx.stroke();
      const { width } = ctx.measureText(words);
      const left = Math.min(px, chartArea.right - width);
      const row = free.findIndex((end) => left > end + 6);
      if (row < 0) continue;
      ctx.fillText(words, left, chartArea.top - 5 - row * (look.size + 1));
      free = free.map((end, at) => (at === row ? left + width : end));
    }
    ctx.restore();
  },
});

/** How far the words of what happened reach above the drawing, px. */
const roomAbove = ({ uprights = [] }: ChartSpec, look: Look): number =>
  Math.min(2, uprights.length) * (look.size + 2);

/** Room above the drawing for the unit, a title, and what happened, px. */
const headOf = (spec: ChartSpec, look: Look): number =>
  look.size +
  9 +
  roomAbove(spec, look) +
  (spec.title === '' || roomAbove(spec, look) === 0 ? 0 : 6);

/** What chart.js is told of a chart. `window` is the part of the x axis in sight; null for all. */
export function configOf(
  spec: ChartSpec,
  look: Look,
  window: readonly [number, number] | null,
): ChartConfiguration<'line' | 'bar', Datum[]> {
  return {
    type: 'line',
    data: { datasets: setsOf(spec, look, window) },
    options: {
      animation: false,
      parsing: false,
      normalized: true,
      maintainAspectRatio: false,
      layout: { padding: { top: headOf(spec, look), right: 12, bottom: 0, left: 0 } },
      interaction: { mode: 'nearest', intersect: true },
      scales: { x: axisOf(spec, look, window), y: yAxisOf(spec, look) },
      plugins: {
        tooltip: {
          displayColors: false,
          backgroundColor: look.ink,
          bodyColor: look.paper,
          cornerRadius: 4,
          padding: 10,
          bodyFont: { family: look.font, size: look.size },
          filter: ({ raw }) => ((raw as Datum).at?.text ?? '') !== '',
          callbacks: {
            title: () => '',
            label: ({ raw, chart }) => linesOf((raw as Datum).at?.text ?? '', chart, look),
          },
        },
      },
    },
    plugins: [errorBars, uprightsOf(spec, look), unitsOf(spec, look), keyBelow(look)],
  };
}

/** What a narrow chart leaves of its width to the words beside a point, px. */
const BESIDE = 48;
/** A sentence in lines that fit into the chart. */
function linesOf(text: string, { ctx, width }: Pick<Chart, 'ctx' | 'width'>, look: Look): string[] {
  ctx.save();
  ctx.font = `${look.size}px ${look.font}`;
  const fits = (line: string) => ctx.measureText(line).width <= width - BESIDE;
  const lines = text.split(/(?<=;) /).flatMap((part) =>
    part.split(' ').reduce<string[]>((done, word) => {
      const longer = `${done.at(-1) ?? ''} ${word}`.trim();
      return done.length > 0 && fits(longer) ? [...done.slice(0, -1), longer] : [...done, word];
    }, []),
  );
  ctx.restore();
  return lines;
}

/** The unit over the value axis, and the name of what is counted under the other. */
const unitsOf = (spec: ChartSpec, look: Look): Plugin<'line' | 'bar'> => ({
  id: 'units',
  afterDraw({ ctx, chartArea }) {
    ctx.save();
    ctx.fillStyle = look.soft;
    ctx.font = `${look.size}px ${look.font}`;
    // Over its axis where it fits there, else from the edge on.
    const { width } = ctx.measureText(spec.y.unit);
    const left = Math.max(0, chartArea.left - 8 - width);
    // A title that ends in the unit says it already.
    if (!spec.title.endsWith(`, ${spec.y.unit}`)) {
      ctx.fillText(spec.y.unit, left, chartArea.top - 9);
    }
    if (spec.title !== '') {
      ctx.fillStyle = look.ink;
      ctx.font = `600 ${look.size + 1}px ${look.font}`;
      const above = roomAbove(spec, look);
      const from = above > 0 ? chartArea.left : Math.max(chartArea.left, left + width + 12);
      ctx.fillText(spec.title, from, chartArea.top - 10 - above);
    }
    ctx.restore();
  },
});

/**
 * Draws a chart; null where the window has no canvas to draw on. With `pixels` for one of the
 * screen it keeps the size of its canvas: for a picture.
 */
export function draw(
  canvas: HTMLCanvasElement,
  spec: ChartSpec,
  look: Look,
  window: readonly [number, number] | null,
  pixels?: number,
): Drawn | null {
  if (canvas.getContext('2d') === null) return null;
  const config = configOf(spec, look, window);
  const still = pixels === undefined ? {} : { responsive: false, devicePixelRatio: pixels };
  return new Chart(canvas, { ...config, options: { ...config.options, ...still } });
}

/** The value that a click hits; null beside all of them. */
export function placeAt(chart: Drawn, event: MouseEvent): Place | null {
  const [hit] = chart.getElementsAtEventForMode(event, 'nearest', { intersect: true }, false);
  const of = hit === undefined ? undefined : (chart.data.datasets[hit.datasetIndex] as Dataset).of;
  return of === undefined ? null : { series: of, point: hit!.index };
}

/** Shows what a value says beside it, as when it is pointed at. @returns where it is drawn, px */
export function showAt(chart: Drawn, place: Place | null): { x: number; y: number } | null {
  const datasetIndex = chart.data.datasets.findIndex(
    (set) => place !== null && (set as Dataset).of === place.series,
  );
  const active = place === null ? [] : [{ datasetIndex, index: place.point }];
  const element = place === null ? undefined : chart.getDatasetMeta(datasetIndex).data[place.point];
  const at = element === undefined ? null : { x: element.x, y: element.y };
  chart.setActiveElements(active);
  chart.tooltip?.setActiveElements(active, at ?? { x: 0, y: 0 });
  chart.update('none');
  return at;
}
