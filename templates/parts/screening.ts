import type { Content } from 'pdfmake/interfaces';
import type { Reason } from '../../core/figure.ts';
import type { Screening, ScreeningReason } from '../../core/training.ts';
import { fill, withUnit, type Format } from '../format.ts';
import type { Press } from '../frame.ts';
import type { OwnerWords } from '../words/words.ts';
import { bullets, listSection } from './layout.ts';
import { levelMark } from './sources.ts';

/** What reasons are written with: the words, the practice's units and the dog's name. */
export interface ReasonPress {
  readonly words: OwnerWords;
  readonly format: Format;
  readonly dog: string;
}

const ISO_DAY = /^\d{4}-\d{2}-\d{2}$/;

/** The value of a gap in the practice's units and day format. */
function written(name: string, value: number | string, format: Format): string {
  if (typeof value === 'string') return ISO_DAY.test(value) ? format.day(value) : value;
  if (name === 'kcal') return format.energy(value);
  if (name.endsWith('eightKg')) return format.weight(value);
  if (name === 'rate') return format.percent(value, 1);
  if (name === 'percent') return withUnit(format.trimmed(value), '%');
  return format.trimmed(value);
}

/** Fills a language's own sentence; undefined where it has none, or the reason lacks a value. */
function ownSentence(sentence: string | undefined, reason: Reason, tools: ReasonPress) {
  if (sentence === undefined) return undefined;
  const values: Record<string, string> = { dog: tools.dog };
  for (const [name, value] of Object.entries(reason.params)) {
    values[name] = written(name, value, tools.format);
  }
  const gaps = [...sentence.matchAll(/\{(\w+)\}/g)].map((match) => match[1] ?? '');
  return gaps.every((gap) => gap in values) ? fill(sentence, values) : undefined;
}

/**
 * A reason in the plain words of the sheet's language, or in core's English where the language has
 * no sentence for its code (a plan kept from an older version may hold such a code).
 */
export function reasonText(reason: Reason, tools: ReasonPress): string {
  return ownSentence(tools.words.reasons[reason.code], reason, tools) ?? tools.format.says(reason);
}

function changeText(reason: Reason, tools: ReasonPress): string | undefined {
  if (reason.change === undefined) return undefined;
  const text =
    ownSentence(tools.words.changes[reason.code], reason, tools) ??
    tools.format.sentence(reason.change);
  return text === '' ? undefined : text;
}

function isScreened(reason: Reason | ScreeningReason): reason is ScreeningReason {
  return 'overriddenBecause' in reason;
}

function reasonItem(reason: Reason, tools: ReasonPress): Content {
  const { screening } = tools.words;
  const setAside = isScreened(reason) ? reason.overriddenBecause : null;
  const change = setAside === null ? changeText(reason, tools) : undefined;
  const lines: Content[] = [
    `${reasonText(reason, tools)}\u00a0${levelMark(reason.evidence)}`,
    ...(change === undefined ? [] : [{ text: fill(screening.change, { change }), style: 'small' }]),
    ...(setAside === null
      ? []
      : [{ text: fill(screening.overridden, { reason: setAside }), bold: true }]),
  ];
  return { stack: lines, unbreakable: true };
}

/** Reasons as a list; what would change each one, or why it was set aside, stands under it. */
export function reasonList(reasons: readonly Reason[], tools: ReasonPress): Content {
  return bullets(
    reasons.map((reason) => reasonItem(reason, tools)),
    3,
  );
}

/** The outcome of the screening with its reasons, and from when the dog is old enough. */
export function screeningBlock(
  screening: Screening,
  dog: string,
  words: OwnerWords,
  tools: Press,
): Content {
  const outcome = fill(words.screening.outcomes[screening.outcome], { dog });
  const later =
    screening.oldEnoughOn === null
      ? []
      : [
          {
            text: fill(words.screening.oldEnough, {
              dog,
              day: tools.format.day(screening.oldEnoughOn),
            }),
          },
        ];
  return listSection(
    fill(words.screening.title, { dog }),
    [
      { text: outcome, style: 'lead', bold: true, margin: [0, 0, 0, 3] },
      ...later,
      reasonList(screening.reasons, { words, format: tools.format, dog }),
    ],
    screening.reasons.length,
  );
}
