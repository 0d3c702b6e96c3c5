import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces';
import type { HandoutDocument } from '../../templates/index.ts';

// The same text as a handout, as pdfmake takes it without our templates: one text after the other,
// and the tables as plain tables.

type Node = Record<string, unknown>;

const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null;

/** The text of a node and what is nested in it, in one string. */
function textOf(value: unknown): string {
  if (typeof value === 'string' || typeof value === 'number') return String(value);
  if (Array.isArray(value)) return value.map(textOf).join('');
  return isNode(value) ? textOf(value['text'] ?? '') : '';
}

function parts(value: unknown): Content[] {
  if (typeof value === 'string') return [value];
  if (Array.isArray(value)) return value.flatMap(parts);
  if (!isNode(value)) return [];
  if ('text' in value) return [textOf(value)];
  if ('table' in value) return [table(value['table'] as { body: unknown[][] })];
  const inside = ['section', 'stack', 'columns', 'ul', 'ol'].find((name) => name in value);
  return inside === undefined ? [] : parts(value[inside]);
}

/** Cells that a span covers stay, empty, as pdfmake wants them. */
function table({ body }: { body: unknown[][] }): Content {
  return {
    table: {
      body: body.map((row) =>
        row.map((cell) => {
          const { colSpan, rowSpan } = (isNode(cell) ? cell : {}) as Node;
          const stack = parts(cell);
          return { stack, ...(colSpan ? { colSpan } : {}), ...(rowSpan ? { rowSpan } : {}) };
        }),
      ),
    },
  } as Content;
}

const isTable = (content: Content): content is Content & { table: { body: Content[][] } } =>
  isNode(content) && 'table' in content;

const withoutTables = (content: Content): Content[] =>
  isTable(content)
    ? content.table.body.flat().flatMap((cell) => parts(cell).flatMap(withoutTables))
    : [content];

/** `tables` false sets what stood in cells as paragraphs too. */
export function plainDocument(handout: HandoutDocument, tables: boolean): TDocumentDefinitions {
  const { pageSize } = handout.definition;
  const sheets = (handout.definition.content as Content[]).map((sheet) => {
    const content = parts(sheet);
    return tables ? content : content.flatMap(withoutTables);
  });
  return {
    ...(pageSize === undefined ? {} : { pageSize }),
    defaultStyle: { font: 'Sans', fontSize: 10 },
    content: sheets.map((stack, index) => ({
      stack,
      ...(index === 0 ? {} : { pageBreak: 'before' as const }),
    })),
  };
}
