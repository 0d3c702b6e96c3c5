import { assemble, type LabelSheet, type Sheet } from '../../../templates/frame.ts';
import type { HandoutContext, HandoutDocument } from '../../../templates/index.ts';
import * as record from '../../../templates/sheets/assessmentRecord.ts';
import * as labels from '../../../templates/sheets/bowlLabels.ts';
import * as feeding from '../../../templates/sheets/feedingSheet.ts';
import * as heat from '../../../templates/sheets/heatCard.ts';
import * as kit from '../../../templates/sheets/kitSheet.ts';
import * as progress from '../../../templates/sheets/progressReport.ts';
import * as running from '../../../templates/sheets/runningPlan.ts';
import * as strength from '../../../templates/sheets/strengthSheet.ts';
import * as letter from '../../../templates/sheets/vetLetter.ts';

/** A sheet as a document of its own, as the bundle of a visit puts it on paper. */
const alone =
  <Data extends HandoutContext, Words>(sheet: (data: Data, words: Words) => Sheet | LabelSheet) =>
  (data: Data, words: Words): HandoutDocument =>
    assemble(data, [sheet(data, words)]);

export const assessmentRecord = alone(record.assessmentRecord);
export const bowlLabels = alone(labels.bowlLabels);
export const feedingSheet = alone(feeding.feedingSheet);
export const heatCard = alone(heat.heatCard);
export const kitSheet = alone(kit.kitSheet);
export const progressReport = alone(progress.progressReport);
export const runningPlan = alone(running.runningPlan);
export const strengthSheet = alone(strength.strengthSheet);
export const vetLetter = alone(letter.vetLetter);
