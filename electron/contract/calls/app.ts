import { z } from 'zod';
import { choice, line, requiredLine } from '../fields.ts';
import { practiceInput, type Practice, type PracticeLogo, type RuleChange } from '../records.ts';
import type { AppStatus } from '../results.ts';
import { call, nothing } from './call.ts';

export const appCalls = {
  'app/status': call<AppStatus>()(() => nothing),
  /** Opens the own practice (creating it) or a fresh copy of the demonstration practice. */
  'app/open': call<AppStatus>()(() =>
    z.strictObject({ which: choice('Practice to open', ['own', 'demo']) }),
  ),
  'practice/save': call<Practice>()(() => practiceInput()),
  /** Checks and keeps a PNG, JPEG or SVG logo; null removes it. */
  'practice/setLogo': call<PracticeLogo | null>()(() =>
    z.strictObject({
      base64: z
        .base64({ error: 'The logo must be sent as base64.' })
        .max(1_000_000, { error: 'The logo file is too large.' })
        .nullable(),
    }),
  ),
  /** Changes a rule inside its range; a null value goes back to the value as published. */
  'rules/set': call<readonly RuleChange[]>()(() =>
    z.strictObject({
      ruleId: requiredLine('Rule'),
      value: z.number({ error: 'The value of the rule must be a number.' }).nullable(),
      reason: line('Reason for the change'),
    }),
  ),
  /** Versions, counts, sizes and the state of the file as plain text; no word of any record. */
  'app/diagnostics': call<string>()(() => nothing),
} as const;
