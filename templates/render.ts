import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import pdfmake from 'pdfmake';
import type { TDocumentDefinitions, TFontDictionary } from 'pdfmake/interfaces';
import { FONT_FILE_NAMES, FONT_FILES } from './fonts.ts';
import { keepFont } from './keptFonts.ts';
import { drawable, missingCharacters, sharedCoverage, type Coverage } from './glyphs.ts';

/** A handout as built by a sheet: a pdfmake document and what goes into the file's metadata. */
export interface HandoutDocument {
  readonly definition: TDocumentDefinitions;
  readonly title: string;
  readonly author: string;
  readonly subject: string;
  /** BCP 47, e.g. `en`. */
  readonly language: string;
}

export interface RenderOptions {
  /** Folder that holds the files of `FONT_FILES`. */
  readonly fontsFolder: string;
  /** Written into the file as its creation date; the same instant gives the same bytes. */
  readonly instant: Date;
}

export interface RenderedPdf {
  readonly bytes: Uint8Array;
  readonly pages: number;
  /** Characters of the data that the fonts cannot draw; printed as U+25A0. Usually empty. */
  readonly missingCharacters: readonly string[];
}

/** The part of pdfmake on Node that its own types leave out. */
interface PdfmakeServer {
  readonly virtualfs: { writeFileSync(name: string, content: Uint8Array): void };
}

const coverageByFolder = new Map<string, Promise<Coverage>>();

/** Reads the fonts of a folder once; pdfmake keeps them in memory under their file names. */
function loadFonts(folder: string): Promise<Coverage> {
  const known = coverageByFolder.get(folder);
  if (known !== undefined) return known;
  const loading = readFonts(folder);
  coverageByFolder.set(folder, loading);
  // A folder that could not be read is tried again next time.
  loading.catch(() => coverageByFolder.delete(folder));
  return loading;
}

async function readFonts(folder: string): Promise<Coverage> {
  const files = await Promise.all(
    FONT_FILE_NAMES.map(async (name) => ({ name, bytes: await readFile(join(folder, name)) })),
  );
  const { virtualfs } = pdfmake as unknown as PdfmakeServer;
  for (const file of files) virtualfs.writeFileSync(file.name, keepFont(file.bytes));
  // Nothing a handout contains may make the program read a file or open a connection.
  pdfmake.setUrlAccessPolicy(() => false);
  pdfmake.setLocalAccessPolicy(() => false);
  pdfmake.setFonts(structuredClone(FONT_FILES) as TFontDictionary);
  return sharedCoverage(files.map((file) => file.bytes));
}

/** Walks a document and replaces, in every text, what the fonts cannot draw. */
function makeDrawable(value: unknown, coverage: Coverage, missing: Set<string>): unknown {
  if (typeof value === 'string') {
    for (const character of missingCharacters(value.normalize('NFC'), coverage)) {
      missing.add(character);
    }
    return drawable(value, coverage);
  }
  if (Array.isArray(value)) return value.map((item) => makeDrawable(item, coverage, missing));
  if (typeof value === 'function') {
    return (...values: unknown[]) =>
      makeDrawable((value as (...v: unknown[]) => unknown)(...values), coverage, missing);
  }
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, item]) => [key, makeDrawable(item, coverage, missing)]),
  );
}

/**
 * Renders a handout to PDF. The same document, fonts and instant give the same bytes.
 *
 * pdfmake writes its measurements into the document it is given, so it gets a copy. The file is not
 * tagged: pdfmake cannot tag content.
 * @throws Error when a font file is missing or the document asks for a file or an address.
 */
export async function renderPdf(
  handout: HandoutDocument,
  options: RenderOptions,
): Promise<RenderedPdf> {
  const coverage = await loadFonts(options.fontsFolder);
  const missing = new Set<string>();
  const definition = makeDrawable(handout.definition, coverage, missing) as TDocumentDefinitions;
  const output = pdfmake.createPdf(
    {
      ...definition,
      version: '1.7',
      language: handout.language,
      displayTitle: true,
      info: {
        title: handout.title,
        author: handout.author,
        subject: handout.subject,
        creator: 'Trotwell',
        producer: 'Trotwell',
        creationDate: options.instant,
        modDate: options.instant,
      },
    } as TDocumentDefinitions,
    { bufferPages: true },
  );
  const pages = (await output.getStream()).bufferedPageRange().count;
  const bytes = new Uint8Array(await output.getBuffer());
  return { bytes, pages, missingCharacters: [...missing] };
}
