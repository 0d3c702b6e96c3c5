import type { Page } from 'playwright-core';

export interface TypedDog {
  readonly birthDay: string;
  readonly sex: 'Female' | 'Male';
  readonly adultWeight: string;
  readonly owner: string;
  readonly vet: string;
}

export const dogFormPage = (page: Page) => ({
  async fill(dog: TypedDog): Promise<void> {
    await page.getByLabel('Breed').fill('Crossbreed');
    await page.getByLabel('Day of birth').fill(dog.birthDay);
    await page.getByRole('radio', { name: dog.sex, exact: true }).check();
    await page.getByRole('group', { name: 'Neuter status' }).getByLabel('Neutered').check();
    await page.getByLabel('Expected adult weight').fill(dog.adultWeight);
    await page.getByLabel('Name of the owner').fill(dog.owner);
    await page.getByLabel('Treating vet').fill(dog.vet);
  },
  async save(name: string): Promise<void> {
    await page.getByRole('button', { name: /^Save/ }).click();
    await page.getByRole('heading', { level: 1, name }).waitFor();
  },
});
