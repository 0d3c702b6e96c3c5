import type { SessionInput } from '../../electron/contract/records.ts';
import { NEXT_DAY_WORDS, OUTCOME_WORDS, STOP_SIGN_WORDS } from '../words.ts';
import { minutes as minutesText } from './rampText.ts';
import { outcomeOnly, type Asked, type ToldSession } from './timeline.ts';

type Outcome = SessionInput['outcome'];
type NextDay = NonNullable<SessionInput['nextDay']>;

/** One key for each way a session can go. */
export const OUTCOME_KEYS: readonly { readonly key: string; readonly value: Outcome }[] = [
  { key: 'd', value: 'done' },
  { key: 's', value: 'shortened' },
  { key: 'm', value: 'missed' },
  { key: 'h', value: 'held' },
];

/** One digit for each way the next day can be, mildest first. */
export const NEXT_DAY_KEYS: readonly { readonly key: string; readonly value: NextDay }[] = (
  Object.keys(NEXT_DAY_WORDS) as NextDay[]
).map((value, index) => ({ key: String(index + 1), value }));

/** The result that a key stands for, or null when it stands for nothing that is asked. */
export function answerOf(told: ToldSession, asked: Asked, key: string): SessionInput | null {
  const { session, result } = told;
  if (asked === 'outcome') {
    const found = OUTCOME_KEYS.find((entry) => entry.key === key);
    if (found === undefined) return null;
    return { ...(result ?? outcomeOnly(session.day, found.value)), outcome: found.value };
  }
  const next = NEXT_DAY_KEYS.find((entry) => entry.key === key);
  if (asked === null || next === undefined || result === null) return null;
  return { ...result, nextDay: next.value };
}

/** What was told of a session, in a few words. */
export function resultText(result: SessionInput): string {
  const minutes = result.runMinutes === null ? '' : ` at ${minutesText(result.runMinutes)}`;
  const { longestRunMinutes: most } = result;
  const longest =
    most === null || most === result.runMinutes ? '' : `, longest outing ${minutesText(most)}`;
  const next =
    result.nextDay === null ? '' : `, next day: ${NEXT_DAY_WORDS[result.nextDay].toLowerCase()}`;
  const signs = result.signs.map((sign) => `, ${STOP_SIGN_WORDS[sign].toLowerCase()}`).join('');
  return `${OUTCOME_WORDS[result.outcome]}${minutes}${longest}${next}${signs}`;
}
