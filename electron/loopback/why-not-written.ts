import { type Message, message } from '../../db/messages/message.ts'
/** Why a small file could not be written into the folder of the collections. */
export function whyNotWritten(thrown: unknown): Message {
  const code = thrown instanceof Error && 'code' in thrown ? thrown.code : ''
  return code === 'ENOSPC' || code === 'EDQUOT'
    ? message('start.disk-full')
    : message('start.folder-read-only')
}
