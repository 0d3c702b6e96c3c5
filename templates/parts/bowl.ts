import type { Content, TableCell } from 'pdfmake/interfaces';
import {
  weighOut,
  type ChangeoverCalendar,
  type Ration,
  type RationItem,
  type WeighedItem,
} from '../../core/nutrition.ts';
import { fill, type Format } from '../format.ts';
import type { Press } from '../frame.ts';
import type { OwnerWords } from '../words/words.ts';
import { calmTable, section, tableHead } from './layout.ts';

type FeedingWords = OwnerWords['feeding'];

const right = (text: string, bold = false): TableCell => ({ text, alignment: 'right', bold });

/** Whole grams of each meal; one number where the meals are alike, the larger meals first. */
export function mealGrams(gramsByMeal: readonly number[], format: Format): string {
  const [first = 0] = gramsByMeal;
  if (gramsByMeal.every((grams) => grams === first)) return format.grams(first);
  const others = gramsByMeal.slice(0, -1).map((grams) => format.number(grams, 0));
  return [...others, format.grams(gramsByMeal.at(-1)!)].join(' / ');
}

function foodRow(
  item: RationItem,
  weighed: WeighedItem,
  cups: boolean,
  words: FeedingWords,
  format: Format,
): TableCell[] {
  return [
    { text: item.name },
    right(format.grams(weighed.gramsPerDay)),
    right(mealGrams(weighed.gramsByMeal, format), true),
    ...(cups
      ? [
          right(
            item.cupsPerDay === null
              ? ''
              : fill(words.cups, { cups: format.trimmed(item.cupsPerDay, 1) }),
          ),
        ]
      : []),
    right(format.energy(item.kcalPerDay)),
  ];
}

/** What goes in the bowl: grams a day and a meal for each food; treats are told apart below. */
export function bowlTable(ration: Ration, words: FeedingWords, tools: Press): Content {
  const weighed = weighOut(ration).items;
  const foods = ration.items.filter((item) => !item.treat);
  const cups = foods.some((item) => item.cupsPerDay !== null);
  const { columns } = words;
  const body: TableCell[][] = [
    [
      tableHead(columns.food),
      tableHead(columns.perDay, 'right'),
      tableHead(columns.perMeal, 'right'),
      ...(cups ? [tableHead(columns.cups, 'right')] : []),
      tableHead(columns.energy, 'right'),
    ],
    ...foods.map((item) =>
      foodRow(item, weighed[ration.items.indexOf(item)]!, cups, words, tools.format),
    ),
  ];
  const note = ration.mealsPerDay === 1 ? words.oneMealNote : words.mealsNote;
  return section(words.foodsTitle, [
    {
      fontSize: foods.length > 3 ? 10.5 : 11.5,
      table: {
        headerRows: 1,
        dontBreakRows: true,
        widths: ['*', 68, 68, ...(cups ? [76] : []), 72],
        body,
      },
      layout: { ...calmTable(tools.colours), paddingTop: () => 2.5, paddingBottom: () => 2.5 },
    } as Content,
    {
      text: fill(note, { meals: ration.mealsPerDay }),
      style: 'small',
      margin: [0, 4, 0, 0],
    },
  ]);
}

/** Steps of a changeover that fit side by side. */
const STEPS_A_ROW = 10;

/** Day by day from the old food to the new one. */
export function changeoverCalendar(
  changeover: ChangeoverCalendar,
  words: FeedingWords,
  tools: Press,
): Content {
  const { format } = tools;
  const steps = changeover.steps.slice(0, STEPS_A_ROW);
  const cell = (text: string, bold = false): TableCell => ({
    text,
    alignment: 'center',
    fontSize: 9,
    bold,
  });
  const name = (text: string): TableCell => ({ text, fontSize: 9 });
  const body = [
    [
      name(words.gramsADay),
      ...steps.map((step) => tableHead(format.stackedDay(step.day), 'center')),
    ],
    [name(changeover.oldFood), ...steps.map((step) => cell(format.number(step.oldGrams)))],
    [name(changeover.newFood), ...steps.map((step) => cell(format.number(step.newGrams), true))],
  ];
  return section(words.changeTitle, [
    {
      table: { headerRows: 1, widths: ['*', ...steps.map(() => 31)], body },
      layout: { ...calmTable(tools.colours), paddingLeft: () => 1, paddingRight: () => 1 },
    },
  ]);
}
