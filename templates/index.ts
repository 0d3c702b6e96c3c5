// The handouts: data in, a pdfmake document out. `renderPdf` in render.ts makes the file; who only
// collects the data need not read pdfmake for it.
export type { HandoutDocument, RenderedPdf, RenderOptions } from './render.ts';
export type {
  Consent,
  DogFacts,
  Findings,
  HandoutContext,
  LimbGrades,
  Logo,
  MuscleCondition,
  Override,
  OwnerFacts,
  PracticePrint,
  ToldFact,
  ToldFacts,
} from './model.ts';
export { checkAccent, type AccentCheck } from './colour.ts';
export { checkLogo, LOGO_MAX_BYTES, type LogoCheck } from './logo.ts';
export { FONT_FILE_NAMES } from './fonts.ts';
export {
  assessmentRecord,
  type Amendment,
  type AssessmentRecordData,
} from './sheets/assessmentRecord.ts';
export { bowlLabels, type BowlLabelsData } from './sheets/bowlLabels.ts';
export { feedingSheet, type FeedingSheetData } from './sheets/feedingSheet.ts';
export { heatCard, type HeatCardData } from './sheets/heatCard.ts';
export { kitSheet, type KitSheetData } from './sheets/kitSheet.ts';
export {
  progressReport,
  type FoodProgress,
  type ProgressReportData,
  type RunningProgress,
} from './sheets/progressReport.ts';
export { runningPlan, type PlanOnward, type RunningPlanData } from './sheets/runningPlan.ts';
export { strengthSheet, type StrengthSheetData } from './sheets/strengthSheet.ts';
export {
  vetLetter,
  type LetterHistory,
  type LetterWords,
  type VetLetterData,
} from './sheets/vetLetter.ts';
export { visitBundle, type BundleWords, type VisitSheet } from './sheets/visitBundle.ts';
export { createFormat, fill, type Format } from './format.ts';
export { sessionText } from './parts/weekTable.ts';
export { en } from './words/en.ts';
export { LANGUAGES, OWNER_WORDS, type Language } from './words/index.ts';
export { enPractice, type PracticeWords } from './words/enPractice.ts';
export { wordsFor, type OwnerWords } from './words/words.ts';
