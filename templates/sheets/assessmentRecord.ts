import type { Content, TableCell } from 'pdfmake/interfaces';
import type { IsoDay } from '../../core/day.ts';
import type { Figure } from '../../core/figure.ts';
import type { FedFood } from '../../core/nutrition.ts';
import { raised } from '../../core/quantityText.ts';
import type { JudgedMeasurement, Screening } from '../../core/training.ts';
import { fill } from '../format.ts';
import { press, type Press, type Sheet } from '../frame.ts';
import type { Findings, HandoutContext, ToldFacts } from '../model.ts';
import { bodyFacts, consentFact } from '../parts/findings.ts';
import {
  BARE,
  factGrid,
  heading,
  lastShort,
  paragraph,
  section,
  tableHead,
  writingLine,
  type Fact,
} from '../parts/layout.ts';
import {
  figureTexts,
  headedTable,
  limbTable,
  measurementTable,
  screeningResult,
  sexText,
} from '../parts/professional.ts';
import { planLine, type RecordPlan } from '../parts/planLine.ts';
import { levelMark, referencesBelow } from '../parts/sources.ts';
import { exerciseLine, signText, toldHistory, toldTable } from '../parts/told.ts';
import { ownerRuns, type LetterWords } from './vetLetter.ts';

export interface AssessmentRecordData extends HandoutContext {
  readonly kind: 'intake' | 'follow-up';
  readonly ageMonths: number;
  readonly findings: Findings;
  /** Labels of the warning signs noted. */
  readonly signs: readonly string[];
  /** "same scale" and so on; null where there was nothing to weigh by, or to compare with. */
  readonly weighingMethod: string | null;
  /** As they stand in the record: "cleared in writing", "not tested" and so on. */
  readonly activity: string;
  readonly conditioning: string;
  readonly walkBase: string;
  readonly told: ToldFacts;
  /** Null where an injury or surgery is told by itself, and where nobody asked. */
  readonly surgery: string | null;
  readonly airwayDisease: boolean;
  /** The vet's written clearance for a short nose or airway disease. */
  readonly airwayClearance: boolean;
  readonly radiographicClearance: boolean;
  readonly diet: readonly FedFood[];
  /** Measurements of the visit, as core judged them. */
  readonly measurements: readonly JudgedMeasurement[];
  readonly screening: Screening;
  /** Every figure shown to the practitioner at this visit. */
  readonly figures: readonly Figure[];
  readonly foodDecision: { readonly kcalPerDay: number; readonly verdict: string } | null;
  readonly plan: RecordPlan | null;
  readonly notes: string;
  /** What was changed after the visit was first saved, oldest first. */
  readonly amendments: readonly Amendment[];
}

/** A change of a saved visit. */
export interface Amendment {
  readonly day: IsoDay;
  /** Name or initials; empty where nobody is known. */
  readonly by: string;
  readonly reason: string;
}

/** From this age on, years are what is said of a dog. */
const MONTHS_OF_YOUTH = 24;

function ageText(months: number, words: LetterWords['practice']['record']): string {
  if (months >= MONTHS_OF_YOUTH) return fill(words.years, { years: Math.floor(months / 12) });
  return months === 1 ? words.month : fill(words.months, { months });
}

function dogAndOwner(data: AssessmentRecordData, words: LetterWords, tools: Press): Content {
  const { record, letter } = words.practice;
  const { dog, owner } = data;
  const { format } = tools;
  const facts: Fact[] = [
    { name: record.visit, value: `${record.kinds[data.kind]}, ${format.day(data.findings.day)}` },
    { name: record.born, value: format.day(dog.birthDay) },
    { name: record.age, value: ageText(data.ageMonths, record) },
    { name: record.sex, value: sexText(dog, letter) },
    { name: record.chip, value: dog.chip },
    ...(dog.withersCm === null
      ? []
      : [{ name: record.withers, value: format.height(dog.withersCm) }]),
    { name: record.owner, value: owner.name },
    { name: record.phone, value: owner.phone },
    { name: record.email, value: owner.email },
    {
      name: record.vet,
      value: [owner.vetName, owner.vetPractice].filter((t) => t !== '').join(', '),
    },
  ];
  return section(record.dogTitle, [
    factGrid(
      facts.filter((fact) => fact.value !== ''),
      tools.colours,
    ),
  ]);
}

