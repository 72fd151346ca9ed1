import { BrowserWindow, type WebPreferences } from 'electron'
import { PAGE_ADDRESS } from './app-scheme.ts'

/** What a page may reach: nothing of Node, nothing of Electron, one function of ours. */
export function webPreferences(preload: string): WebPreferences {
  return {
    preload,
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    webSecurity: true,
    allowRunningInsecureContent: false,
    experimentalFeatures: false,
    webviewTag: false,
    // Chromium's own PDF view, in which labels are looked at and printed; there are no other plugins.
    plugins: true,
    navigateOnDragDrop: false,
    safeDialogs: true,
    spellcheck: false,
  }
}

/** Opens the app's window, shown once there is something to see. */
export async function openAppWindow(preload: string): Promise<BrowserWindow> {
  const window = new BrowserWindow({
    width: 1280,
    height: 860,
    minWidth: 800,
    minHeight: 560,
    title: 'Common Drawer',
    show: false,
    backgroundColor: '#FAF7F0',
    webPreferences: webPreferences(preload),
  })
  window.once('ready-to-show', () => window.show())
  await window.loadURL(PAGE_ADDRESS)
  return window
}
