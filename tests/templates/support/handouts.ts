import { EXERCISES, gaitChanges } from '../../../core/index.ts';
import {
  en,
  OWNER_WORDS,
  visitBundle,
  type HandoutDocument,
  type Language,
} from '../../../templates/index.ts';
import {
  assessmentRecord,
  bowlLabels,
  feedingSheet,
  heatCard,
  kitSheet,
  progressReport,
  runningPlan,
  strengthSheet,
  vetLetter,
} from './alone.ts';
import type { Paper } from '../../../templates/theme.ts';
import {
  amendedRecord,
  bareLetter,
  letter,
  letterWords,
  longNoteRecord,
  record,
} from './letters.ts';
import {
  bareMeals,
  bowlLabelsOf,
  changingMeals,
  editedMeals,
  fullMeals,
  longNamesMeals,
  meals,
  referredMeals,
} from './meals.ts';
import { pngLogo, svgLogo } from './logos.ts';
import {
  branded,
  context,
  firstWarmth,
  hardyDog,
  longNames,
  shortNosedDog,
  warmDog,
} from './people.ts';
import {
  firstWeighing,
  manyReasons,
  longNamesProgress,
  noWeighing,
  progress,
  stopped,
} from './progress.ts';
import { allSigns, longNamesPlan, longPlan, noPlan, onwardPlan, plan, walks } from './plans.ts';

/** A handout made of invented data, for tests and page pictures alike. */
export interface SampleHandout {
  readonly name: string;
  /** Pages on A4 and on Letter. */
  readonly pages: Readonly<Record<Paper, number>>;
  /** Labels fill the page from edge to edge. */
  readonly labels?: boolean;
  build(paper: Paper): HandoutDocument;
}

export const PAPERS: readonly Paper[] = ['A4', 'LETTER'];
/** The instant written into every sample, so that the bytes stay the same. */
export const INSTANT = new Date('2025-12-01T09:00:00Z');

