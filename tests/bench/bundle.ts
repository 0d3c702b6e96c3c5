import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pdfmake from 'pdfmake';
import type { TDocumentDefinitions } from 'pdfmake/interfaces';
import type { HandoutKind } from '../../electron/contract/records.ts';
import { openContext } from '../../electron/service/database/open.ts';
import { collect } from '../../electron/service/handouts/material.ts';
import { sheetFor } from '../../electron/service/handouts/sheets.ts';
import type { Service } from '../../electron/service/service.ts';
import {
  enPractice,
  OWNER_WORDS,
  visitBundle,
  type HandoutDocument,
  type VisitSheet,
} from '../../templates/index.ts';
import { loadFonts } from './fonts.ts';
import { compare, median, roundsOf, timed, type BenchLine } from './measure.ts';
import { plainDocument } from './plainDocument.ts';
import { clock } from './practice.ts';
import { ask, startService } from './service.ts';

/** Sheets of a follow-up that make six pages for the demonstration dog. */
const KINDS: HandoutKind[] = ['progress-report', 'feeding-sheet', 'heat-card', 'vet-letter'];
const PROBE_EVERY_MS = 2;
const RENDERS = roundsOf(12);

interface Bundle {
  readonly service: Service;
  readonly dogId: string;
}

/** Turned round every time: the same sheets in the same order would be those kept from before. */
const kinds = KINDS.slice(0, 2);
const render = ({ service, dogId }: Bundle) =>
  ask(service, 'handouts/bundle', {
    kinds: [...kinds.reverse(), ...KINDS.slice(2)],
    dogId,
    paper: null,
  });

/** The document behind the bundle, for its text. */
async function documentOf(folder: string, dogId: string): Promise<HandoutDocument> {
  const desk = openContext(folder, 'demo', clock);
  const material = await collect(desk, dogId, null);
  await desk.close();
  const sheets = KINDS.map((kind) => sheetFor(kind, material)) as [VisitSheet, ...VisitSheet[]];
  return visitBundle(material.context, sheets, {
    owner: OWNER_WORDS.en,
    professional: { practice: enPractice, owner: OWNER_WORDS.en },
  });
}

const renderPlain = (document: TDocumentDefinitions): Promise<Buffer> =>
  pdfmake.createPdf(structuredClone(document)).getBuffer() as Promise<Buffer>;

/** Asks for the state of the program again and again during a print; the longest wait, ms. */
async function worstDelay(bundle: Bundle): Promise<number> {
  let [printing, worst] = [true, 0];
  const done = render(bundle).then(() => (printing = false));
  while (printing) {
    worst = Math.max(worst, await timed(() => ask(bundle.service, 'app/status', {})));
    await new Promise((resolve) => setTimeout(resolve, PROBE_EVERY_MS));
  }
  await done;
  return worst;
}

/** The bundle of a visit against pdfmake alone, twice in a row, and beside other calls. */
export async function measureBundle(): Promise<BenchLine[]> {
  const folder = mkdtempSync(join(tmpdir(), 'trotwell-bench-'));
  const service = startService(folder);
  await ask(service, 'app/open', { which: 'demo' });
  const [line] = await ask(service, 'dogs/list', { query: 'Bramble' });
  const bundle = { service, dogId: line!.id };
  const firstMs = await timed(() => render(bundle));
  const laterMs: number[] = [];
  for (let index = 0; index < RENDERS; index += 1) {
    laterMs.push(await timed(() => render(bundle)));
  }
  const { pages } = await render(bundle);
  loadFonts();
  const handout = await documentOf(folder, bundle.dogId);
  const delays: number[] = [];
  for (let index = 0; index < RENDERS; index += 1) delays.push(await worstDelay(bundle));
  const lines = await againstPdfmake(bundle, handout, pages);
  await service.close();
  rmSync(folder, { recursive: true, force: true });
  return [
    ...lines,
    {
      name: 'The same bundle, later renders',
      against: 'the first render of the start, fonts and thread included',
      value: median(laterMs) / firstMs,
      unit: '×',
      target: 1,
    },
    {
      name: `Longest wait for another answer during ${RENDERS} prints`,
      against: `a call asked every ${PROBE_EVERY_MS} ms`,
      value: Math.max(...delays),
      unit: 'ms',
      target: 50,
    },
  ];
}

async function againstPdfmake(
  bundle: Bundle,
  handout: HandoutDocument,
  pages: number,
): Promise<BenchLine[]> {
  const name = `Bundle of a visit, ${pages} pages, record to PDF`;
  const measure = async (tables: boolean): Promise<BenchLine> => {
    const plain = plainDocument(handout, tables);
    const { ratio, oursMs, theirsMs } = await compare(
      () => render(bundle),
      () => renderPlain(plain),
      { rounds: RENDERS, warmUp: RENDERS },
    );
    return {
      name,
      against: `pdfmake, the same text ${tables ? 'in plain paragraphs and tables' : 'in paragraphs only'}`,
      value: ratio,
      unit: '×',
      target: 1.3,
      note: `${oursMs.toFixed(0)} ms / ${theirsMs.toFixed(0)} ms`,
    };
  };
  return [await measure(true), await measure(false)];
}
