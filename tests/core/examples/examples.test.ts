import { describe, expect, it } from 'vitest';
import * as core from '../../../core/index.ts';
import { expectedValue } from './expected.ts';
import { readExamples, type Example } from './read.ts';
import { sample } from './sample.ts';

const { without, stray, examples, problems } = readExamples();

/** Runs an example as somebody would who imports core; `sample` is what it may name beside. */
function run({ code }: Example): unknown {
  const scope: Readonly<Record<string, unknown>> = { ...core, sample };
  const names = Object.keys(scope);
  return new Function(...names, `return (${code});`)(...names.map((name) => scope[name]));
}

// A source that was mutated does what it did, but its docstrings stand elsewhere.
const isMutated = 'MUTANTS_ROOM' in process.env;

describe('the examples of core', () => {
  it.skipIf(isMutated)('stand in the docstring of every function that core exports', () => {
    expect(without).toEqual([]);
  });

  it.skipIf(isMutated)('stand nowhere else, where nothing would run them', () => {
    expect(stray).toEqual([]);
  });

  it.skipIf(isMutated)('are calls that the types allow', () => {
    expect(problems).toEqual([]);
  });

  it.each(examples)('$of: $code', (example) => {
    if (example.ends === 'throws') expect(() => run(example)).toThrow(example.expected);
    else expect(run(example)).toEqual(expectedValue(example.expected));
  });
});
