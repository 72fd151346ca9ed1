import { execFileSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'

const PROJECT = join(import.meta.dirname, '..', '..')
const SOME = ['biome.json', 'demo-data/gifts.csv', 'db/migrations/0000_the_book.sql', 'docs/guide.md']

test.skipIf(!existsSync(join(PROJECT, '.git')))('a clone has LF, also where git is set to write CRLF', () => {
  const clone = mkdtempSync(join(tmpdir(), 'drawer-clone-'))
  onTestFinished(() => rmSync(clone, { recursive: true, force: true }))
  execFileSync(
    'git',
    [
      '-c',
      'core.autocrlf=true',
      '-c',
      'core.eol=crlf',
      'checkout-index',
      `--prefix=${clone}/`,
      ...SOME,
      '-f',
    ],
    { cwd: PROJECT },
  )
  for (const file of SOME) expect(readFileSync(join(clone, file), 'utf8'), file).not.toContain('\r')
})
