import ts from 'typescript';
import { expect } from 'vitest';

/**
 * A written result as something to compare with: numbers hold to the digits that are written, whole
 * ones exactly, and an object that ends in `…` may hold more than is written.
 */
export function expectedValue(written: string): unknown {
  const text = `(${written.replace(/…\s*\}/g, '...more }')})`;
  const [statement] = ts.createSourceFile('expected.ts', text, ts.ScriptTarget.ES2024).statements;
  if (statement === undefined || !ts.isExpressionStatement(statement)) throw unreadable(written);
  return valueOf(statement.expression, text);
}

const unreadable = (text: string): Error => new Error(`not a plain value: ${text}`);

const WORDS: Readonly<Record<string, unknown>> = {
  true: true,
  false: false,
  null: null,
  undefined,
};
/** Takes the dust off sums of floating point. */
const EXACT_DIGITS = 9;

function valueOf(node: ts.Expression, text: string): unknown {
  const source = text.slice(node.pos, node.end).trim();
  if (ts.isParenthesizedExpression(node)) return valueOf(node.expression, text);
  if (ts.isStringLiteralLike(node)) return node.text;
  if (Object.hasOwn(WORDS, source)) return WORDS[source];
  if (/^-?[\d_]+(\.\d+)?$/.test(source)) {
    const digits = source.split('.')[1]?.length ?? EXACT_DIGITS;
    return expect.closeTo(Number(source.replaceAll('_', '')), digits);
  }
  if (ts.isArrayLiteralExpression(node)) return node.elements.map((one) => valueOf(one, text));
  if (!ts.isObjectLiteralExpression(node)) throw unreadable(source);
  const fields = node.properties.filter(ts.isPropertyAssignment);
  const value = Object.fromEntries(
    fields.map(({ name, initializer }) => [
      (name as ts.Identifier | ts.StringLiteral).text,
      valueOf(initializer, text),
    ]),
  );
  return fields.length === node.properties.length ? value : expect.objectContaining(value);
}