function found(data: AssessmentRecordData, words: LetterWords, tools: Press): readonly Content[] {
  const { record, letter } = words.practice;
  const { findings, signs, told } = data;
  const facts: Fact[] = [
    ...bodyFacts(findings, words.owner.findings, tools.format),
    consentFact(findings, words.owner.findings, tools.format),
    ...(data.weighingMethod === null
      ? []
      : [{ name: record.weighing, value: data.weighingMethod }]),
    { name: record.activity, value: data.activity },
    { name: record.conditioning, value: data.conditioning },
    { name: record.walkBase, value: data.walkBase },
    ...historyFacts(data, record),
  ];
  return [
    section(record.foundTitle, [
      factGrid(facts, tools.colours),
      { text: signText(signs, told, letter) },
    ]),
    ...(findings.gaitNote.trim() === '' ? [] : [paragraph(findings.gaitNote)]),
    limbTable(findings, letter, tools),
    ...toldTable(told.found, tools),
    ...measurementTable(data.measurements, letter, tools),
    ...toldHistory(told, words.practice, tools),
  ];
}

/** What is on record of surgery and airways; a clearance only where there is one or it is asked for. */
function historyFacts(
  data: AssessmentRecordData,
  record: LetterWords['practice']['record'],
): readonly Fact[] {
  const yesNo = (value: boolean) => (value ? record.yes : record.no);
  const { surgery, airwayDisease, airwayClearance } = data;
  return [
    ...(surgery === null ? [] : [{ name: record.surgery, value: surgery }]),
    ...(data.told.historyAsked ? [{ name: record.airway, value: yesNo(airwayDisease) }] : []),
    ...(airwayDisease || airwayClearance
      ? [{ name: record.airwayClearance, value: yesNo(airwayClearance) }]
      : []),
    ...(data.radiographicClearance ? [{ name: record.radiographs, value: record.yes }] : []),
  ];
}

function diet(data: AssessmentRecordData, words: LetterWords, tools: Press): Content {
  const { record } = words.practice;
  if (data.diet.length === 0) return section(record.dietTitle, [{ text: record.noDiet }]);
  const { format } = tools;
  const rows = data.diet.map((food): TableCell[] => [
    { text: food.treat === true ? `${food.name} (${record.diet.treat})` : food.name },
    { text: format.trimmed(format.inUnit(food.kcalPer100g, 'kcal').value), alignment: 'right' },
    { text: format.grams(food.gramsPerDay), alignment: 'right' },
  ]);
  return headedTable(
    record.dietTitle,
    ['*', 100, 90],
    [
      tableHead(record.diet.food),
      tableHead(fill(record.diet.energy, { unit: format.inUnit(0, 'kcal').unit }), 'right'),
      tableHead(record.diet.grams, 'right'),
    ],
    rows,
    tools,
  );
}

function figures(data: AssessmentRecordData, words: LetterWords, tools: Press): readonly Content[] {
  const { record } = words.practice;
  if (data.figures.length === 0) return [];
  const rows = data.figures.map((item): TableCell[] => {
    const { value, range } = figureTexts(item, tools.format);
    return [
      { text: item.label },
      { text: value, alignment: 'right', bold: true },
      {
        stack: [
          { text: range },
          ...(item.rangeMeaning === undefined ? [] : [{ text: item.rangeMeaning, style: 'foot' }]),
        ],
      },
      { text: raised(item.formula), style: 'small' },
      { text: levelMark(item.evidence) },
    ];
  });
  return [
    headedTable(
      record.figuresTitle,
      [104, 78, 92, '*', 24],
      [
        tableHead(record.figures.what),
        tableHead(record.figures.value, 'right'),
        tableHead(record.figures.range),
        tableHead(record.figures.formula),
        tableHead(record.figures.from),
      ],
      rows,
      tools,
    ),
  ];
}

