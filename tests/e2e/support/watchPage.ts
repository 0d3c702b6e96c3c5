import type { Page } from 'playwright-core';

/** Collects what the page complains about: errors, and breaches of its content security policy. */
export function watchPage(page: Page): readonly string[] {
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  return complaints;
}
