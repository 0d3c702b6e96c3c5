export { renderPdf } from './render.ts';
export type { HandoutDocument, RenderedPdf, RenderOptions } from './render.ts';
export type {
  Changeover,
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
} from './model.ts';
export { checkAccent, type AccentCheck } from './colour.ts';
export { checkLogo, LOGO_MAX_BYTES, type LogoCheck } from './logo.ts';
export { FONT_FILE_NAMES } from './fonts.ts';
export { feedingSheet, type FeedingSheetData } from './sheets/feedingSheet.ts';
export { kitSheet } from './sheets/kitSheet.ts';
export {
  progressReport,
  type FoodProgress,
  type ProgressReportData,
  type RunningProgress,
} from './sheets/progressReport.ts';
export { runningPlan, type RunningPlanData } from './sheets/runningPlan.ts';
export { en } from './words/en.ts';
export type { OwnerWords } from './words/words.ts';
