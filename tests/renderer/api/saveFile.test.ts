import { afterEach, describe, expect, it, vi } from 'vitest';
import { savePdf, savingSentence } from '../../../renderer/api/saveFile.ts';

const PDF = btoa('%PDF-');

/** The window as the Electron preload leaves it, with a dialogue that ends as told. */
function inElectron(written: boolean): string[] {
  const asked: string[] = [];
  vi.stubGlobal('trotwell', {
    calls: {},
    saveFile: async (fileName: string) => {
      asked.push(fileName);
      return written;
    },
  });
  return asked;
}

describe('saving a handout', () => {
  afterEach(() => vi.unstubAllGlobals());

  it('is called saved when the Electron window wrote it', async () => {
    const asked = inElectron(true);
    const saving = await savePdf('plan.pdf', PDF);
    expect(asked).toEqual(['plan.pdf']);
    expect(savingSentence('plan.pdf', saving)).toBe('plan.pdf is saved.');
  });

  it('is not called saved when the dialogue was cancelled', async () => {
    inElectron(false);
    const saving = await savePdf('plan.pdf', PDF);
    expect(savingSentence('plan.pdf', saving)).toBe('plan.pdf was not saved.');
  });

  it('is handed over in a browser, which does not tell what became of it', async () => {
    const clicked: string[] = [];
    const click = vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function (
      this: HTMLAnchorElement,
    ) {
      clicked.push(this.download);
    });
    const saving = await savePdf('plan.pdf', PDF);
    click.mockRestore();
    expect(clicked).toEqual(['plan.pdf']);
    expect(savingSentence('plan.pdf', saving)).toBe('plan.pdf is handed over for saving.');
  });
});
