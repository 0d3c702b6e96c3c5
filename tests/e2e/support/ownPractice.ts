import type { Page } from 'playwright-core';
import { deskPage } from '../pages/deskPage.ts';
import { dogFormPage } from '../pages/dogFormPage.ts';
import { settingsPage } from '../pages/settingsPage.ts';
import { welcomePage } from '../pages/welcomePage.ts';
import { openDesk, type TestDesk } from './desk.ts';

/** A running host whose own practice has one dog; the window it was written in is closed. */
export async function deskWithDog(dog: string): Promise<TestDesk> {
  const desk = await openDesk();
  const { page } = await desk.open();
  await startPracticeWith(page, dog);
  await page.context().close();
  return desk;
}

/** From the first page of a fresh machine to the page of the first dog of an own practice. */
export async function startPracticeWith(page: Page, dog: string): Promise<void> {
  await welcomePage(page).startEmpty();
  await settingsPage(page).fill({
    'Name of the practice': 'Invented Practice',
    'Name of the practitioner': 'Kim Practitioner',
  });
  await settingsPage(page).save();
  await deskPage(page).add(dog);
  await dogFormPage(page).fill({
    birthDay: '2022-03-04',
    sex: 'Female',
    adultWeight: '24',
    owner: 'Dana Owner',
    vet: 'Dr C. Vet',
  });
  await dogFormPage(page).save(dog);
}
