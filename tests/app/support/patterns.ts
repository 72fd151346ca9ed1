import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { demoFile } from '../../../electron/host/collections-folder.ts'
import { callOnFile } from '../../support/command-line.ts'
import { demoTemplate, templateOf } from '../../support/templates.ts'
import { startHostProcess } from './running-app.ts'
import { makeSmallShelf } from './small-shelf.ts'

/** What is in the drawer when a test begins: the demonstration, an empty collection of the keeper's own, or three lots on it. */
export type Pattern = 'demo' | 'empty' | 'shelf'

/** The collection that a test begins with, made where no test of this run has made it yet. */
export function patternOf(pattern: Pattern): Promise<string> {
  if (pattern === 'demo') return demoTemplate()
  if (pattern === 'shelf') return templateOf('shelf', makeShelf)
  return templateOf('empty', async (file) => {
    await callOnFile(file, 'collection.create', {
      libraryName: 'Hollow Lane Library',
      accessionPattern: 'HL{yy}-{####}',
    })
  })
}

/** Makes each kind, so that no test has to. */
export async function makePatterns(): Promise<void> {
  await Promise.all([patternOf('demo'), patternOf('shelf')])
}

async function makeShelf(file: string): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'drawer-shelf-'))
  copyFileSync(await patternOf('empty'), demoFile(folder))
  const hostProcess = startHostProcess()
  const app = await hostProcess.serve(folder)
  await makeSmallShelf(app)
  await app.end()
  await hostProcess.stop()
  copyFileSync(demoFile(folder), file)
  rmSync(folder, { recursive: true, force: true })
}
