/** The kinds of file the page may hand over for saving. It names one of these and never a path. */
export const FILE_KINDS = {
  pdf: { words: 'PDF', extension: 'pdf', mediaType: 'application/pdf' },
  png: { words: 'Picture', extension: 'png', mediaType: 'image/png' },
  csv: { words: 'Table of numbers', extension: 'csv', mediaType: 'text/csv;charset=utf-8' },
  ics: { words: 'Calendar', extension: 'ics', mediaType: 'text/calendar;charset=utf-8' },
  eml: { words: 'Mail draft', extension: 'eml', mediaType: 'message/rfc822' },
} as const;
export type FileKind = keyof typeof FILE_KINDS;

/** Whether what came over the bridge is one of the kinds. */
export function isFileKind(value: unknown): value is FileKind {
  return typeof value === 'string' && Object.hasOwn(FILE_KINDS, value);
}
