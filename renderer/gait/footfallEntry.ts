import type { Footfall } from '../../electron/contract/records.ts';
import type { Limb } from '../words.ts';

/** One key a limb, as the paws stand seen from above: hind outside, fore inside. */
export const LIMB_KEYS: readonly { readonly key: string; readonly limb: Limb }[] = [
  { key: 's', limb: 'leftHind' },
  { key: 'd', limb: 'leftFore' },
  { key: 'k', limb: 'rightFore' },
  { key: 'l', limb: 'rightHind' },
];

export type Contact = 'touchDowns' | 'liftOffs';
/** As many as the record keeps of one limb. */
const MOST_TIMES = 500;

/** The record with one more contact of a limb; times are kept to the millisecond. */
export function withContact(
  list: readonly Footfall[],
  limb: Limb,
  contact: Contact,
  seconds: number,
): Footfall[] {
  const old = list.find((entry) => entry.limb === limb) ?? { limb, touchDowns: [], liftOffs: [] };
  if (old[contact].length >= MOST_TIMES) return [...list];
  const time = Math.round(seconds * 1000) / 1000;
  const changed = { ...old, [contact]: [...old[contact], time] };
  return [...list.filter((entry) => entry.limb !== limb), changed];
}

/** The record with all times of one kind of a limb set; a limb without any is left out. */
export function withTimes(
  list: readonly Footfall[],
  limb: Limb,
  contact: Contact,
  times: readonly number[],
): Footfall[] {
  const old = list.find((entry) => entry.limb === limb) ?? { limb, touchDowns: [], liftOffs: [] };
  const changed = { ...old, [contact]: [...times] };
  const others = list.filter((entry) => entry.limb !== limb);
  const empty = changed.touchDowns.length === 0 && changed.liftOffs.length === 0;
  return empty ? others : [...others, changed];
}

/** Typed seconds, "0.12 0.58; 1,04"; a sentence where they cannot be read. */
export function readTimes(
  text: string,
): { readonly times: number[] } | { readonly refused: string } {
  const words = text
    .split(/[\s;]+/)
    .map((word) => word.replace(/^,|,$/g, '').replace(',', '.'))
    .filter((word) => word !== '');
  const times = words.map(Number);
  if (times.length > MOST_TIMES) return { refused: `At most ${MOST_TIMES} times.` };
  const wrong = words.find((_, index) => !(times[index]! >= 0 && times[index]! <= 3600));
  if (wrong !== undefined) return { refused: `“${wrong}” is no time in seconds from 0 to 3600.` };
  const back = times.findIndex((time, index) => index > 0 && time <= times[index - 1]!);
  if (back > 0)
    return { refused: `Times must rise, but ${times[back]} follows ${times[back - 1]}.` };
  return { times };
}

export const writeTimes = (times: readonly number[]): string => times.join(' ');
