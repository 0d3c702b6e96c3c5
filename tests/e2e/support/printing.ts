import type { Page } from 'playwright-core';

/** What a page gives to paper. */
export interface Paper {
  readonly pages: number;
  readonly pictures: number;
  /** Elements of the page that were laid out for it and are still there afterwards. */
  readonly left: number;
}

/** Stands in for the system's print window, which no test can see: it takes what the page lays out. */
export async function holdPrinting(page: Page): Promise<() => Promise<Paper>> {
  await page.evaluate(() => {
    window.print = () => undefined;
  });
  return async () => {
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
    return {
      pages: pdf.match(/\/Type \/Page\b/g)?.length ?? 0,
      pictures: pdf.match(/\/Subtype \/Image\b/g)?.length ?? 0,
      left: await page.locator('.printed-sheets').count(),
    };
  };
}
