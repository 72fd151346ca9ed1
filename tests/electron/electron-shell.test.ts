import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { ContentsStandIn, electronStandIn, type StandIn } from './support/electron-stand-in.ts'
import { pagesBesideSecrets } from './support/loopback.ts'

const host = vi.hoisted(() => ({
  started: [] as unknown[],
  calls: [] as unknown[][],
  closed: 0,
}))
const electron = vi.hoisted(() => ({ now: null as unknown as Record<string, unknown> }))

vi.mock('electron', () => {
  // Read at each use, since every test starts the app anew.
  const later = (name: string) =>
    new Proxy(class {}, { get: (_, key) => Reflect.get(electron.now[name] as object, key) })
  return {
    app: later('app'),
    get BrowserWindow() {
      return electron.now['BrowserWindow']
    },
    dialog: later('dialog'),
    ipcMain: later('ipcMain'),
    Menu: later('Menu'),
    protocol: later('protocol'),
    session: later('session'),
  }
})

vi.mock('../../electron/host/start-host.ts', () => ({
  startHost: (start: unknown) => {
    host.started.push(start)
    return {
      call: async (...call: unknown[]) => {
        host.calls.push(call)
        return { ok: true, value: 'done' }
      },
      close: async () => {
        host.closed += 1
      },
    }
  },
}))

let standIn: StandIn

async function startApp(lockIsFree = true): Promise<StandIn> {
  const made = electronStandIn(lockIsFree)
  made.appPath.value = join(pagesBesideSecrets(), '..', '..')
  electron.now = made.electron
  vi.resetModules()
  await import('../../electron/main/main.ts')
  if (lockIsFree) await vi.waitFor(() => expect(made.windows[0]?.loaded).not.toBe(''))
  return made
}

beforeEach(async () => {
  host.started = []
  host.calls = []
  host.closed = 0
  standIn = await startApp()
})
afterEach(() => vi.restoreAllMocks())

const window = () => {
  const [first] = standIn.windows
  if (first === undefined) throw new Error('The app opened no window')
  return first
}

describe('the window', () => {
  test('is given nothing of Node, and its page alone', () => {
    expect(window().options['webPreferences']).toEqual({
      preload: expect.stringMatching(/electron[\\/]preload[\\/]preload\.cjs$/),
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      plugins: true,
      navigateOnDragDrop: false,
      safeDialogs: true,
      spellcheck: false,
    })
    expect(standIn.app.sandboxEnabled).toBe(true)
    expect(window().loaded).toBe('app://drawer/')
    expect(window().shown).toBe(true)
  })

  test('opens no other window, goes nowhere else and embeds nothing', () => {
    const contents = window().webContents
    expect(contents.windowOpen()).toEqual({ action: 'deny' })
    expect(contents.prevented('will-navigate', { url: 'app://drawer/other' })).toBe(true)
    expect(contents.prevented('will-navigate', { url: 'https://elsewhere.example' })).toBe(true)
    expect(contents.prevented('will-redirect')).toBe(true)
    expect(contents.prevented('will-attach-webview')).toBe(true)
  })

  test('shows a document in a frame only where its own page made it', () => {
    const contents = window().webContents
    const frame = (url: string, isMainFrame = false) =>
      contents.prevented('will-frame-navigate', { url, isMainFrame })
    expect(frame('blob:app://drawer/0b1c')).toBe(false)
    expect(frame('blob:https://elsewhere.example/0b1c')).toBe(true)
    expect(frame('blob:app://drawer.elsewhere.example/0b1c')).toBe(true)
    expect(frame('https://elsewhere.example')).toBe(true)
    expect(frame('blob:app://drawer/0b1c', true)).toBe(true)
    const pdfView = 'chrome-extension://mhjfbmdgcfjbbpaeojofohoefgiehjai/index.html'
    expect(frame(pdfView)).toBe(false)
    expect(frame(pdfView, true)).toBe(true)
    expect(frame('chrome-extension://mhjfbmdgcfjbbpaeojofohoefgiehjai.example/index.html')).toBe(true)
    expect(frame('chrome-extension://abcdefghijklmnopabcdefghijklmnop/index.html')).toBe(true)
  })

  test('every page there ever is gets the same guards', () => {
    const later = new ContentsStandIn()
    standIn.app.emit('web-contents-created', {}, later)
    expect(later.windowOpen()).toEqual({ action: 'deny' })
    expect(later.prevented('will-navigate')).toBe(true)
  })
})

describe('the session', () => {
  test('refuses every permission and device', () => {
    const answers: unknown[] = []
    standIn.session.permissionRequest?.(
      null as never,
      'media' as never,
      ((given: unknown) => answers.push(given)) as never,
    )
    expect(answers).toEqual([false])
    expect(standIn.session.permissionCheck?.()).toBe(false)
    expect(standIn.session.devicePermission?.()).toBe(false)
  })

  test('cancels what would leave this machine or read its files', () => {
    const rule = standIn.session.beforeRequest
    expect(rule?.filter.urls).toEqual(
      expect.arrayContaining(['http://*/*', 'https://*/*', 'ws://*/*', 'wss://*/*', 'file://*/*']),
    )
    const answers: unknown[] = []
    rule?.handler({} as never, ((given: unknown) => answers.push(given)) as never)
    expect(answers).toEqual([{ cancel: true }])
  })
})