const ENGLISH: readonly SampleHandout[] = [
  {
    name: 'running-plan',
    pages: { A4: 5, LETTER: 5 },
    build: (paper) => runningPlan(plan(paper), en),
  },
  {
    name: 'running-plan-onward',
    pages: { A4: 6, LETTER: 6 },
    build: (paper) => runningPlan(onwardPlan(paper), en),
  },
  {
    name: 'walking-programme',
    pages: { A4: 3, LETTER: 3 },
    build: (paper) => runningPlan(walks(paper), en),
  },
  {
    name: 'running-plan-40-weeks',
    pages: { A4: 8, LETTER: 8 },
    build: (paper) => runningPlan(longPlan(paper), en),
  },
  {
    name: 'running-plan-nothing-known',
    pages: { A4: 2, LETTER: 2 },
    build: (paper) => runningPlan(noPlan(paper), en),
  },
  {
    name: 'running-plan-long-names',
    pages: { A4: 6, LETTER: 7 },
    build: (paper) => runningPlan(longNamesPlan(paper), en),
  },
  {
    name: 'running-plan-all-signs',
    pages: { A4: 3, LETTER: 3 },
    build: (paper) => runningPlan(allSigns(paper), en),
  },
  {
    name: 'vet-letter-all-signs',
    pages: { A4: 2, LETTER: 3 },
    build: (paper) =>
      vetLetter({ ...bareLetter(paper), screening: allSigns(paper).screening }, letterWords),
  },
  {
    name: 'progress-report-many-reasons',
    pages: { A4: 3, LETTER: 3 },
    build: (paper) => progressReport(manyReasons(paper), en),
  },
  {
    name: 'feeding-sheet',
    pages: { A4: 1, LETTER: 1 },
    build: (paper) => feedingSheet(meals(paper), en),
  },
  {
    name: 'feeding-sheet-edited',
    pages: { A4: 1, LETTER: 1 },
    build: (paper) => feedingSheet(editedMeals(paper), en),
  },
  {
    name: 'feeding-sheet-six-foods',
    pages: { A4: 2, LETTER: 2 },
    build: (paper) => feedingSheet(fullMeals(paper), en),
  },
  {
    name: 'feeding-sheet-bare',
    pages: { A4: 1, LETTER: 1 },
    build: (paper) => feedingSheet(bareMeals(paper), en),
  },
  {
    name: 'feeding-sheet-referred',
    pages: { A4: 1, LETTER: 1 },
    build: (paper) => feedingSheet(referredMeals(paper), en),
  },
  {
    name: 'feeding-sheet-long-names',
    pages: { A4: 2, LETTER: 2 },
    build: (paper) => feedingSheet(longNamesMeals(paper), en),
  },
  {
    name: 'bowl-labels',
    pages: { A4: 1, LETTER: 1 },
    labels: true,
    build: (paper) => bowlLabels(bowlLabelsOf(meals(paper)), en),
  },
  {
    name: 'bowl-labels-changing',
    pages: { A4: 1, LETTER: 2 },
    labels: true,
    build: (paper) => bowlLabels(bowlLabelsOf(changingMeals(paper)), en),
  },
  {
    name: 'bowl-labels-long-names',
    pages: { A4: 1, LETTER: 2 },
    labels: true,
    build: (paper) => bowlLabels(bowlLabelsOf(longNamesMeals(paper)), en),
  },
  {
    name: 'progress-report',
    pages: { A4: 2, LETTER: 2 },
    build: (paper) => progressReport(progress(paper), en),
  },
  {
    name: 'progress-report-first-weighing',
    pages: { A4: 1, LETTER: 1 },
    build: (paper) => progressReport(firstWeighing(paper), en),
  },
  {
    name: 'progress-report-no-weighing',
    pages: { A4: 1, LETTER: 1 },
    build: (paper) => progressReport(noWeighing(paper), en),
  },
  {
    name: 'progress-report-stopped',
    pages: { A4: 2, LETTER: 2 },
    build: (paper) => progressReport(stopped(paper), en),
  },
  {
    name: 'progress-report-long-names',
    pages: { A4: 2, LETTER: 3 },
    build: (paper) => progressReport(longNamesProgress(paper), en),
  },
  {
    name: 'heat-card',
    pages: { A4: 1, LETTER: 1 },
    build: (paper) => heatCard({ ...context(paper), heat: warmDog }, en),
  },
  {
    name: 'heat-card-hardy',
    pages: { A4: 1, LETTER: 1 },
    build: (paper) => heatCard({ ...context(paper), heat: hardyDog }, en),
  },
  {
    name: 'heat-card-short-nosed',
    pages: { A4: 1, LETTER: 1 },
    build: (paper) => heatCard({ ...context(paper), heat: shortNosedDog }, en),
  },
  {
    name: 'heat-card-first-warmth',
    pages: { A4: 1, LETTER: 1 },
    build: (paper) => heatCard({ ...context(paper), heat: firstWarmth }, en),
  },
  {
    name: 'heat-card-long-names',
    pages: { A4: 2, LETTER: 2 },
    build: (paper) => heatCard({ ...longNames(paper), heat: warmDog }, en),
  },
  {
    name: 'strength-sheet',
    pages: { A4: 1, LETTER: 1 },
    build: (paper) => strengthSheet({ ...context(paper), exercises: fourExercises }, en),
  },
  {
    name: 'strength-sheet-long-names',
    pages: { A4: 2, LETTER: 3 },
    build: (paper) => strengthSheet({ ...longNames(paper), exercises: [...EXERCISES] }, en),
  },
  {
    name: 'strength-sheet-nothing',
    pages: { A4: 1, LETTER: 1 },
    build: (paper) => strengthSheet({ ...context(paper), exercises: [] }, en),
  },
  {
    name: 'kit-sheet',
    pages: { A4: 1, LETTER: 1 },
    build: (paper) => kitSheet({ ...context(paper), pace: gaitChanges({ heightM: 0.55 }) }, en),
  },
  {
    name: 'kit-sheet-long-names',
    pages: { A4: 2, LETTER: 2 },
    build: (paper) => kitSheet(longNames(paper), en),
  },
  {
    name: 'kit-sheet-logo',
    pages: { A4: 1, LETTER: 1 },
    build: (paper) => kitSheet(branded(paper, svgLogo), en),
  },
  {
    name: 'feeding-sheet-logo',
    pages: { A4: 1, LETTER: 1 },
    build: (paper) => feedingSheet({ ...meals(paper), ...branded(paper, pngLogo) }, en),
  },
  {
    name: 'vet-letter',
    pages: { A4: 3, LETTER: 3 },
    build: (paper) => vetLetter(letter(paper), letterWords),
  },
  {
    name: 'vet-letter-bare',
    pages: { A4: 2, LETTER: 2 },
    build: (paper) => vetLetter(bareLetter(paper), letterWords),
  },
  {
    name: 'assessment-record',
    pages: { A4: 3, LETTER: 3 },
    build: (paper) => assessmentRecord(record(paper), letterWords),
  },
  {
    name: 'assessment-record-amended',
    pages: { A4: 3, LETTER: 3 },
    build: (paper) => assessmentRecord(amendedRecord(paper), letterWords),
  },
  {
    name: 'assessment-record-long-note',
    pages: { A4: 5, LETTER: 6 },
    build: (paper) => assessmentRecord(longNoteRecord(paper), letterWords),
  },
  {
    name: 'visit-bundle',
    pages: { A4: 10, LETTER: 10 },
    build: (paper) =>
      visitBundle(
        context(paper),
        [
          { kind: 'running-plan', data: plan(paper) },
          { kind: 'feeding-sheet', data: meals(paper) },
          { kind: 'kit-sheet', data: context(paper) },
          { kind: 'vet-letter', data: letter(paper) },
        ],
        { owner: en, professional: letterWords },
      ),
  },
];

