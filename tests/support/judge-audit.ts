/** Advisories that are known and accepted, by package: why they cannot hurt here. None today. */
const EXCEPTIONS: Readonly<Record<string, string>> = {}

export interface AuditVerdict {
  readonly refused: boolean
  readonly said: string
}

interface Vulnerability {
  readonly name: string
  readonly severity: string
}

/**
 * Judges what `npm audit --json` printed of the packages that the app runs on.
 *
 * A high or critical advisory is refused unless it is a known exception. Where the registry offers no audit, or there is
 * no network, nothing is refused, and that it was not looked is said.
 */
export function judgeAudit(printed: string): AuditVerdict {
  let report: { vulnerabilities?: Readonly<Record<string, Vulnerability>> }
  try {
    report = JSON.parse(printed)
  } catch {
    report = {}
  }
  if (report.vulnerabilities === undefined) {
    return { refused: false, said: 'Dependencies were not audited: the registry offers no audit here.' }
  }
  const all = Object.values(report.vulnerabilities)
  const grave = all.filter(({ severity }) => severity === 'high' || severity === 'critical')
  const refused = grave.filter(({ name }) => EXCEPTIONS[name] === undefined)
  const excepted = grave
    .filter((found) => !refused.includes(found))
    .map(({ name }) => `${name}: ${EXCEPTIONS[name]}`)
  const list = refused.map(({ name, severity }) => `${name} (${severity})`).join(', ')
  return {
    refused: refused.length > 0,
    said: [
      refused.length > 0
        ? `Dependencies with grave advisories: ${list}. Update them, or except them with the reason in tests/support/judge-audit.ts.`
        : `Dependencies were audited: nothing grave; ${all.length - grave.length} lesser advisories.`,
      ...excepted,
    ].join('\n'),
  }
}
