import {
  raised,
  shownWeekMinutes,
  source,
  underWay,
  weighOut,
  type Figure,
  type Reason,
} from '../../../core/index.ts';
import { createFormat, en, type Format } from '../../../templates/index.ts';
import type { DogFile, FoodDecision } from '../../contract/contract.ts';
import type { Practice } from '../../contract/records.ts';

const round = (value: number): string =>
  Math.abs(value) < 10 ? value.toFixed(2) : value.toFixed(0);

function sourcesOf(entry: Pick<Figure, 'sources' | 'evidence'>): string {
  return `[${entry.evidence}: ${entry.sources.map((id) => source(id).short).join('; ')}]`;
}

/** Figures stay in SI: their formulas are. */
function figureLine(figure: Figure): string {
  const range =
    figure.low === undefined || figure.high === undefined
      ? ''
      : ` (${round(figure.low)} to ${round(figure.high)})`;
  return `  ${figure.label}: ${round(figure.value)}${range} ${figure.unit} = ${raised(figure.formula)} ${sourcesOf(figure)}`;
}

const figureLines = (figures: readonly (Figure | null | undefined)[]): string[] =>
  figures.flatMap((figure) => (figure ? [figureLine(figure)] : []));

const reasonLine = (reason: Reason, { says }: Format): string =>
  `  - ${says(reason)} ${sourcesOf(reason)}`;

function decisionLines(decision: FoodDecision, format: Format): string[] {
  const { maintenance, own, trend } = decision.known;
  const proposed = decision.proposal.kcalPerDay;
  const why = decision.note === '' ? 'no reason written' : decision.note;
  return [
    `  Food: ${format.energy(decision.kcalPerDay)} a day (${decision.decision})`,
    ...figureLines([maintenance, own, trend]),
    ...decision.proposal.reasons.map((reason) => reasonLine(reason, format)),
    ...(decision.decision === 'edited' && proposed !== null
      ? [
          `  Proposed ${format.energy(proposed)} a day, set to ${format.energy(decision.kcalPerDay)} by the practitioner: ${why}`,
        ]
      : []),
    ...decision.proposal.warnings.map(
      (warning) => `  ! ${format.says(warning)} ${sourcesOf(warning)}`,
    ),
  ];
}

function visitLines({ visits, foodDecisions }: DogFile, format: Format): string[] {
  return visits.flatMap((visit) => {
    const decision = foodDecisions.find(({ visitId }) => visitId === visit.id);
    const weight = visit.weightKg === null ? 'not weighed' : format.weight(visit.weightKg);
    const condition =
      visit.bcs === null ? 'condition not scored' : `body condition ${visit.bcs} of 9`;
    return [
      '',
      `${format.day(visit.day)}  ${visit.kind}: ${weight}, ${condition}`,
      ...(decision === undefined ? [] : decisionLines(decision, format)),
    ];
  });
}

type State = NonNullable<DogFile['state']>;

function fedLines({ ration }: State, format: Format): string[] {
  if (ration === null) return ['  Fed: nothing decided'];
  const items = ration.ration === null ? [] : weighOut(ration.ration).items;
  return [
    `  Fed: ${format.energy(ration.kcalPerDay)} a day since ${format.day(ration.decidedOn)}`,
    ...items.map(({ name, gramsPerDay }) => `    ${name}: ${format.grams(gramsPerDay)} a day`),
  ];
}

function stateLines(state: State, format: Format): string[] {
  const { assessment, targetKg, weight } = state;
  const target = targetKg === null ? 'none' : format.weight(targetKg);
  return [
    '',
    `Today, ${format.day(state.day)}`,
    ...fedLines(state, format),
    `  Weight ${format.weight(weight.kg)}, ${weight.against}; target ${target}`,
    ...state.due.map(({ what, day }) => `  Due ${format.day(day)}: ${what}`),
    ...figureLines([assessment.resting, assessment.ideal?.figure, assessment.trend.figure]),
    `  May run: ${state.mayRun}`,
    ...state.screening.reasons.map((reason) => reasonLine(reason, format)),
  ];
}

function programmeLines({ programme, goal }: State, format: Format): string[] {
  const going = underWay(programme);
  const waits = programme.kind === 'waiting' ? ` for the ${programme.for}` : '';
  const week = going?.week ?? null;
  return [
    '',
    `Programme: ${programme.kind}${waits}`,
    ...(going === null
      ? []
      : [
          `  Week: ${week?.number ?? 'none'} of ${going.lastWeek}`,
          ...(week === null ? [] : [`  This week: ${format.minutes(shownWeekMinutes(week))}`]),
          `  Next outing: ${going.next === null ? 'none' : format.day(going.next.day)}`,
        ]),
    ...(goal === null
      ? []
      : [`  Goal reached on: ${goal.day === null ? 'no day' : format.day(goal.day)}`]),
  ];
}

function planLines({ plans }: DogFile, format: Format): string[] {
  const ramp = plans.find(({ current }) => current)?.ramp;
  if (ramp === undefined) return [];
  return [
    '',
    `The plan in force, from ${format.day(ramp.request.startDay)}: ${ramp.weeks.length} weeks`,
    ...ramp.weeks.map(
      (week) =>
        `  week ${week.number}: ${format.minutes(shownWeekMinutes(week))}, ${week.step}${week.recovery ? ', easy week' : ''}`,
    ),
    ...ramp.reasons.map((reason) => reasonLine(reason, format)),
  ];
}

/**
 * What the demonstration prints of a dog, a line each: its visits with every figure and its sources,
 * then where it stands today, in the practice's units.
 */
export function printout(file: DogFile, practice: Practice): string[] {
  const format = createFormat(practice, en.frame.numbers);
  const { state } = file;
  return [
    `${file.dog.name}, ${file.dog.breed}; owner ${file.client.name}`,
    ...visitLines(file, format),
    ...(state === null ? [] : [...stateLines(state, format), ...programmeLines(state, format)]),
    ...planLines(file, format),
  ];
}
