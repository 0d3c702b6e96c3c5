import MailComposer from 'nodemailer/lib/mail-composer';
import { oneLine } from './calendar.ts';

export interface MailFile {
  readonly name: string;
  readonly mediaType: string;
  readonly bytes: Buffer;
}

export interface MailDraft {
  /** Empty where no address is known: the mail program then asks. */
  readonly to: string;
  readonly subject: string;
  readonly text: string;
  readonly files: readonly MailFile[];
  /** Same record, same draft: names the parts of the message. */
  readonly boundary: string;
  readonly instant: Date;
}

/** One address and nothing that could add another line or recipient. */
const ADDRESS = /^[^\s@<>,;:"()[\]\\]+@[^\s@<>,;:"()[\]\\]+$/;

/** An address as it may stand in a draft; empty for what is none. */
export const addressOf = (text: string): string => (ADDRESS.test(text.trim()) ? text.trim() : '');

/**
 * A mail as a draft (RFC 5322 with MIME): the practitioner's own mail program opens it as an unsent
 * message, because of `X-Unsent`, and nothing is sent from here. It has no sender: the program knows
 * its own.
 */
export function mailDraft({
  to,
  subject,
  text,
  files,
  boundary,
  instant,
}: MailDraft): Promise<Buffer> {
  const composer = new MailComposer({
    headers: { 'X-Unsent': '1' },
    ...(addressOf(to) === '' ? {} : { to: { name: '', address: addressOf(to) } }),
    subject: oneLine(subject),
    text,
    date: instant,
    messageId: `<${boundary}@trotwell>`,
    baseBoundary: boundary,
    disableFileAccess: true,
    disableUrlAccess: true,
    attachments: files.map(({ name, mediaType, bytes }) => ({
      filename: oneLine(name),
      contentType: mediaType,
      content: bytes,
    })),
  });
  return composer.compile().build();
}
