import PostalMime from 'postal-mime';
import { describe, expect, test } from 'vitest';
import {
  addressOf,
  mailDraft,
  type MailDraft,
} from '../../../electron/service/goesHome/mailDraft.ts';
import { HOSTILE_NAMES } from '../../support/hostileTexts.ts';

// Read back by a second library: postal-mime (RFC 5322, MIME).

const pdf = Buffer.from('%PDF-1.7 not a real one, bytes alone \u00e4\u0000\u0001', 'latin1');
const draft = (more: Partial<MailDraft> = {}): MailDraft => ({
  to: 'owner@example.org',
  subject: 'Bramble: what we agreed',
  text: 'Dear Dana,\n\nthe sheets are attached.\n',
  files: [
    { name: 'Bramble-plan.pdf', mediaType: 'application/pdf', bytes: pdf },
    { name: 'Bramble.ics', mediaType: 'text/calendar', bytes: Buffer.from('BEGIN:VCALENDAR') },
  ],
  boundary: 'visit-1',
  instant: new Date('2026-03-01T12:00:00Z'),
  ...more,
});
const read = async (more: Partial<MailDraft> = {}) =>
  PostalMime.parse(await mailDraft(draft(more)), { attachmentEncoding: 'arraybuffer' });

describe('a mail draft', () => {
  test('is an unsent message to the owner, without a sender', async () => {
    const mail = await read();
    expect(mail.to?.map(({ address }) => address)).toEqual(['owner@example.org']);
    expect(mail.from).toBeUndefined();
    expect(mail.headers.find(({ key }) => key === 'x-unsent')?.value).toBe('1');
    expect(mail.subject).toBe('Bramble: what we agreed');
    expect(mail.text?.trim()).toBe('Dear Dana,\n\nthe sheets are attached.');
  });

  test('carries its files byte by byte', async () => {
    const { attachments } = await read();
    expect(attachments.map(({ filename }) => filename)).toEqual([
      'Bramble-plan.pdf',
      'Bramble.ics',
    ]);
    expect(Buffer.from(attachments[0]!.content as ArrayBuffer)).toEqual(pdf);
  });

  test('is the same for the same record', async () => {
    expect(await mailDraft(draft())).toEqual(await mailDraft(draft()));
  });

  test('has no address where there is none, or more than one, or a header in it', async () => {
    for (const to of [
      '',
      'no address',
      'a@b.example, c@d.example',
      'a@b.example\nBcc: x@y.example',
    ]) {
      expect(addressOf(to)).toBe('');
      expect((await read({ to })).to).toBeUndefined();
    }
    expect(addressOf(' a@b.example ')).toBe('a@b.example');
  });

  test.each(HOSTILE_NAMES)('keeps $what as text', async ({ typed: text }) => {
    const mail = await read({
      subject: text,
      text,
      to: `${text}@example.org`,
      files: [{ name: `${text}.pdf`, mediaType: 'application/pdf', bytes: pdf }],
    });
    expect(mail.attachments).toHaveLength(1);
    expect(mail.bcc).toBeUndefined();
    expect(mail.cc).toBeUndefined();
    expect(mail.headers.filter(({ key }) => key === 'x-unsent')).toHaveLength(1);
  });
});
