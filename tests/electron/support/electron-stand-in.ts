import { EventEmitter } from 'node:events'

type Handler = (...args: never[]) => unknown

/** Stands in for a page's contents: keeps what it was told, and lets a test drive it. */
export class ContentsStandIn extends EventEmitter {
  readonly mainFrame = { url: 'app://drawer/' }
  printed = 0
  print = () => {
    this.printed += 1
  }
  windowOpen: Handler = () => ({ action: 'allow' })

  setWindowOpenHandler(handler: Handler): void {
    this.windowOpen = handler
  }

  /** Emits an event that may be prevented, and tells whether it was. */
  prevented(name: string, details: object = {}): boolean {
    let stopped = false
    this.emit(name, {
      ...details,
      preventDefault: () => {
        stopped = true
      },
    })
    return stopped
  }
}

/** Stands in for Electron's modules: every setting passed is kept, every handler can be driven. */
export function electronStandIn(lockIsFree = true) {
  const handlers = new Map<string, Handler>()
  const schemes = new Map<string, (request: Request) => Promise<Response>>()
  const registered: unknown[] = []
  const windows: WindowStandIn[] = []
  const menus: unknown[] = []
  const session = {
    permissionRequest: undefined as Handler | undefined,
    permissionCheck: undefined as Handler | undefined,
    devicePermission: undefined as Handler | undefined,
    beforeRequest: undefined as { filter: { urls: string[] }; handler: Handler } | undefined,
    protocol: {
      handle: (scheme: string, handler: (request: Request) => Promise<Response>) =>
        schemes.set(scheme, handler),
    },
    setPermissionRequestHandler(handler: Handler) {
      session.permissionRequest = handler
    },
    setPermissionCheckHandler(handler: Handler) {
      session.permissionCheck = handler
    },
    setDevicePermissionHandler(handler: Handler) {
      session.devicePermission = handler
    },
    webRequest: {
      onBeforeRequest(filter: { urls: string[] }, handler: Handler) {
        session.beforeRequest = { filter, handler }
      },
    },
  }
  const app = Object.assign(new EventEmitter(), {
    quits: 0,
    sandboxEnabled: false,
    requestSingleInstanceLock: () => lockIsFree,
    enableSandbox: () => {
      app.sandboxEnabled = true
    },
    whenReady: async () => {},
    getAppPath: () => appPath.value,
    quit: () => {
      app.quits += 1
    },
    exit: () => {},
  })
  const appPath = { value: '' }

  class WindowStandIn extends EventEmitter {
    readonly options: Record<string, unknown>
    readonly webContents = new ContentsStandIn()
    loaded = ''
    shown = false
    focused = false
    minimised = false

    constructor(options: Record<string, unknown>) {
      super()
      this.options = options
      windows.push(this)
      app.emit('web-contents-created', {}, this.webContents)
    }
    async loadURL(address: string): Promise<void> {
      this.loaded = address
      this.emit('ready-to-show')
    }
    show = () => {
      this.shown = true
    }
    focus = () => {
      this.focused = true
    }
    isDestroyed = () => false
    isMinimized = () => this.minimised
    restore = () => {
      this.minimised = false
    }
  }

  const electron = {
    app,
    BrowserWindow: WindowStandIn,
    dialog: { showErrorBox: () => {} },
    ipcMain: { handle: (channel: string, handler: Handler) => handlers.set(channel, handler) },
    Menu: {
      buildFromTemplate: (template: unknown) => template,
      setApplicationMenu: (menu: unknown) => menus.push(menu),
    },
    protocol: { registerSchemesAsPrivileged: (schemes: unknown) => registered.push(schemes) },
    session: { defaultSession: session },
  }
  return { electron, app, appPath, session, handlers, schemes, registered, windows, menus }
}

export type StandIn = ReturnType<typeof electronStandIn>
