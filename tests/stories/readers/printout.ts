import { printout } from '../../../electron/service/demo/printout.ts';
import type { Played } from '../play.ts';
import { PROGRAMME, type Told } from '../told.ts';
import { isoDay } from './sheets.ts';

/** What `npm run demo` would print of the dog of a story. */
export function readPrintout({ file, practice }: Played): Told {
  const text = printout(file, practice).join('\n').replaceAll('\u00a0', ' ');
  const found = (line: RegExp): string | undefined => line.exec(text)?.[1];
  /** The day a line ends on; null where it says `none` or is left out. */
  const dayIn = (line: RegExp): string | null => {
    const written = found(line);
    return written === undefined || /\D{3}/.test(written)
      ? null
      : isoDay(written, practice.dayFormat);
  };
  const week = /^ {2}Week: (\S+) of (\d+)$/m.exec(text);
  const minutes = found(/^ {2}This week: ([\d.]+) min$/m);
  const fed = [...text.matchAll(/^ {4}(.+): ([\d,]+) g a day$/gm)];
  const target = found(/; target (.+)$/m);
  const kind = found(/^Programme: (\w+)/m);
  return {
    outcome: found(/^ {2}May run: (.+)$/m),
    programme: PROGRAMME[kind as keyof typeof PROGRAMME],
    week: week === null || week[1] === 'none' ? null : Number(week[1]),
    lastWeek: week === null ? null : Number(week[2]),
    nextOuting: dayIn(/^ {2}Next outing: (.+)$/m),
    runMinutes: minutes === undefined ? null : Number(minutes),
    kcal: text.includes('  Fed: nothing decided') ? null : found(/^ {2}Fed: (.+) a day since/m),
    grams:
      fed.length === 0
        ? null
        : Object.fromEntries(fed.map((row) => [row[1], Number(row[2]!.replaceAll(',', ''))])),
    weight: found(/^ {2}Weight (\d+\.\d (?:kg|lb)), /m),
    target: target === 'none' ? null : target,
    goalDay: dayIn(/^ {2}Goal reached on: (.+)$/m),
    nextWeighIn: dayIn(/^ {2}Due (.+): weigh$/m),
  };
}
