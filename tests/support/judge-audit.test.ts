import { expect, test } from 'vitest'
import { judgeAudit } from './judge-audit.ts'

const report = (...found: readonly [string, string][]) =>
  JSON.stringify({
    vulnerabilities: Object.fromEntries(found.map(([name, severity]) => [name, { name, severity }])),
  })

test('a grave advisory is refused by name', () => {
  expect(judgeAudit(report(['paper-mill', 'critical'], ['ink', 'low']))).toMatchObject({
    refused: true,
    said: expect.stringContaining('paper-mill (critical)'),
  })
  expect(judgeAudit(report(['paper-mill', 'high'])).refused).toBe(true)
})

test('lesser ones are counted', () => {
  expect(judgeAudit(report(['ink', 'low'], ['nib', 'moderate']))).toEqual({
    refused: false,
    said: 'Dependencies were audited: nothing grave; 2 lesser advisories.',
  })
})

test.each(['', 'npm error code E405', '{"error":{"code":"ENOTFOUND"}}'])(
  'nothing is refused unread: %s',
  (printed) => {
    expect(judgeAudit(printed)).toEqual({
      refused: false,
      said: 'Dependencies were not audited: the registry offers no audit here.',
    })
  },
)
