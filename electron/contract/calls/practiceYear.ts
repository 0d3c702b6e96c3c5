import { z } from 'zod';
import { whole } from '../fields.ts';
import type { YearAccount } from '../practice/year.ts';
import { call } from './call.ts';

export const practiceYearCalls = {
  /** A calendar year, or for null the month of today and the eleven before it. */
  'practice/year': call<YearAccount>()(z.strictObject({ year: whole('calendarYear').nullable() })),
} as const;
