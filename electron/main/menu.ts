import { BrowserWindow, Menu, type MenuItemConstructorOptions } from 'electron'

/** The menu that a system expects, by its own roles, and printing: the app's other work is in its window. */
export function setMenu(platform: NodeJS.Platform): void {
  const own: MenuItemConstructorOptions[] = platform === 'darwin' ? [{ role: 'appMenu' }] : []
  const file: MenuItemConstructorOptions = {
    label: '&File',
    submenu: [
      {
        label: '&Print…',
        accelerator: 'CmdOrCtrl+P',
        click: (_item, window) => {
          if (window instanceof BrowserWindow) window.webContents.print()
        },
      },
      { type: 'separator' },
      { role: platform === 'darwin' ? 'close' : 'quit' },
    ],
  }
  const view: MenuItemConstructorOptions = {
    label: '&View',
    submenu: [
      { role: 'resetZoom' },
      { role: 'zoomIn' },
      { role: 'zoomOut' },
      { type: 'separator' },
      { role: 'togglefullscreen' },
    ],
  }
  Menu.setApplicationMenu(
    Menu.buildFromTemplate([...own, file, { role: 'editMenu' }, view, { role: 'windowMenu' }]),
  )
}
