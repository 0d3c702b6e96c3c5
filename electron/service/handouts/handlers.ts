import { NO_SHEET } from '../../contract/calls/handouts.ts';
import type { RenderedHandout } from '../../contract/contract.ts';
import type { HandoutKind, Language, Practice } from '../../contract/records.ts';
import { Later, type Context, type Handlers, type LateHandlers } from '../database/context.ts';
import { runBatch, type BatchRoom } from './batch.ts';
import { sheetFileName } from './fileNames.ts';
import { printJob, type PrintRoom } from './job.ts';
import { badField } from '../refuse.ts';
import { collect } from './material.ts';
import { whyNoSheet } from './whyNoSheet.ts';

interface Request {
  /** Null for those the practice chose for the dog's last visit. */
  readonly kinds: readonly HandoutKind[] | null;
  readonly dogId: string;
  readonly paper: Practice['paper'] | null;
  readonly language: Language | undefined;
}

/** Reads the record now and prints later: the next call need not wait for the paper. */
async function render(
  context: Context,
  { printer, fontsFolder }: PrintRoom,
  request: Request,
): Promise<Later<RenderedHandout>> {
  const { dogId, paper } = request;
  const material = await collect(context, dogId, paper);
  const kinds = request.kinds ?? material.chosen;
  if (kinds.length === 0) throw badField('kinds', NO_SHEET);
  const language = request.language ?? material.language;
  const problems = kinds.map((kind) => whyNoSheet(kind, material));
  const printed = kinds.filter((_, index) => problems[index] === null);
  const leftOut = problems.filter((problem) => problem !== null);
  if (printed.length === 0) throw badField('kind', leftOut.join(' '));
  const printing = printer.print(printJob(material, printed, { language, fontsFolder }));
  const name = printed.length === 1 ? printed[0]! : 'visit';
  return new Later(
    printing.then((pdf) => ({
      fileName: sheetFileName(name, material.file.dog.name, material.context.day),
      mediaType: 'application/pdf',
      leftOut,
      ...pdf,
    })),
  );
}

export const handoutHandlers = (
  room: BatchRoom,
): LateHandlers<'handouts/render' | 'handouts/bundle' | 'handouts/batch'> &
  Handlers<'handouts/warmUp'> => ({
  'handouts/render': (context, { kind, dogId, paper, language }) =>
    render(context, room, { kinds: [kind], dogId, paper, language }),
  'handouts/bundle': (context, { kinds, dogId, paper, language }) =>
    render(context, room, { kinds, dogId, paper, language }),
  'handouts/batch': (context, request) => runBatch(context, room, request),
  'handouts/warmUp': async (context, { dogId }) => {
    if (room.printer.isStarted()) return null;
    const request = { kinds: null, dogId, paper: null, language: undefined };
    const { result } = await render(context, room, request);
    // What goes wrong is told by the print somebody asks for.
    result.catch(() => undefined);
    return null;
  },
});
