import { bytesFromBase64 } from '../api/saveFile.ts';

/** Pages as pictures, and the size of the first in points. */
interface Painted {
  readonly pictures: readonly Blob[];
  readonly size: { readonly width: number; readonly height: number };
}

/** Pages of one PDF after the other's. */
async function paintAll(pdfs: readonly string[]): Promise<Painted> {
  const painted: Painted[] = [];
  for (const pdf of pdfs) painted.push(await paint(pdf));
  return { pictures: painted.flatMap(({ pictures }) => pictures), size: painted[0]!.size };
}

async function paint(base64: string): Promise<Painted> {
  // The viewer is large and needed for paper only.
  const { openPdf, paintPage } = await import('./pdfPages.ts');
  const pdf = await openPdf(bytesFromBase64(base64));
  try {
    const pages = Array.from({ length: pdf.numPages }, (_, index) => pdf.getPage(index + 1));
    const { width, height } = (await pages[0]!).getViewport({ scale: 1 });
    const pictures: Blob[] = [];
    // One after the other: each is large while it is drawn.
    for (const page of pages) pictures.push(await paintPage(await page));
    return { pictures, size: { width, height } };
  } finally {
    void pdf.loadingTask.destroy();
  }
}

/** Takes what was last printed away again; nothing of a record stays behind in the page. */
let clear = (): void => undefined;

async function lay({ pictures, size }: Painted): Promise<void> {
  const sheets = document.createElement('div');
  sheets.className = 'printed-sheets';
  const addresses = pictures.map((picture) => URL.createObjectURL(picture));
  for (const address of addresses) {
    const image = document.createElement('img');
    image.alt = '';
    image.src = address;
    sheets.append(image);
    await image.decode();
  }
  const paper = new CSSStyleSheet();
  paper.replaceSync(`@page { size: ${size.width}pt ${size.height}pt; margin: 0; }`);
  document.adoptedStyleSheets.push(paper);
  document.body.append(sheets);
  clear = () => {
    sheets.remove();
    addresses.forEach((address) => URL.revokeObjectURL(address));
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((other) => other !== paper);
    clear = () => undefined;
  };
  window.addEventListener('afterprint', () => clear(), { once: true });
}

/**
 * Opens the system's print window with the pages of PDFs on one paper, which no plug-in may show here:
 * they are drawn as pictures. What the practitioner does there is not told.
 * @returns false where this window cannot print
 */
export async function printPdfs(pdfs: readonly string[]): Promise<boolean> {
  if (typeof window.print !== 'function') return false;
  clear();
  try {
    await lay(await paintAll(pdfs));
  } catch {
    return false;
  }
  window.print();
  return true;
}
