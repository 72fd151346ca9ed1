import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { message } from '../../db/messages/message.ts'
import { toldBySystem } from '../host/system-texts.ts'
import { findElectron } from '../loopback/find-electron.ts'
import { startApp } from '../loopback/start-app.ts'
import { fetchElectron } from './fetch-electron.ts'

const PROJECT_FOLDER = fileURLToPath(new URL('../../', import.meta.url))
const LIMIT_MINUTES = 10

/** Fetches Electron where it is missing, says how that went, and starts the app with what there is. */
async function main(args: readonly string[]): Promise<number> {
  if (findElectron(PROJECT_FOLDER, process.env) === null) {
    console.log(
      `Fetching Electron, about 120 MB, for ${LIMIT_MINUTES} minutes at most; Ctrl+C stops it and changes nothing.`,
    )
    const installer = join(PROJECT_FOLDER, 'node_modules', 'electron', 'install.js')
    const fetched = await fetchElectron(installer, LIMIT_MINUTES * 60_000, (bytes) =>
      console.log(`${Math.round(bytes / 1_000_000)} MB are here.`),
    )
    console.log(await toldBySystem(message(`start.electron-${fetched}`)))
  }
  return startApp(args)
}

process.exitCode = await main(process.argv.slice(2))
