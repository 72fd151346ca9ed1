import { Menu, type MenuItemConstructorOptions } from 'electron'

/** The menu that a system expects, by its own roles: the app's work is in its window. */
export function setMenu(platform: NodeJS.Platform): void {
  const own: MenuItemConstructorOptions[] = platform === 'darwin' ? [{ role: 'appMenu' }] : []
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
    Menu.buildFromTemplate([
      ...own,
      { role: 'fileMenu' },
      { role: 'editMenu' },
      view,
      { role: 'windowMenu' },
    ]),
  )
}
