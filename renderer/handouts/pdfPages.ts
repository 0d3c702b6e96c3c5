import {
  getDocument,
  GlobalWorkerOptions,
  PDFWorker,
  TextLayer,
  type PDFDocumentProxy,
  type PDFPageProxy,
} from 'pdfjs-dist';
import workerUrl from 'pdfjs-dist/build/pdf.worker.min.mjs?url';

GlobalWorkerOptions.workerSrc = workerUrl;
/** One for all documents: each would start its own, and read a megabyte of code for it. */
const worker = new PDFWorker();
// The module is fetched ahead; where no worker starts, the first document says so.
worker.promise.catch(() => undefined);

/** Opens a PDF from its bytes. The bytes are handed over to the worker and cannot be used again. */
export function openPdf(bytes: Uint8Array): Promise<PDFDocumentProxy> {
  return getDocument({ data: bytes, worker, useWasm: false, isImageDecoderSupported: false })
    .promise;
}

/**
 * Draws one page into `host`: a canvas to look at, and a layer of text over it to select and to
 * read out. Nothing is put in place once it is `overtaken` by another drawing.
 */
export async function drawPage(
  page: PDFPageProxy,
  host: HTMLElement,
  width: number,
  overtaken: () => boolean,
): Promise<void> {
  const scale = width / page.getViewport({ scale: 1 }).width;
  const viewport = page.getViewport({ scale });
  const density = window.devicePixelRatio || 1;

  const canvas = document.createElement('canvas');
  canvas.setAttribute('aria-hidden', 'true');
  canvas.width = Math.floor(viewport.width * density);
  canvas.height = Math.floor(viewport.height * density);
  canvas.style.width = `${viewport.width}px`;
  canvas.style.height = `${viewport.height}px`;

  const text = document.createElement('div');
  text.className = 'page-text';
  const drawing = page.render({
    canvas,
    viewport,
    transform: density === 1 ? undefined : [density, 0, 0, density, 0, 0],
  });
  // Read while the page is drawn, and laid over it after.
  const textContentSource = page.streamTextContent();
  await drawing.promise;
  if (overtaken()) return;
  // Put in place once it is whole: the window would paint each part of it, and the page before stays.
  host.style.setProperty('--total-scale-factor', String(scale));
  host.replaceChildren(canvas, text);
  await new TextLayer({ textContentSource, container: text, viewport }).render();
}

/** Dots an inch of a page on paper, as office printers set it (D); a PDF counts 72 points. */
const DPI = 300;
const POINTS = 72;

/** One page as a picture for paper. */
export async function paintPage(page: PDFPageProxy): Promise<Blob> {
  const viewport = page.getViewport({ scale: DPI / POINTS });
  const canvas = document.createElement('canvas');
  canvas.width = Math.floor(viewport.width);
  canvas.height = Math.floor(viewport.height);
  await page.render({ canvas, viewport, intent: 'print' }).promise;
  const picture = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve));
  if (picture === null) throw new Error('There is no room to draw the page.');
  return picture;
}
