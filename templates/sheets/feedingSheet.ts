import type { Content } from 'pdfmake/interfaces';
import type { IsoDay } from '../../core/day.ts';
import type { Estimate, Provenance, Reason } from '../../core/figure.ts';
import type { Ration } from '../../core/food/ration.ts';
import { fill } from '../format.ts';
import { assemble, press, type Press, type Sheet } from '../frame.ts';
import type { Changeover, FeedingAim, HandoutContext } from '../model.ts';
import { bowlTable, changeoverCalendar } from '../parts/bowl.ts';
import { bullets, callout, pair, section } from '../parts/layout.ts';
import { reasonList } from '../parts/screening.ts';
import { sourceNote } from '../parts/sources.ts';
import type { HandoutDocument } from '../render.ts';
import type { OwnerWords } from '../words/words.ts';

export interface FeedingSheetData extends HandoutContext {
  readonly aim: FeedingAim;
  /** What is to be fed, kcal a day. */
  readonly kcalPerDay: number;
  /** What the dog is thought to need; its range is printed. Null where it cannot be told. */
  readonly need: Estimate | null;
  readonly targetWeightKg: number | null;
  /** Grams of each food; null while no food is on record. */
  readonly ration: Ration | null;
  /** Only when the food itself changes. */
  readonly changeover: Changeover | null;
  readonly nextWeighDay: IsoDay | null;
  /** Why this much. */
  readonly reasons: readonly Reason[];
}

/** Where the advice that is the same for every dog comes from. */
const ADVICE: readonly Provenance[] = [
  { evidence: 'C', mark: 'S', sources: ['hand2010'] },
  { evidence: 'D', mark: 'CP', sources: ['commonPractice'] },
];

/** The day's energy in large figures, the aim beside it. */
function dayBlock(data: FeedingSheetData, words: OwnerWords, tools: Press): Content {
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
            text: fill(feeding.likely, {
              dog: data.dog.name,
              range: format.energyRange(need.low, need.high),
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
            text: fill(feeding.perDay, { energy: format.energy(data.kcalPerDay) }),
            style: 'big',
          },
          { width: 'auto', stack: target, margin: [0, 12, 0, 0] },
        ],
      },
      ...range,
    ],
    tools.colours,
  );
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
  const day =
    data.nextWeighDay === null ? feeding.noWeighDay : tools.format.weekdayDay(data.nextWeighDay);
  return section(feeding.weighTitle, [{ text: day, bold: true }, { text: feeding.weigh }]);
}

/** The feeding sheet as one part of a document. */
export function feedingSheetPart(data: FeedingSheetData, words: OwnerWords): Sheet {
  const tools = press(data, words.frame);
  const { feeding } = words;
  const { ration, changeover, need, reasons } = data;
  const dog = { dog: data.dog.name };
  const why = reasons.length === 0 ? null : section(feeding.whyTitle, [reasonList(reasons, words)]);
  const ask = section(feeding.vetTitle, [bullets(feeding.vet.map((line) => fill(line, dog)))]);
  return {
    kind: feeding.kind,
    title: fill(feeding.title, dog),
    body: [
      dayBlock(data, words, tools),
      ...(ration === null ? [] : [bowlTable(ration, feeding, tools)]),
      ration === null
        ? weighIn(data, words, tools)
        : pair(treats(ration, words, tools), weighIn(data, words, tools)),
      ...(changeover === null ? [] : [changeoverCalendar(changeover, feeding, tools)]),
      why === null ? ask : pair(why, ask),
      sourceNote([...(need ? [need.figure] : []), ...reasons, ...ADVICE], words.sources),
    ],
  };
}

/** The feeding sheet for the fridge door, on one page. */
export function feedingSheet(data: FeedingSheetData, words: OwnerWords): HandoutDocument {
  return assemble(data, words.frame, [feedingSheetPart(data, words)]);
}
