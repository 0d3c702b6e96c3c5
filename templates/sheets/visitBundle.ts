import { assemble, type LabelSheet, type Sheet } from '../frame.ts';
import type { HandoutContext } from '../model.ts';
import type { HandoutDocument } from '../render.ts';
import type { OwnerWords } from '../words/words.ts';
import { assessmentRecord, type AssessmentRecordData } from './assessmentRecord.ts';
import { bowlLabels, type BowlLabelsData } from './bowlLabels.ts';
import { feedingSheet, type FeedingSheetData } from './feedingSheet.ts';
import { heatCard, type HeatCardData } from './heatCard.ts';
import { kitSheet, type KitSheetData } from './kitSheet.ts';
import { progressReport, type ProgressReportData } from './progressReport.ts';
import { runningPlan, type RunningPlanData } from './runningPlan.ts';
import { strengthSheet, type StrengthSheetData } from './strengthSheet.ts';
import { vetLetter, type LetterWords, type VetLetterData } from './vetLetter.ts';

/** A sheet of a visit with its data. */
export type VisitSheet =
  | { readonly kind: 'running-plan'; readonly data: RunningPlanData }
  | { readonly kind: 'feeding-sheet'; readonly data: FeedingSheetData }
  | { readonly kind: 'bowl-labels'; readonly data: BowlLabelsData }
  | { readonly kind: 'progress-report'; readonly data: ProgressReportData }
  | { readonly kind: 'heat-card'; readonly data: HeatCardData }
  | { readonly kind: 'kit-sheet'; readonly data: KitSheetData }
  | { readonly kind: 'strength-sheet'; readonly data: StrengthSheetData }
  | { readonly kind: 'vet-letter'; readonly data: VetLetterData }
  | { readonly kind: 'assessment-record'; readonly data: AssessmentRecordData };

/** The owner's language for the owner's sheets; the professional's for the others. */
export interface BundleWords {
  readonly owner: OwnerWords;
  readonly professional: LetterWords;
}

function part(sheet: VisitSheet, words: BundleWords): Sheet | LabelSheet {
  switch (sheet.kind) {
    case 'running-plan':
      return runningPlan(sheet.data, words.owner);
    case 'feeding-sheet':
      return feedingSheet(sheet.data, words.owner);
    case 'bowl-labels':
      return bowlLabels(sheet.data, words.owner);
    case 'progress-report':
      return progressReport(sheet.data, words.owner);
    case 'heat-card':
      return heatCard(sheet.data, words.owner);
    case 'kit-sheet':
      return kitSheet(sheet.data, words.owner);
    case 'strength-sheet':
      return strengthSheet(sheet.data, words.owner);
    case 'vet-letter':
      return vetLetter(sheet.data, words.professional);
    case 'assessment-record':
      return assessmentRecord(sheet.data, words.professional);
  }
}

/** All sheets of a visit as one document, in the order given, numbered through. */
export function visitBundle(
  context: HandoutContext,
  sheets: readonly [VisitSheet, ...VisitSheet[]],
  words: BundleWords,
): HandoutDocument {
  const [first, ...others] = sheets;
  return assemble(context, [part(first, words), ...others.map((sheet) => part(sheet, words))]);
}
