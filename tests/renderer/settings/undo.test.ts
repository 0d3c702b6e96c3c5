import { describe, expect, it } from 'vitest';
import RulesPage from '../../../renderer/pages/RulesPage.vue';
import LogoField from '../../../renderer/settings/LogoField.vue';
import { usePractice } from '../../../renderer/stores/practice.ts';
import { openOwn, type TestDesk } from '../../service/support/desk.ts';
import { pngOf } from '../../support/pictures.ts';
import { comesTrue, deskClient, mountAtDesk, press, shows } from '../support/atDesk.ts';

const logoOf = async (desk: TestDesk) => (await desk.ok('app/status', {})).logo;

describe('the logo of the practice', () => {
  it('removed is brought back as it was', async () => {
    const desk = await openOwn();
    await desk.ok('practice/setLogo', { base64: pngOf(30, 20).toString('base64') });
    const before = await logoOf(desk);
    const { wrapper: field, notice } = await mountAtDesk(LogoField, deskClient(desk));
    usePractice().keepLogo(before);
    await press(field, 'Remove the logo');
    await comesTrue(async () => expect(notice.text).toBe('The logo is removed.'));
    expect(await logoOf(desk)).toBeNull();
    await notice.action!.run();
    expect(await logoOf(desk)).toEqual(before);
    expect(notice.text).toBe('The earlier logo is back.');
    expect(field.find('img').exists()).toBe(true);
  });

  it('drawn as SVG too', async () => {
    const desk = await openOwn();
    const svg =
      '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><path d="M0 0h9v9z"/></svg>';
    await desk.ok('practice/setLogo', { base64: Buffer.from(svg).toString('base64') });
    const before = await logoOf(desk);
    const { wrapper: field, notice } = await mountAtDesk(LogoField, deskClient(desk));
    usePractice().keepLogo(before);
    await press(field, 'Remove the logo');
    await comesTrue(async () => expect(notice.action).not.toBeNull());
    await notice.action!.run();
    expect(await logoOf(desk)).toEqual(before);
  });
});

describe('a rule of the practice', () => {
  it('put back to what is published is the practice’s own again, with its reason', async () => {
    const desk = await openOwn();
    const reason = 'Soft ground here.';
    const rules = await desk.ok('rules/set', { ruleId: 'capConditioned', value: 12, reason });
    const { wrapper: page, notice } = await mountAtDesk(RulesPage, deskClient(desk));
    usePractice().keepRules(rules);
    await shows(page, reason);
    await page.get('button[aria-label^="As published:"]').trigger('click');
    await comesTrue(async () => expect(notice.text).toContain('as published again'));
    expect((await desk.ok('app/status', {})).rules).toEqual([]);
    await notice.action!.run();
    expect((await desk.ok('app/status', {})).rules).toMatchObject([{ value: 12, reason }]);
    await shows(page, reason);
  });
});
