import { draw } from './draw.ts';
import { readLook } from './look.ts';
import type { ChartSpec } from './spec.ts';

/** How many pixels of the picture stand for one of the screen: sharp in print and in a message. */
const SCALE = 2;
const WIDTH = 860;
const EDGE = 24;
const HEAD = 44;
const GROUND = '#ffffff';

/**
 * Charts as one PNG picture, with their title and key, on white paper whatever colours the screen
 * has. @throws Error when the window cannot draw it.
 */
export async function pngOf(title: string, specs: readonly ChartSpec[]): Promise<Uint8Array> {
  // In the light colours; out of sight, but in the page: only there do the tokens resolve.
  const light = document.createElement('div');
  light.className = 'light-copy';
  light.setAttribute('aria-hidden', 'true');
  document.body.append(light);
  try {
    const look = { ...readLook(light), paper: GROUND };
    const height = specs.reduce((sum, { heightPx }) => sum + heightPx, 0);
    const paper = document.createElement('canvas');
    paper.width = (WIDTH + 2 * EDGE) * SCALE;
    paper.height = (height + HEAD + 2 * EDGE) * SCALE;
    const pen = paper.getContext('2d');
    if (pen === null) throw new Error('This window cannot draw pictures.');
    pen.fillStyle = GROUND;
    pen.fillRect(0, 0, paper.width, paper.height);
    pen.fillStyle = look.ink;
    pen.font = `600 ${20 * SCALE}px ${look.font}`;
    pen.fillText(title, EDGE * SCALE, (EDGE + 16) * SCALE);
    let top = EDGE + HEAD;
    for (const spec of specs) {
      pen.drawImage(drawnOn(light, spec, look), EDGE * SCALE, top * SCALE);
      top += spec.heightPx;
    }
    const blob = await new Promise<Blob | null>((done) => paper.toBlob(done, 'image/png'));
    if (blob === null) throw new Error('This window cannot draw pictures.');
    return new Uint8Array(await blob.arrayBuffer());
  } finally {
    light.remove();
  }
}

function drawnOn(place: HTMLElement, spec: ChartSpec, look: ReturnType<typeof readLook>) {
  const canvas = document.createElement('canvas');
  canvas.width = WIDTH;
  canvas.height = spec.heightPx;
  place.append(canvas);
  const chart = draw(canvas, spec, look, null, SCALE);
  if (chart === null) throw new Error('This window cannot draw pictures.');
  const copy = document.createElement('canvas');
  copy.width = WIDTH * SCALE;
  copy.height = spec.heightPx * SCALE;
  copy.getContext('2d')!.drawImage(canvas, 0, 0);
  chart.destroy();
  return copy;
}
