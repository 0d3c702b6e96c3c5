import type { Content, TableCell } from 'pdfmake/interfaces';
import type { Ramp } from '../../core/training.ts';
import { fill, type Format } from '../format.ts';
import type { Press } from '../frame.ts';
import type { OwnerWords } from '../words/words.ts';
import { BARE, calmTable, tickBox } from './layout.ts';

type Week = Ramp['weeks'][number];
type Session = Week['sessions'][number];
type PlanWords = OwnerWords['plan'];

/** Widths of the columns of a session inside its week, in points; the notes take the rest. */
const SESSION_WIDTHS = [62, '*', 44, 34, 26, 26, 30, 62] as const;
const WEEK_WIDTH = 78;

/** What to do in a session: bouts of running and walking, or one run without a break. */
export function sessionText(session: Session, words: PlanWords, format: Format): string {
  const { bouts } = session;
  if (bouts.count === 1) return fill(words.continuous, { run: format.minutes(bouts.runMinutes) });
  return fill(words.bouts, {
    count: bouts.count,
    run: format.minutes(bouts.runMinutes),
    walk: format.minutes(bouts.walkMinutes),
  });
}

function sessionRow(session: Session, words: PlanWords, format: Format): TableCell[] {
  return [
    { text: format.shortDay(session.day) },
    { text: sessionText(session, words, format) },
    { text: format.minutes(session.runMinutes), alignment: 'right' },
    { ...(tickBox(11) as object), alignment: 'center' } as TableCell,
    ...[1, 2, 3].map(() => ({ ...(tickBox(9) as object), alignment: 'center' }) as TableCell),
    { text: '' },
  ];
}

function weekCell(week: Week, number: number, words: PlanWords, format: Format): Content {
  const days = week.sessions.map((session) => session.day);
  const first = days[0];
  return {
    stack: [
      { text: fill(words.week, { week: number }), font: 'Serif', fontSize: 12 },
      ...(first === undefined ? [] : [{ text: format.day(first), style: 'small' }]),
      ...(week.recovery ? [easyTag(words.easyWeek)] : []),
      {
        text: fill(words.weekMinutes, { minutes: format.minutes(week.runMinutes) }),
        style: 'small',
      },
    ],
  };
}

/** A framed word: marks an easy week without the help of colour. */
function easyTag(text: string): Content {
  return {
    margin: [0, 1, 0, 2],
    table: { body: [[{ text, bold: true, fontSize: 9 }]] },
    layout: {
      hLineWidth: () => 0.9,
      vLineWidth: () => 0.9,
      paddingLeft: () => 4,
      paddingRight: () => 4,
      paddingTop: () => 1,
      paddingBottom: () => 1,
    },
  };
}

function headerRow(words: PlanWords): TableCell[] {
  const { columns } = words;
  const head = (text: string, alignment: 'left' | 'right' | 'center' = 'left'): TableCell => ({
    text,
    style: 'tableHead',
    alignment,
  });
  const sessionHead = [
    head(columns.day),
    head(columns.run),
    head(columns.minutes, 'right'),
    head(columns.done, 'center'),
    head(columns.fine, 'center'),
    head(columns.stiff, 'center'),
    head(columns.lame, 'center'),
    head(columns.notes),
  ];
  return [head(columns.week), sessionTable([sessionHead])];
}

function sessionTable(body: TableCell[][]): Content {
  return {
    table: { widths: [...SESSION_WIDTHS], body },
    layout: {
      ...BARE,
      hLineWidth: (row, node) => (row === 0 || row === node.table.body.length ? 0 : 0.4),
      hLineColor: () => '#d5dbd8',
      paddingLeft: () => 3,
      paddingRight: () => 3,
      paddingTop: () => 3.5,
      paddingBottom: () => 3.5,
    },
  };
}

/**
 * The plan as a log to tick: a row for each week that never splits over pages, the header on every
 * page. An easy week is named and shaded.
 */
export function weekTable(ramp: Ramp, words: PlanWords, tools: Press): Content {
  const rows = ramp.weeks.map((week, index) => [
    weekCell(week, index + 1, words, tools.format),
    sessionTable(week.sessions.map((session) => sessionRow(session, words, tools.format))),
  ]);
  const shaded = (row: number) => ramp.weeks[row - 1]?.recovery === true;
  return {
    table: {
      headerRows: 1,
      keepWithHeaderRows: 1,
      dontBreakRows: true,
      widths: [WEEK_WIDTH, '*'],
      body: [headerRow(words), ...rows],
    },
    layout: {
      ...calmTable(tools.colours),
      fillColor: (row: number) => (shaded(row) ? tools.colours.tint : null),
      paddingLeft: (column: number) => (column === 0 ? 5 : 0),
      paddingRight: () => 0,
    },
  };
}
