import type { Content, TableCell } from 'pdfmake/interfaces';
import type { IsoDay } from '../../core/day.ts';
import type { Bowl } from '../../core/nutrition.ts';
import { fill, shorten } from '../format.ts';
import { press, type LabelSheet, type Press } from '../frame.ts';
import type { HandoutContext } from '../model.ts';
import { mealGrams } from '../parts/bowl.ts';
import { BARE } from '../parts/layout.ts';
import type { Paper } from '../theme.ts';
import type { OwnerWords } from '../words/words.ts';

export interface BowlLabelsData extends HandoutContext {
  /** Days of the changeover, then the ration that stays. */
  readonly bowls: readonly Bowl[];
  readonly mealsPerDay: number;
  /** From this day on the ration stays. */
  readonly since: IsoDay;
}

const MM = 72 / 25.4;

/** Sizes of sheets of labels that are to be had everywhere: 24 of 70 × 37 mm, 10 of 4 × 2 in. */
const LABELS = {
  A4: { columns: 3, width: 70 * MM, height: 37 * MM, gutter: 0, side: 0, top: 0.5 * MM },
  LETTER: { columns: 2, width: 288, height: 144, gutter: 13.5, side: 11.25, top: 36 },
} as const satisfies Record<Paper, object>;

/** White round the words of a label, pt: a printer may be off by so much. */
const INSIDE = 11;
/** Labels of the ration that stays, at least: one for the bowl, one for the tin. */
const LEAST_LASTING = 2;
/** Foods that fit on a label; with more the last line points to the feeding sheet. */
const MOST_FOODS = { A4: 3, LETTER: 6 } as const;
/** Room for a name on one line, in widths of an em of its own letters. */
const ROOM = { A4: { dog: 8.5, food: 10.5 }, LETTER: { dog: 16, food: 19 } } as const;

const emsOf = (letter: string): number => {
  if (/[MW@%…—]|[^\u0000-\u024f]/u.test(letter)) return 1;
  return /[mw]|\p{Lu}/u.test(letter) ? 0.75 : 0.5;
};

/** As much of a name as one line holds. */
function fitting(name: string, room: number): string {
  let ems = 0;
  const letters = [...name];
  const at = letters.findIndex((letter) => (ems += emsOf(letter)) > room);
  return at === -1 ? name : shorten(name, letters.slice(0, at).join('').length);
}

function foodLines(
  { foods }: Bowl,
  paper: Paper,
  words: OwnerWords,
  { format }: Press,
): TableCell[][] {
  const most = MOST_FOODS[paper];
  const room = ROOM[paper];
  const shown = foods.length > most ? foods.slice(0, most - 1) : foods;
  const lines = shown.map(({ name, gramsByMeal }): TableCell[] => [
    { text: fitting(name, room.food), fontSize: 9 },
    {
      text: mealGrams(gramsByMeal, format),
      bold: true,
      fontSize: 11,
      alignment: 'right',
      noWrap: true,
    },
  ]);
  if (shown.length === foods.length) return lines;
  const more = fill(words.labels.more, { count: foods.length - shown.length });
  return [...lines, [{ text: more, fontSize: 8, colSpan: 2 }, '']];
}

function label(bowl: Bowl, data: BowlLabelsData, words: OwnerWords, tools: Press): Content {
  const { labels, frame } = words;
  const { format, colours } = tools;
  const room = ROOM[data.practice.paper];
  const day =
    bowl.day === null
      ? fill(labels.from, { day: format.shortDay(data.since) })
      : format.shortDay(bowl.day);
  const meals =
    data.mealsPerDay === 1 ? labels.oneMeal : fill(labels.meals, { meals: data.mealsPerDay });
  return {
    margin: INSIDE,
    stack: [
      {
        columns: [
          { width: '*', text: fitting(data.dog.name, room.dog), font: 'Serif', fontSize: 11.5 },
          { width: 'auto', text: day, bold: true, fontSize: 9, margin: [0, 2, 0, 0] },
        ],
      },
      { text: meals, fontSize: 8, color: colours.muted, margin: [0, 0, 0, 2] },
      {
        table: {
          widths: ['*', 'auto'],
          body: foodLines(bowl, data.practice.paper, words, tools),
        },
        layout: { ...BARE, paddingBottom: () => 0.5 },
      },
      ...(data.demo ? [{ text: frame.demo, fontSize: 6.5, color: colours.muted }] : []),
    ],
  };
}

/** Labels for the bowl alone. */
export function bowlLabels(data: BowlLabelsData, words: OwnerWords): LabelSheet {
  const tools = press(data, words.frame);
  const { columns, width, height, gutter, side, top } = LABELS[data.practice.paper];
  const days = data.bowls.slice(0, -1);
  const lasting = data.bowls.slice(-1);
  const rows = Math.ceil((days.length + LEAST_LASTING) / columns);
  const all = [
    ...days,
    ...Array.from({ length: rows * columns - days.length }, () => lasting).flat(),
  ].map((bowl) => label(bowl, data, words, tools));
  const between = (of: readonly Content[]): TableCell[] =>
    of.flatMap((cell, at): TableCell[] =>
      at === 0 || gutter === 0 ? [cell as TableCell] : ['', cell as TableCell],
    );
  const widths = Array.from({ length: columns }, () => [gutter, width])
    .flat()
    .filter((each) => each > 0)
    .slice(gutter === 0 ? 0 : 1);
  const body = Array.from({ length: rows }, (_, row) =>
    between(all.slice(row * columns, (row + 1) * columns)),
  );
  return {
    words: words.frame,
    kind: words.labels.kind,
    margins: [side, top, 0, 0],
    labels: {
      table: { widths, heights: height, dontBreakRows: true, body },
      layout: BARE,
    },
  };
}
