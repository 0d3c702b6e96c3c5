import type { Content } from 'pdfmake/interfaces';
import type { IsoDay } from '../../core/day.ts';
import type { Provenance, Reason } from '../../core/figure.ts';
import { BETWEEN_RUNS, programmeOf, sessionsAWeek } from '../../core/ramp/outing.ts';
import { weekSeries } from '../../core/ramp/weekSeries.ts';
import type { HeatTable, Ramp, RampWeek, Screening } from '../../core/training.ts';
import { LADDER_WIDTH, weekLadder } from '../charts/weekLadder.ts';
import { fill, type Format } from '../format.ts';
import { press, type Press, type Sheet } from '../frame.ts';
import type { Findings, HandoutContext } from '../model.ts';
import {
  askYourVet,
  everyRun,
  foodAndWater,
  heatFirstAid,
  nextDay,
  stopRules,
} from '../parts/advice.ts';
import { bodyFacts, consentFact, gaitFacts } from '../parts/findings.ts';
import { goalText } from '../parts/goal.ts';
import { heatStrip } from '../parts/heatBands.ts';
import {
  callout,
  factGrid,
  heading,
  MOST_TOGETHER,
  pair,
  paragraph,
  section,
} from '../parts/layout.ts';
import { reasonList, screeningBlock, type ReasonPress } from '../parts/screening.ts';
import { sourceNote } from '../parts/sources.ts';
import { weekTable } from '../parts/weekTable.ts';
import { stoppedWords, wordsFor, type OwnerWords } from '../words/words.ts';

/** Where a plan that is under way is printed from, and what was told of it. */
export interface PlanOnward {
  readonly fromWeek: number;
  readonly outingsDone: number;
  readonly outingsPlanned: number;
  /** The longest run without a break, or walk, min; null before the first. */
  readonly longestMinutes: number | null;
  /** The next outing that is due; null where none is left. */
  readonly nextDay: IsoDay | null;
}

export interface RunningPlanData extends HandoutContext {
  readonly findings: Findings;
  readonly screening: Screening;
  /** Null while the dog may not run. */
  readonly ramp: Ramp | null;
  /** The bands of this dog, from core's `heatTable`; without them the plan prints no limits. */
  readonly heat?: HeatTable | null;
  /** True where exercises were chosen for the days between. */
  readonly strength?: boolean;
  /** Where weeks of the plan are over: the first one printed, and what was told so far. */
  readonly onward?: PlanOnward | null;
}

/** Where the advice that is the same for every dog comes from. */
const ADVICE: readonly Provenance[] = [
  { evidence: 'D', mark: 'CP', sources: ['commonPractice'] },
  { evidence: 'B', mark: 'M', sources: ['sorenessRules'] },
  { evidence: 'A', mark: 'S', sources: ['heatFirstAid', 'pipan2012'] },
];

/** Fewer weeks than these are no ladder to look at. */
const LADDER_WEEKS = 6;

/** The goal, the first day and the day it is reached, and how the plan is laid out. */
function atAGlance(
  ramp: Ramp,
  onward: PlanOnward | null,
  words: OwnerWords['plan'],
  tools: Press,
): Content {
  const { format } = tools;
  const weeks = weeksFrom(ramp, onward);
  const [first] = weeks.flatMap(({ sessions }) => sessions);
  const firstDay = onward === null ? first?.day : onward.nextDay;
  const facts = [
    fill(words.perWeek, { count: sessionsAWeek(ramp) }),
    fill(words.weeks, { count: weeks.length }),
  ];
  const begins =
    firstDay == null
      ? []
      : [
          fill(onward === null ? words.firstRun : words.nextOuting, {
            day: format.weekdayDay(firstDay),
          }),
        ];
  const reached =
    ramp.goalReachedOn === null
      ? words.notReached
      : fill(words.reachedOn, { day: format.weekdayDay(ramp.goalReachedOn) });
  const text = [
    ...(onward === null ? [] : [paragraph(soFar(onward, words, format), 2)]),
    paragraph([...begins, reached].join(' '), 2),
    { text: facts.join('  ·  '), style: 'small' },
  ];
  return callout(
    fill(words.goal, { goal: goalText(ramp.request.goal, words, format) }),
    weeks.length < LADDER_WEEKS
      ? text
      : [beside(text, weekLadder(weekSeries(weeks), words, tools))],
    tools.colours,
  );
}

/** The text and the ladder of the weeks to its right. */
const beside = (text: Content[], ladder: Content): Content => ({
  columns: [
    { width: '*', stack: text },
    { width: LADDER_WIDTH, stack: [ladder] },
  ],
  columnGap: 14,
});

const weeksFrom = ({ weeks }: Ramp, onward: PlanOnward | null): readonly RampWeek[] =>
  weeks.filter(({ number }) => onward === null || number >= onward.fromWeek);

function soFar(onward: PlanOnward, words: OwnerWords['plan'], format: Format): string {
  const { outingsDone, outingsPlanned, longestMinutes } = onward;
  return fill(words.soFar, {
    done: outingsDone,
    planned: outingsPlanned,
    longest: longestMinutes === null ? '–' : format.minutes(longestMinutes),
  });
}

