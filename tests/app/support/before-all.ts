import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { demoFile } from '../../../electron/host/collections-folder.ts'
import { buildIfNeeded } from '../../../electron/loopback/build-if-needed.ts'
import { findElectron } from '../../../electron/loopback/find-electron.ts'
import { callOnFile, PROJECT_FOLDER } from '../../support/command-line.ts'
import { demoTemplate, makeTemplatesFolder } from '../../support/templates.ts'
import { patternOf } from './patterns.ts'
import { startHostProcess } from './running-app.ts'
import { fillSmallShelf } from './small-shelf.ts'

/** Builds the app and makes each kind of collection once: every test gets a copy of one. */
export default async function beforeAll(): Promise<() => void> {
  const electron = findElectron(PROJECT_FOLDER, process.env)
  await buildIfNeeded(PROJECT_FOLDER, electron === null ? 'loopback' : 'electron')
  const folder = mkdtempSync(join(tmpdir(), 'drawer-patterns-'))
  process.env['COMMON_DRAWER_TEST_PATTERNS'] = folder
  const removeTemplates = makeTemplatesFolder()
  const demo = demoTemplate()
  await callOnFile(patternOf('empty'), 'collection.start', {
    libraryName: 'Hollow Lane Library',
    accessionPattern: 'HL{yy}-{####}',
  })
  await makeShelf()
  copyFileSync(await demo, patternOf('demo'))
  return () => {
    rmSync(folder, { recursive: true, force: true })
    removeTemplates()
  }
}

async function makeShelf(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'drawer-shelf-'))
  const file = demoFile(folder)
  copyFileSync(patternOf('empty'), file)
  const hostProcess = startHostProcess()
  const app = await hostProcess.serve(folder)
  await fillSmallShelf(app)
  await app.end()
  await hostProcess.stop()
  copyFileSync(file, patternOf('shelf'))
  rmSync(folder, { recursive: true, force: true })
}
