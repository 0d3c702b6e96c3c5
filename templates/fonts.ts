// Source Sans 3 and Source Serif 4, SIL Open Font License 1.1 (texts beside the files). Their default
// figures are tabular, so columns of numbers line up without a font feature.

/** The file of each style, by family as pdfmake names it. */
export const FONT_FILES = {
  Sans: {
    normal: 'SourceSans3-Regular.ttf',
    bold: 'SourceSans3-SemiBold.ttf',
    italics: 'SourceSans3-Italic.ttf',
  },
  Serif: {
    normal: 'SourceSerif4-SemiBold.ttf',
    bold: 'SourceSerif4-SemiBold.ttf',
  },
} as const satisfies Record<string, Partial<Record<'normal' | 'bold' | 'italics', string>>>;

/** Every font file once, for loading. */
export const FONT_FILE_NAMES: readonly string[] = [
  ...new Set(Object.values(FONT_FILES).flatMap((family) => Object.values(family))),
];
