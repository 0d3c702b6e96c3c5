import type { Content, TableCell } from 'pdfmake/interfaces';
import type { IsoDay } from '../../core/day.ts';
import type { Provenance } from '../../core/figure.ts';
import { programmeOf, sessionsAWeek } from '../../core/ramp/outing.ts';
import { shownWeekMinutes } from '../../core/ramp/shownMinutes.ts';
import type { JudgedMeasurement, Ramp, Screening } from '../../core/training.ts';
import type { FoodGoal, WeightTrend } from '../../core/nutrition.ts';
import { fill } from '../format.ts';
import { press, type Press, type Sheet } from '../frame.ts';
import type { Findings, HandoutContext, ToldFacts } from '../model.ts';
import { bodyFacts } from '../parts/findings.ts';
import { goalText } from '../parts/goal.ts';
import {
  BARE,
  bullets,
  factGrid,
  heading,
  paragraph,
  section,
  tickBox,
  together,
  writingLine,
} from '../parts/layout.ts';
import { limbTable, measurementTable, screeningResult, sexText } from '../parts/professional.ts';
import { referencesBelow } from '../parts/sources.ts';
import { exerciseLine, signText, toldTable } from '../parts/told.ts';
import type { PracticeWords } from '../words/enPractice.ts';
import { wordsFor, type OwnerWords } from '../words/words.ts';

/** What the vet should know of the time before the visit. */
export interface LetterHistory {
  /** Null where an injury or surgery is told by itself, and where nobody asked. */
  readonly surgery: 'none' | 'cleared in writing' | 'not cleared' | null;
  /** The vet's written clearance for a short nose or airway disease. */
  readonly airwayClearance: boolean;
  /** The worst grade of each earlier visit with lameness, oldest first. */
  readonly earlierLameness: readonly { readonly day: IsoDay; readonly grade: number }[];
  /** Signs and stiffness told of runs, oldest first. */
  readonly afterRuns: readonly { readonly day: IsoDay; readonly what: string }[];
  readonly ownersWords: readonly { readonly day: IsoDay; readonly note: string }[];
}

export interface VetLetterData extends HandoutContext {
  readonly findings: Findings;
  /** Labels of the warning signs noted at the visit. */
  readonly signs: readonly string[];
  /** Measurements of the visit, as core judged them. */
  readonly measurements: readonly JudgedMeasurement[];
  readonly screening: Screening;
  readonly told: ToldFacts;
  readonly history: LetterHistory;
  readonly trend: WeightTrend | null;
  /** Null while no running is planned. */
  readonly ramp: Ramp | null;
  readonly feeding: {
    readonly aim: FoodGoal | 'grow';
    readonly kcalPerDay: number;
    readonly targetWeightKg: number | null;
  } | null;
  /** The practitioner's own questions; the standing ones follow. */
  readonly questions: readonly string[];
}

/** Wording of a letter: the professional's, and the owner's for numbers and findings. */
export interface LetterWords {
  readonly practice: PracticeWords;
  readonly owner: OwnerWords;
}

function addressee(data: VetLetterData, words: PracticeWords['letter']): readonly Content[] {
  const { vetPractice, vetName, vetContact } = data.owner;
  const lines = [vetName, vetPractice, vetContact].filter((line) => line !== '');
  return (lines.length === 0 ? [words.noVet] : lines).map((text) => ({ text }));
}

function subject(data: VetLetterData, words: PracticeWords['letter'], tools: Press): Content {
  const { dog, owner } = data;
  const text = fill(dog.breed === '' ? words.subjectNoBreed : words.subject, {
    dog: dog.name,
    breed: dog.breed,
    sex: sexText(dog, words),
    born: tools.format.day(dog.birthDay),
    owner: owner.name,
  });
  const chip = dog.chip === '' ? '' : ` ${fill(words.chip, { chip: dog.chip })}`;
  return { text: `${text}${chip}`, bold: true, margin: [0, 12, 0, 8] };
}

function opening(data: VetLetterData, words: PracticeWords['letter'], tools: Press): Content[] {
  const { vetName } = data.owner;
  const dear = vetName === '' ? words.dearColleague : fill(words.dear, { vet: vetName });
  const why = fill(words.why, {
    dog: data.dog.name,
    day: tools.format.day(data.findings.day),
  });
  return [paragraph(dear), paragraph(why)];
}

