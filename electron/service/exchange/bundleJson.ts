import { unreadable } from './bundleZip.ts';

/** Lists within lists within lists: what reads JSON by going down has an end (D). */
const DEEPEST = 64;

/**
 * The value of a JSON text out of a bundle.
 * @throws Refusal (input) when it is none, or nested beyond any record
 */
export function readJson(text: string, name: string): unknown {
  if (isDeep(text)) throw unreadable(`${name} in the bundle is nested too deeply.`);
  try {
    return JSON.parse(text);
  } catch {
    throw unreadable(`${name} in the bundle is not valid JSON.`);
  }
}

function isDeep(text: string): boolean {
  let depth = 0;
  let inString = false;
  for (let at = 0; at < text.length; at++) {
    const sign = text.charCodeAt(at);
    if (inString) {
      if (sign === BACKSLASH) at += 1;
      else if (sign === QUOTE) inString = false;
    } else if (sign === QUOTE) inString = true;
    else if (sign === BRACKET || sign === BRACE) {
      depth += 1;
      if (depth > DEEPEST) return true;
    } else if (sign === BRACKET + 2 || sign === BRACE + 2) depth -= 1;
  }
  return false;
}

const QUOTE = 0x22;
const BRACKET = 0x5b;
const BACKSLASH = 0x5c;
const BRACE = 0x7b;
