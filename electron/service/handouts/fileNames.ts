import { plainFileName } from '../../contract/files/name.ts';
import type { HandoutKind } from '../../contract/records.ts';
import type { Material } from './material.ts';

/** A file name any system takes: letters, digits and hyphens of the dog's name. */
export function homeFileName({ context: { dog, day } }: Material, what: string, ending: string) {
  const plain = dog.name
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40);
  return `${plain === '' ? 'dog' : plain}-${what}-${day}.${ending}`;
}

/** The name of a file with these sheets. */
export const fileNameOf = (material: Material, kinds: readonly HandoutKind[]): string =>
  homeFileName(material, kinds.length === 1 ? kinds[0]! : 'visit', 'pdf');

/** Whose sheet it is, and of which visit. */
export interface Named {
  readonly dogName: string;
  readonly clientName: string;
  /** Day of the visit that the sheet tells of, not of its printing. */
  readonly day: string;
}

/** Letters of one name in a file's name: dog, owner, sheet and day stay within what a system takes. */
const MOST_OF_A_NAME = 30;

const shortName = (name: string, otherwise: string): string =>
  [...plainFileName(name, otherwise)].slice(0, MOST_OF_A_NAME).join('').trim();

/**
 * Names the sheets of several dogs, so that a folder of them is sorted by dog; never the same name
 * twice, on systems that do not tell capitals apart either.
 */
export function batchFileNames(): (dog: Named, kind: HandoutKind) => string {
  const given = new Set<string>();
  return ({ dogName, clientName, day }, kind) => {
    const whose = `${shortName(dogName, 'dog')}, ${shortName(clientName, 'owner')}`;
    for (let count = 1; ; count += 1) {
      const name = plainFileName(
        `${whose}${count === 1 ? '' : ` ${count}`}, ${kind} ${day}.pdf`,
        '',
      );
      if (given.has(name.toLowerCase())) continue;
      given.add(name.toLowerCase());
      return name;
    }
  };
}