function found(data: VetLetterData, words: LetterWords, tools: Press): readonly Content[] {
  const { letter } = words.practice;
  const { findings, signs } = data;
  const facts = bodyFacts(findings, words.owner.findings, tools.format);
  return [
    section(letter.foundTitle, [
      factGrid(facts, tools.colours),
      { text: signText(signs, data.told, letter) },
    ]),
    ...(findings.gaitNote.trim() === ''
      ? []
      : [{ text: findings.gaitNote, margin: [0, 3, 0, 0] as [number, number, number, number] }]),
    limbTable(findings, letter, tools),
    ...toldTable(data.told.found, tools),
    ...measurementTable(data.measurements, letter, tools),
  ];
}

/** So many of the latest entries of each kind are told; a letter is no log (D). */
const LATEST = 5;

function history(
  { history: past, told: noted }: VetLetterData,
  words: PracticeWords['letter'],
  tools: Press,
): readonly Content[] {
  const { format } = tools;
  const told = (entries: readonly string[], text: string): string[] =>
    entries.length === 0 ? [] : [fill(text, { entries: entries.slice(-LATEST).join('; ') })];
  const lines = [
    ...(noted.historyAsked ? [] : [words.historyNotAsked]),
    ...(past.surgery === null ? [] : [words.surgery[past.surgery]]),
    ...(past.airwayClearance ? [words.airwayClearance] : []),
    ...told(
      past.earlierLameness.map(({ day, grade }) =>
        fill(words.gradeOn, { day: format.day(day), grade }),
      ),
      words.earlierLameness,
    ),
    ...told(
      past.afterRuns.map(({ day, what }) => `${format.day(day)}: ${what}`),
      words.afterRuns,
    ),
    ...told(
      past.ownersWords.map(({ day, note }) => `${format.day(day)}: “${note}”`),
      words.ownersWords,
    ),
  ];
  const below = lines.length === 0 ? [] : [bullets(lines)];
  if (noted.history.length === 0) return [section(words.historyTitle, below)];
  return [heading(words.historyTitle), ...toldTable(noted.history, tools), ...below];
}

function weight(
  data: VetLetterData,
  words: PracticeWords['letter'],
  tools: Press,
): readonly Content[] {
  const { trend } = data;
  if (trend === null) return [];
  const count = fill(words.weighings, { count: trend.points.length, days: trend.spanDays });
  return [
    section(words.weightTitle, [{ text: `${tools.format.sentence(trend.sentence)} ${count}` }]),
  ];
}

function plan(data: VetLetterData, words: LetterWords, tools: Press): Content {
  const { letter } = words.practice;
  const { ramp } = data;
  const exercises = exerciseLine(data.told, letter);
  if (ramp === null) return section(letter.planTitle, [{ text: letter.noPlan }, ...exercises]);
  const { format } = tools;
  const minutes = ramp.weeks.map(shownWeekMinutes);
  const programme = programmeOf(ramp);
  const text = fill(programme === 'walking' ? letter.walks : letter.plan, {
    start: ramp.request.start,
    count: sessionsAWeek(ramp),
    day: format.day(ramp.request.startDay),
    goal: goalText(ramp.request.goal, wordsFor(words.owner, programme).plan, format),
    cap: format.trimmed(ramp.capPercent),
    session: sessionCap(ramp, letter),
    weeks: ramp.weeks.length,
    first: format.trimmed(minutes[0] ?? 0),
    peak: format.trimmed(Math.max(...minutes)),
  });
  const owner = ownerRuns(ramp, letter, format);
  return section(letter.planTitle, [{ text: `${text} ${owner}`.trimEnd() }, ...exercises]);
}

/** How the owner runs without the dog; empty where it was not told. */
export function ownerRuns(
  { request: { ownerMinutes } }: Ramp,
  words: PracticeWords['letter'],
  format: Press['format'],
): string {
  if (ownerMinutes === undefined) return '';
  return fill(words.ownerRuns, { minutes: format.minutes(ownerMinutes) });
}

