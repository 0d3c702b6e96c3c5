import type { Content, TableCell } from 'pdfmake/interfaces';
import type { IsoDay } from '../../core/day.ts';
import type { Provenance, Reason } from '../../core/figure.ts';
import type {
  CorridorPoint,
  FoodProposal,
  TargetProjection,
  WeightTrend,
} from '../../core/nutrition.ts';
import { weightChart } from '../charts/weightChart.ts';
import { fill } from '../format.ts';
import { assemble, press, type Press, type Sheet } from '../frame.ts';
import type { Findings, HandoutContext } from '../model.ts';
import { bodyFacts, gaitFacts } from '../parts/findings.ts';
import { bullets, calmTable, callout, listSection, pair, section } from '../parts/layout.ts';
import { reasonList, type ReasonPress } from '../parts/screening.ts';
import { sourceNote } from '../parts/sources.ts';
import type { HandoutDocument } from '../render.ts';
import type { OwnerWords } from '../words/words.ts';

/** What the log of the runs came to. */
export interface RunningProgress {
  readonly decision: 'progress' | 'hold' | 'back' | 'stop';
  readonly reasons: readonly Reason[];
  readonly sessionsDone: number;
  readonly sessionsPlanned: number;
  readonly longestRunMinutes: number | null;
}

export interface FoodProgress {
  readonly proposal: FoodProposal;
  /** Fed until now and from now on, kcal a day. */
  readonly previousKcal: number | null;
  readonly kcalPerDay: number | null;
}

export interface ProgressReportData extends HandoutContext {
  readonly trend: WeightTrend;
  /** Empty when the weight has no course to hold. */
  readonly corridor: readonly CorridorPoint[];
  readonly targetKg: number | null;
  readonly projection: TargetProjection | null;
  /** The first visit and this one; null where there is only one. */
  readonly then: Findings | null;
  readonly now: Findings;
  readonly running: RunningProgress | null;
  readonly food: FoodProgress | null;
  readonly nextWeighDay: IsoDay | null;
  /** Free words of the practitioner; may be empty. */
  readonly note: string;
}

function trendLines(data: ProgressReportData, words: OwnerWords, tools: Press): readonly string[] {
  const { trend, projection } = data;
  const { progress } = words;
  const { format } = tools;
  const dog = { dog: data.dog.name };
  if (trend.points.length === 0) return [fill(progress.noWeighings, dog)];
  const lines = [fill(progress.status[trend.status], dog)];
  if (trend.percentPerWeek !== null && trend.low !== null && trend.high !== null) {
    lines.push(
      fill(progress.rate, {
        rate: format.percent(trend.percentPerWeek, 1),
        range: `${format.number(trend.low, 1)} ${progress.and} ${format.percent(trend.high, 1)}`,
      }),
    );
  }
  if (projection?.earliest != null) {
    const earliest = format.day(projection.earliest);
    lines.push(
      projection.latest === null
        ? fill(progress.reachFrom, { earliest })
        : fill(progress.reach, { earliest, latest: format.day(projection.latest) }),
    );
  }
  return lines;
}

function chartBlock(data: ProgressReportData, words: OwnerWords, tools: Press): readonly Content[] {
  if (data.trend.points.length === 0) return [];
  const chart = weightChart(data, words.progress.chart, tools.format, tools.colours, tools.width);
  return [section(words.progress.weightTitle, [chart])];
}

/** The findings of two visits side by side. */
function thenAndNow(then: Findings, now: Findings, words: OwnerWords, tools: Press): Content {
  const { columns } = words.progress;
  const { format } = tools;
  const facts = (found: Findings) => [
    ...bodyFacts(found, words.findings, format),
    ...gaitFacts(found, words.findings),
  ];
  const before = new Map(facts(then).map((fact) => [fact.name, fact.value]));
  const rows: TableCell[][] = facts(now).map((fact) => [
    { text: fact.name, style: 'small' },
    { text: before.get(fact.name) ?? '' },
    { text: fact.value, bold: true },
  ]);
  const head = (text: string): TableCell => ({ text, style: 'tableHead' });
  return section(words.progress.changedTitle, [
    {
      table: {
        headerRows: 1,
        dontBreakRows: true,
        widths: [110, '*', '*'],
        body: [
          [
            head(''),
            head(`${columns.then}, ${format.day(then.day)}`),
            head(`${columns.now}, ${format.day(now.day)}`),
          ],
          ...rows,
        ],
      },
      layout: { ...calmTable(tools.colours), paddingTop: () => 2.5, paddingBottom: () => 2.5 },
    },
  ]);
}