describe('its own scheme', () => {
  const get = (address: string, method = 'GET') => {
    const serve = standIn.schemes.get('app')
    if (serve === undefined) throw new Error('The scheme app: is not served')
    return serve(new Request(address, { method }))
  }

  test('is registered as secure before the app is ready', () => {
    expect(standIn.registered).toEqual([
      [{ scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true } }],
    ])
  })

  test('serves the page under the strict policy', async () => {
    const reply = await get('app://drawer/')
    expect(reply.status).toBe(200)
    expect(await reply.text()).toContain('Common Drawer')
    expect(reply.headers.get('content-security-policy')).toContain("default-src 'none'")
    expect(reply.headers.get('x-content-type-options')).toBe('nosniff')
    const script = await get('app://drawer/assets/app.js')
    expect(script.headers.get('content-type')).toBe('text/javascript; charset=utf-8')
  })

  test.each([
    'app://elsewhere/index.html',
    'app://drawer.elsewhere.example/index.html',
    'https://drawer/index.html',
  ])('refuses another host or scheme: %s', async (address) => {
    expect((await get(address)).status).toBe(403)
  })

  test('refuses anything but reading', async () => {
    expect((await get('app://drawer/index.html', 'POST')).status).toBe(403)
  })

  test.each([
    'app://drawer/..%2foutside.txt',
    'app://drawer/%2e%2e/outside.txt',
    'app://drawer/..%2frenderer-private%2findex.html',
    'app://drawer/..%5coutside.txt',
  ])('reads nothing outside the built files: %s', async (address) => {
    const reply = await get(address)
    expect(reply.status).toBe(404)
    expect(await reply.text()).toBe('')
  })
})

describe('the one door', () => {
  const knock = (event: object) => {
    const handler = standIn.handlers.get('call')
    if (handler === undefined) throw new Error('There is no door')
    return handler(event as never, 'lot.get' as never, { lotId: 1 } as never)
  }

  test('is the only channel', () => {
    expect([...standIn.handlers.keys()]).toEqual(['call'])
  })

  test('answers the main frame of the app’s own page', async () => {
    const sender = window().webContents
    expect(await knock({ sender, senderFrame: sender.mainFrame })).toEqual({ ok: true, value: 'done' })
    expect(host.calls).toEqual([['lot.get', { lotId: 1 }]])
  })

  test.each([
    [
      'a frame inside the page',
      (main: object) => ({ senderFrame: { url: 'app://drawer/' }, sender: { mainFrame: main } }),
    ],
    ['a frame that is gone', (main: object) => ({ senderFrame: null, sender: { mainFrame: main } })],
    ['another page in the main frame', () => sameFrame('https://elsewhere.example/')],
    ['a host that begins alike', () => sameFrame('app://drawer.elsewhere.example/')],
    ['another scheme', () => sameFrame('file:///drawer/')],
    ['a page without an address', () => sameFrame('')],
  ])('refuses %s, and asks nobody', async (_who, event) => {
    const answer = await knock(event(window().webContents.mainFrame))
    expect(answer).toMatchObject({ ok: false, problem: { code: 'untrusted-caller' } })
    expect(host.calls).toEqual([])
  })

  function sameFrame(url: string): object {
    const mainFrame = { url }
    return { senderFrame: mainFrame, sender: { mainFrame } }
  }
})

describe('one instance', () => {
  test('a second start ends at once and touches no collection', async () => {
    host.started = []
    const second = await startApp(false)
    expect(second.app.quits).toBe(1)
    expect(second.windows).toEqual([])
    expect(host.started).toEqual([])
  })

  test('a second start brings the first window up', async () => {
    window().minimised = true
    standIn.app.emit('second-instance')
    expect([window().minimised, window().focused]).toEqual([false, true])
  })

  test('closing the last window ends the app, once the collection is closed', async () => {
    standIn.app.emit('window-all-closed')
    expect(standIn.app.quits).toBe(1)
    let held = false
    standIn.app.emit('will-quit', {
      preventDefault: () => {
        held = true
      },
    })
    expect(held).toBe(true)
    await vi.waitFor(() => expect(standIn.app.quits).toBe(2))
    expect(host.closed).toBe(1)
    standIn.app.emit('will-quit', {
      preventDefault: () => {
        throw new Error('held twice')
      },
    })
  })
})

test('the menu holds what the system expects', () => {
  expect(JSON.stringify(standIn.menus)).toContain('editMenu')
  expect(JSON.stringify(standIn.menus)).not.toContain('toggleDevTools')
})

test('the menu prints the window that it belongs to', () => {
  type Entry = { label?: string; submenu?: Entry[]; click?: (item: object, window: unknown) => void }
  const [file] = (standIn.menus.flat() as Entry[]).filter(({ label }) => label === '&File')
  const print = file?.submenu?.find(({ label }) => label === '&Print…')
  print?.click?.({}, undefined)
  print?.click?.({}, window())
  expect(window().webContents.printed).toBe(1)
})
