import type { Provenance } from '../figure.ts';
import { from } from '../origin.ts';
import type { Joint, Movement } from './types.ts';

/** A published joint angle of sound dogs, degrees. */
export interface JointReference extends Provenance {
  readonly degrees: number;
}

const FORE: Provenance = from('A', 'S', 'jaegger2002');
const HIND: Provenance = from('A', 'M', 'jaegger2002Hind');

const at = (degrees: number, from: Provenance): JointReference => ({ degrees, ...from });

/** Labrador retrievers, flexion and extension (fore limb read in the source, hind limb from memory). */
export const JOINT_REFERENCE: Readonly<Record<Joint, Readonly<Record<Movement, JointReference>>>> =
  {
    carpus: { flexion: at(32, FORE), extension: at(196, FORE) },
    elbow: { flexion: at(36, FORE), extension: at(165, FORE) },
    shoulder: { flexion: at(57, FORE), extension: at(165, FORE) },
    hip: { flexion: at(50, HIND), extension: at(162, HIND) },
    stifle: { flexion: at(42, HIND), extension: at(162, HIND) },
    tarsus: { flexion: at(39, HIND), extension: at(164, HIND) },
  };

/** Share of the standing weight on the fore limbs of sound dogs, %: mean and standard deviation. */
export const FORE_SHARE = { mean: 60.4, sd: 4.8 } as const;
