import { isBeyond, type JsonLimits } from '../jsonLimits.ts';
import { unreadable } from './bundleZip.ts';

/** No record goes deeper (D); how many there are is limited by the size of the file. */
const LIMITS: JsonLimits = { deepest: 64, mostParts: Infinity };

/**
 * The value of a JSON text out of a bundle.
 * @throws Refusal (input) when it is none, or nested beyond any record
 */
export function readJson(text: string, name: string): unknown {
  if (isBeyond(text, LIMITS)) throw unreadable(`${name} in the bundle is nested too deeply.`);
  try {
    return JSON.parse(text);
  } catch {
    throw unreadable(`${name} in the bundle is not valid JSON.`);
  }
}
