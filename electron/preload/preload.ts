import { contextBridge, ipcRenderer } from 'electron'

// The one thing that a page is given: a call by name, checked on the other side.
contextBridge.exposeInMainWorld('commonDrawer', {
  call: (operation: string, input: unknown): Promise<unknown> => ipcRenderer.invoke('call', operation, input),
})
