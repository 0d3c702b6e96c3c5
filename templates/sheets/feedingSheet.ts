import type { Content } from 'pdfmake/interfaces';
import type { WeekRation } from '../../core/assess/running.ts';
import type { IsoDay } from '../../core/day.ts';
import type { Estimate, Provenance } from '../../core/figure.ts';
import type { ChangeoverCalendar, FoodGoal, FoodProposal, Ration } from '../../core/nutrition.ts';
import { fill } from '../format.ts';
import { press, type Press, type Sheet } from '../frame.ts';
import type { HandoutContext } from '../model.ts';
import { bowlTable, changeoverCalendar } from '../parts/bowl.ts';
import { bullets, callout, pair, section } from '../parts/layout.ts';
import { reasonList, reasonText } from '../parts/screening.ts';
import { sourceNote } from '../parts/sources.ts';
import type { OwnerWords } from '../words/words.ts';

export interface FeedingSheetData extends HandoutContext {
  readonly aim: FoodGoal | 'grow';
  /** The proposal that was answered; without an amount where nothing was decided. */
  readonly proposal: FoodProposal;
  /** The day of the decision; null where nothing was decided. */
  readonly decidedOn: IsoDay | null;
  /** What was decided, kcal a day; null where the vet comes first. */
  readonly kcalPerDay: number | null;
  /** Why it differs from the proposal; empty where it was taken as it stands, or no reason was given. */
  readonly decisionNote: string;
  /** Grams for `kcalPerDay`; null while no food is on record. */
  readonly ration: Ration | null;
  /** What the dog is thought to need to hold its weight; its range is printed. */
  readonly need: Estimate | null;
  readonly targetWeightKg: number | null;
  /** The day's energy of the weeks ahead, where the plan's running is fed. */
  readonly byWeek?: readonly WeekRation[];
  readonly nextWeighDay: IsoDay | null;
  /** Only when the food itself changes. */
  readonly changeover: ChangeoverCalendar | null;
}

/** Where the advice that is the same for every dog comes from. */
const ADVICE: readonly Provenance[] = [
  { evidence: 'C', mark: 'S', sources: ['hand2010'] },
  { evidence: 'D', mark: 'CP', sources: ['commonPractice'] },
];

/** The amount proposed, beside another that was settled on, and the practitioner's reason. */
function otherAmount(
  data: FeedingSheetData,
  words: OwnerWords['feeding'],
  tools: Press,
): readonly Content[] {
  const { proposal, kcalPerDay, decisionNote } = data;
  const written = (kcal: number | null) => (kcal === null ? '' : tools.format.energy(kcal));
  const [proposed, energy] = [written(proposal.kcalPerDay), written(kcalPerDay)];
  if (proposed === '' || energy === '' || proposed === energy) return [];
  const because = decisionNote === '' ? '' : ` ${fill(words.because, { reason: decisionNote })}`;
  const text = [{ text: fill(words.proposed, { proposed, energy }), bold: true }, because];
  return [{ text, margin: [0, 3, 0, 0] }];
}

/** The day's energy in large figures, the aim beside it. */
function dayBlock(
  data: FeedingSheetData,
  kcalPerDay: number,
  words: OwnerWords,
  tools: Press,
): Content {
  const { feeding } = words;
  const { format } = tools;
  const { need, targetWeightKg } = data;
  const target =
    targetWeightKg === null
      ? []
      : [{ text: fill(feeding.target, { weight: format.weight(targetWeightKg) }) }];
  const range =
    need === null
      ? []
      : [
          {
            text: fill(data.aim === 'grow' ? feeding.likelyGrowing : feeding.likely, {
              dog: data.dog.name,
              range: format.energyRange(need.figure.low!, need.figure.high!),
            }),
            style: 'small',
            margin: [0, 3, 0, 0] as [number, number, number, number],
          },
        ];
  return callout(
    feeding.aims[data.aim],
    [
      {
        columns: [
          {
            width: '*',
            text: fill(feeding.perDay, { energy: format.energy(kcalPerDay) }),
            style: 'big',
          },
          { width: 'auto', stack: target, margin: [0, 12, 0, 0] },
        ],
      },
      ...otherAmount(data, feeding, tools),
      ...range,
    ],
    tools.colours,
  );
}

