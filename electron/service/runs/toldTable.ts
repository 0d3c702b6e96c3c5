import {
  askedSessions,
  plannedSessions,
  NEXT_DAY_RESPONSES,
  type RampSession,
  type SessionOutcome,
} from '../../../core/index.ts';
import {
  createFormat,
  fill,
  OWNER_WORDS,
  sessionText,
  type Format,
  type OwnerWords,
} from '../../../templates/index.ts';
import type { RowRead } from '../../contract/calls/runs.ts';
import { LIMITS, limitSentence } from '../../contract/limits.ts';
import type { Language, Practice, SessionInput } from '../../contract/records.ts';
import type { Handlers } from '../database/context.ts';
import { readDay } from '../exchange/cells.ts';
import { readCsv, type TableRow } from '../exchange/csvRead.ts';
import { csvHead, csvLines } from '../exchange/csvWrite.ts';
import { guessSeparator } from '../exchange/guess.ts';
import { collect, type Material } from '../handouts/material.ts';
import { homeFileName } from '../handouts/fileNames.ts';
import { badField } from '../refuse.ts';

// The ticks of the plan's sheet as a table: day, what to do, done, minutes, next day, notes. The
// owner's spreadsheet may part its columns and write its days in a way of its own.

const COLUMNS = 6;
/** The answer to the next day that is no stiffness but a sign to stop. */
const LAME = NEXT_DAY_RESPONSES.length + 1;

/** The outings of the plan that are not told of yet as a table to fill in; null where none is. */
export function tableToFill(
  material: Material,
  language: Language,
): { readonly name: string; readonly text: string } | null {
  const { file, context, state } = material;
  const told = new Set(file.sessions.map(({ day }) => day));
  const asked = askedSessions(plannedSessions(file.plans), state.unasked, file.sessions);
  const open = asked.filter(({ day }) => !told.has(day));
  if (open.length === 0) return null;
  const words = OWNER_WORDS[language];
  return {
    name: homeFileName(material, 'runs', 'csv'),
    text: writeTable(open, words, createFormat(context.practice, words.frame.numbers)),
  };
}

/** @throws Refusal where every outing is told of */
export const toldTable: Handlers<'runs/table'>['runs/table'] = async (
  context,
  { dogId, language },
) => {
  const material = await collect(context, dogId, null);
  const table = tableToFill(material, language ?? material.language);
  if (table === null) {
    throw badField('dogId', 'There is no outing in the plan that is not told of yet.');
  }
  return { fileName: table.name, base64: Buffer.from(table.text).toString('base64'), leftOut: [] };
};

function writeTable(sessions: readonly RampSession[], words: OwnerWords, format: Format): string {
  const { told } = words.goesHome;
  const heads = [
    told.day,
    told.planned,
    fill(told.done, told),
    told.minutes,
    told.nextDay,
    told.note,
  ];
  const rows = sessions.map((session) => ({
    [told.day]: session.day,
    [told.planned]: sessionText(session, words.plan, format),
  }));
  return csvHead(heads) + csvLines(heads, rows);
}

/** The rows of a table that came back, those without an answer left out. */
export function readTold(
  text: string,
  dayFormat: Practice['dayFormat'],
  today: string,
): readonly RowRead[] {
  const [, ...rows] = readCsv(text, guessSeparator(text));
  if (rows.length === 0) throw badField('token', 'This is neither a track nor a table of runs.');
  return rows
    .filter(({ cells }) => cells.slice(2, COLUMNS).some((cell) => cell !== ''))
    .map((row) => readRow(row, dayFormat, today));
}

function readRow(
  { line, cells }: TableRow,
  dayFormat: Practice['dayFormat'],
  today: string,
): RowRead {
  const [day = '', , done = '', minutes = '', nextDay = '', note = ''] = cells;
  const refused = (problem: string): RowRead => ({ line, told: null, problem });
  const read = dayOf(day, dayFormat);
  if (read === null) return refused(`The day must be written YYYY-MM-DD or ${dayFormat}.`);
  if (read > today) return refused('The day must not lie in the future.');
  const outcome = outcomeOf(done);
  if (outcome === null) return refused('Done must be yes, partly, no or held back.');
  const runMinutes = minutesOf(minutes);
  if (Number.isNaN(runMinutes)) return refused(limitSentence(LIMITS.runMinutes));
  const answer = nextDay === '' ? 0 : Number(/^[1-6]/.exec(nextDay)?.[0] ?? Number.NaN);
  if (Number.isNaN(answer)) return refused('The next day must be a number from 1 to 6.');
  return {
    line,
    problem: '',
    told: {
      ...NOTHING_MORE,
      day: read,
      outcome,
      runMinutes,
      nextDay: answer === 0 || answer === LAME ? null : NEXT_DAY_RESPONSES[answer - 1]!,
      signs: answer === LAME ? ['lameness'] : [],
      note: note.slice(0, 2000),
    },
  };
}

const NOTHING_MORE: Pick<SessionInput, 'longestRunMinutes' | 'runKm' | 'climbedM'> = {
  longestRunMinutes: null,
  runKm: null,
  climbedM: null,
};

/** As the table was made, or as a spreadsheet in the practice's country writes it. */
function dayOf(cell: string, dayFormat: Practice['dayFormat']): string | null {
  return readDay(cell, 'YYYY-MM-DD').value ?? readDay(cell, dayFormat).value;
}

/** In any language: the owner's may have changed since the table went out. */
function outcomeOf(cell: string): SessionOutcome | null {
  const said = cell.toLowerCase();
  for (const { goesHome } of Object.values(OWNER_WORDS)) {
    const { yes, partly, no, held } = goesHome.told;
    const found = { [yes]: 'done', [partly]: 'shortened', [no]: 'missed', [held]: 'held' } as const;
    if (Object.hasOwn(found, said)) return found[said] as SessionOutcome;
  }
  return null;
}

/** Null for an empty cell, NaN for one that is no time. */
function minutesOf(cell: string): number | null {
  if (cell === '') return null;
  const minutes = Number(/^(\d+(?:[.,]\d+)?)( ?min)?$/i.exec(cell)?.[1]?.replace(',', '.'));
  const { min, max } = LIMITS.runMinutes;
  return minutes >= min && minutes <= max ? minutes : Number.NaN;
}
