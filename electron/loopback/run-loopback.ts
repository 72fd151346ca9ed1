import { realpathSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { isMessage, message } from '../../db/messages/message.ts'
import { prepareFolder, removeSmallFile } from '../host/collections-folder.ts'
import { startHost } from '../host/start-host.ts'
import { toldBySystem } from '../host/system-texts.ts'
import { thisMachine } from './find-browser.ts'
import { openWindow, type Shown } from './open-window.ts'
import { findRunning, openerFile, writeOpener } from './opener.ts'
import { rememberedPort, rememberPort } from './remembered-port.ts'
import { type Serving, serve } from './serve.ts'
import type { StartOptions } from './start-options.ts'
import { type Stays, Visitors } from './visitors.ts'
import { whyNotWritten } from './why-not-written.ts'

/** How long the collection may take to close, milliseconds, before the process ends anyway: SQLite survives that. */
const CLOSING_MS = 5_000

/**
 * Serves the app to this machine and shows it, until its window is closed or the process is asked to end.
 *
 * Where it runs on this folder already, its window is shown again instead. Says what it did in one sentence, with
 * `because` before it. Answers the exit code.
 */
export async function runLoopback(
  options: StartOptions,
  projectFolder: string,
  because: string,
  stays?: Stays,
): Promise<number> {
  const say = (sentence: string) => console.log([because, sentence].join(' ').trim())
  prepareFolder(options.folder)
  const running = await findRunning(options.folder)
  if (
    running !== null &&
    options.window &&
    (options.file === null || isSameFile(options.file, running.file))
  ) {
    const shown = await openWindow(openerFile(options.folder, false), options.folder, thisMachine)
    const why = shown.kind === 'address-only' ? shown.because : null
    say(await toldBySystem(why ?? message('start.open-already')))
    running.discard()
    return 0
  }
  running?.discard()
  const pages = join(projectFolder, 'dist', 'renderer')
  await runHost(options, pages, running !== null, say, stays)
  return 0
}

/** Runs a host until it is to end. `beside`: another host runs on this folder, and keeps its port and its opener. */
async function runHost(
  options: StartOptions,
  pages: string,
  beside: boolean,
  say: (sentence: string) => void,
  stays: Stays | undefined,
): Promise<void> {
  let stop = () => {}
  const stopped = new Promise<void>((resolve) => {
    stop = resolve
  })
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, stop)

  const host = startHost({ folder: options.folder, file: options.file })
  host.opened.then(async (problem) => {
    if (problem === null) return
    for (const told of [problem.sentence, problem.todo])
      if (told !== null) console.log(isMessage(told) ? await toldBySystem(told) : told)
  })
  let endsWithLastPage = false
  const visitors = new Visitors(() => {
    if (endsWithLastPage) stop()
  }, stays)
  const serving = await serve({
    host,
    visitors,
    pages,
    preferredPort: rememberedPort(options.folder),
  })
  if (!beside) await rememberPort(options.folder, serving.port)
  const opener = openerFile(options.folder, beside)
  const shown = await show(options, serving, opener)
  endsWithLastPage = shown.kind !== 'address-only'
  say(await sentenceFor(shown, serving.address))
  // A browser that was running already takes the window over and ends at once: then the page tells.
  if (shown.kind === 'app-window') shown.ended.then(() => visitors.hearGoodbye())
  await stopped
  removeSmallFile(opener)
  await serving.close()
  await Promise.race([host.close(), setTimeout(CLOSING_MS, undefined, { ref: false })])
  // On a Mac a browser outlives its last window, and its next start would open nothing in this profile.
  if (shown.kind === 'app-window') shown.end()
}

function isSameFile(asked: string, open: string | null): boolean {
  try {
    return open !== null && realpathSync(asked) === realpathSync(open)
  } catch {
    return false
  }
}

async function show(options: StartOptions, { address }: Serving, opener: string): Promise<Shown> {
  try {
    await writeOpener(opener, address)
  } catch (thrown) {
    return { kind: 'address-only', because: whyNotWritten(thrown) }
  }
  if (!options.window) return { kind: 'address-only', because: null }
  return openWindow(opener, options.folder, thisMachine)
}

async function sentenceFor(shown: Shown, address: string): Promise<string> {
  switch (shown.kind) {
    case 'app-window':
      return toldBySystem(message('start.own-window', { browser: shown.browser }))
    case 'browser-page':
      return toldBySystem(message('start.in-browser'))
    case 'address-only':
      return [
        ...(shown.because === null ? [] : [await toldBySystem(shown.because)]),
        await toldBySystem(message('start.address-only', { address })),
      ].join(' ')
  }
}
