import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { request as httpRequest, type IncomingHttpHeaders } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll } from 'vitest'
import type { Answer } from '../../../db/contract/problem.ts'
import { type Serving, serve } from '../../../electron/loopback/serve.ts'
import { Visitors } from '../../../electron/loopback/visitors.ts'

export interface Reply {
  readonly status: number
  readonly headers: IncomingHttpHeaders
  readonly body: string
}

export interface Ask {
  readonly method?: string
  readonly path?: string
  readonly headers?: Readonly<Record<string, string | undefined>>
  readonly body?: string
}

let made: { readonly root: string; readonly pages: string } | undefined
afterAll(() => {
  if (made !== undefined) rmSync(made.root, { recursive: true, force: true })
})

/** Built pages with a secret file outside them and a neighbouring folder whose name begins alike; read by many tests. */
export function pagesBesideSecrets(): string {
  made ??= makePages()
  return made.pages
}

function makePages() {
  const root = mkdtempSync(join(tmpdir(), 'drawer-pages-'))
  const folder = join(root, 'dist')
  const pages = join(folder, 'renderer')
  mkdirSync(join(pages, 'assets'), { recursive: true })
  mkdirSync(join(folder, 'renderer-private'))
  writeFileSync(join(pages, 'index.html'), '<!doctype html><title>Common Drawer</title>')
  writeFileSync(join(pages, 'assets', 'app.js'), 'export const here = true')
  writeFileSync(join(folder, 'outside.txt'), 'not for a page')
  writeFileSync(join(folder, 'renderer-private', 'index.html'), 'not for a page')
  return { root, pages }
}

/** A loopback host over any answerer, and the requests that its own page would send. */
export async function loopbackOver(
  answer: (name: unknown, input: unknown) => Promise<Answer<unknown>>,
  whenGone: () => void = () => {},
) {
  const serving = await serve({
    host: { call: answer },
    visitors: new Visitors(whenGone, { afterGoodbye: 50, afterSilence: 400 }),
    pages: pagesBesideSecrets(),
    preferredPort: null,
  })
  return {
    serving,
    ask: (ask: Ask) => send(serving, ask),
    askCall: (operation: unknown, input: unknown, headers: Ask['headers'] = {}) =>
      send(serving, { body: JSON.stringify({ operation, input }), ...call(serving, headers) }),
  }
}

function call(serving: Serving, headers: Ask['headers']): Ask {
  return {
    method: 'POST',
    path: '/call',
    headers: {
      Origin: `http://127.0.0.1:${serving.port}`,
      'Content-Type': 'application/json',
      'X-Drawer-Secret': serving.secret,
      ...headers,
    },
  }
}

/** Sends a request as it stands: no client library tidies the path or the headers first. */
export function send(serving: Pick<Serving, 'port'>, ask: Ask): Promise<Reply> {
  const headers = Object.entries({ Host: `127.0.0.1:${serving.port}`, ...ask.headers })
  const sent = Object.fromEntries(headers.filter((pair): pair is [string, string] => pair[1] !== undefined))
  return new Promise((resolve, reject) => {
    const request = httpRequest(
      {
        host: '127.0.0.1',
        port: serving.port,
        method: ask.method ?? 'GET',
        path: ask.path ?? '/',
        headers: sent,
        setHost: false,
      },
      (response) => {
        let body = ''
        response.setEncoding('utf8')
        response.on('data', (part: string) => {
          body += part
        })
        response.on('end', () =>
          resolve({ status: response.statusCode ?? 0, headers: response.headers, body }),
        )
      },
    )
    request.on('error', reject)
    request.end(ask.body)
  })
}
