import type { Content, ContentTable, CustomTableLayout, TableCell } from 'pdfmake/interfaces';
import type { Palette } from '../theme.ts';

/** A heading over running text; it never stands alone at the foot of a page (`breakBeforeOrphan`). */
export function heading(text: string): Content {
  return { text, style: 'heading', headlineLevel: 1, margin: [0, 9, 0, 3] };
}

/** A heading with content short enough to stay on one page with it. */
export function section(title: string, content: readonly Content[]): Content {
  return {
    unbreakable: true,
    stack: [{ text: title, style: 'heading', margin: [0, 9, 0, 3] }, ...content],
  };
}

/** Two blocks side by side, on one page. */
export function pair(left: Content, right: Content): Content {
  return { columns: [left, right], columnGap: 24, unbreakable: true };
}

/**
 * Parts that stay on one page with each other; they must be short enough for one. A heading among
 * them no longer asks for a page of its own: a break inside such a block would lose the block.
 */
export function together(parts: readonly Content[]): Content {
  return { unbreakable: true, stack: parts.map(withoutBreak) };
}

function withoutBreak(part: Content): Content {
  if (typeof part !== 'object' || !('headlineLevel' in part)) return part;
  const { headlineLevel: _, ...rest } = part;
  return rest as Content;
}

/** A paragraph longer than this, in characters, may fill a page by itself. */
const SHORT_PARAGRAPH = 900;

/** The last part, with the heading right above it, where it is short enough to stay with what follows. */
export function lastShort(parts: readonly Content[]): {
  readonly above: readonly Content[];
  readonly last: readonly Content[];
} {
  const last = parts.at(-1);
  const text = typeof last === 'object' && 'text' in last ? last.text : '';
  if (last === undefined || (typeof text === 'string' && text.length > SHORT_PARAGRAPH)) {
    return { above: parts, last: [] };
  }
  const before = parts.at(-2);
  const headed = typeof before === 'object' && 'headlineLevel' in before;
  const from = parts.length - (headed ? 2 : 1);
  return { above: parts.slice(0, from), last: parts.slice(from) };
}

/** More lines of text than this may be too much for one page together. */
export const MOST_TOGETHER = 8;

/**
 * A heading over `count` items: kept on one page while they surely fit, else free to run on, for an
 * unbreakable block that is longer than a page would lose its end.
 */
export function listSection(title: string, content: readonly Content[], count: number): Content {
  if (count <= MOST_TOGETHER) return section(title, content);
  return { stack: [heading(title), ...content] };
}

export function paragraph(text: Content, after = 5): Content {
  return { text, margin: [0, 0, 0, after] } as Content;
}

/** A list with drawn bullets; `after` is the space below each item in points. */
export function bullets(items: readonly Content[], after = 1.5): Content {
  return {
    ul: items.map((item) => spaced(item, after)),
    markerColor: '#55605b',
    margin: [0, 0, 0, 3],
  };
}

function spaced(item: Content, after: number): Content {
  return { stack: [item], margin: [0, 0, 0, after] };
}

/** An empty box to tick by hand: drawn, so that no font is asked for it. */
export function tickBox(size = 11): Content {
  return {
    canvas: [
      {
        type: 'rect',
        x: 0.5,
        y: 0.5,
        w: size,
        h: size,
        r: 1.5,
        lineWidth: 0.9,
        lineColor: '#1c211f',
      },
    ],
  };
}

/** A line to write on. */
export function writingLine(width: number, colours: Palette, above = 12): Content {
  return {
    canvas: [
      {
        type: 'line',
        x1: 0,
        y1: above,
        x2: width,
        y2: above,
        lineWidth: 0.6,
        lineColor: colours.rule,
      },
    ],
  };
}

/** A hair-thin rule across the text. */
export function ruleLine(width: number, colour: string, weight = 0.7): Content {
  return {
    canvas: [
      { type: 'line', x1: 0, y1: 0, x2: width, y2: 0, lineWidth: weight, lineColor: colour },
    ],
  };
}

/** A cell of a table's header. */
export const tableHead = (
  text: string,
  alignment: 'left' | 'right' | 'center' = 'left',
): TableCell => ({ text, style: 'tableHead', alignment });

/** Table lines: a firm rule under the header, hairlines between rows, no uprights. */
export function calmTable(colours: Palette, headerRows = 1): CustomTableLayout {
  return {
    hLineWidth: (row, node) => {
      if (row === headerRows && headerRows > 0) return 1;
      return row === 0 || row === node.table.body.length ? 0 : 0.5;
    },
    vLineWidth: () => 0,
    hLineColor: (row) => (row === headerRows ? colours.ink : colours.rule),
    paddingLeft: (column) => (column === 0 ? 0 : 6),
    paddingRight: (column, node) => (column === (node.table.widths?.length ?? 0) - 1 ? 0 : 6),
    paddingTop: () => 4,
    paddingBottom: () => 4,
  };
}

/** No lines and no padding: a table used to place things. */
export const BARE: CustomTableLayout = {
  hLineWidth: () => 0,
  vLineWidth: () => 0,
  paddingLeft: () => 0,
  paddingRight: () => 0,
  paddingTop: () => 0,
  paddingBottom: () => 0,
};

export type Tone = 'plain' | 'warning';

/**
 * A framed block. A warning differs from a plain block by a heavy frame, not by colour, so that it
 * reads the same on a black-and-white printer.
 */
export function callout(
  title: string,
  content: readonly Content[],
  colours: Palette,
  tone: Tone = 'plain',
): ContentTable {
  const weight = tone === 'warning' ? 1.8 : 0;
  return {
    margin: [0, 9, 0, 2],
    unbreakable: true,
    table: {
      widths: ['*'],
      body: [[{ stack: [{ text: title, style: 'heading', margin: [0, 0, 0, 4] }, ...content] }]],
    },
    layout: {
      hLineWidth: () => weight,
      vLineWidth: (column) => (tone === 'plain' && column === 0 ? 3 : weight),
      hLineColor: () => colours.ink,
      vLineColor: () => (tone === 'plain' ? colours.accent : colours.ink),
      fillColor: () => (tone === 'plain' ? colours.tint : null),
      paddingLeft: () => 12,
      paddingRight: () => 12,
      paddingTop: () => 9,
      paddingBottom: () => 8,
    },
  } as ContentTable;
}

/** A name and its value, e.g. "Body weight" and "24.0 kg". */
export interface Fact {
  readonly name: string;
  readonly value: string;
}

/** Facts in two columns of name and value; an odd one leaves its place empty. */
export function factGrid(facts: readonly Fact[], colours: Palette): Content {
  const half = Math.ceil(facts.length / 2);
  const rows = facts.slice(0, half).map((left, row) => factRow(left, facts[half + row]));
  return {
    margin: [0, 2, 0, 4],
    table: { widths: [82, '*', 82, '*'], body: rows, dontBreakRows: true },
    layout: {
      ...calmTable(colours, 0),
      paddingTop: () => 3,
      paddingBottom: () => 3,
    },
  };
}

function factRow(left: Fact, right: Fact | undefined): TableCell[] {
  return [
    { text: left.name, style: 'small' },
    { text: left.value, bold: true },
    { text: right?.name ?? '', style: 'small' },
    { text: right?.value ?? '', bold: true },
  ];
}
