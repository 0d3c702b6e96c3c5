import {
  enPractice,
  OWNER_WORDS,
  renderPdf,
  visitBundle,
  type VisitSheet,
} from '../../../templates/index.ts';
import type { RenderedHandout } from '../../contract/contract.ts';
import type { HandoutKind, Language, Practice } from '../../contract/records.ts';
import type { Desk, Handlers } from '../context.ts';
import { collect } from './material.ts';
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

async function render(desk: Desk, fontsFolder: string, request: Request): Promise<RenderedHandout> {
  const { kinds, dogId, paper } = request;
  const material = await collect(desk, dogId, paper);
  const practice = await desk.db.selectFrom('practice').select('language').executeTakeFirst();
  const language = request.language ?? (practice?.language as Language | undefined) ?? 'en';
  const sheets = kinds.map((kind) => sheetFor(kind, material)) as [VisitSheet, ...VisitSheet[]];
  const document = visitBundle(material.context, sheets, {
    owner: OWNER_WORDS[language],
    // Between professionals the wording is English; the numbers in it are written the same way.
    professional: { practice: enPractice, owner: OWNER_WORDS.en },
  });
  const { bytes, pages } = await renderPdf(document, {
    fontsFolder,
    // The day decides, so that the same record gives the same file all day.
    instant: new Date(`${desk.today()}T12:00:00Z`),
  });
  const name = kinds.length === 1 ? kinds[0]! : 'visit';
  return {
    fileName: fileName(name, material.file.dog.name, desk.today()),
    mediaType: 'application/pdf',
    base64: Buffer.from(bytes).toString('base64'),
    pages,
  };
}

export const handoutHandlers = (
  fontsFolder: string,
): Handlers<'handouts/render' | 'handouts/bundle'> => ({
  'handouts/render': (desk, { kind, dogId, paper, language }) =>
    render(desk, fontsFolder, { kinds: [kind], dogId, paper, language }),
  'handouts/bundle': (desk, { kinds, dogId, paper, language }) =>
    render(desk, fontsFolder, { kinds, dogId, paper, language }),
});
