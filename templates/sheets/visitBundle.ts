import { assemble, type LabelSheet, type Sheet } from '../frame.ts';
import type { HandoutContext } from '../model.ts';
import type { HandoutDocument } from '../render.ts';
import type { OwnerWords } from '../words/words.ts';
import { assessmentRecordPart, type AssessmentRecordData } from './assessmentRecord.ts';
import { bowlLabelsPart, type BowlLabelsData } from './bowlLabels.ts';
import { feedingSheetPart, type FeedingSheetData } from './feedingSheet.ts';
import { heatCardPart, type HeatCardData } from './heatCard.ts';
import { kitSheetPart, type KitSheetData } from './kitSheet.ts';
import { progressReportPart, type ProgressReportData } from './progressReport.ts';
import { runningPlanPart, type RunningPlanData } from './runningPlan.ts';
import { strengthSheetPart, type StrengthSheetData } from './strengthSheet.ts';
import { vetLetterPart, type LetterWords, type VetLetterData } from './vetLetter.ts';

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
      return runningPlanPart(sheet.data, words.owner);
    case 'feeding-sheet':
      return feedingSheetPart(sheet.data, words.owner);
    case 'bowl-labels':
      return bowlLabelsPart(sheet.data, words.owner);
    case 'progress-report':
      return progressReportPart(sheet.data, words.owner);
    case 'heat-card':
      return heatCardPart(sheet.data, words.owner);
    case 'kit-sheet':
      return kitSheetPart(sheet.data, words.owner);
    case 'strength-sheet':
      return strengthSheetPart(sheet.data, words.owner);
    case 'vet-letter':
      return vetLetterPart(sheet.data, words.professional);
    case 'assessment-record':
      return assessmentRecordPart(sheet.data, words.professional);
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
