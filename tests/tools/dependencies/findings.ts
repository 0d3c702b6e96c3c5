import type { ShippedPackage } from './shipped.ts';

/** One package that `npm audit` warns of. */
export interface Finding {
  readonly name: string;
  readonly severity: string;
  /** True when it reaches the practitioner's machine; otherwise it is a tool of ours. */
  readonly shipped: boolean;
}

export type AuditReading =
  | { readonly kind: 'findings'; readonly findings: readonly Finding[] }
  /** The registry gave no report; `why` is its own word for it. */
  | { readonly kind: 'no answer'; readonly why: string };

const SEVERE = new Set(['high', 'critical']);

interface Report {
  readonly auditReportVersion?: number;
  readonly vulnerabilities?: Readonly<
    Record<string, { readonly severity?: string; readonly nodes?: readonly string[] }>
  >;
  readonly message?: string;
  readonly error?: { readonly summary?: string; readonly code?: string };
}

/** Reads what `npm audit --json` printed (report version 2). */
export function readAudit(output: string, shipped: readonly ShippedPackage[]): AuditReading {
  let report: Report;
  try {
    report = JSON.parse(output) as Report;
  } catch {
    return { kind: 'no answer', why: 'it printed no report' };
  }
  const { vulnerabilities, auditReportVersion, message, error } = report;
  if (vulnerabilities === undefined || auditReportVersion !== 2) {
    const why = [message, error?.summary, error?.code].find((text) => text) ?? 'no reason given';
    // The registry's address says nothing to the reader.
    return { kind: 'no answer', why: why.replace(/ - \w+ https?:\S+/, '') };
  }
  const paths = new Set(shipped.map(({ path }) => path));
  const findings = Object.entries(vulnerabilities).map(([name, { severity, nodes }]) => ({
    name,
    severity: severity ?? 'unknown',
    shipped: (nodes ?? []).some((path) => paths.has(path)),
  }));
  return { kind: 'findings', findings };
}

/** What stops a release: a severe finding in something that is shipped. */
export const stops = ({ shipped, severity }: Finding): boolean =>
  shipped && (SEVERE.has(severity) || severity === 'unknown');
