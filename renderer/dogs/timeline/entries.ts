import type { Attachment } from '../../../electron/contract/files/attachment.ts';
import type { DogDeed } from '../../../electron/contract/calls/history.ts';
import type { DogFile, FoodDecision, Plan, Visit } from '../../../electron/contract/contract.ts';
import type { WeighingRecord } from '../../../electron/contract/weighings/weighing.ts';
import { decisionHead, ORIGIN_WORDS, ownerSentence } from '../../plans/rampText.ts';
import type { Shown } from '../../units/shown.ts';
import { KIND_WORDS, WEIGHING_WORDS } from '../../words.ts';
import { changeEntries } from './changes.ts';
import { ENTRY_KINDS, localDay, type TimelineEntry } from './entry.ts';
import { findings, toldLines } from './visitWords.ts';

/** Everything a dog's timeline is made of. */
export interface TimelineSource {
  readonly file: DogFile;
  readonly files: readonly Attachment[];
  readonly deeds: readonly DogDeed[];
}

/** All that happened, newest day first; within a day in the order of a visit. */
export function timelineEntries({ file, files, deeds }: TimelineSource, shown: Shown) {
  const dogPath = `/dogs/${file.dog.id}`;
  const entries: TimelineEntry[] = [
    ...file.visits.map((visit, index) =>
      visitEntry(visit, file.visits[index - 1] ?? null, file, shown),
    ),
    ...file.weighings.map((weighing) => weighingEntry(weighing, dogPath, shown)),
    ...file.foodDecisions.map((decision) => foodEntry(decision, dogPath, shown)),
    ...file.plans.map((plan) => planEntry(plan, dogPath)),
    ...fileEntries(files, dogPath),
    ...changeEntries(deeds, file, shown),
  ];
  const rank = ({ kind }: TimelineEntry) => ENTRY_KINDS.indexOf(kind);
  // The sort is stable: what was told first of the same kind and day stays first.
  return entries.sort((a, b) => b.day.localeCompare(a.day) || rank(a) - rank(b));
}

const told = (lines: readonly string[]): string[] => lines.filter((line) => line !== '');

function visitEntry(
  visit: Visit,
  before: Visit | null,
  { dog: { id, chip } }: DogFile,
  shown: Shown,
): TimelineEntry {
  // By its number a dog is told from another; it belongs to no day, so it stands where all begins.
  const number = before === null && chip !== '' ? `Chip number: ${chip}` : '';
  const amended = visit.revision > 1 ? ', amended' : '';
  return {
    key: `visit ${visit.id}`,
    kind: 'visit',
    day: visit.day,
    author: visit.author,
    title: `${KIND_WORDS[visit.kind]}${amended}`,
    which: `of ${shown.day(visit.day)}: open this ${visit.kind}`,
    to: `/dogs/${id}/visits/${visit.id}`,
    lines: told([
      findings(visit, shown),
      number,
      ...toldLines(visit, before, shown),
      visit.gaitNote,
      visit.notes,
    ]),
  };
}

function weighingEntry(weighing: WeighingRecord, dogPath: string, shown: Shown): TimelineEntry {
  const { weighingMethod: method } = weighing;
  return {
    key: `weighing ${weighing.id}`,
    kind: 'weighing',
    day: weighing.day,
    author: weighing.author,
    title: `Weighed ${shown.amount('weight', weighing.weightKg)}`,
    which: `on ${shown.day(weighing.day)}, among the weights`,
    to: `${dogPath}#story-weight`,
    lines: told([
      [
        method === 'same scale' ? '' : WEIGHING_WORDS[method].toLowerCase(),
        weighing.origin === 'imported' ? 'from a table' : '',
      ]
        .filter((part) => part !== '')
        .join(', '),
      weighing.note,
    ]),
  };
}

function foodEntry(decision: FoodDecision, dogPath: string, shown: Shown): TimelineEntry {
  return {
    key: `food ${decision.id}`,
    kind: 'food',
    day: decision.decidedOn,
    author: decision.author,
    title: `Food ${decision.decision}: ${shown.amount('energyPerDay', decision.kcalPerDay)}`,
    which: 'at this visit',
    to: `${dogPath}/visits/${decision.visitId}`,
    lines: told([decision.note]),
  };
}

function planEntry(plan: Plan, dogPath: string): TimelineEntry {
  return {
    key: `plan ${plan.id}`,
    kind: 'plan',
    day: plan.madeOn,
    author: plan.author,
    title: `Running plan, version ${plan.version}, ${ORIGIN_WORDS[plan.origin]}`,
    to: `${dogPath}/plan`,
    lines: told([
      plan.review === null ? '' : decisionHead(plan.review),
      ownerSentence(plan.ramp),
      plan.note,
    ]),
  };
}

/** The files that one person added at one visit on one day stand together. */
function fileEntries(files: readonly Attachment[], dogPath: string): TimelineEntry[] {
  const groups = Map.groupBy(
    files,
    ({ visitId, author, createdAt }) => `${localDay(createdAt)} ${visitId} ${author}`,
  );
  return [...groups].map(([key, group]) => {
    const { visitId, author, createdAt } = group[0]!;
    const what = group.length === 1 ? group[0]!.name : `${group.length} files`;
    return {
      key: `file ${key}`,
      kind: 'file',
      day: localDay(createdAt),
      author,
      title: `Added ${what}`,
      which: 'at this visit',
      to: `${dogPath}/visits/${visitId}`,
      lines: [],
      files: group,
    };
  });
}
