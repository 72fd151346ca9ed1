import { spawnSync } from 'node:child_process'
import { judgeAudit } from './judge-audit.ts'

// npm run audit: asks the registry whether any package that the app runs on has a known fault.

const program = process.env['npm_execpath']
if (program === undefined) throw new Error('Run it by npm run audit.')
const { stdout } = spawnSync(
  process.execPath,
  [program, 'audit', '--omit=dev', '--json', '--fetch-timeout=20000', '--fetch-retries=0'],
  { encoding: 'utf8' },
)
const { refused, said } = judgeAudit(stdout)
console.log(said)
process.exitCode = refused ? 1 : 0
