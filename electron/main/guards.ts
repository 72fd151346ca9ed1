import type { Session, WebContents } from 'electron'
import { isOwnPage } from './app-scheme.ts'

/** Everything that would leave this machine or read its files: the app needs none of it. */
const OUTSIDE = ['http://*/*', 'https://*/*', 'ws://*/*', 'wss://*/*', 'ftp://*/*', 'file://*/*']

/** Chromium's own PDF view, which it loads into the frame of a PDF; the name is the same in all its versions, from memory. */
const PDF_VIEW = 'chrome-extension://mhjfbmdgcfjbbpaeojofohoefgiehjai'

/** Refuses every permission and every request that is not for the app's own pages. */
export function guardSession(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false))
  session.setPermissionCheckHandler(() => false)
  session.setDevicePermissionHandler(() => false)
  session.webRequest.onBeforeRequest({ urls: OUTSIDE }, (_details, answer) => answer({ cancel: true }))
}

/** Refuses new windows, navigation away from the app's pages and embedded pages, for every page there ever is. */
export function guardContents(contents: WebContents): void {
  contents.setWindowOpenHandler(() => ({ action: 'deny' }))
  contents.on('will-navigate', (event) => event.preventDefault())
  contents.on('will-redirect', (event) => event.preventDefault())
  contents.on('will-attach-webview', (event) => event.preventDefault())
  contents.on('will-frame-navigate', (event) => {
    if (event.isMainFrame || !isOwnDocument(event.url)) event.preventDefault()
  })
}

/** A document that the app's own page made and shows in a frame, such as labels before printing, and what shows it. */
function isOwnDocument(address: string): boolean {
  if (address.startsWith('blob:')) return isOwnPage(address.slice('blob:'.length))
  if (!URL.canParse(address)) return false
  const { protocol, host } = new URL(address)
  return `${protocol}//${host}` === PDF_VIEW
}
