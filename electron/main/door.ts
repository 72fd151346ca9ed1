import type { IpcMain, IpcMainInvokeEvent } from 'electron'
import type { Answer } from '../../db/contract/problem.ts'
import { Told } from '../../db/contract/told.ts'
import type { Host } from '../host/start-host.ts'
import { isOwnPage } from './app-scheme.ts'

/** The one channel between a window and the host. */
export const CHANNEL = 'call'

/** Opens the one door: whoever is not the main frame of the app's own page is refused before anything is read. */
export function openDoor(ipcMain: Pick<IpcMain, 'handle'>, host: Pick<Host, 'call'>): void {
  ipcMain.handle(CHANNEL, async (event, operation: unknown, input: unknown): Promise<Answer<unknown>> => {
    if (!isOurMainFrame(event)) return untrusted()
    return host.call(operation, input)
  })
}

function isOurMainFrame({ senderFrame, sender }: IpcMainInvokeEvent): boolean {
  return senderFrame !== null && senderFrame === sender.mainFrame && isOwnPage(senderFrame.url)
}

function untrusted(): Answer<never> {
  const sentence = Told.parse('Only the page of this app may ask here.')
  return { ok: false, problem: { code: 'untrusted-caller', sentence, field: null, todo: null, choices: [] } }
}
