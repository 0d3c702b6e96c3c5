import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

export interface Counts {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
  /** The groups of tests that were skipped; their titles say why. */
  readonly skippedGroups: readonly string[];
}

/** The parts of vitest's JSON report that are counted. */
export interface JsonReport {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly numPendingTests: number;
  readonly numTodoTests: number;
  readonly testResults: readonly {
    readonly status: string;
    readonly assertionResults: readonly {
      readonly status: string;
      readonly title: string;
      readonly ancestorTitles: readonly string[];
    }[];
  }[];
}

/** Counts tests; a file that failed without a failed test (it did not load) counts as one failure. */
export function count(report: JsonReport): Counts {
  const broken = report.testResults.filter(
    ({ status, assertionResults }) =>
      status === 'failed' && !assertionResults.some((test) => test.status === 'failed'),
  );
  const skipped = report.testResults
    .flatMap(({ assertionResults }) => assertionResults)
    .filter(({ status }) => status !== 'passed' && status !== 'failed')
    .map(({ title, ancestorTitles }) => ancestorTitles[0] ?? title);
  return {
    passed: report.numPassedTests,
    failed: report.numFailedTests + broken.length,
    skipped: report.numPendingTests + report.numTodoTests,
    skippedGroups: [...new Set(skipped)],
  };
}

/** A place for vitest's JSON report; reading it takes it away. */
export function newReport(): { readonly file: string; read(): Counts | null } {
  const file = join(mkdtempSync(join(tmpdir(), 'trotwell-report-')), 'report.json');
  return {
    file,
    read() {
      const counts = existsSync(file)
        ? count(JSON.parse(readFileSync(file, 'utf8')) as JsonReport)
        : null;
      rmSync(dirname(file), { recursive: true, force: true });
      return counts;
    },
  };
}
