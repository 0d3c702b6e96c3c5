import type { GaitMeasurement, Joint, Movement } from '../../core/index.ts';
import type { Visit } from '../../electron/contract/contract.ts';
import type { Measurement } from '../../electron/contract/records.ts';
import type { Limb } from '../words.ts';

/** What is measured on a limb, without its value. */
export type Measured =
  | { readonly kind: 'joint angle'; readonly joint: Joint; readonly movement: Movement }
  | { readonly kind: 'thigh girth' }
  | { readonly kind: 'standing weight' };

type Thing = Measured & { readonly limb: Limb };

/** Names one measured thing, the same at every visit. */
export function measureKey(thing: Thing | Measurement | GaitMeasurement): string {
  const what = thing.kind === 'joint angle' ? `${thing.joint}-${thing.movement}` : thing.kind;
  return `${thing.limb}-${what}`.replaceAll(' ', '-');
}

/** The measurement of one thing; null while there is none. */
export function measurementOf(list: readonly Measurement[], thing: Thing): Measurement | null {
  const key = measureKey(thing);
  return list.find((entry) => measureKey(entry) === key) ?? null;
}

/** The list with one value set; null takes the measurement out. */
export function withValue(
  list: readonly Measurement[],
  thing: Thing,
  value: number | null,
): Measurement[] {
  const key = measureKey(thing);
  const note = measurementOf(list, thing)?.note ?? '';
  const others = list.filter((entry) => measureKey(entry) !== key);
  return value === null ? others : [...others, { ...thing, value, note } as Measurement];
}

/** What was measured last of each thing, up to and without `day`. */
export function lastMeasured(
  visits: readonly Pick<Visit, 'id' | 'day' | 'measurements'>[],
  day: string,
  without: string | null = null,
): readonly Measurement[] {
  const last = new Map<string, Measurement>();
  for (const visit of visits) {
    if (visit.day > day || visit.id === without) continue;
    for (const entry of visit.measurements) last.set(measureKey(entry), entry);
  }
  return [...last.values()];
}

const FORE_JOINTS: readonly Joint[] = ['carpus', 'elbow', 'shoulder'];
const HIND_JOINTS: readonly Joint[] = ['tarsus', 'stifle', 'hip'];
const angles = (joints: readonly Joint[]): Measured[] =>
  joints.flatMap((joint): Measured[] => [
    { kind: 'joint angle', joint, movement: 'flexion' },
    { kind: 'joint angle', joint, movement: 'extension' },
  ]);

/** The lines of the form: each is measured on the left and on the right. */
export const MEASURED_LINES: readonly {
  readonly title: string;
  readonly end: 'Fore' | 'Hind';
  readonly lines: readonly Measured[];
}[] = [
  { title: 'Fore limbs: joint angles', end: 'Fore', lines: angles(FORE_JOINTS) },
  { title: 'Hind limbs: joint angles', end: 'Hind', lines: angles(HIND_JOINTS) },
  { title: 'Thigh girth', end: 'Hind', lines: [{ kind: 'thigh girth' }] },
  { title: 'Standing weight, fore', end: 'Fore', lines: [{ kind: 'standing weight' }] },
  { title: 'Standing weight, hind', end: 'Hind', lines: [{ kind: 'standing weight' }] },
];

/** "Carpus flexion", "Thigh girth". */
export function lineName(line: Measured): string {
  const text = line.kind === 'joint angle' ? `${line.joint} ${line.movement}` : line.kind;
  return text.charAt(0).toUpperCase() + text.slice(1);
}
