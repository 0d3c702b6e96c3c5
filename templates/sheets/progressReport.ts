import type { Content, TableCell } from 'pdfmake/interfaces';
import type { IsoDay } from '../../core/day.ts';
import type { Provenance, Reason } from '../../core/figure.ts';
import {
  weightSeries,
  type CorridorPoint,
  type FoodProposal,
  type TargetProjection,
  type WeightTrend,
} from '../../core/nutrition.ts';
import { weightChart } from '../charts/weightChart.ts';
import { fill } from '../format.ts';
import { press, type Press, type Sheet } from '../frame.ts';
import type { Findings, HandoutContext } from '../model.ts';
import { bodyFacts, gaitFacts } from '../parts/findings.ts';
import {
  bullets,
  calmTable,
  callout,
  listSection,
  pair,
  section,
  tableHead,
} from '../parts/layout.ts';
import { reasonList, type ReasonPress } from '../parts/screening.ts';
import { sourceNote } from '../parts/sources.ts';
import type { OwnerWords } from '../words/words.ts';

/** What the log of the runs came to. */
export interface RunningProgress {
  /** What was decided of the plan, or what it waits for. */
  readonly says:
    'progress' | 'walks' | 'begin' | 'lower' | 'hold' | 'back' | 'stop' | 'walk' | 'finished';
  readonly reasons: readonly Reason[];
  /** The outings are brisk walks. */
  readonly walking: boolean;
  /** The day from which on the outings are counted. */
  readonly since: IsoDay;
  readonly sessionsDone: number;
  readonly sessionsPlanned: number;
  readonly longestRunMinutes: number | null;
}

interface FoodProgress {
  /** The proposal that was answered at this visit; null where nothing was decided. */
  readonly proposal: FoodProposal | null;
  /** Nothing was decided because the vet comes first. */
  readonly referred: boolean;
  /** The decision is the proposal. */
  readonly asProposed: boolean;
  /** The practitioner's words on the decision; may be empty. */
  readonly note: string;
  /** Fed until now and from now on, kcal a day. */
  readonly previousKcal: number | null;
  readonly kcalPerDay: number | null;
  /** A food that takes another's place; null where none does. */
  readonly newFood: {
    readonly replaces: string;
    readonly name: string;
    readonly startDay: IsoDay;
  } | null;
}

export interface ProgressReportData extends HandoutContext {
  readonly trend: WeightTrend;
  /** Empty when the weight has no course to hold. */
  readonly corridor: readonly CorridorPoint[];
  readonly targetKg: number | null;
  /** The weight to be held; null with another aim. */
  readonly holdKg: number | null;
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
  const { format, colours, width } = tools;
  const chart = weightChart(weightSeries(data), words.progress.chart, format, colours, width);
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
  return section(words.progress.changedTitle, [
    {
      table: {
        headerRows: 1,
        dontBreakRows: true,
        widths: [110, '*', '*'],
        body: [
          [
            tableHead(''),
            tableHead(`${columns.then}, ${format.day(then.day)}`),
            tableHead(`${columns.now}, ${format.day(now.day)}`),
          ],
          ...rows,
        ],
      },
      layout: { ...calmTable(tools.colours), paddingTop: () => 2.5, paddingBottom: () => 2.5 },
    },
  ]);
}

const LINE: { readonly margin: [number, number, number, number] } = { margin: [0, 0, 0, 2] };

/** Up to here running and food stand side by side. */
const FEW_REASONS = 5;

function runningBlock(running: RunningProgress, tools: ReasonPress): Content {
  const { progress } = tools.words;
  const { walking, longestRunMinutes: longest } = running;
  const told = fill(walking ? progress.walks : progress.runs, {
    done: running.sessionsDone,
    planned: running.sessionsPlanned,
    day: tools.format.day(running.since),
  });
  const ofLongest = walking ? progress.longestWalk : progress.longestRun;
  const runs =
    longest === null
      ? told
      : `${told} ${fill(ofLongest, { longest: tools.format.minutes(longest) })}`;
  return listSection(
    progress.runningTitle,
    [
      { text: progress.decisions[running.says], bold: true, ...LINE },
      ...(running.sessionsPlanned + running.sessionsDone === 0 ? [] : [{ text: runs, ...LINE }]),
      reasonList(running.reasons, tools),
    ],
    running.reasons.length,
  );
}

/** Which sentence says what happens to the food: by what is written down, not by what was proposed. */
function foodState(food: FoodProgress, written: (kcal: number) => string) {
  const { kcalPerDay, previousKcal, proposal } = food;
  if (food.referred) return 'refer';
  if (kcalPerDay === null) return 'open';
  if (proposal !== null && previousKcal === null) return 'start';
  if (proposal !== null && written(kcalPerDay) !== written(previousKcal ?? kcalPerDay))
    return 'change';
  return proposal?.verdict === 'wait' ? 'wait' : 'keep';
}

function foodBlock(food: FoodProgress, tools: ReasonPress): Content {
  const { progress } = tools.words;
  const { proposal, kcalPerDay, previousKcal, newFood } = food;
  const { format } = tools;
  const sentence = fill(progress.food[foodState(food, format.energy)], {
    dog: tools.dog,
    energy: kcalPerDay === null ? '' : format.energy(kcalPerDay),
    before: previousKcal === null ? '' : format.energy(previousKcal),
  });
  const reasons =
    proposal === null || !food.asProposed ? [] : [...proposal.reasons, ...proposal.warnings];
  return section(progress.foodTitle, [
    { text: sentence, bold: true, margin: [0, 0, 0, 2] },
    ...(food.referred && kcalPerDay !== null
      ? [fill(progress.food.keep, { energy: format.energy(kcalPerDay) })]
      : []),
    ...(newFood === null
      ? []
      : [
          {
            text: fill(progress.newFood, {
              name: newFood.name,
              replaces: newFood.replaces,
              day: format.day(newFood.startDay),
            }),
          },
        ]),
    ...(food.note.trim() === '' ? [] : [{ text: food.note }]),
    reasonList(reasons, tools),
  ]);
}

/** What leaves outings to be run and ticked. */
const FOLLOWED: readonly RunningProgress['says'][] = [
  'progress',
  'walks',
  'begin',
  'lower',
  'hold',
  'back',
];

function nextSteps(data: ProgressReportData, words: OwnerWords, tools: Press): Content {
  const { progress } = words;
  const dog = { dog: data.dog.name };
  const steps = [
    ...(data.nextWeighDay === null
      ? []
      : [fill(progress.weighOn, { ...dog, day: tools.format.weekdayDay(data.nextWeighDay) })]),
    ...(data.food?.kcalPerDay == null ? [] : [progress.followFood]),
    ...(data.running !== null && FOLLOWED.includes(data.running.says)
      ? [progress.followPlan, progress.bringLog]
      : []),
    fill(progress.ask, dog),
  ];
  return callout(progress.nextTitle, [bullets(steps)], tools.colours);
}

/** How the dog is doing, for the owner: weight chart, what changed, next steps. */
export function progressReport(data: ProgressReportData, words: OwnerWords): Sheet {
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
    ...(food?.asProposed === true ? (food.proposal?.reasons ?? []) : []),
    ...(food?.asProposed === true ? (food.proposal?.warnings ?? []) : []),
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
