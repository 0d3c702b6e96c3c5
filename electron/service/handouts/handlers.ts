import type { RenderedHandout } from '../../contract/contract.ts';
import type { HandoutKind, Language, Practice } from '../../contract/records.ts';
import { Later, type Desk, type LateHandlers } from '../context.ts';
import { runBatch, type BatchRoom } from './batch.ts';
import { sheetFileName } from './fileNames.ts';
import { printJob, type PrintRoom } from './job.ts';
import { collect } from './material.ts';

interface Request {
  readonly kinds: readonly HandoutKind[];
  readonly dogId: string;
  readonly paper: Practice['paper'] | null;
  readonly language: Language | undefined;
}

/** Reads the record now and prints later: the next call need not wait for the paper. */
async function render(
  desk: Desk,
  { printer, fontsFolder }: PrintRoom,
  request: Request,
): Promise<Later<RenderedHandout>> {
  const { kinds, dogId, paper } = request;
  const material = await collect(desk, dogId, paper);
  const language = request.language ?? material.language;
  const printing = printer.print(printJob(material, kinds, { language, fontsFolder }));
  const name = kinds.length === 1 ? kinds[0]! : 'visit';
  return new Later(
    printing.then((printed) => ({
      fileName: sheetFileName(name, material.file.dog.name, desk.today()),
      mediaType: 'application/pdf',
      ...printed,
    })),
  );
}

export const handoutHandlers = (
  room: BatchRoom,
): LateHandlers<'handouts/render' | 'handouts/bundle' | 'handouts/batch'> => ({
  'handouts/render': (desk, { kind, dogId, paper, language }) =>
    render(desk, room, { kinds: [kind], dogId, paper, language }),
  'handouts/bundle': (desk, { kinds, dogId, paper, language }) =>
    render(desk, room, { kinds, dogId, paper, language }),
  'handouts/batch': (desk, request) => runBatch(desk, room, request),
});