/** Up to here running and food stand side by side. */
const FEW_REASONS = 5;

function runningBlock(running: RunningProgress, tools: ReasonPress): Content {
  const { progress } = tools.words;
  const counts = { done: running.sessionsDone, planned: running.sessionsPlanned };
  const runs =
    running.longestRunMinutes === null
      ? fill(progress.runsOnly, counts)
      : fill(progress.runs, {
          ...counts,
          longest: tools.format.minutes(running.longestRunMinutes),
        });
  return listSection(
    progress.runningTitle,
    [
      { text: progress.decisions[running.decision], bold: true, margin: [0, 0, 0, 2] },
      { text: runs, margin: [0, 0, 0, 2] },
      reasonList(running.reasons, tools),
    ],
    running.reasons.length,
  );
}

/** Which sentence says what happens to the food. */
function foodState(food: FoodProgress): keyof OwnerWords['progress']['food'] {
  const { verdict } = food.proposal;
  if (verdict === 'refer') return 'refer';
  if (food.kcalPerDay === null) return 'open';
  return verdict === 'change' && food.previousKcal === null ? 'start' : verdict;
}

function foodBlock(food: FoodProgress, tools: ReasonPress): Content {
  const { progress } = tools.words;
  const { proposal, kcalPerDay, previousKcal } = food;
  const { format } = tools;
  const sentence = fill(progress.food[foodState(food)], {
    dog: tools.dog,
    energy: kcalPerDay === null ? '' : format.energy(kcalPerDay),
    before: previousKcal === null ? '' : format.energy(previousKcal),
  });
  return section(progress.foodTitle, [
    { text: sentence, bold: true, margin: [0, 0, 0, 2] },
    reasonList([...proposal.reasons, ...proposal.warnings], tools),
  ]);
}

function nextSteps(data: ProgressReportData, words: OwnerWords, tools: Press): Content {
  const { progress } = words;
  const dog = { dog: data.dog.name };
  const steps = [
    ...(data.nextWeighDay === null
      ? []
      : [fill(progress.weighOn, { ...dog, day: tools.format.weekdayDay(data.nextWeighDay) })]),
    ...(data.food?.kcalPerDay == null ? [] : [progress.followFood]),
    ...(data.running === null || data.running.decision === 'stop'
      ? []
      : [progress.followPlan, progress.bringLog]),
    fill(progress.ask, dog),
  ];
  return callout(progress.nextTitle, [bullets(steps)], tools.colours);
}

/** The progress report as one part of a document. */
export function progressReportPart(data: ProgressReportData, words: OwnerWords): Sheet {
  const tools = press(data, words.frame);
  const { running, food, then, now, trend } = data;
  const reasons = { words, format: tools.format, dog: data.dog.name };
  const blocks = [
    ...(running === null ? [] : [runningBlock(running, reasons)]),
    ...(food === null ? [] : [foodBlock(food, reasons)]),
  ];
  const [first, second] = blocks;
  const because: readonly Provenance[] = [
    ...(trend.figure === null ? [] : [trend.figure]),
    ...(running?.reasons ?? []),
    ...(food?.proposal.reasons ?? []),
    ...(food?.proposal.warnings ?? []),
  ];
  return {
    words: words.frame,
    kind: words.progress.kind,
    title: fill(words.progress.title, { dog: data.dog.name }),
    body: [
      ...trendLines(data, words, tools).map((text, index): Content => ({
        text,
        style: index === 0 ? 'lead' : 'small',
        bold: index === 0,
        margin: [0, index === 0 ? 6 : 1, 0, 0],
      })),
      ...chartBlock(data, words, tools),
      ...(then === null ? [] : [thenAndNow(then, now, words, tools)]),
      ...(data.note.trim() === ''
        ? []
        : [section(words.progress.noteTitle, [{ text: data.note }])]),
      ...(first && second && (running?.reasons.length ?? 0) <= FEW_REASONS
        ? [pair(first, second)]
        : blocks),
    ],
    end: [nextSteps(data, words, tools), sourceNote(because, words.sources)],
  };
}

/** How the dog is doing, for the owner: weight chart, what changed, next steps. */
export function progressReport(data: ProgressReportData, words: OwnerWords): HandoutDocument {
  return assemble(data, [progressReportPart(data, words)]);
}
