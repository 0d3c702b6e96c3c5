import type {
  Column,
  Content,
  ContentSection,
  DynamicContent,
  TDocumentDefinitions,
} from 'pdfmake/interfaces';
import { createFormat, fill, shorten, type Format } from './format.ts';
import type { HandoutContext } from './model.ts';
import { letterhead, REGISTRATION_IN_HEAD } from './parts/letterhead.ts';
import { ruleLine, together } from './parts/layout.ts';
import { breakBeforeOrphan } from './parts/pages.ts';
import type { HandoutDocument } from './render.ts';
import { BODY, MARGIN, PAPER_SIZE, palette, styles, textWidth, type Palette } from './theme.ts';
import type { FrameWords } from './words/words.ts';

/** What a sheet's parts share: the writer, the colours and the width they may fill. */
export interface Press {
  readonly format: Format;
  readonly colours: Palette;
  readonly width: number;
}

/** One sheet before it is put on paper. */
export interface Sheet {
  readonly words: FrameWords;
  /** "Running plan": in the footer and the file's title. */
  readonly kind: string;
  /** "Running plan for Bramble". */
  readonly title: string;
  readonly body: readonly Content[];
  /**
   * The last part of the sheet with the sources or signature below it: kept on one page, so that
   * neither of these ever has a page to itself. Short enough for one page.
   */
  readonly end: readonly Content[];
  /** A line that must be at hand on every page, e.g. when to stop. */
  readonly reminder?: string;
}

/** A page of labels to peel off: no letterhead, no footer, the labels from edge to edge. */
export interface LabelSheet {
  readonly words: FrameWords;
  readonly kind: string;
  readonly labels: Content;
  /** Left, top, right and bottom, pt. */
  readonly margins: readonly [number, number, number, number];
}

/** The writer and colours for a practice and a language. */
export function press(context: HandoutContext, words: FrameWords): Press {
  return {
    format: createFormat(context.practice, words.numbers),
    colours: palette(context.practice.accent),
    width: textWidth(context.practice.paper),
  };
}

/** Puts sheets on paper, each from a new page with the letterhead, numbered through. */
export function assemble(
  context: HandoutContext,
  sheets: readonly [Sheet | LabelSheet, ...(Sheet | LabelSheet)[]],
): HandoutDocument {
  const { words } = sheets[0];
  const tools = press(context, words);
  const { practice, dog } = context;
  const titles = sheets.map((sheet) => sheet.kind).join(', ');
  const definition: TDocumentDefinitions = {
    pageSize: PAPER_SIZE[practice.paper],
    pageMargins: [MARGIN.left, MARGIN.top, MARGIN.right, MARGIN.bottom],
    defaultStyle: BODY,
    styles: styles(tools.colours),
    content: sheets.map((sheet) =>
      'labels' in sheet ? labelSection(sheet) : section(context, sheet),
    ),
    pageBreakBefore: breakBeforeOrphan(practice.paper),
  };
  return {
    definition,
    title: `${titles}: ${dog.name}, ${tools.format.day(context.day)}`,
    author: practice.practitioner || practice.name,
    subject: context.demo ? words.demo : practice.name,
    language: words.language,
  };
}

const labelSection = ({ labels, margins }: LabelSheet): ContentSection => ({
  section: labels,
  pageMargins: [...margins],
  footer: () => '',
});

function section(context: HandoutContext, sheet: Sheet): ContentSection {
  const { words } = sheet;
  const tools = press(context, words);
  return {
    section: [
      letterhead(context.practice, tools.colours),
      { text: sheet.title, style: 'title', margin: [0, 12, 0, 1] },
      {
        columns: [
          { width: '*', text: titleLine(context, words, tools.format), style: 'small' },
          ...(context.demo ? [demoMark(words.demo)] : []),
        ],
        columnGap: 12,
        margin: [0, 0, 0, 3],
      },
      ...sheet.body,
      together([...sheet.end, ...longRegistration(context)]),
    ],
    footer: footer(context, sheet, tools),
  };
}

function demoMark(text: string): Column {
  return { width: 'auto', text, bold: true, fontSize: 9 };
}

function titleLine(context: HandoutContext, words: FrameWords, format: Format): string {
  const { dog, owner, day } = context;
  return [dog.breed, fill(words.owner, { owner: owner.name }), format.weekdayDay(day)]
    .filter((part) => part !== '')
    .join('  ·  ');
}

function longRegistration(context: HandoutContext): readonly Content[] {
  const { registration } = context.practice;
  if (registration.length <= REGISTRATION_IN_HEAD) return [];
  return [{ text: registration, style: 'foot', margin: [0, 10, 0, 0] }];
}

function footer(context: HandoutContext, sheet: Sheet, tools: Press): DynamicContent {
  const { words } = sheet;
  const about = [
    shorten(context.dog.name, 40),
    sheet.kind,
    tools.format.day(context.day),
    fill(words.printed, { day: tools.format.day(context.printedOn) }),
  ];
  const own = context.demo ? words.demo : shorten(context.practice.footer ?? '', 110);
  return (page, pages) => ({
    margin: [MARGIN.left, 6, MARGIN.right, 0],
    stack: [
      { text: sheet.reminder ?? '', bold: true, fontSize: 8.5, margin: [0, 0, 0, 3] },
      ruleLine(tools.width, tools.colours.rule, 0.6),
      {
        margin: [0, 3, 0, 0],
        columns: [
          { width: '*', text: about.join('  ·  '), style: 'foot' },
          { width: 'auto', text: fill(words.page, { page, pages }), style: 'foot' },
        ],
        columnGap: 12,
      },
      { text: own, style: 'foot' },
    ],
  });
}