/** The cap of a session in the plan's own rules; a plan of an earlier release has none. */
function sessionCap({ reasons }: Ramp, words: PracticeWords['letter']): string {
  const reason = reasons.find(({ code }) => code === 'session-cap');
  return reason === undefined ? '' : ` ${fill(words.sessionCap, reason.params)}`;
}

function feeding(
  data: VetLetterData,
  words: PracticeWords['letter'],
  tools: Press,
): readonly Content[] {
  const told = toldTable(data.told.feeding, tools);
  if (data.feeding === null) return told.length === 0 ? [] : [heading(words.foodTitle), ...told];
  const { aim, kcalPerDay, targetWeightKg } = data.feeding;
  const text = fill(words.food, {
    aim: words.aims[aim],
    energy: tools.format.energy(kcalPerDay),
  });
  const target =
    targetWeightKg === null
      ? ''
      : ` ${fill(words.foodTarget, { target: tools.format.weight(targetWeightKg) })}`;
  return [section(words.foodTitle, [{ text: `${text}${target}` }]), ...told];
}

/** Consent on file; where there is none, the vet's answer to tick, sign and send back. */
function consent(data: VetLetterData, words: PracticeWords['letter'], tools: Press): Content {
  const { consent: given } = data.findings;
  const { format } = tools;
  if (given.given) {
    const parts = [
      given.vet,
      given.day === null ? '' : format.day(given.day),
      given.scope === '' ? '' : fill(words.consentScope, { scope: given.scope }),
      given.expiryDay === null
        ? ''
        : fill(words.consentUntil, { day: format.day(given.expiryDay) }),
    ].filter((part) => part !== '');
    const onFile = fill(words.consentGiven, { parts: parts.join(', ') || words.consentBare });
    return section(words.consentTitle, [paragraph(onFile, 6)]);
  }
  const answer = (text: string): TableCell[] => [tickBox(9), { text, margin: [4, -1, 0, 3] }];
  const [agree, limits, see, wait] = words.answers;
  const answers = [
    [...answer(agree), ...answer(see)],
    [...answer(limits), ...answer(wait)],
  ];
  const lineWidth = (tools.width - 24) / 2 - 70;
  const signature = [0, 2].map((from) =>
    words.sign
      .slice(from, from + 2)
      .flatMap((text) => [
        { text, style: 'small', margin: [0, 9, 0, 0] as [number, number, number, number] },
        writingLine(lineWidth, tools.colours, 19),
      ]),
  );
  return section(words.consentTitle, [
    paragraph(words.consentMissing, 6),
    { table: { widths: [14, '*', 14, '*'], body: answers }, layout: BARE },
    { table: { widths: [66, '*', 66, '*'], body: signature }, layout: BARE },
  ]);
}

/** Findings, measurements, plan and questions for the treating vet, with the consent to sign. */
export function vetLetter(data: VetLetterData, words: LetterWords): Sheet {
  const tools = press(data, words.owner.frame);
  const { letter } = words.practice;
  const because: readonly Provenance[] = [
    ...data.measurements.map((item) => item.figure),
    ...(data.trend?.figure ? [data.trend.figure] : []),
    ...data.screening.reasons,
    ...(data.ramp?.reasons ?? []),
    { evidence: 'D', mark: 'S', sources: ['lamenessScales'] },
  ];
  const end = referencesBelow(
    [consent(data, letter, tools)],
    because,
    letter.referencesTitle,
    words.owner.sources,
  );
  return {
    words: words.owner.frame,
    kind: letter.kind,
    title: fill(letter.title, { dog: data.dog.name }),
    body: [
      { stack: [...addressee(data, letter)], margin: [0, 8, 0, 0] },
      subject(data, letter, tools),
      ...opening(data, letter, tools),
      ...found(data, words, tools),
      ...history(data, letter, tools),
      ...weight(data, letter, tools),
      screeningResult(data.screening, data.dog.name, letter, tools.format),
      plan(data, words, tools),
      ...feeding(data, letter, tools),
      section(letter.questionsTitle, [bullets([...data.questions, ...letter.questions])]),
      together([
        { text: letter.close, margin: [0, 8, 0, 22] },
        { text: data.practice.practitioner || data.practice.name, bold: true },
      ]),
      ...end.body,
    ],
    end: end.end,
  };
}
