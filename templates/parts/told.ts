import type { Content, TableCell } from 'pdfmake/interfaces';
import { fill } from '../format.ts';
import type { Press } from '../frame.ts';
import type { ToldFact, ToldFacts } from '../model.ts';
import type { PracticeWords } from '../words/enPractice.ts';
import { calmTable, heading, paragraph } from './layout.ts';

/** A longer text may be taller than a page (characters; D). */
const RUNS_ON = 1000;

/** Facts of any length, a row each, kept together; where one is long, they run on over the page. */
export function toldTable(facts: readonly ToldFact[], tools: Press): readonly Content[] {
  if (facts.length === 0) return [];
  const rows = facts.map(({ label, text, note }): TableCell[] => [
    { text: label, style: 'small' },
    note === undefined ? { text } : { stack: [{ text }, { text: note, style: 'small' }] },
  ]);
  return [
    {
      margin: [0, 2, 0, 4],
      table: {
        widths: [130, '*'],
        body: rows,
        dontBreakRows: facts.every(({ text }) => text.length <= RUNS_ON),
      },
      layout: { ...calmTable(tools.colours, 0), paddingTop: () => 3, paddingBottom: () => 3 },
    },
  ];
}

/** The history under its heading; nothing where all was asked for and nothing is known. */
export function toldHistory(
  { history, historyAsked }: ToldFacts,
  { letter, record }: PracticeWords,
  tools: Press,
): readonly Content[] {
  const lines = [
    ...(historyAsked ? [] : [paragraph(letter.historyNotAsked)]),
    ...toldTable(history, tools),
  ];
  return lines.length === 0 ? [] : [heading(record.historyTitle), ...lines];
}

/** The warning signs noted; that nobody asked is not the same as none. */
export function signText(
  signs: readonly string[],
  { signsAsked }: ToldFacts,
  words: PracticeWords['letter'],
): string {
  if (signs.length > 0) return fill(words.signs, { signs: signs.join(', ') });
  return signsAsked ? words.noSigns : words.signsNotAsked;
}

/** The exercises with their dose, in one line; nothing where none were chosen. */
export function exerciseLine(
  { exercises }: ToldFacts,
  words: PracticeWords['letter'],
): readonly Content[] {
  if (exercises.length === 0) return [];
  const told = exercises.map(({ name, sets, repeats, unit, daysPerWeek }) =>
    fill(words.exercise, { name, sets, repeats, unit, days: daysPerWeek }),
  );
  return [{ text: fill(words.exercises, { exercises: told.join('; ') }), margin: [0, 3, 0, 0] }];
}
