import { MARK_WIDTH, type KeyEntry } from './marks.ts';

/** How many pixels of the picture stand for one of the screen: sharp in print and in a message. */
const SCALE = 2;
const EDGE = 24;
const TITLE_SIZE = 20;
const TEXT_SIZE = 13;
const KEY_LINE = 22;
/** The screen's own letters do not reach into a picture; these are at hand everywhere. */
const LETTERS = 'sans-serif';
const GROUND = '#ffffff';

/** Styles that decide how a shape looks, and are attributes of SVG too. */
const DRAWN = [
  'fill',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'opacity',
  'font-size',
  'font-weight',
] as const;

export interface PictureParts {
  readonly title: string;
  /** The chart as it is on the page. */
  readonly chart: SVGSVGElement;
  readonly keys: readonly KeyEntry[];
  /** The samples of the key, in the order of `keys`. */
  readonly marks: readonly SVGSVGElement[];
}

/**
 * The chart as a PNG picture, with its title and key, on white paper whatever colours the screen
 * has. @throws Error when the browser cannot draw it.
 */
export async function pngOf(parts: PictureParts): Promise<Uint8Array> {
  const { svg, width, height } = compose(parts);
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(new XMLSerializer().serializeToString(svg))}`;
  await image.decode();
  const canvas = document.createElement('canvas');
  canvas.width = width * SCALE;
  canvas.height = height * SCALE;
  const pen = canvas.getContext('2d');
  if (pen === null) throw new Error('This window cannot draw pictures.');
  pen.fillStyle = GROUND;
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(image, 0, 0, canvas.width, canvas.height);
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
  if (blob === null) throw new Error('This window cannot draw pictures.');
  return new Uint8Array(await blob.arrayBuffer());
}

/** One SVG of title, chart and key, in pixels of the screen. */
function compose({ title, chart, keys, marks }: PictureParts) {
  const width = chart.width.baseVal.value + 2 * EDGE;
  const chartHeight = chart.height.baseVal.value;
  const svg = document.createElementNS(chart.namespaceURI, 'svg') as SVGSVGElement;
  const head = text(svg, title, EDGE, EDGE + TITLE_SIZE * 0.8, TITLE_SIZE);
  head.setAttribute('font-weight', '600');
  place(svg, onPaper(chart), EDGE, EDGE + TITLE_SIZE + 14);
  let x = EDGE;
  let y = EDGE + TITLE_SIZE + 14 + chartHeight + 14;
  keys.forEach(({ words }, index) => {
    const length = MARK_WIDTH + 8 + widthOf(words) + 20;
    if (x > EDGE && x + length > width - EDGE) {
      x = EDGE;
      y += KEY_LINE;
    }
    const mark = marks[index];
    if (mark !== undefined) place(svg, onPaper(mark), x, y);
    text(svg, words, x + MARK_WIDTH + 8, y + 11, TEXT_SIZE);
    x += length;
  });
  const height = Math.ceil(y + KEY_LINE + EDGE / 2);
  svg.setAttribute('width', String(width));
  svg.setAttribute('height', String(height));
  svg.setAttribute('font-family', LETTERS);
  return { svg, width, height };
}

function place(svg: SVGSVGElement, part: SVGSVGElement, x: number, y: number): void {
  part.setAttribute('x', String(x));
  part.setAttribute('y', String(y));
  svg.append(part);
}

function text(svg: SVGSVGElement, words: string, x: number, y: number, size: number): Element {
  const element = document.createElementNS(svg.namespaceURI, 'text');
  element.textContent = words;
  for (const [name, value] of Object.entries({ x, y, 'font-size': size, fill: '#23262b' })) {
    element.setAttribute(name, String(value));
  }
  svg.append(element);
  return element;
}

function widthOf(words: string): number {
  const pen = document.createElement('canvas').getContext('2d');
  if (pen === null) return words.length * TEXT_SIZE * 0.6;
  pen.font = `${TEXT_SIZE}px ${LETTERS}`;
  return pen.measureText(words).width;
}

/**
 * A copy of a drawing that carries its looks itself, in the light colours: a picture has neither
 * style sheets nor a dark scheme.
 */
function onPaper(drawing: SVGSVGElement): SVGSVGElement {
  const light = document.createElement('div');
  light.className = 'light-copy';
  light.setAttribute('aria-hidden', 'true');
  const copy = drawing.cloneNode(true) as SVGSVGElement;
  light.append(copy);
  document.body.append(light);
  const elements = [copy, ...copy.querySelectorAll<SVGElement>('*')];
  for (const element of elements) {
    const style = getComputedStyle(element);
    const looks = DRAWN.map((name) => [name, style.getPropertyValue(name)] as const);
    for (const [name, value] of looks) if (value !== '') element.setAttribute(name, value);
  }
  // Only now: a class of an outer element decides how the inner ones look.
  for (const element of elements) {
    for (const name of ['class', 'tabindex', 'role', 'aria-label']) element.removeAttribute(name);
  }
  light.remove();
  return copy;
}
