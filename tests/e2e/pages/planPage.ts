import type { Locator, Page } from 'playwright-core';

/** The plan of a dog, worked as a practitioner works it. */
export const planPage = (page: Page) => {
  const region = (name: string): Locator => page.getByRole('region', { name, exact: true });
  const sessions = region('Sessions');
  return {
    sessions,
    review: region('What the record says today'),
    weeks: region('Weeks'),
    editing: region('Edit the weeks'),
    versions: region('Versions'),
    async open(dog: string): Promise<void> {
      await page.getByRole('link', { name: 'The whole plan' }).click();
      await page.getByRole('heading', { level: 1, name: `Running plan of ${dog}` }).waitFor();
    },
    /** Opens what was told of the newest session before today. */
    async changeNewest(): Promise<void> {
      const change = sessions.getByRole('button', { name: /^Change/ }).first();
      if (!(await change.isVisible())) await sessions.getByText('Told so far').click();
      await change.click();
      await sessions.getByLabel('The next day').waitFor();
    },
    async keepResult(): Promise<void> {
      await sessions.getByRole('button', { name: 'Keep', exact: true }).click();
      await sessions.getByLabel('The next day').waitFor({ state: 'detached' });
    },
    async takeOver(version: number): Promise<void> {
      const review = region('What the record says today');
      await review.getByText('Take it over as a new version').click();
      await review.getByRole('button', { name: `Keep as version ${version}` }).click();
      await page.getByRole('heading', { name: `Version ${version}, in force` }).waitFor();
    },
  };
};
