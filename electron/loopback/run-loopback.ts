import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { startHost } from '../host/start-host.ts'
import { thisMachine } from './find-browser.ts'
import { openWindow, type Shown } from './open-window.ts'
import type { Wishes } from './read-wishes.ts'
import { rememberedPort, rememberPort } from './remembered-port.ts'
import { serve } from './serve.ts'
import { Visitors } from './visitors.ts'

/** How long the collection may take to close, milliseconds, before the process ends anyway: SQLite survives that. */
const CLOSING_MS = 5_000

/**
 * Serves the app to this machine and shows it, until its window is closed or the process is asked to end.
 *
 * Says what it did in one sentence, with `because` before it. Answers the exit code.
 */
export async function runLoopback(wishes: Wishes, projectFolder: string, because: string): Promise<number> {
  let stop = () => {}
  const stopped = new Promise<void>((resolve) => {
    stop = resolve
  })
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, stop)

  mkdirSync(wishes.folder, { recursive: true })
  const host = startHost({ folder: wishes.folder, file: wishes.file })
  host.opened.then((problem) => {
    if (problem !== null) console.log([problem.sentence, problem.todo ?? ''].join(' ').trim())
  })
  let endsWithLastPage = false
  const visitors = new Visitors(() => {
    if (endsWithLastPage) stop()
  })
  const serving = await serve({
    host,
    visitors,
    pages: join(projectFolder, 'dist', 'renderer'),
    preferredPort: rememberedPort(wishes.folder),
  })
  rememberPort(wishes.folder, serving.port)
  const shown = await show(wishes, serving.address)
  console.log([because, sentenceFor(shown, serving.address)].join(' ').trim())
  if (shown.kind === 'browser-page') endsWithLastPage = true
  if (shown.kind === 'app-window') {
    shown.closed.then(() => {
      // A browser that was running already takes the window over and ends at once: then the page tells.
      endsWithLastPage = true
      if (visitors.count === 0) stop()
    })
  }
  await stopped
  await serving.close()
  await Promise.race([host.close(), setTimeout(CLOSING_MS, undefined, { ref: false })])
  return 0
}

async function show(wishes: Wishes, address: string): Promise<Shown> {
  if (!wishes.window) return { kind: 'address-only', because: '' }
  return openWindow(address, wishes.folder, thisMachine)
}

function sentenceFor(shown: Shown, address: string): string {
  switch (shown.kind) {
    case 'app-window':
      return `Common Drawer is open in a window of its own (${shown.browser}); close the window to end it.`
    case 'browser-page':
      return 'Common Drawer is open in your browser; close its page to end it.'
    case 'address-only':
      return `${shown.because} Open ${address} in a browser on this machine; press Ctrl+C here to end.`.trim()
  }
}
