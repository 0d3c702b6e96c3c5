import { enPractice, fill, OWNER_WORDS, type OwnerWords } from '../../../templates/index.ts';
import type { ParsedOf } from '../../contract/contract.ts';
import type { Language } from '../../contract/records.ts';
import { Later, type Context, type Handlers, type LateHandlers } from '../database/context.ts';
import { fileNameOf, homeFileName } from '../handouts/fileNames.ts';
import { printJob, type PrintRoom } from '../handouts/job.ts';
import { collect, type Material } from '../handouts/material.ts';
import { printable } from '../handouts/whyNoSheet.ts';
import { keepHistory } from '../history/history.ts';
import { badField } from '../refuse.ts';
import { tableToFill } from '../runs/toldTable.ts';
import { isTrouble, storageRefusal } from '../database/trouble.ts';
import { homeCalendar } from './homeCalendar.ts';
import { addressOf, mailDraft, type MailFile } from './mailDraft.ts';

const today = (context: Context, material: Material, language: Language | undefined) => ({
  language: language ?? material.language,
  alarmHour: null,
  today: context.today(),
  instant: new Date(`${context.today()}T12:00:00Z`),
});

/** The words round the sheets: for the owner in the owner's language, for the vet in English. */
function letter(material: Material, reader: 'owner' | 'vet', words: OwnerWords) {
  const { context, file } = material;
  const about = { dog: context.dog.name, practice: context.practice.name };
  if (reader === 'vet') {
    const { mail, letter: written } = enPractice;
    const { vetName } = file.client;
    const dear = vetName === '' ? written.dearColleague : fill(written.dear, { vet: vetName });
    return { subject: fill(mail.subject, about), greeting: dear, lines: [fill(mail.text, about)] };
  }
  const { goesHome } = words;
  return {
    subject: fill(goesHome.subject, about),
    greeting: fill(goesHome.greeting, { owner: file.client.name }),
    lines: [fill(goesHome.text, about), goesHome.ask],
  };
}

/** Tells the dog's story that a file was made. A disk that takes nothing keeps no story: the file goes out. */
async function keepMade(context: Context, dogId: string, what: string): Promise<void> {
  try {
    await keepHistory(context, context.db, {
      kind: 'dog',
      recordId: dogId,
      of: { dogId },
      action: 'made',
      revision: null,
      reason: what,
      before: {},
    });
  } catch (error) {
    if (!isTrouble(storageRefusal(error), 'unwritable', 'disk full')) throw error;
  }
}

/** Reads the record now, prints later, and makes the draft of what was printed. */
async function mail(
  context: Context,
  { printer, fontsFolder }: PrintRoom,
  asked: ParsedOf<'goesHome/mail'>,
) {
  const material = await collect(context, asked.dogId, null);
  const given = today(context, material, asked.language);
  const { printed: kinds, leftOut } = printable(asked.kinds, material);
  if (kinds.length === 0) throw badField('kinds', leftOut.join(' '));
  const { subject, greeting, lines } = letter(material, asked.reader, OWNER_WORDS[given.language]);
  await keepMade(context, asked.dogId, `Mail draft to the ${asked.reader}`);
  const printing = printer.print(printJob(material, kinds, { ...given, fontsFolder }));
  const { practice } = material.context;
  const { client } = material.file;
  const isForOwner = asked.reader === 'owner';
  const calendar = isForOwner ? homeCalendar(material, given) : null;
  const table =
    isForOwner && kinds.includes('running-plan') ? tableToFill(material, given.language) : null;
  const to = addressOf(isForOwner ? client.email : client.vetContact);
  const close = [practice.practitioner, practice.name, practice.phone].filter(
    (line) => line !== '',
  );
  return new Later(
    printing.then(async ({ base64 }) => {
      const files: MailFile[] = [
        {
          name: fileNameOf(material, kinds),
          mediaType: 'application/pdf',
          bytes: Buffer.from(base64, 'base64'),
        },
        ...(calendar === null || calendar.days + calendar.cancelled === 0
          ? []
          : [
              {
                name: homeFileName(material, 'calendar', 'ics'),
                mediaType: 'text/calendar',
                bytes: Buffer.from(calendar.text),
              },
            ]),
      ];
      if (table !== null) {
        files.push({ name: table.name, mediaType: 'text/csv', bytes: Buffer.from(table.text) });
      }
      const draft = await mailDraft({
        to,
        subject,
        text: [greeting, ...lines, close.join('\n')].join('\n\n'),
        files,
        boundary: `${material.latest.id}-${asked.reader}`,
        instant: given.instant,
      });
      return {
        fileName: homeFileName(material, `mail-to-${asked.reader}`, 'eml'),
        base64: draft.toString('base64'),
        leftOut,
        to,
      };
    }),
  );
}

export const goesHomeHandlers = (
  room: PrintRoom,
): Handlers<'goesHome/calendar'> & LateHandlers<'goesHome/mail'> => ({
  'goesHome/calendar': async (context, { dogId, language, alarmHour }) => {
    const material = await collect(context, dogId, null);
    const made = homeCalendar(material, { ...today(context, material, language), alarmHour });
    if (made.days + made.cancelled === 0) {
      throw badField(
        'dogId',
        'There is nothing to put into a calendar: no outing and no weighing lies ahead.',
      );
    }
    await keepMade(context, dogId, 'Calendar file');
    return {
      fileName: homeFileName(material, 'calendar', 'ics'),
      base64: Buffer.from(made.text).toString('base64'),
      leftOut: [],
      days: made.days,
      cancelled: made.cancelled,
    };
  },
  'goesHome/mail': (context, asked) => mail(context, room, asked),
});
