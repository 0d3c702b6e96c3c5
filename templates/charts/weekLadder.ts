import type { Content } from 'pdfmake/interfaces';
import type { WeekLoad } from '../../core/training.ts';
import { fill } from '../format.ts';
import type { Press } from '../frame.ts';
import type { Palette } from '../theme.ts';
import type { OwnerWords } from '../words/words.ts';
import { drawing, label } from './label.ts';
import { line } from './marks.ts';
import { axis } from './scale.ts';

/** Of the whole drawing in points, the weeks' numbers below it included. */
export const LADDER_WIDTH = 218;
const HEIGHT = 60;
const PLOT = { left: 40, top: 14, right: 4, bottom: 14 } as const;
/** Of the room of a week, and in points. */
const BAR = { share: 0.7, widest: 16 } as const;
const MOST_NUMBERED = 9;

/**
 * The minutes of each week as bars, as on the screen: filled, or an outline alone for an easy week,
 * so that the ladder reads without colour.
 */
export function weekLadder(
  load: readonly WeekLoad[],
  words: OwnerWords['plan'],
  { format, colours }: Press,
): Content {
  const { max, ticks } = axis(0, Math.max(...load.map(({ planned }) => planned)), 2);
  const [bottom, right] = [HEIGHT - PLOT.bottom, LADDER_WIDTH - PLOT.right];
  const room = (right - PLOT.left) / load.length;
  const x = ({ at }: WeekLoad) => PLOT.left + (at - 0.5) * room;
  const y = (minutes: number) => bottom - (minutes / max) * (bottom - PLOT.top);
  const wide = Math.min(room * BAR.share, BAR.widest);
  const level = (tick: number) =>
    line(PLOT.left, y(tick), right, y(tick), `stroke="${colours.rule}" stroke-width="0.6"`);
  const every = Math.ceil(load.length / MOST_NUMBERED);
  const numbered = ({ at }: WeekLoad) => (at - 1) % every === 0;
  const eased = load.some(isEasy);
  return drawing(
    {
      svg: [
        ...ticks.map(level),
        ...load.map((week) => {
          const top = y(week.planned);
          return bar([x(week) - wide / 2, top, wide, bottom - top], isEasy(week), colours);
        }),
        eased ? bar([right - 12, 1, 12, 7], true, colours) : '',
      ].join(''),
      labels: [
        ...ticks.map((tick) => label(format.minutes(tick), PLOT.left - 5, y(tick), 'right')),
        ...load
          .filter(numbered)
          .map((week) => label(String(week.number), x(week), bottom + 8, 'center')),
        ...(eased ? [label(words.easyWeek, right - 17, 4.5, 'right')] : []),
        label(fill(words.week, { week: '' }).trim(), 0, bottom + 8, 'left'),
      ],
    },
    LADDER_WIDTH,
    HEIGHT,
  );
}

/** Marked on the ladder and in the table of the weeks alike. */
export const isEasy = ({ kind }: WeekLoad) => kind !== 'building';

function bar(box: readonly number[], easy: boolean, colours: Palette): string {
  const [x, y, width, height] = box.map((value) => value.toFixed(2));
  return `<rect x="${x}" y="${y}" width="${width}" height="${height}" fill="${easy ? '#ffffff' : colours.muted}" stroke="${colours.ink}" stroke-width="0.8"/>`;
}
