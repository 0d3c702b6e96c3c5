import type { Column, Content, TableCell } from 'pdfmake/interfaces';
import { outingMinutes, stepBackWeek } from '../../core/ramp/outing.ts';
import type { WeekLoad } from '../../core/ramp/weekSeries.ts';
import type { Ramp, RampSession, RampWeek } from '../../core/training.ts';
import { isEasy } from '../charts/weekLadder.ts';
import { fill, type Format } from '../format.ts';
import type { Press } from '../frame.ts';
import type { OwnerWords } from '../words/words.ts';
import { BARE, calmTable, tableHead, tickBox } from './layout.ts';

type PlanWords = OwnerWords['plan'];

/** Widths of the columns of a session in points; the notes take the rest. */
const SESSION_WIDTHS = [54, 184, 64, 28, 24, 24, 28, '*'] as const;

/** What to do in a session: a brisk walk, bouts of running and walking, or one run without a break. */
export function sessionText(session: RampSession, words: PlanWords, format: Format): string {
  const run = format.minutes(session.runMin);
  if (session.kind === 'walk') return fill(words.walk, { run });
  const text =
    session.kind === 'continuous'
      ? fill(words.continuous, { run, effort: words.efforts[session.effort] })
      : fill(words.bouts, {
          count: session.repeats,
          run,
          walk: format.minutes(session.walkMin),
        });
  // A plan kept from an older version has no focus.
  const focus = session.focus ?? null;
  return focus === null ? text : `${text}, ${focusText(focus, session.dose, words, format)}`;
}

/** The one new thing; of a plan of an older release without its dose. */
function focusText(
  focus: NonNullable<RampSession['focus']>,
  dose: RampSession['dose'],
  words: PlanWords,
  format: Format,
): string {
  if (dose === undefined) return words.focus[focus];
  const { times, seconds } = dose;
  const time = seconds < 60 ? `${seconds}\u00a0s` : format.minutes(seconds / 60);
  return fill(words.doses[focus], { count: times, time });
}

/** Minutes of running and, where it takes longer, of the whole outing: "6 / 36 min". */
function minutesText(session: RampSession, format: Format): string {
  const whole = outingMinutes(session);
  const run = format.minutes(session.runMinutes);
  if (whole <= session.runMinutes) return run;
  return `${run.replace(/\s*min$/u, '')} / ${format.minutes(whole)}`;
}

/** About how far, where the owner's pace is known. */
function farText({ distanceKm }: RampSession, format: Format): Content {
  return distanceKm === null
    ? ''
    : { text: `  ≈\u00a0${format.distance(distanceKm)}`, style: 'small' };
}

function sessionRow(session: RampSession, words: PlanWords, format: Format): TableCell[] {
  return [
    { text: format.shortDay(session.day) },
    { text: [sessionText(session, words, format), farText(session, format)] },
    { text: minutesText(session, format), alignment: 'right' },
    { ...(tickBox(11) as object), alignment: 'center' } as TableCell,
    ...[1, 2, 3].map(() => ({ ...(tickBox(9) as object), alignment: 'center' }) as TableCell),
    { text: '' },
  ];
}

/** What holds for a week beside its days. */
interface OfWeek {
  readonly load: WeekLoad;
  readonly between: string | null;
  readonly stepBack: number | null;
}

/**
 * The line over a week's sessions: number, first day, minutes in all, ground, who sets the pace, what
 * the days between hold, where one step back leads, and whether it is easy.
 */
