import type { IpcMain, IpcMainInvokeEvent } from 'electron'
import type { Answer } from '../../db/contract/problem.ts'
import { problem } from '../../db/contract/refusal.ts'
import { message } from '../../db/messages/message.ts'
import { tellAll } from '../../db/messages/tell.ts'
import { textsOf, UNTIL_OPEN } from '../../db/messages/texts-of.ts'
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

async function untrusted(): Promise<Answer<never>> {
  const { say } = await textsOf(UNTIL_OPEN)
  const why = problem('untrusted-caller', message('problem.not-this-page'))
  return tellAll({ ok: false, problem: why }, say) as Answer<never>
}
