import type { Fields } from './fieldKinds.ts';

/** An owner, and the vet who treats the owner's dogs. */
export const CLIENT = {
  name: { kind: 'text', label: 'Name of the owner', as: 'required line', since: 1 },
  phone: { kind: 'text', label: 'Phone', as: 'line', since: 1 },
  email: { kind: 'text', label: 'E-mail', as: 'line', since: 1 },
  address: { kind: 'text', label: 'Address', as: 'address', since: 1 },
  vetPractice: { kind: 'text', label: 'Vet practice', as: 'line', since: 1 },
  vetName: { kind: 'text', label: 'Treating vet', as: 'line', since: 1 },
  vetContact: { kind: 'text', label: 'Contact of the vet', as: 'line', since: 1 },
  notes: { kind: 'text', label: 'Notes on the owner', as: 'notes', since: 1 },
  /** A recording tells where the dog ran, so it is kept only where this is asked for. */
  keepRecordings: { kind: 'flag', label: 'Keep the recordings of runs', since: 4 },
} as const satisfies Fields;
