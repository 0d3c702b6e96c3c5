/**
 * Licences that may be shipped together with a program under Apache-2.0, by their SPDX names. All
 * are permissive; what asks for more than its notice is not here and stops the check.
 */
export const ALLOWED: ReadonlySet<string> = new Set([
  '0BSD',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'CC0-1.0',
  'ISC',
  'MIT',
  'MIT-0',
  'OFL-1.1',
  'Unlicense',
  'Zlib',
]);

/**
 * True when an SPDX expression (SPDX 2.3, annex D) can be met with `ALLOWED` alone: one side of an
 * OR is enough, both sides of an AND are needed. What cannot be read is not allowed.
 */
export function isAllowed(expression: string | null): boolean {
  if (expression === null) return false;
  const words = expression.match(/\(|\)|[^\s()]+/g) ?? [];
  let at = 0;

  function single(): boolean {
    if (words[at] === '(') {
      at += 1;
      const inside = either();
      if (words[at] !== ')') throw new SyntaxError('no closing bracket');
      at += 1;
      return inside;
    }
    const name = words[at];
    if (name === undefined || /^(\)|AND|OR|WITH)$/.test(name)) throw new SyntaxError('no name');
    at += 1;
    return ALLOWED.has(name);
  }
  function both(): boolean {
    let allowed = single();
    for (; words[at] === 'AND';) {
      at += 1;
      allowed = single() && allowed;
    }
    return allowed;
  }
  function either(): boolean {
    let allowed = both();
    for (; words[at] === 'OR';) {
      at += 1;
      allowed = both() || allowed;
    }
    return allowed;
  }
  try {
    return either() && at === words.length;
  } catch {
    return false;
  }
}
