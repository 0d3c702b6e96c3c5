import type { Content } from 'pdfmake/interfaces';
import type { Reason } from '../../core/figure.ts';
import type { Screening, ScreeningReason } from '../../core/readiness/types.ts';
import { fill } from '../format.ts';
import type { Press } from '../frame.ts';
import type { OwnerWords, ReasonWords } from '../words/words.ts';
import { bullets, section } from './layout.ts';
import { levelMark } from './sources.ts';

/** A reason in the language of the sheet, or in core's English where there is no own sentence. */
export function reasonText(reason: Reason, sentences: ReasonWords): string {
  const own = sentences[reason.code];
  return own === undefined ? reason.text : fill(own, reason.params);
}

function isScreened(reason: Reason | ScreeningReason): reason is ScreeningReason {
  return 'overriddenBecause' in reason;
}

function reasonItem(reason: Reason, words: OwnerWords): Content {
  const { screening, reasons } = words;
  const setAside = isScreened(reason) ? reason.overriddenBecause : null;
  const change = setAside === null ? reason.change : undefined;
  const lines: Content[] = [
    `${reasonText(reason, reasons)} ${levelMark(reason.evidence)}`,
    ...(change === undefined ? [] : [{ text: fill(screening.change, { change }), style: 'small' }]),
    ...(setAside === null
      ? []
      : [{ text: fill(screening.overridden, { reason: setAside }), bold: true }]),
  ];
  return { stack: lines };
}

/** Reasons as a list; what would change each one, or why it was set aside, stands under it. */
export function reasonList(reasons: readonly Reason[], words: OwnerWords): Content {
  return bullets(
    reasons.map((reason) => reasonItem(reason, words)),
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
  return section(fill(words.screening.title, { dog }), [
    { text: outcome, style: 'lead', bold: true, margin: [0, 0, 0, 3] },
    ...later,
    reasonList(screening.reasons, words),
  ]);
}
