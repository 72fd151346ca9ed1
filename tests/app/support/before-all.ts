import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { buildIfNeeded } from '../../../electron/loopback/build-if-needed.ts'
import { findElectron } from '../../../electron/loopback/find-electron.ts'
import { callOnFile, PROJECT_FOLDER } from './command-line.ts'

/** Builds the app and makes one demonstration, of which every test gets a copy. */
export default async function beforeAll(): Promise<() => void> {
  const electron = findElectron(PROJECT_FOLDER, process.env)
  await buildIfNeeded(PROJECT_FOLDER, electron === null ? 'loopback' : 'electron')
  const folder = mkdtempSync(join(tmpdir(), 'drawer-demo-'))
  const demo = join(folder, 'Demo collection.drawer')
  await callOnFile(demo, 'collection.open-demo', {})
  process.env['COMMON_DRAWER_TEST_DEMO'] = demo
  return () => rmSync(folder, { recursive: true, force: true })
}
