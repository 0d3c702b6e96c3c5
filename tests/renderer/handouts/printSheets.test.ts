import { afterEach, describe, expect, it, vi } from 'vitest';
import { printSheets } from '../../../renderer/handouts/printSheets.ts';

const SHEETS = {
  fileName: 'sheets.pdf',
  mediaType: 'application/pdf',
  // No page can be drawn of it.
  base64: btoa('%PDF-'),
  pages: 2,
  leftOut: [],
} as const;

/** How often the print window was asked for, and which files were handed over. */
function watched(print: unknown) {
  const asked = vi.fn();
  const files: string[] = [];
  vi.stubGlobal('print', print === undefined ? undefined : asked);
  vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function (
    this: HTMLAnchorElement,
  ) {
    files.push(this.download);
  });
  return { asked, files };
}

afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

describe('sheets to be printed', () => {
  it.each([
    ['the window cannot print', undefined],
    ['their pages cannot be drawn', 'prints'],
  ])('are handed over as a PDF where %s, and nothing is called printed', async (_why, print) => {
    const { asked, files } = watched(print);
    expect(await printSheets(SHEETS)).toBe(
      'this window cannot print. sheets.pdf is handed over for saving. Open it in your PDF program to print it.',
    );
    expect(files).toEqual(['sheets.pdf']);
    expect(asked).not.toHaveBeenCalled();
    expect(document.querySelector('.printed-sheets')).toBeNull();
  });

  it('are not there to be opened where they were not saved', async () => {
    watched(undefined);
    vi.stubGlobal('trotwell', { saveFile: () => Promise.resolve(false) });
    expect(await printSheets(SHEETS)).toBe('this window cannot print. sheets.pdf was not saved.');
  });
});
