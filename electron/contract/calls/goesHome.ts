import { z } from 'zod';
import { choice, id } from '../fields.ts';
import { LANGUAGES, sheetList } from '../records.ts';
import { call } from './call.ts';

/** A file for the owner's or the vet's own programs, to be saved. */
export interface HomeFile {
  readonly fileName: string;
  readonly base64: string;
  /** What is not in it and why, a sentence each. */
  readonly leftOut: readonly string[];
}

export interface CalendarFile extends HomeFile {
  /** Days that are announced, and days of earlier versions that are taken back. */
  readonly days: number;
  readonly cancelled: number;
}

export interface MailFile extends HomeFile {
  /** The address it is made out to; empty where none is on record. */
  readonly to: string;
}

const MAIL_READERS = ['owner', 'vet'] as const;

export const goesHomeCalls = {
  /** Outings and weighings as a calendar file; one of a later version replaces an earlier one. */
  'goesHome/calendar': call<CalendarFile>()(() =>
    z.strictObject({
      dogId: id('The dog'),
      language: choice('Language', LANGUAGES).optional(),
      /** Hour at which the phone reminds on the day, 0 to 23; null for no reminder. */
      alarmHour: z
        .int({ error: 'Hour of the reminder must be a whole number from 0 to 23.' })
        .min(0, { error: 'Hour of the reminder must be from 0 to 23.' })
        .max(23, { error: 'Hour of the reminder must be from 0 to 23.' })
        .nullable(),
    }),
  ),
  /** The sheets, for the owner with the calendar, as a mail draft. Nothing is sent. */
  'goesHome/mail': call<MailFile>()(() =>
    z.strictObject({
      dogId: id('The dog'),
      reader: choice('Reader of the mail', MAIL_READERS),
      kinds: sheetList('Handout').min(1, { error: 'Choose at least one sheet.' }),
      language: choice('Language', LANGUAGES).optional(),
    }),
  ),
} as const;
