import type { Content, TableCell } from 'pdfmake/interfaces';
import type { Figure, Reason } from '../../core/figure.ts';
import { LIMBS, type LimbGrades } from '../../core/readiness/types.ts';
import type { JudgedMeasurement, Screening } from '../../core/training.ts';
import { fill, withUnit, type Format } from '../format.ts';
import type { Press } from '../frame.ts';
import type { DogFacts, Findings } from '../model.ts';
import type { PracticeWords } from '../words/enPractice.ts';
import { bullets, calmTable, listSection, section, tableHead } from './layout.ts';
import { levelMark } from './sources.ts';

// Parts of the sheets that one professional writes for another.

export function sexText(dog: DogFacts, words: PracticeWords['letter']): string {
  return words.sexes[`${dog.sex} ${dog.neuter}`];
}

/** Grades of each limb at walk and at trot; "not seen" where the limb was not looked at. */
export function limbTable(
  findings: Findings,
  words: PracticeWords['letter'],
  tools: Press,
): Content {
  const row = (name: string, grades: LimbGrades): TableCell[] => [
    { text: name },
    ...LIMBS.map((limb): TableCell => ({
      text: grades[limb] ?? words.notSeen,
      alignment: 'center',
    })),
  ];
  return section(words.limbTitle, [
    {
      table: {
        headerRows: 1,
        widths: [70, '*', '*', '*', '*'],
        body: [
          [tableHead(''), ...LIMBS.map((limb) => tableHead(words.limbs[limb], 'center'))],
          row(words.walk, findings.lamenessWalk),
          row(words.trot, findings.lamenessTrot),
        ],
      },
      layout: calmTable(tools.colours),
    },
    { text: words.limbNote, style: 'small', margin: [0, 3, 0, 0] },
  ]);
}

const amount = (value: number, unit: string, format: Format): string =>
  withUnit(format.trimmed(value, 1), unit);

function measurementRow(
  item: JudgedMeasurement,
  words: PracticeWords['letter'],
  format: Format,
): TableCell[] {
  const { figure, reference, change, error, verdict } = item;
  const changed =
    change === null
      ? words.verdicts[verdict]
      : `${amount(change, figure.unit, format)}: ${words.verdicts[verdict]}`;
  return [
    { text: figure.label },
    { text: amount(figure.value, figure.unit, format), alignment: 'right', bold: true },
    {
      text: reference === null ? '' : amount(reference, figure.unit, format),
      alignment: 'right',
    },
    { text: amount(error, figure.unit, format), alignment: 'right' },
    { text: changed },
    { text: levelMark(figure.evidence) },
  ];
}

/** Measurements with what they are compared with; the heading repeats with the table's header. */
export function measurementTable(
  measurements: readonly JudgedMeasurement[],
  words: PracticeWords['letter'],
  tools: Press,
): readonly Content[] {
  if (measurements.length === 0) return [];
  const { measured } = words;
  return [
    headedTable(
      words.measuredTitle,
      ['*', 52, 56, 56, 112, 22],
      [
        tableHead(measured.what),
        tableHead(measured.value, 'right'),
        tableHead(measured.reference, 'right'),
        tableHead(measured.error, 'right'),
        tableHead(measured.change),
        tableHead(''),
      ],
      measurements.map((item) => measurementRow(item, words, tools.format)),
      tools,
    ),
  ];
}

/** A table that may run over pages: its title is its first header row and never stands alone. */
export function headedTable(
  title: string,
  widths: readonly (number | '*')[],
  header: readonly TableCell[],
  rows: readonly TableCell[][],
  tools: Press,
): Content {
  const titleRow: TableCell[] = [
    { text: title, style: 'heading', colSpan: widths.length },
    ...widths.slice(1).map(() => ({ text: '' })),
  ];
  return {
    margin: [0, 8, 0, 2],
    table: {
      headerRows: 2,
      keepWithHeaderRows: 1,
      dontBreakRows: true,
      widths: [...widths],
      body: [titleRow, [...header], ...rows],
    },
    layout: {
      ...calmTable(tools.colours, 2),
      hLineWidth: (row, node) => {
        if (row === 2) return 1;
        return row < 2 || row === node.table.body.length ? 0 : 0.5;
      },
      paddingTop: () => 3,
      paddingBottom: () => 3,
    },
  };
}

/** Core's own sentences, with the level, for a reader of the trade. */
function professionalReasons(reasons: readonly Reason[], format: Format): Content {
  return bullets(
    reasons.map((reason) => ({
      text: [
        `${format.says(reason)}\u00a0${levelMark(reason.evidence)}`,
        ...('overriddenBecause' in reason && typeof reason.overriddenBecause === 'string'
          ? [{ text: ` Set aside: ${reason.overriddenBecause}`, bold: true }]
          : []),
      ],
    })),
  );
}

export function screeningResult(
  screening: Screening,
  dog: string,
  words: {
    readonly outcomeTitle: string;
    readonly outcomes: Readonly<Record<Screening['outcome'], string>>;
  },
  format: Format,
): Content {
  return listSection(
    words.outcomeTitle,
    [
      {
        text: fill(words.outcomes[screening.outcome], { dog }),
        bold: true,
        margin: [0, 0, 0, 3],
      },
      professionalReasons(screening.reasons, format),
    ],
    screening.reasons.length,
  );
}

/** The value of a figure in the practice's unit, and its range. */
export function figureTexts(
  item: Figure,
  format: Format,
): { readonly value: string; readonly range: string } {
  const shown = format.inUnit(item.value, item.unit);
  const decimals = Math.abs(shown.value) < 100 ? 1 : 0;
  const write = (value: number) => format.number(format.inUnit(value, item.unit).value, decimals);
  const range =
    item.low === undefined || item.high === undefined || write(item.low) === write(item.high)
      ? ''
      : format.range(write(item.low), write(item.high));
  return { value: withUnit(write(item.value), shown.unit), range };
}
