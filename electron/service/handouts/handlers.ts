import { NO_SHEET } from '../../contract/calls/handouts.ts';
import type { ParsedOf, RenderedHandout } from '../../contract/contract.ts';
import { Later, type Context, type Handlers, type LateHandlers } from '../database/context.ts';
import { runBatch, type BatchRoom } from './batch.ts';
import { fileNameOf } from './fileNames.ts';
import { printJob, type PrintRoom } from './job.ts';
import { badField } from '../refuse.ts';
import { collect } from './material.ts';
import { printable } from './whyNoSheet.ts';

type Request = ParsedOf<'handouts/bundle'>;

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
  const { printed, leftOut } = printable(kinds, material);
  if (printed.length === 0) throw badField('kind', leftOut.join(' '));
  const printing = printer.print(printJob(material, printed, { language, fontsFolder }));
  return new Later(
    printing.then((pdf) => ({
      fileName: fileNameOf(material, printed),
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
  'handouts/render': (context, { kind, ...asked }) =>
    render(context, room, { ...asked, kinds: [kind] }),
  'handouts/bundle': (context, asked) => render(context, room, asked),
  'handouts/batch': (context, request) => runBatch(context, room, request),
  'handouts/warmUp': async (context, { dogId }) => {
    if (room.printer.isStarted()) return null;
    const request = { kinds: null, dogId, paper: null };
    const { result } = await render(context, room, request);
    // What goes wrong is told by the print somebody asks for.
    result.catch(() => undefined);
    return null;
  },
});
