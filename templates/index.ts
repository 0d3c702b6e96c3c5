// The handouts: data in, a pdfmake document out. `renderPdf` in render.ts makes the file; who only
// collects the data need not read pdfmake for it.
export type { HandoutDocument } from './render.ts';
export type { Findings, HandoutContext, Logo, PracticePrint, ToldFacts } from './model.ts';
export type { Amendment, AssessmentRecordData } from './sheets/assessmentRecord.ts';
export type { BowlLabelsData } from './sheets/bowlLabels.ts';
export type { FeedingSheetData } from './sheets/feedingSheet.ts';
export type { ProgressReportData, RunningProgress } from './sheets/progressReport.ts';
export type { PlanOnward, RunningPlanData } from './sheets/runningPlan.ts';
export type { LetterHistory, LetterWords, VetLetterData } from './sheets/vetLetter.ts';
export { visitBundle, type VisitSheet } from './sheets/visitBundle.ts';
export { createFormat, fill, type Format } from './format.ts';
export { sessionText } from './parts/weekTable.ts';
export { en } from './words/en.ts';
export { LANGUAGES, OWNER_WORDS, type Language } from './words/index.ts';
export { enPractice } from './words/enPractice.ts';
export { wordsFor, type OwnerWords } from './words/words.ts';
