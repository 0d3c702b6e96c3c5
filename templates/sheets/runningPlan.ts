import type { Content } from 'pdfmake/interfaces';
import type { Provenance, Reason } from '../../core/figure.ts';
import type { Ramp, RampGoal } from '../../core/ramp/types.ts';
import { fill, type Format } from '../format.ts';
import { assemble, press, type Press, type Sheet } from '../frame.ts';
import type { Findings, HandoutContext } from '../model.ts';
import {
  askYourVet,
  everyRun,
  foodAndWater,
  heatFirstAid,
  nextDay,
  stopRules,
} from '../parts/advice.ts';
import { findingFacts } from '../parts/findings.ts';
import { callout, factGrid, heading, paragraph, section } from '../parts/layout.ts';
import { reasonList } from '../parts/screening.ts';
import { sourceNote } from '../parts/sources.ts';
import { weekTable } from '../parts/weekTable.ts';
import type { HandoutDocument } from '../render.ts';
import type { OwnerWords } from '../words/words.ts';

/** What core made of the question whether the dog may run. */
export interface ScreeningPrint {
  readonly outcome: 'ready' | 'walking-only' | 'vet-first';
  readonly reasons: readonly Reason[];
}

export interface RunningPlanData extends HandoutContext {
  readonly findings: Findings;
  readonly screening: ScreeningPrint;
  readonly ramp: Ramp;
}

/** Where the advice that is the same for every dog comes from. */
const ADVICE: readonly Provenance[] = [
  { evidence: 'D', mark: 'CP', sources: ['commonPractice'] },
  { evidence: 'B', mark: 'M', sources: ['sorenessRules'] },
  { evidence: 'A', mark: 'S', sources: ['heatFirstAid', 'pipan2012'] },
];

function goalText(goal: RampGoal, words: OwnerWords['plan'], format: Format): string {
  if ('continuousMinutes' in goal) {
    return fill(words.goalMinutes, { minutes: format.minutes(goal.continuousMinutes) });
  }
  return fill(words.goalDistance, {
    distance: format.distance(goal.distanceKm),
    pace: format.pace(goal.paceMinPerKm),
  });
}

/** The goal, when it is reached, and how the plan is laid out. */
function atAGlance(ramp: Ramp, words: OwnerWords['plan'], tools: Press): Content {
  const { format } = tools;
  const first = ramp.weeks[0]?.sessions[0];
  const facts = [
    fill(words.perWeek, { count: ramp.request.sessionsPerWeek }),
    fill(words.weeks, { count: ramp.weeks.length }),
    ...(first === undefined ? [] : [fill(words.firstRun, { day: format.weekdayDay(first.day) })]),
  ];
  const reached =
    ramp.goalReachedOn === null
      ? words.notReached
      : fill(words.reachedOn, { day: format.weekdayDay(ramp.goalReachedOn) });
  return callout(
    fill(words.goal, { goal: goalText(ramp.request.goal, words, format) }),
    [paragraph(reached, 2), { text: facts.join('  ·  '), style: 'small' }],
    tools.colours,
  );
}

function screeningBlock(data: RunningPlanData, words: OwnerWords): Content {
  const { screening, findings, dog } = data;
  const outcomes = {
    ready: words.screening.ready,
    'walking-only': words.screening.walkingOnly,
    'vet-first': words.screening.vetFirst,
  };
  const name = { dog: dog.name };
  return section(fill(words.screening.title, name), [
    {
      text: fill(outcomes[screening.outcome], name),
      style: 'lead',
      bold: true,
      margin: [0, 0, 0, 3],
    },
    reasonList(screening.reasons, findings.overrides, words, {}),
  ]);
}

/** The running plan as one part of a document. */
export function runningPlanPart(data: RunningPlanData, words: OwnerWords): Sheet {
  const tools = press(data, words.frame);
  const { ramp, dog, findings, screening } = data;
  const { plan } = words;
  const name = { dog: dog.name };
  const items = [...screening.reasons, ...ramp.reasons, ...ADVICE];
  return {
    kind: plan.kind,
    title: fill(plan.title, name),
    reminder: plan.reminder,
    body: [
      atAGlance(ramp, plan, tools),
      screeningBlock(data, words),
      section(plan.found, [
        factGrid(findingFacts(findings, words.findings, tools.format), tools.colours),
      ]),
      ...gaitNote(findings, words),
      stopRules(words, dog.name, tools),
      everyRun(words),
      nextDay(words, dog.name, tools),
      heatFirstAid(words, dog.name, tools),
      foodAndWater(words),
      askYourVet(words, dog.name),
      { ...(heading(plan.weekTable) as object), pageBreak: 'before' } as Content,
      paragraph(fill(plan.weekIntro, name), 6),
      weekTable(ramp, plan, tools),
      ...rampNotes(ramp, words),
      sourceNote(items, words.sources),
    ],
  };
}

function gaitNote(findings: Findings, words: OwnerWords): readonly Content[] {
  if (findings.gaitNote.trim() === '') return [];
  return [{ text: [{ text: `${words.findings.gait}: `, style: 'small' }, findings.gaitNote] }];
}

/** What core has to say about the plan itself, e.g. that the event comes too early. */
function rampNotes(ramp: Ramp, words: OwnerWords): readonly Content[] {
  if (ramp.reasons.length === 0) return [];
  return [section(words.plan.about, [reasonList(ramp.reasons, [], words, {})])];
}

/**
 * The running plan for the owner: goal, outcome of the screening, findings, when to stop, what
 * belongs to every run, and the week-by-week log to tick.
 */
export function runningPlan(data: RunningPlanData, words: OwnerWords): HandoutDocument {
  return assemble(data, words.frame, [runningPlanPart(data, words)]);
}
