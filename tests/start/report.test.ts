import { describe, expect, test } from 'vitest';
import { count } from '../support/report.ts';

const file = (status: string, ...tests: string[]) => ({
  status,
  assertionResults: tests.map((each) => ({
    status: each,
    title: 'a test',
    ancestorTitles: [`a group (${each})`],
  })),
});

describe('the closing line of the test command', () => {
  test('counts tests', () => {
    const counts = count({
      numPassedTests: 5,
      numFailedTests: 1,
      numPendingTests: 2,
      numTodoTests: 1,
      testResults: [file('passed', 'passed'), file('failed', 'failed', 'skipped', 'skipped')],
    });
    expect(counts).toEqual({
      passed: 5,
      failed: 1,
      skipped: 3,
      skippedGroups: ['a group (skipped)'],
    });
  });

  test('counts a file that did not load as a failure', () => {
    const counts = count({
      numPassedTests: 1,
      numFailedTests: 0,
      numPendingTests: 0,
      numTodoTests: 0,
      testResults: [file('failed'), file('passed', 'passed')],
    });
    expect(counts).toEqual({ passed: 1, failed: 1, skipped: 0, skippedGroups: [] });
  });
});
