import type { Page } from 'playwright-core';

/** Collects what the page complains about: errors, and breaches of its content security policy. */
export function watchPage(page: Page): readonly string[] {
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    // The address with the start code is answered as "not found" on purpose: browsers then keep it out
    // of the history they show.
    const opening = new URL(message.location().url || 'about:blank').pathname === '/open';
    if (message.type() === 'error' && !opening) complaints.push(message.text());
  });
  return complaints;
}
