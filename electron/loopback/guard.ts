import { timingSafeEqual } from 'node:crypto'
import type { IncomingMessage } from 'node:http'
import { type Message, message } from '../../db/messages/message.ts'

/** Why a request is turned away: the HTTP status and a message. */
export interface TurnedAway {
  readonly status: number
  readonly sentence: Message
}

/** What this run of the host expects of its own page. */
export interface Expected {
  readonly port: number
  readonly secret: string
}

export const SECRET_HEADER = 'x-drawer-secret'

/** Turns away whoever did not come to this very address: another name for this machine, another page. */
export function turnAwayForeign(request: IncomingMessage, { port }: Expected): TurnedAway | null {
  const here = `127.0.0.1:${port}`
  if (request.headers.host !== here) return { status: 403, sentence: message('door.not-this-address') }
  const { origin } = request.headers
  if (origin !== undefined && origin !== `http://${here}`) {
    return { status: 403, sentence: message('door.another-page') }
  }
  const site = request.headers['sec-fetch-site']
  // The file that opens the window leads here; what is opened so holds nothing without the secret in that file.
  if (request.method === 'GET' && request.headers['sec-fetch-dest'] === 'document') return null
  if (site !== undefined && site !== 'same-origin' && site !== 'none') {
    return { status: 403, sentence: message('door.another-page') }
  }
  return null
}

/** Turns away whoever is not the page that this run opened: calls need its origin, its secret and JSON. */
export function turnAwayStranger(request: IncomingMessage, { secret }: Expected): TurnedAway | null {
  if (request.method !== 'POST') return { status: 405, sentence: message('door.ask-with-post') }
  if (request.headers.origin === undefined) {
    return { status: 403, sentence: message('problem.not-this-page') }
  }
  if (!sameSecret(request.headers[SECRET_HEADER], secret)) {
    return {
      status: 403,
      sentence: message('door.old-page'),
    }
  }
  if (!/^application\/json(\s*;\s*charset=utf-8)?$/i.test(request.headers['content-type'] ?? '')) {
    return { status: 415, sentence: message('door.ask-with-json') }
  }
  return null
}

function sameSecret(given: string | string[] | undefined, expected: string): boolean {
  if (typeof given !== 'string') return false
  const [a, b] = [Buffer.from(given), Buffer.from(expected)]
  return a.length === b.length && timingSafeEqual(a, b)
}