const fourExercises = EXERCISES.filter(({ id }) =>
  ['sit-to-stand', 'circles', 'paw-lifts', 'side-steps'].includes(id),
);

type PageCount = SampleHandout['pages'];

/** The owner's sheets in a language, with their pages: plan, feeding, progress, kit, heat. */
function ownerSheets(
  language: Language,
  pages: readonly [PageCount, PageCount, PageCount, PageCount, PageCount],
): readonly SampleHandout[] {
  const words = OWNER_WORDS[language];
  return [
    {
      name: `running-plan-${language}`,
      pages: pages[0],
      build: (paper) => runningPlan(plan(paper), words),
    },
    {
      name: `walking-programme-${language}`,
      pages: count(3, language === 'es' ? 3 : 4),
      build: (paper) => runningPlan(walks(paper), words),
    },
    {
      name: `feeding-sheet-${language}`,
      pages: pages[1],
      build: (paper) => feedingSheet(meals(paper), words),
    },
    {
      name: `bowl-labels-${language}`,
      pages: { A4: 1, LETTER: 2 },
      labels: true,
      build: (paper) => bowlLabels(bowlLabelsOf(changingMeals(paper)), words),
    },
    {
      name: `progress-report-${language}`,
      pages: pages[2],
      build: (paper) => progressReport(progress(paper), words),
    },
    {
      name: `kit-sheet-${language}`,
      pages: pages[3],
      build: (paper) => kitSheet(context(paper), words),
    },
    {
      name: `strength-sheet-${language}`,
      pages: { A4: 1, LETTER: 1 },
      build: (paper) => strengthSheet({ ...context(paper), exercises: fourExercises }, words),
    },
    {
      name: `heat-card-${language}`,
      pages: pages[4],
      build: (paper) => heatCard({ ...context(paper), heat: warmDog }, words),
    },
  ];
}

const count = (a4: number, letterSize: number): PageCount => ({ A4: a4, LETTER: letterSize });

export const SAMPLES: readonly SampleHandout[] = [
  ...ENGLISH,
  ...ownerSheets('de', [count(5, 5), count(1, 1), count(2, 2), count(1, 1), count(1, 1)]),
  ...ownerSheets('fr', [count(5, 5), count(1, 1), count(2, 2), count(1, 1), count(1, 1)]),
  ...ownerSheets('es', [count(5, 5), count(1, 1), count(2, 2), count(1, 1), count(1, 1)]),
];
