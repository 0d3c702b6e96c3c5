/** How far a JSON text may go before it is even read. */
export interface JsonLimits {
  /** Lists within lists within lists: what reads JSON by going down has an end. */
  readonly deepest: number;
  /** Parts of lists and groups, and these themselves: each takes many times the memory of its text. */
  readonly mostParts: number;
}

/** True for a JSON text that goes beyond the limits. Looks at signs only; it may be no JSON at all. */
export function isBeyond(text: string, { deepest, mostParts }: JsonLimits): boolean {
  let depth = 0;
  let parts = 0;
  let inString = false;
  for (let at = 0; at < text.length; at++) {
    const sign = text.charCodeAt(at);
    if (inString) {
      if (sign === BACKSLASH) at += 1;
      else if (sign === QUOTE) inString = false;
    } else if (sign === QUOTE) inString = true;
    else if (sign === COMMA) {
      parts += 1;
      if (parts >= mostParts) return true;
    } else if (sign === BRACKET || sign === BRACE) {
      depth += 1;
      parts += 1;
      if (depth > deepest || parts >= mostParts) return true;
    } else if (sign === BRACKET + 2 || sign === BRACE + 2) depth -= 1;
  }
  return false;
}

const QUOTE = 0x22;
const COMMA = 0x2c;
const BRACKET = 0x5b;
const BACKSLASH = 0x5c;
const BRACE = 0x7b;
