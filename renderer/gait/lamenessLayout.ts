import { dayNumber } from '../../core/day.ts';
import { LIMBS, type Limb } from '../words.ts';

export const WORST_GRADE = 5;
export const GRADES = [0, 1, 2, 3, 4, 5] as const;

/** Room for the grades with their words left of the first limb, and for bare grades between, px. */
const WORDS_ROOM = 150;
const NUMBER_ROOM = 34;
const STEP = 22;
const TITLE = 30;
const DAYS = 28;
const RIGHT = 16;
/** Below this width the limbs stand under one another. */
const TWO_COLUMNS_FROM = 620;

/** Where one limb's own small chart stands. */
export interface LimbPanel {
  readonly limb: Limb;
  readonly left: number;
  readonly right: number;
  /** Height of grade 5. */
  readonly top: number;
  /** True where the words of the grades stand beside it. */
  readonly worded: boolean;
}

export interface LamenessLayout {
  readonly height: number;
  readonly panels: readonly LimbPanel[];
}

/** The four limbs as they stand on the ground seen from above: fore before hind, left beside right. */
export function lamenessLayout(width: number): LamenessLayout {
  const columns = width >= TWO_COLUMNS_FROM ? 2 : 1;
  const gaps = WORDS_ROOM + RIGHT + (columns - 1) * (NUMBER_ROOM + RIGHT);
  const wide = (width - gaps) / columns;
  const tall = TITLE + WORST_GRADE * STEP + DAYS;
  const panels = LIMBS.map((limb, index): LimbPanel => {
    const column = index % columns;
    const left = WORDS_ROOM + column * (wide + NUMBER_ROOM + RIGHT);
    const top = Math.floor(index / columns) * tall + TITLE;
    return { limb, left, right: left + wide, top, worded: column === 0 };
  });
  return { height: (LIMBS.length / columns) * tall, panels };
}

/** Height of a grade: the sound limb below, the worse the higher. */
export const gradeY = ({ top }: Pick<LimbPanel, 'top'>, grade: number): number =>
  top + (WORST_GRADE - grade) * STEP;

/** Where a day stands between the first and the last; in the middle where they are one. */
export function dayX(
  { left, right }: Pick<LimbPanel, 'left' | 'right'>,
  day: string,
  days: readonly string[],
): number {
  const first = dayNumber(days[0]!);
  const length = dayNumber(days.at(-1)!) - first;
  // A dot at the very edge would be cut by the next limb's numbers.
  const room = right - left - 2 * EDGE;
  return left + EDGE + (length === 0 ? room / 2 : ((dayNumber(day) - first) / length) * room);
}

const EDGE = 10;
