import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { app, type BrowserWindow, dialog, ipcMain, protocol, session } from 'electron'
import { message } from '../../db/messages/message.ts'
import { collectionsFolder, prepareFolder } from '../host/collections-folder.ts'
import { startHost } from '../host/start-host.ts'
import { toldBySystem } from '../host/system-texts.ts'
import { SCHEME, servePages } from './app-scheme.ts'
import { openDoor } from './door.ts'
import { guardContents, guardSession } from './guards.ts'
import { setMenu } from './menu.ts'
import { openAppWindow } from './window.ts'

const PRELOAD = fileURLToPath(new URL('../preload/preload.cjs', import.meta.url))

/** How long the collection may take to close, milliseconds, before the process ends anyway: SQLite survives that. */
const CLOSING_MS = 5_000

function readArguments(): { folder: string; file: string | null } {
  const { values } = parseArgs({
    args: process.argv.slice(1),
    options: { folder: { type: 'string' }, collection: { type: 'string' } },
    // Electron and the system add words of their own, which are not ours to refuse.
    strict: false,
  })
  const text = (value: unknown) => (typeof value === 'string' ? value : undefined)
  return {
    folder: collectionsFolder(text(values['folder']), process.env),
    file: text(values['collection']) ?? null,
  }
}

/** Opens the app; one instance per machine user, a second start brings the first one's window up. */
async function run(): Promise<void> {
  if (!app.requestSingleInstanceLock()) {
    app.quit()
    return
  }
  app.enableSandbox()
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ])
  app.on('web-contents-created', (_event, contents) => guardContents(contents))
  app.on('window-all-closed', () => app.quit())

  const options = readArguments()
  prepareFolder(options.folder)
  const host = startHost(options)
  closeBeforeQuitting(() => host.close())
  await app.whenReady()
  guardSession(session.defaultSession)
  servePages(session.defaultSession.protocol, join(app.getAppPath(), 'dist', 'renderer'))
  openDoor(ipcMain, host)
  setMenu(process.platform)
  const window = await openAppWindow(PRELOAD)
  app.on('second-instance', () => bringUp(window))
}

function bringUp(window: BrowserWindow): void {
  if (window.isDestroyed()) return
  if (window.isMinimized()) window.restore()
  window.focus()
}

/** Lets the work under way end and the collection close before the process does. */
function closeBeforeQuitting(close: () => Promise<void>): void {
  let closed = false
  app.on('will-quit', (event) => {
    if (closed) return
    event.preventDefault()
    const enough = new Promise((resolve) => setTimeout(resolve, CLOSING_MS).unref())
    Promise.race([close(), enough]).finally(() => {
      closed = true
      app.quit()
    })
  })
}

run().catch(async (thrown: unknown) => {
  dialog.showErrorBox(
    await toldBySystem(message('start.no-window')),
    await toldBySystem(message('start.no-window-todo', { command: 'npm start -- --browser' })),
  )
  console.error(thrown)
  app.exit(1)
})
