import type { Content } from 'pdfmake/interfaces';
import type { Reason } from '../../core/figure.ts';
import { fill } from '../format.ts';
import type { Override } from '../model.ts';
import type { OwnerWords, ReasonWords } from '../words/words.ts';
import { bullets } from './layout.ts';
import { levelMark } from './sources.ts';

/** A reason in the language of the sheet, or in core's English where there is no own sentence. */
export function reasonText(reason: Reason, sentences: ReasonWords): string {
  const own = sentences[reason.code];
  return own === undefined ? reason.text : fill(own, reason.params);
}

/** Reasons as a list; what would change each one and who set it aside stand under it. */
export function reasonList(
  reasons: readonly Reason[],
  overrides: readonly Override[],
  words: OwnerWords,
  sentences: ReasonWords,
): Content {
  return bullets(
    reasons.map((reason) => {
      const setAside = overrides.find((override) => override.code === reason.code);
      const lines: Content[] = [
        `${reasonText(reason, sentences)} ${levelMark(reason.evidence)}`,
        ...(reason.change === undefined
          ? []
          : [{ text: fill(words.screening.change, { change: reason.change }), style: 'small' }]),
        ...(setAside === undefined
          ? []
          : [{ text: fill(words.screening.overridden, { reason: setAside.reason }), bold: true }]),
      ];
      return { stack: lines };
    }),
    3,
  );
}