function weekLine(
  week: RampWeek,
  words: PlanWords,
  format: Format,
  { load, between, stepBack }: OfWeek,
): Content {
  const grounds = new Set(
    week.sessions
      .filter(({ kind }) => kind !== 'walk')
      .map(({ surface }) => words.grounds[surface]),
  );
  const about = [
    format.day(week.startDay),
    fill(words.weekMinutes, { minutes: format.minutes(load.planned) }),
    ...grounds,
    ...(week.paceSetBy === undefined ? [] : [words.pace[week.paceSetBy]]),
    ...(between === null ? [] : [between]),
    ...(stepBack === null ? [] : [fill(words.stepBack, { week: stepBack })]),
  ];
  return {
    columns: [
      {
        width: 'auto',
        text: fill(words.week, { week: week.number }),
        font: 'Serif',
        fontSize: 11.5,
      },
      ...(isEasy(load) ? [easyTag(words.easyWeek)] : []),
      { width: '*', text: about.join('  ·  '), style: 'small', margin: [0, 2.5, 0, 0] },
    ],
    columnGap: 10,
    margin: [3, 1, 0, 0],
  };
}

/** A framed word: marks an easy week without the help of colour. */
function easyTag(text: string): Column {
  return {
    width: 'auto',
    margin: [0, 1, 0, 0],
    table: { body: [[{ text, bold: true, fontSize: 9 }]] },
    layout: {
      hLineWidth: () => 0.9,
      vLineWidth: () => 0.9,
      paddingLeft: () => 4,
      paddingRight: () => 4,
      paddingTop: () => 0.5,
      paddingBottom: () => 0,
    },
  };
}

function headerRow(words: PlanWords): TableCell[] {
  const { columns } = words;
  const sessionHead = [
    tableHead(columns.day),
    tableHead(columns.run),
    tableHead(columns.minutes, 'right'),
    tableHead(columns.done, 'center'),
    tableHead(columns.fine, 'center'),
    tableHead(columns.stiff, 'center'),
    tableHead(columns.lame, 'center'),
    tableHead(columns.notes),
  ];
  const nextDay = { ...(tableHead(columns.nextDay, 'center') as object), colSpan: 3 } as TableCell;
  const groupHead = ['', '', '', '', nextDay, '', '', ''].map((cell) =>
    cell === '' ? tableHead('') : cell,
  );
  return [sessionTable([groupHead, sessionHead], false)];
}

function sessionTable(body: TableCell[][], ruled = true): Content {
  return {
    table: { widths: [...SESSION_WIDTHS], body },
    layout: {
      ...BARE,
      hLineWidth: (row, node) => (!ruled || row === 0 || row === node.table.body.length ? 0 : 0.4),
      hLineColor: () => '#d5dbd8',
      paddingLeft: () => 3,
      paddingRight: () => 3,
      paddingTop: () => (ruled ? 2 : 0.5),
      paddingBottom: () => (ruled ? 1.2 : 0.5),
    },
  };
}

/**
 * The `weeks` of a plan as a log to tick: a row for each week that never splits over pages, the header on every
 * page. An easy week is named and shaded.
 */
export function weekTable(
  ramp: Ramp,
  words: PlanWords,
  tools: Press,
  of: {
    readonly weeks: readonly RampWeek[];
    /** The same weeks. */
    readonly load: readonly WeekLoad[];
    readonly between: string | null;
  },
): Content {
  const { weeks, load, between } = of;
  const rows = weeks.map((week, index) => [
    {
      stack: [
        weekLine(week, words, tools.format, {
          load: load[index]!,
          between,
          // May lie before the first week printed: the owner has it on the sheet before.
          stepBack: stepBackWeek(ramp.weeks, ramp.weeks.indexOf(week)),
        }),
        sessionTable(week.sessions.map((session) => sessionRow(session, words, tools.format))),
      ],
    },
  ]);
  const shaded = (row: number) => {
    const week = load[row - 1];
    return week !== undefined && isEasy(week);
  };
  return {
    table: {
      headerRows: 1,
      keepWithHeaderRows: 1,
      dontBreakRows: true,
      widths: ['*'],
      body: [headerRow(words), ...rows],
    },
    layout: {
      ...calmTable(tools.colours),
      paddingTop: () => 3,
      paddingBottom: () => 2.5,
      fillColor: (row: number) => (shaded(row) ? tools.colours.tint : null),
      paddingLeft: () => 0,
      paddingRight: () => 0,
    },
  };
}
