import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeViolations } from './support/axe.ts';
import { openDesk, type TestDesk } from './support/desk.ts';

const AGAIN = 'Open Trotwell again from its start command';

describe('an address that opens one window', () => {
  let desk: TestDesk;

  beforeAll(async () => {
    desk = await openDesk();
  });
  afterAll(() => desk.close());

  const heading = (page: Page, name: string) =>
    page.getByRole('heading', { level: 1, name }).waitFor();

  it('opens it, leaves the address bar and the history, and outlasts a reload', async () => {
    const page = await desk.newPage();
    await page.goto(await desk.host.newAddress());
    await heading(page, 'Welcome to Trotwell');
    expect(page.url()).toMatch(/\/#\/welcome$|\/#\/$/);
    await page.reload();
    await heading(page, 'Welcome to Trotwell');
    expect(await page.evaluate(() => document.documentElement.outerHTML)).not.toContain('start=');
    await page.goBack().catch(() => null);
    expect(page.url()).not.toContain('start=');
  });

  it('opens no second one, and says what that may mean', async () => {
    const address = await desk.host.newAddress();
    const first = await desk.newPage();
    await first.goto(address);
    await heading(first, 'Welcome to Trotwell');
    const second = await desk.newPage();
    await second.goto(address);
    await heading(second, AGAIN);
    await second.getByText('This address was opened before').waitFor();
    await second.getByText('press Enter').waitFor();
    expect(second.url()).not.toContain('start=');
    expect(await axeViolations(second)).toEqual([]);
    await first.reload();
    await heading(first, AGAIN);
  });

  it('opens none once a newer one was printed, and says so', async () => {
    const older = await desk.host.newAddress();
    await desk.host.newAddress();
    const page = await desk.newPage();
    await page.goto(older);
    await heading(page, AGAIN);
    await page.getByText('This address is too old').waitFor();
  });

  it('lets a shut-out window in again', async () => {
    const page = await desk.newPage();
    await page.goto(desk.host.address);
    await heading(page, AGAIN);
    await page.goto('about:blank');
    await page.goto(await desk.host.newAddress());
    await heading(page, 'Welcome to Trotwell');
  });
});
