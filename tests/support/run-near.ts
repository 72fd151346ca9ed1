import { execFileSync } from 'node:child_process'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { PROJECT_FOLDER } from './command-line.ts'
import { nearTests } from './near-tests.ts'
import { npm } from './npm-script.ts'

// npm run test:near: the tests nearest to what was changed since the last commit, for work in hand.

const git = (...args: string[]) =>
  execFileSync('git', args, { cwd: PROJECT_FOLDER, encoding: 'utf8' })
    .split('\n')
    .filter((line) => line !== '')

const changed = [...git('diff', '--name-only', 'HEAD'), ...git('ls-files', '--others', '--exclude-standard')]
const tests = readdirSync(join(PROJECT_FOLDER, 'tests'), { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.test.ts'))
  .map((name) => `tests/${name}`)
  .map((path) => ({ path, text: readFileSync(join(PROJECT_FOLDER, path), 'utf8') }))
const near = nearTests(changed, tests)
if (near.length === 0) console.log('No test is called like a changed file or imports one.')
else process.exitCode = (await npm('test:unit', { args: near })) === 'passed' ? 0 : 1
