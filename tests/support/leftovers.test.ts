import { spawn } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { leftovers, lookBefore } from './leftovers.ts'

let project: string
beforeEach(() => {
  project = mkdtempSync(join(tmpdir(), 'drawer-project-'))
})
afterEach(() => rmSync(project, { recursive: true, force: true }))

test('a run that leaves nothing is told nothing, and its temporary folder is gone', async () => {
  const before = lookBefore(project)
  mkdirSync(join(before.temporary, 'playwright-transform-cache-0'))
  expect(await leftovers(before, project)).toEqual([])
  expect(existsSync(before.temporary)).toBe(false)
})

test('what was left in the temporary folder is named', async () => {
  const before = lookBefore(project)
  writeFileSync(join(before.temporary, 'drawer-app-x'), '')
  expect(await leftovers(before, project)).toEqual(['drawer-app-x was left in the temporary folder.'])
})

test.runIf(process.platform === 'linux')(
  'a process that still runs is named, one from before is not',
  async () => {
    const sleeping = () =>
      spawn(process.execPath, ['-e', 'setInterval(() => {}, 1000); console.log(1)'], { cwd: project })
    const old = sleeping()
    await new Promise((resolve) => old.stdout.once('data', resolve))
    const before = lookBefore(project)
    const late = sleeping()
    await new Promise((resolve) => late.stdout.once('data', resolve))
    const found = await leftovers(before, project, 100)
    for (const child of [old, late]) {
      child.kill('SIGKILL')
      await new Promise((resolve) => child.once('exit', resolve))
    }
    expect(found).toHaveLength(1)
    expect(found[0]).toContain(`A process still runs, and may hold a port: ${late.pid} `)
  },
)
