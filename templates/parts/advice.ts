import type { Content, TableCell } from 'pdfmake/interfaces';
import { fill } from '../format.ts';
import type { Press } from '../frame.ts';
import type { OwnerWords } from '../words/words.ts';
import { bullets, callout, calmTable, paragraph, section, tableHead } from './layout.ts';

// Advice that stands on more than one sheet. `dog` is the dog's name.

function twoColumns(items: readonly string[]): Content {
  const half = Math.ceil(items.length / 2);
  return {
    columns: [bullets(items.slice(0, half), 0.5), bullets(items.slice(half), 0.5)],
    columnGap: 16,
  };
}

/** When to stop and whom to call: heavy frame, on the first page of every running sheet. */
export function stopRules(words: OwnerWords, dog: string, tools: Press): Content {
  const { plan } = words;
  return callout(
    plan.stopTitle,
    [
      paragraph(fill(plan.stopIntro, { dog }), 2),
      twoColumns(plan.stopSigns),
      { text: fill(plan.stopLater, { dog }), margin: [0, 1, 0, 0] },
    ],
    tools.colours,
    'warning',
  );
}

/** What to do with a dog that is too hot. */
export function heatFirstAid(words: OwnerWords, dog: string, tools: Press): Content {
  const { heat } = words;
  return callout(
    heat.firstAidTitle,
    [
      paragraph(heat.signs, 3),
      {
        ol: heat.firstAid.map((step) => ({ text: fill(step, { dog }), margin: [0, 0, 0, 1] })),
      },
    ],
    tools.colours,
    'warning',
  );
}

/** What each run consists of, from the meal before to the meal after. */
export function everyRun(words: OwnerWords): Content {
  const { plan } = words;
  return section(plan.eachRun, [
    bullets(
      [
        plan.warmUp,
        plan.ground,
        plan.effortMeans,
        plan.oneChange,
        plan.water,
        plan.coolDown,
      ].filter((line) => line !== ''),
    ),
  ]);
}

export function foodAndWater(words: OwnerWords): Content {
  return section(words.plan.feedingTitle, [bullets([...words.plan.feeding])]);
}

/** What the owner sees on the next day, and what follows from it. */
export function nextDay(words: OwnerWords, dog: string, tools: Press): Content {
  const { plan } = words;
  const rows: TableCell[][] = plan.nextSigns.map((sign, index) => [
    { text: sign },
    { text: plan.nextSteps[index] ?? '', bold: true },
  ]);
  return section(fill(plan.nextTitle, { dog }), [
    {
      table: {
        widths: ['*', 196],
        dontBreakRows: true,
        body: [[tableHead(plan.nextHead), tableHead(plan.nextStepHead)], ...rows],
      },
      layout: { ...calmTable(tools.colours), paddingTop: () => 2.5, paddingBottom: () => 2.5 },
    },
    { text: plan.missed, margin: [0, 5, 0, 0] },
  ]);
}

/** Questions for the vet, with what the screening left open first. */
export function askYourVet(words: OwnerWords, dog: string, open: readonly string[] = []): Content {
  const questions = words.plan.vetQuestions.map((question) => fill(question, { dog }));
  return section(words.plan.vetTitle, [
    paragraph(words.plan.vetIntro, 2),
    bullets([...open, ...questions]),
  ]);
}
