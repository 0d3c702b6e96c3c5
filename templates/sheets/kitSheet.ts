import type { Content } from 'pdfmake/interfaces';
import type { Provenance } from '../../core/figure.ts';
import type { GaitChanges } from '../../core/training.ts';
import { fill } from '../format.ts';
import { press, type Press, type Sheet } from '../frame.ts';
import type { HandoutContext } from '../model.ts';
import { BARE, bullets, callout, pair, section, tickBox, writingLine } from '../parts/layout.ts';
import { sourceNote } from '../parts/sources.ts';
import type { OwnerWords } from '../words/words.ts';

export interface KitSheetData extends HandoutContext {
  /** At which pace dogs of its height change to a canter or gallop; left out where it was not measured. */
  readonly pace?: GaitChanges | null;
}

/** Where the advice of the sheet comes from. */
const ADVICE: readonly Provenance[] = [
  { evidence: 'A', mark: 'S', sources: ['lafuente2019'] },
  { evidence: 'D', mark: 'CP', sources: ['commonPractice'] },
];

/** Kit and technique for one dog and owner: harness, line, first runs, paws. */
export function kitSheet(data: KitSheetData, words: OwnerWords): Sheet {
  const tools = press(data, words.frame);
  const { kit } = words;
  const dog = { dog: data.dog.name };
  const list = (items: readonly string[]) => bullets(items.map((item) => fill(item, dog)));
  return {
    words: words.frame,
    kind: kit.kind,
    title: fill(kit.title, dog),
    body: [
      pair(
        section(kit.harnessTitle, [list(kit.harness)]),
        section(kit.startTitle, [list([...kit.start, ...paceLines(data, words, tools)])]),
      ),
      pair(section(kit.youTitle, [list(kit.you)]), section(kit.pawsTitle, [list(kit.paws)])),
      section(kit.packTitle, [packList(kit.pack)]),
    ],
    end: [
      fitRecord(words, tools),
      { text: fill(kit.vet, dog), bold: true, margin: [0, 7, 0, 0] },
      sourceNote([...(data.pace ? [data.pace.canterPace.figure] : []), ...ADVICE], words.sources),
    ],
  };
}

/** The paces of this dog; `low` of a pace is the faster one. */
function paceLines(data: KitSheetData, words: OwnerWords, tools: Press): readonly string[] {
  if (data.pace == null) return [];
  const { low, high } = data.pace.canterPace;
  return [
    fill(words.kit.pace, {
      dog: data.dog.name,
      slow: tools.format.pace(high),
      fast: tools.format.pace(low),
    }),
  ];
}

function packList(items: readonly string[]): Content {
  const cells = items.flatMap((text) => [tickBox(9), { text, margin: [4, -1, 8, 0] } as Content]);
  return {
    table: { widths: items.flatMap(() => [11, '*']), body: [cells] },
    layout: BARE,
  };
}

function fitRecord(words: OwnerWords, tools: Press): Content {
  const [harness, size, line, watch] = words.kit.fitLines;
  const cells = (name: string) => [
    { text: name, style: 'small', margin: [0, 8, 0, 0] },
    writingLine((tools.width - 60) / 2 - 70, tools.colours, 19),
  ];
  const body = [
    [...cells(harness), ...cells(size)],
    [...cells(line), ...cells(watch)],
  ];
  return callout(
    words.kit.fitTitle,
    [{ table: { widths: [66, '*', 66, '*'], body }, layout: BARE } as Content],
    tools.colours,
  );
}
