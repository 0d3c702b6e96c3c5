import type { Content, TableCell } from 'pdfmake/interfaces';
import type { Exercise, ExerciseId } from '../../core/training.ts';
import { fill } from '../format.ts';
import { press, type Press, type Sheet } from '../frame.ts';
import type { HandoutContext } from '../model.ts';
import { bullets, calmTable, paragraph, section, tableHead, tickBox } from '../parts/layout.ts';
import { sourceNote } from '../parts/sources.ts';
import type { OwnerWords } from '../words/words.ts';

export interface StrengthSheetData extends HandoutContext {
  /** What the practitioner chose, in the order it is printed; empty where nothing is. */
  readonly exercises: readonly (Exercise & { readonly id: ExerciseId })[];
}

/** Two weeks as they are, and two in which they may be harder. */
const WEEKS = [1, 2, 3, 4] as const;

const ADVICE = [
  { evidence: 'D', mark: 'CP', sources: ['commonPractice'] },
  { evidence: 'D', mark: 'D', sources: ['ownDecision', 'rehabilitation2018'] },
] as const;

function ticks(days: number): TableCell {
  const boxes = Array.from({ length: days }, () => ({ ...(tickBox(9) as object), width: 13 }));
  return { columns: boxes as Content[], margin: [0, 2, 0, 0] };
}

function exerciseRow(
  { id, sets, repeats, unit, daysPerWeek, stop }: StrengthSheetData['exercises'][number],
  words: OwnerWords['strength'],
): TableCell[] {
  const { name, how, harder } = words.exercises[id];
  const dose = fill(words.dose, { sets, repeats, unit: words.units[unit] });
  return [
    {
      stack: [
        { text: [{ text: name, bold: true }, `  ·  ${dose}`] },
        { text: `${how} ${words.stops[stop]}` },
        { text: fill(words.next, { harder }), style: 'small' },
      ],
    },
    ...WEEKS.map(() => ticks(daysPerWeek)),
  ];
}

/** The exercises with a box for each day of four weeks. */
function log(data: StrengthSheetData, words: OwnerWords, tools: Press): Content {
  const most = Math.max(...data.exercises.map(({ daysPerWeek }) => daysPerWeek));
  return {
    table: {
      headerRows: 1,
      dontBreakRows: true,
      widths: ['*', ...WEEKS.map(() => most * 13 + 4)],
      body: [
        [tableHead(''), ...WEEKS.map((week) => tableHead(fill(words.strength.week, { week })))],
        ...data.exercises.map((exercise) => exerciseRow(exercise, words.strength)),
      ],
    },
    layout: calmTable(tools.colours),
  };
}

/** Strength and balance between the runs, to tick. */
export function strengthSheet(data: StrengthSheetData, words: OwnerWords): Sheet {
  const tools = press(data, words.frame);
  const { strength } = words;
  const dog = { dog: data.dog.name };
  const days = Math.min(...data.exercises.map(({ daysPerWeek }) => daysPerWeek));
  const chosen = data.exercises.length > 0;
  return {
    words: words.frame,
    kind: strength.kind,
    title: fill(strength.title, dog),
    body: chosen
      ? [
          paragraph(fill(strength.intro, { days }), 4),
          log(data, words, tools),
          { text: fill(strength.clean, dog), margin: [0, 6, 0, 0] },
        ]
      : [paragraph(strength.nothing, 4)],
    end: chosen
      ? [
          section(strength.stopTitle, [bullets(strength.stop.map((item) => fill(item, dog)))]),
          sourceNote([...ADVICE], words.sources),
        ]
      : [],
  };
}
