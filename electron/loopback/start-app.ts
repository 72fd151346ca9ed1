import { spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { message } from '../../db/messages/message.ts'
import { toldBySystem } from '../host/system-texts.ts'
import { buildIfNeeded } from './build-if-needed.ts'
import { thisMachine } from './find-browser.ts'
import { findElectron } from './find-electron.ts'
import { hasDisplay, isRoot } from './open-window.ts'
import { runLoopback } from './run-loopback.ts'
import { readStartOptions, type StartOptions, USAGE } from './start-options.ts'

const PROJECT_FOLDER = fileURLToPath(new URL('../../', import.meta.url))

/** An Electron that fails within this time, milliseconds, showed nothing: the browser takes over. */
const SHOWED_NOTHING_MS = 3_000

/** Starts the app: Electron where it is installed, else a browser window. Answers the exit code once it has ended. */
export async function startApp(args: readonly string[]): Promise<number> {
  const options = readStartOptions(args, process.env)
  if (options === 'help') {
    console.log(USAGE)
    return 0
  }
  if (options === null) {
    console.error(`${await toldBySystem(message('start.not-understood'))}\n${USAGE}`)
    return 2
  }
  const electron =
    options.electron && hasDisplay(thisMachine) ? findElectron(PROJECT_FOLDER, process.env) : null
  await buildIfNeeded(PROJECT_FOLDER, electron === null ? 'loopback' : 'electron')
  if (electron === null) return runLoopback(options, PROJECT_FOLDER, '')
  return runElectron(electron, options)
}

async function runElectron(program: string, options: StartOptions): Promise<number> {
  const args = [PROJECT_FOLDER, `--folder=${options.folder}`]
  if (options.file !== null) args.push(`--collection=${options.file}`)
  if (isRoot()) args.push('--no-sandbox')
  const startedAt = performance.now()
  const code = await new Promise<number>((resolve) => {
    const child = spawn(program, args, { stdio: 'inherit' })
    child.once('error', () => resolve(1))
    child.once('exit', (exitCode) => resolve(exitCode ?? 1))
  })
  if (code === 0 || performance.now() - startedAt > SHOWED_NOTHING_MS) return code
  return runLoopback(options, PROJECT_FOLDER, await toldBySystem(message('start.electron-would-not')))
}
