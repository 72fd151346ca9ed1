import type { IncomingMessage } from 'node:http'
import { message } from '../../db/messages/message.ts'
import type { TurnedAway } from './guard.ts'

/** The most that a call may carry, bytes: the longest file of a data logger that is read, in any script. */
export const LARGEST_BODY = 12_000_000

const TOO_LARGE: TurnedAway = {
  status: 413,
  sentence: message('door.too-much'),
}

const NOT_JSON: TurnedAway = { status: 400, sentence: message('door.not-json') }

/** Reads the JSON body of a request, or says why not. Stops reading at the limit, whatever length was announced. */
export async function readJson(request: IncomingMessage): Promise<{ value: unknown } | TurnedAway> {
  if (Number(request.headers['content-length'] ?? 0) > LARGEST_BODY) return TOO_LARGE
  const parts: Buffer[] = []
  let size = 0
  for await (const part of request as AsyncIterable<Buffer>) {
    size += part.length
    if (size > LARGEST_BODY) return TOO_LARGE
    parts.push(part)
  }
  try {
    return { value: JSON.parse(Buffer.concat(parts).toString('utf8')) }
  } catch {
    return NOT_JSON
  }
}
