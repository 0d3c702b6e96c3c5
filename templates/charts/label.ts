import type { Content } from 'pdfmake/interfaces';

/** Height of a line of small text, in points. */
export const TEXT_HEIGHT = 11;

/** A drawing and the text over it, both measured from the chart's top left corner. */
export interface Layer {
  readonly svg: string;
  readonly labels: readonly Content[];
}

/** Text on a drawing; `x` is its left, middle or right end. */
export function label(
  text: string,
  x: number,
  y: number,
  alignment: 'left' | 'center' | 'right',
  style = 'foot',
): Content {
  const width = 230;
  const left = { left: x, center: x - width / 2, right: x - width }[alignment];
  return {
    columns: [{ width, text, alignment, style, noWrap: true }],
    relativePosition: { x: left, y: y - TEXT_HEIGHT / 2 },
  };
}

/** A drawing with the text over it. */
export function drawing({ svg, labels }: Layer, width: number, height: number): Content {
  const head = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">`;
  return {
    stack: [...labels, { svg: `${head}${svg}</svg>`, width, height }],
    margin: [0, 2, 0, 2],
  };
}
