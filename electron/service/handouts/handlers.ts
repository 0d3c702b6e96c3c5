import type { VisitSheet } from '../../../templates/index.ts';
import type { RenderedHandout } from '../../contract/contract.ts';
import type { HandoutKind, Language, Practice } from '../../contract/records.ts';
import { Later, type Desk, type LateHandlers } from '../context.ts';
import { collect } from './material.ts';
import type { Printer } from './printer.ts';
import { sheetFor } from './sheets.ts';

interface Request {
  readonly kinds: readonly HandoutKind[];
  readonly dogId: string;
  readonly paper: Practice['paper'] | null;
  readonly language: Language | undefined;
}

/** A file name any system takes: letters, digits and hyphens of the dog's name. */
function fileName(kind: HandoutKind | 'visit', dogName: string, day: string): string {
  const plain = dogName
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40);
  return `${plain === '' ? 'dog' : plain}-${kind}-${day}.pdf`;
}

/** Reads the record now and prints later: the next call need not wait for the paper. */
async function render(
  desk: Desk,
  { printer, fontsFolder }: PrintRoom,
  request: Request,
): Promise<Later<RenderedHandout>> {
  const { kinds, dogId, paper } = request;
  const material = await collect(desk, dogId, paper);
  const practice = await desk.db.selectFrom('practice').select('language').executeTakeFirst();
  const day = desk.today();
  const printing = printer.print({
    context: material.context,
    sheets: kinds.map((kind) => sheetFor(kind, material)) as [VisitSheet, ...VisitSheet[]],
    language: request.language ?? (practice?.language as Language | undefined) ?? 'en',
    fontsFolder,
    // The day decides, so that the same record gives the same file all day.
    instant: new Date(`${day}T12:00:00Z`),
  });
  const name = kinds.length === 1 ? kinds[0]! : 'visit';
  return new Later(
    printing.then((printed) => ({
      fileName: fileName(name, material.file.dog.name, day),
      mediaType: 'application/pdf',
      ...printed,
    })),
  );
}

/** What printing needs beside the records. */
export interface PrintRoom {
  readonly printer: Printer;
  /** The folder with the fonts of the handouts. */
  readonly fontsFolder: string;
}

export const handoutHandlers = (
  room: PrintRoom,
): LateHandlers<'handouts/render' | 'handouts/bundle'> => ({
  'handouts/render': (desk, { kind, dogId, paper, language }) =>
    render(desk, room, { kinds: [kind], dogId, paper, language }),
  'handouts/bundle': (desk, { kinds, dogId, paper, language }) =>
    render(desk, room, { kinds, dogId, paper, language }),
});