function decisions(
  data: AssessmentRecordData,
  words: LetterWords,
  tools: Press,
): readonly Content[] {
  const { record } = words.practice;
  const { foodDecision, plan } = data;
  const exercises = exerciseLine(data.told, words.practice.letter);
  const lines = [
    ...(foodDecision === null
      ? []
      : [
          fill(record.foodDecision, {
            energy: tools.format.energy(foodDecision.kcalPerDay),
            verdict: foodDecision.verdict,
          }),
        ]),
    ...(plan === null
      ? []
      : [
          planLine(plan, record, tools.format),
          ownerRuns(plan.ramp, words.practice.letter, tools.format),
        ].filter((line) => line !== '')),
  ];
  if (lines.length + exercises.length === 0) return [];
  return [section(record.decisionTitle, [...lines.map((text) => ({ text })), ...exercises])];
}

/** Free notes, a paragraph a line, so that a long note runs over pages. */
function notes(data: AssessmentRecordData, words: LetterWords): readonly Content[] {
  const lines = data.notes.split('\n').filter((line) => line.trim() !== '');
  if (lines.length === 0) return [];
  return [heading(words.practice.record.notesTitle), ...lines.map((line) => paragraph(line, 3))];
}

function amendments(
  data: AssessmentRecordData,
  words: LetterWords,
  { format }: Press,
): readonly Content[] {
  if (data.amendments.length === 0) return [];
  const { record } = words.practice;
  const lines = data.amendments.map(({ day, by, reason }) =>
    by === ''
      ? fill(record.amended, { day: format.day(day), reason })
      : fill(record.amendedBy, { day: format.day(day), by, reason }),
  );
  return [
    heading(record.amendedTitle),
    ...lines.slice(0, -1).map((line) => paragraph(line, 3)),
    {
      stack: [
        ...lines.slice(-1).map((line) => paragraph(line, 3)),
        { text: record.amendedNote, style: 'small' },
      ],
    },
  ];
}

function signature(words: LetterWords, tools: Press): Content {
  const width = (tools.width - 24) / 2 - 70;
  const cells = words.practice.record.signature.flatMap((text) => [
    { text, style: 'small', margin: [0, 24, 0, 0] as [number, number, number, number] },
    writingLine(width, tools.colours, 34),
  ]);
  return { table: { widths: [66, '*', 66, '*'], body: [cells] }, layout: BARE, unbreakable: true };
}

/** The whole assessment of one visit, for the practice's own file. */
export function assessmentRecord(data: AssessmentRecordData, words: LetterWords): Sheet {
  const tools = press(data, words.owner.frame);
  const { record, letter } = words.practice;
  const because = [
    ...data.figures,
    ...data.screening.reasons,
    ...data.measurements.map((item) => item.figure),
  ];
  const told = [
    ...decisions(data, words, tools),
    ...notes(data, words),
    ...amendments(data, words, tools),
  ];
  const { above, last } = lastShort(told);
  const end = referencesBelow(
    [...last, signature(words, tools)],
    because,
    record.referencesTitle,
    words.owner.sources,
  );
  return {
    words: words.owner.frame,
    kind: record.kind,
    title: fill(record.title, { dog: data.dog.name }),
    body: [
      dogAndOwner(data, words, tools),
      ...found(data, words, tools),
      diet(data, words, tools),
      ...toldTable(data.told.feeding, tools),
      screeningResult(
        data.screening,
        data.dog.name,
        // The letter speaks to the vet; a record speaks of the vet.
        { ...letter, outcomes: { ...letter.outcomes, 'vet first': record.vetFirst } },
        tools.format,
      ),
      ...figures(data, words, tools),
      ...above,
      ...end.body,
    ],
    end: end.end,
  };
}
