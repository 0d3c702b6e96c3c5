import type { Content } from 'pdfmake/interfaces';
import type { Provenance } from '../../core/figure.ts';
import type { HeatTable } from '../../core/training.ts';
import { fill } from '../format.ts';
import { press, type Sheet } from '../frame.ts';
import type { HandoutContext } from '../model.ts';
import { heatFirstAid } from '../parts/advice.ts';
import { coldLines, heatLadder, heatReasons, heatWatch } from '../parts/heatBands.ts';
import { pair, paragraph, section } from '../parts/layout.ts';
import { sourceNote } from '../parts/sources.ts';
import type { OwnerWords } from '../words/words.ts';

export interface HeatCardData extends HandoutContext {
  /** The bands of this dog, from core's `heatTable`. */
  readonly heat: HeatTable;
}

const ADVICE: readonly Provenance[] = [
  { evidence: 'A', mark: 'S', sources: ['heatFirstAid', 'berens1970'] },
  { evidence: 'D', mark: 'CP', sources: ['commonPractice'] },
];

/** Two short parts in two columns: the card is one page. */
const sideBySide = ([left, right]: readonly Content[]): readonly Content[] =>
  left === undefined ? [] : [right === undefined ? left : pair(left, right)];

/** How warm is too warm for this dog, and what to do when it was too warm. */
export function heatCard(data: HeatCardData, words: OwnerWords): Sheet {
  const tools = press(data, words.frame);
  const { heat } = words;
  const name = data.dog.name;
  const cold = coldLines(data.heat, name, heat, tools.format);
  const reasons = heatReasons(data.heat, name, heat, tools.format);
  return {
    words: words.frame,
    kind: heat.kind,
    title: fill(heat.cardTitle, { dog: name }),
    body: [
      paragraph(heat.intro, 4),
      heatLadder(data.heat, heat, tools),
      ...heatWatch(data.heat, name, heat),
      ...sideBySide([
        ...(reasons.length === 0 ? [] : [section(heat.whyTitle, reasons)]),
        ...(cold.length === 0 ? [] : [section(heat.cold.title, cold)]),
      ]),
      heatFirstAid(words, name, tools),
    ],
    end: [
      { text: `${heat.ground} ${heat.times}`, margin: [0, 4, 0, 2] },
      { text: fill(heat.ask, { dog: name }), bold: true },
      sourceNote([...data.heat.reasons, ...ADVICE], words.sources),
    ],
  };
}
