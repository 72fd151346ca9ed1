import { buildIfNeeded } from '../../../electron/loopback/build-if-needed.ts'
import { findElectron } from '../../../electron/loopback/find-electron.ts'
import { PROJECT_FOLDER } from '../../support/command-line.ts'
import { makeTemplatesFolder } from '../../support/templates.ts'
import { makePatterns } from './patterns.ts'

/** Builds the app and makes each kind of collection once, unless the run around this one has: every test copies one. */
export default async function beforeAll(): Promise<() => void> {
  const electron = findElectron(PROJECT_FOLDER, process.env)
  await buildIfNeeded(PROJECT_FOLDER, electron === null ? 'loopback' : 'electron')
  const removeTemplates = makeTemplatesFolder()
  await makePatterns()
  return removeTemplates
}
