import { isBeyond } from '../jsonLimits.ts';
import { unreadable } from './bundleZip.ts';

/** No record goes deeper (D). */
const DEEPEST = 64;

/**
 * The value of a JSON text out of a bundle.
 * @param mostParts what a list of ours comes to at most, with all that is in it
 * @throws Refusal (input) when it is none, or beyond any of ours
 */
export function readJson(text: string, name: string, mostParts: number): unknown {
  if (isBeyond(text, { deepest: DEEPEST, mostParts })) {
    throw unreadable(`${name} in the bundle holds more, or goes deeper, than any of ours.`);
  }
  try {
    return JSON.parse(text);
  } catch {
    throw unreadable(`${name} in the bundle is not valid JSON.`);
  }
}