/** In place of an amount: why the vet comes first. */
function referral(data: FeedingSheetData, words: OwnerWords, tools: Press): readonly Content[] {
  const { referral: sentence, reasons } = data.proposal;
  if (sentence === null) return [];
  const reason = reasons.find((entry) => entry.text === sentence);
  const text =
    reason === undefined
      ? tools.format.sentence(sentence)
      : reasonText(reason, { words, format: tools.format, dog: data.dog.name });
  return [callout(words.feeding.referTitle, [{ text }], tools.colours, 'warning')];
}

function treats(ration: Ration, words: OwnerWords, tools: Press): Content {
  const given = ration.items
    .filter((item) => item.treat)
    .map((item) => `${item.name}: ${tools.format.grams(item.gramsPerDay)}`);
  const energy = tools.format.energy(ration.treatAllowanceKcal);
  return section(words.feeding.treatsTitle, [
    { text: fill(words.feeding.treats, { energy }) },
    ...(given.length === 0 ? [] : [{ text: given.join('; '), style: 'small' }]),
  ]);
}

function weighIn(data: FeedingSheetData, words: OwnerWords, tools: Press): Content {
  const { feeding } = words;
  const day = data.nextWeighDay === null ? '' : tools.format.weekdayDay(data.nextWeighDay);
  return section(feeding.weighTitle, [{ text: day, bold: true }, { text: feeding.weigh }]);
}

/** How the amount follows the running plan, week by week. */
function runningWeeks(data: FeedingSheetData, words: OwnerWords, tools: Press): readonly Content[] {
  const { byWeek = [] } = data;
  if (byWeek.length === 0) return [];
  const columns = byWeek.map(({ week, kcalPerDay }) => ({
    width: '*',
    stack: [
      { text: fill(words.feeding.weekLine, { week }), style: 'small' },
      { text: tools.format.energy(kcalPerDay), bold: true },
    ],
  }));
  return [section(words.feeding.weeksTitle, [{ columns, columnGap: 6 }])];
}

/** Core's reasons and warnings, for the amount it proposed. */
function why(data: FeedingSheetData, words: OwnerWords, tools: Press): Content | null {
  const { proposal } = data;
  const reasons = [...proposal.reasons, ...proposal.warnings].filter(
    (reason) => reason.text !== proposal.referral,
  );
  if (reasons.length === 0) return null;
  const { whyTitle, whyProposed } = words.feeding;
  const other = otherAmount(data, words.feeding, tools).length > 0;
  return section(other ? whyProposed : whyTitle, [
    reasonList(reasons, { words, format: tools.format, dog: data.dog.name }),
  ]);
}

/** The feeding sheet for the fridge door, on one page. */
export function feedingSheet(data: FeedingSheetData, words: OwnerWords): Sheet {
  const tools = press(data, words.frame);
  const { feeding } = words;
  const { ration, changeover, need, proposal, kcalPerDay } = data;
  const dog = { dog: data.dog.name };
  const reasons = why(data, words, tools);
  const ask = section(feeding.vetTitle, [bullets(feeding.vet.map((line) => fill(line, dog)))]);
  const figures = [proposal.figure, need?.figure].filter((figure) => figure != null);
  const because = [
    ...figures,
    ...proposal.reasons,
    ...proposal.warnings,
    ...ADVICE,
    ...(changeover === null ? [] : [changeover]),
  ];
  return {
    words: words.frame,
    kind: feeding.kind,
    title: fill(feeding.title, dog),
    body: [
      ...referral(data, words, tools),
      ...(kcalPerDay === null ? [] : [dayBlock(data, kcalPerDay, words, tools)]),
      ...(ration === null ? [] : [bowlTable(ration, feeding, tools)]),
      ration === null
        ? weighIn(data, words, tools)
        : pair(treats(ration, words, tools), weighIn(data, words, tools)),
      ...runningWeeks(data, words, tools),
      ...(changeover === null ? [] : [changeoverCalendar(changeover, feeding, tools)]),
    ],
    end: [reasons === null ? ask : pair(reasons, ask), sourceNote(because, words.sources)],
  };
}
