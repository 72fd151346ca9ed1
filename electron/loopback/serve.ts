import { randomBytes } from 'node:crypto'
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { Answer, ProblemCode } from '../../db/contract/problem.ts'
import { problem } from '../../db/contract/refusal.ts'
import { isLanguageCode, type LanguageCode } from '../../db/messages/languages.ts'
import { message } from '../../db/messages/message.ts'
import { tellAll } from '../../db/messages/tell.ts'
import { textsOf, UNTIL_OPEN } from '../../db/messages/texts-of.ts'
import { PAGE_HEADERS, readBuiltFile } from '../host/built-files.ts'
import type { Host } from '../host/start-host.ts'
import { type Expected, type TurnedAway, turnAwayForeign, turnAwayStranger } from './guard.ts'
import { readJson } from './read-body.ts'
import type { Visitors } from './visitors.ts'

/** A host that is listening on this machine. */
export interface Serving {
  readonly port: number
  readonly secret: string
  /** The address that opens the app, with the secret that only its page gets to hold. */
  readonly address: string
  close(): Promise<void>
}

export interface ServeOptions {
  readonly host: Pick<Host, 'call'>
  readonly visitors: Pick<Visitors, 'welcome' | 'hearGoodbye' | 'dismiss'>
  /** The folder of the built pages. */
  readonly pages: string
  /** The port of the run before, so that what the page keeps for itself is found again; null for any. */
  readonly preferredPort: number | null
}

/** Serves the app to this machine alone, on 127.0.0.1. */
export async function serve(options: ServeOptions): Promise<Serving> {
  const expected = { port: 0, secret: randomBytes(32).toString('base64url') }
  const server = createServer(
    {
      headersTimeout: 10_000,
      requestTimeout: 30_000,
      keepAliveTimeout: 5_000,
      connectionsCheckingInterval: 5_000,
    },
    (request, response) => {
      handle(request, response, options, expected).catch(async () => {
        if (!response.headersSent)
          await answer(request, response, { status: 503, sentence: message('door.starting-again') })
        else response.destroy()
      })
    },
  )
  expected.port = await listen(server, options.preferredPort)
  return {
    port: expected.port,
    secret: expected.secret,
    address: `http://127.0.0.1:${expected.port}/#secret=${expected.secret}`,
    close: () => closeServer(server, options.visitors),
  }
}

/** What only the page of this run may ask for. */
const ASKED = new Set(['/call', '/alive', '/goodbye'])

async function handle(
  request: IncomingMessage,
  response: ServerResponse,
  options: ServeOptions,
  expected: Expected,
): Promise<void> {
  const foreign = turnAwayForeign(request, expected)
  if (foreign !== null) return answer(request, response, foreign)
  const pathname = (request.url ?? '/').split(/[?#]/, 1)[0] ?? '/'
  if (!ASKED.has(pathname)) return servePage(request, response, options.pages, pathname)
  const stranger = turnAwayStranger(request, expected)
  if (stranger !== null) return answer(request, response, stranger)
  if (pathname === '/alive') return options.visitors.welcome(response)
  if (pathname === '/goodbye') {
    options.visitors.hearGoodbye()
    response.writeHead(204).end()
    return
  }
  const body = await readJson(request)
  if ('status' in body) return answer(request, response, body)
  const { operation, input } = fieldsOf(body.value)
  json(response, 200, await options.host.call(operation, input))
}

async function servePage(
  request: IncomingMessage,
  response: ServerResponse,
  pages: string,
  pathname: string,
): Promise<void> {
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    return answer(request, response, { status: 405, sentence: message('door.pages-only-read') })
  }
  const file = await readBuiltFile(pages, pathname)
  if (file === null) return answer(request, response, { status: 404, sentence: message('door.no-such-page') })
  response.writeHead(200, { ...PAGE_HEADERS, 'Content-Type': file.type, 'Content-Length': file.body.length })
  response.end(request.method === 'HEAD' ? undefined : file.body)
}

function fieldsOf(value: unknown): { operation: unknown; input: unknown } {
  if (typeof value !== 'object' || value === null) return { operation: undefined, input: undefined }
  return {
    operation: 'operation' in value ? value.operation : undefined,
    input: 'input' in value ? value.input : undefined,
  }
}

const CODES: Readonly<Record<number, ProblemCode>> = {
  400: 'bad-request',
  413: 'bad-request',
  415: 'bad-request',
}

/** Turns a request away. A 503 carries no JSON: the page then knows that nobody can tell whether its call acted. */
async function answer(
  request: IncomingMessage,
  response: ServerResponse,
  { status, sentence }: TurnedAway,
): Promise<void> {
  const texts = await textsOf(UNTIL_OPEN, languageOf(request))
  const headers = status === 413 ? { Connection: 'close' } : {}
  if (status === 503 || status === 404) {
    response.writeHead(status, { ...PAGE_HEADERS, 'Content-Type': 'text/plain; charset=utf-8' })
    response.end(texts.say(sentence))
    return
  }
  const code = CODES[status] ?? 'untrusted-caller'
  json(
    response,
    status,
    tellAll({ ok: false, problem: problem(code, sentence) }, texts.say) as Answer<never>,
    headers,
  )
}

/** The first language that whoever asks would read, where it is one of the app's. */
function languageOf({ headers }: IncomingMessage): LanguageCode | null {
  const code = headers['accept-language']?.split(/[-,;]/, 1)[0]
  return isLanguageCode(code) ? code : null
}

function json(
  response: ServerResponse,
  status: number,
  value: Answer<unknown>,
  headers: Readonly<Record<string, string>> = {},
): void {
  response.writeHead(status, {
    ...PAGE_HEADERS,
    ...headers,
    'Content-Type': 'application/json; charset=utf-8',
  })
  response.end(JSON.stringify(value))
}

async function listen(server: Server, preferredPort: number | null): Promise<number> {
  const port = preferredPort === null ? null : await tryPort(server, preferredPort)
  const got = port ?? (await tryPort(server, 0))
  if (got === null) throw new Error('No port of this machine is free to listen on')
  return got
}

function tryPort(server: Server, port: number): Promise<number | null> {
  return new Promise((resolve, reject) => {
    const failed = (thrown: Error) => {
      const taken = 'code' in thrown && (thrown.code === 'EADDRINUSE' || thrown.code === 'EACCES')
      if (taken) resolve(null)
      else reject(thrown)
    }
    server.once('error', failed)
    server.listen({ host: '127.0.0.1', port, exclusive: true }, () => {
      server.off('error', failed)
      const address = server.address()
      resolve(typeof address === 'object' && address !== null ? address.port : null)
    })
  })
}

function closeServer(server: Server, visitors: ServeOptions['visitors']): Promise<void> {
  visitors.dismiss()
  return new Promise((resolve) => {
    server.close(() => resolve())
    server.closeAllConnections()
  })
}