/** The running plan, or the walking programme, as one part of a document. */
export function runningPlan(data: RunningPlanData, all: OwnerWords): Sheet {
  const { ramp } = data;
  return ramp === null ? stoppedPart(data, stoppedWords(all)) : plannedPart(data, ramp, all);
}

/** A dog that may not run: what was found, what to watch, and the vet's answer. */
function stoppedPart(data: RunningPlanData, words: OwnerWords): Sheet {
  const tools = press(data, words.frame);
  const { dog, screening } = data;
  return {
    ...headOf(data, words),
    body: [...standing(data, words, tools), heatFirstAid(words, dog.name, tools)],
    end: [
      askYourVet(words, dog.name),
      sourceNote([...screening.reasons, ...ADVICE], words.sources),
    ],
  };
}

function plannedPart(data: RunningPlanData, ramp: Ramp, all: OwnerWords): Sheet {
  const words = wordsFor(all, programmeOf(ramp));
  const tools = press(data, words.frame);
  const { dog, screening, heat } = data;
  const notes = rampNotes(ramp.reasons, { words, format: tools.format, dog: dog.name });
  const advice = pair(foodAndWater(words), askYourVet(words, dog.name));
  const items = [...screening.reasons, ...ramp.reasons, ...(heat?.reasons ?? []), ...ADVICE];
  return {
    ...headOf(data, words),
    body: [
      atAGlance(ramp, data.onward ?? null, words.plan, tools),
      ...standing(data, words, tools),
      ...everyOuting(data, words, tools),
      heatFirstAid(words, dog.name, tools),
      ...withAdvice(weekPages(ramp, data, words, tools), advice, ramp),
      ...notes.body,
    ],
    end: [...notes.end, sourceNote(items, words.sources)],
  };
}

const headOf = ({ dog }: RunningPlanData, { frame, plan }: OwnerWords) => ({
  words: frame,
  kind: plan.kind,
  title: fill(plan.title, { dog: dog.name }),
  reminder: plan.reminder,
});

/** May it run, what was found, and when to stop. */
function standing(data: RunningPlanData, words: OwnerWords, tools: Press): readonly Content[] {
  const { dog, findings, screening } = data;
  const facts = [
    ...bodyFacts(findings, words.findings, tools.format),
    ...gaitFacts(findings, words.findings),
    consentFact(findings, words.findings, tools.format),
  ];
  return [
    screeningBlock(screening, dog.name, words, tools),
    section(words.plan.found, [factGrid(facts, tools.colours)]),
    ...gaitNote(findings, words),
    stopRules(words, dog.name, tools),
  ];
}

/** What only a dog with outings needs. */
const everyOuting = (data: RunningPlanData, words: OwnerWords, tools: Press) => [
  everyRun(words),
  nextDay(words, data.dog.name, tools),
  ...heatLimits(data, words, tools),
];

function heatLimits(data: RunningPlanData, words: OwnerWords, tools: Press): readonly Content[] {
  if (data.heat == null) return [];
  return [section(words.heat.title, [heatStrip(data.heat, words.heat, tools)])];
}

/** The advice stands where there is room: a walking programme has it before its log, a plan behind. */
const withAdvice = (log: readonly Content[], advice: Content, ramp: Ramp): readonly Content[] =>
  programmeOf(ramp) === 'walking' ? [advice, ...log] : [...log, advice];

/** The log on pages of its own, to hang up. */
function weekPages(
  ramp: Ramp,
  { dog, strength, onward }: RunningPlanData,
  words: OwnerWords,
  tools: Press,
): readonly Content[] {
  const { plan } = words;
  const between = strength === true ? words.strength.planLine : null;
  const weeks = weeksFrom(ramp, onward ?? null);
  const load = weekSeries(weeks);
  const { low, high } = BETWEEN_RUNS.walkMinutes;
  const walks =
    programmeOf(ramp) === 'running' ? [paragraph(fill(plan.between, { low, high }), 6)] : [];
  return [
    { text: plan.weekTable, style: 'heading', pageBreak: 'before', margin: [0, 0, 0, 4] },
    paragraph(`${fill(plan.weekIntro, { dog: dog.name })} ${plan.stepBackMeans}`, 6),
    ...walks,
    weekTable(ramp, plan, tools, { weeks, load, between }),
  ];
}

function gaitNote(findings: Findings, words: OwnerWords): readonly Content[] {
  if (findings.gaitNote.trim() === '') return [];
  return [{ text: [{ text: `${words.findings.gait}: `, style: 'small' }, findings.gaitNote] }];
}

/** What core has to say about the plan itself, e.g. that the event comes too early. */
function rampNotes(
  reasons: readonly Reason[],
  tools: ReasonPress,
): { readonly body: readonly Content[]; readonly end: readonly Content[] } {
  const { about } = tools.words.plan;
  if (reasons.length === 0) return { body: [], end: [] };
  const last = reasons.slice(-MOST_TOGETHER);
  if (last.length === reasons.length) {
    return { body: [], end: [section(about, [reasonList(last, tools)])] };
  }
  const first = reasons.slice(0, -MOST_TOGETHER);
  return { body: [heading(about), reasonList(first, tools)], end: [reasonList(last, tools)] };
}
