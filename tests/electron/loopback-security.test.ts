import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest'
import type { Problem } from '../../db/contract/problem.ts'
import { problemOf } from '../../electron/host/problem-of.ts'
import { HostStopped } from '../../electron/host/start-host.ts'
import { LARGEST_BODY } from '../../electron/loopback/read-body.ts'
import { inEnglish } from '../builders/in-english.ts'
import { counted } from '../support/counted.ts'
import { loopbackOver, send } from './support/loopback.ts'

let loopback: Awaited<ReturnType<typeof loopbackOver>>
let called: unknown[] = []

beforeAll(async () => {
  loopback = await loopbackOver(async (name, input) => {
    called.push([name, input])
    if (name === 'breaks') throw new HostStopped()
    return { ok: true, value: 'done' }
  })
})
afterAll(() => loopback.serving.close())

const own = () => `http://127.0.0.1:${loopback.serving.port}`

describe('its own page', () => {
  test('gets its call answered', async () => {
    const reply = await loopback.askCall('lot.get', { lotId: 1 })
    expect(reply.status).toBe(200)
    expect(JSON.parse(reply.body)).toEqual({ ok: true, value: 'done' })
    expect(called).toContainEqual(['lot.get', { lotId: 1 }])
  })

  test('listens on this machine alone', () => {
    expect(loopback.serving.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/#secret=[A-Za-z0-9_-]{43}$/)
  })

  test('a secret is new for every run', async () => {
    const other = await loopbackOver(async () => ({ ok: true, value: null }))
    expect(other.serving.secret).not.toBe(loopback.serving.secret)
    const reply = await send(other.serving, {
      method: 'POST',
      path: '/call',
      headers: {
        Origin: `http://127.0.0.1:${other.serving.port}`,
        'Content-Type': 'application/json',
        'X-Drawer-Secret': loopback.serving.secret,
      },
      body: '{}',
    })
    expect(reply.status).toBe(403)
    await other.serving.close()
  })

  test('is turned away in the language that it reads', async () => {
    const reply = await loopback.askCall(
      'lot.get',
      {},
      { 'Accept-Language': 'es-ES,es;q=0.9', 'X-Drawer-Secret': '' },
    )
    expect(JSON.parse(reply.body).problem.sentence).toContain('Esta página no es de la aplicación')
  })

  test('is told by its silence that nobody knows whether a call acted, when the thread broke', async () => {
    const reply = await loopback.askCall('breaks', {})
    expect(reply.status).toBe(503)
    expect(() => JSON.parse(reply.body)).toThrow()
  })
})

describe('a call is refused, and nobody is asked,', () => {
  let refused = 0
  afterEach(() => {
    refused += 1
  })
  afterAll(() => counted('kinds of strange calls to the window’s host refused', refused))

  const refusals: readonly [what: string, status: number, headers: Record<string, string | undefined>][] = [
    ['without a secret', 403, { 'X-Drawer-Secret': undefined }],
    ['with an empty secret', 403, { 'X-Drawer-Secret': '' }],
    ['with a wrong secret', 403, { 'X-Drawer-Secret': 'A'.repeat(43) }],
    ['from another page', 403, { Origin: 'https://elsewhere.example' }],
    ['from a page of another port', 403, { Origin: 'http://127.0.0.1:1' }],
    ['from a page that hides its origin', 403, { Origin: 'null' }],
    ['without an origin', 403, { Origin: undefined }],
    ['under another name of this machine', 403, { Host: 'localhost' }],
    ['under a name that was pointed at this machine', 403, { Host: 'rebound.example' }],
    ['from another site, whatever its origin says', 403, { 'Sec-Fetch-Site': 'cross-site' }],
    ['with the type of a form', 415, { 'Content-Type': 'application/x-www-form-urlencoded' }],
    ['with the type of plain text', 415, { 'Content-Type': 'text/plain' }],
    ['without a type', 415, { 'Content-Type': undefined }],
    ['with a type that only begins like JSON', 415, { 'Content-Type': 'application/jsonp' }],
  ]
  test.each(refusals)('%s', async (_what, status, headers) => {
    called = []
    const reply = await loopback.askCall('lot.get', { lotId: 1 }, headers)
    expect(reply.status).toBe(status)
    expect(JSON.parse(reply.body)).toMatchObject({ ok: false })
    expect(called).toEqual([])
  })

  test('under the right port of another name', async () => {
    const reply = await loopback.askCall('lot.get', {}, { Host: `localhost:${loopback.serving.port}` })
    expect(reply.status).toBe(403)
  })

  test.each(['GET', 'PUT', 'DELETE', 'OPTIONS'])('with %s', async (method) => {
    called = []
    const reply = await loopback.ask({
      method,
      path: '/call',
      headers: { 'X-Drawer-Secret': loopback.serving.secret },
    })
    expect(reply.status).toBe(405)
    expect(reply.headers['access-control-allow-origin']).toBeUndefined()
    expect(called).toEqual([])
  })

  test('with more than it may carry, announced or not', async () => {
    called = []
    const large = JSON.stringify({ operation: 'lot.get', input: 'x'.repeat(LARGEST_BODY) })
    const headers = {
      Origin: own(),
      'Content-Type': 'application/json',
      'X-Drawer-Secret': loopback.serving.secret,
    }
    const announced = await loopback.ask({
      method: 'POST',
      path: '/call',
      headers: { ...headers, 'Content-Length': String(Buffer.byteLength(large)) },
      body: large,
    })
    const inParts = await loopback.ask({
      method: 'POST',
      path: '/call',
      headers: { ...headers, 'Transfer-Encoding': 'chunked' },
      body: large,
    })
    expect([announced.status, inParts.status]).toEqual([413, 413])
    expect(called).toEqual([])
  })

  test('that is not JSON', async () => {
    const headers = {
      Origin: own(),
      'Content-Type': 'application/json',
      'X-Drawer-Secret': loopback.serving.secret,
    }
    const reply = await loopback.ask({ method: 'POST', path: '/call', headers, body: '{"operation":' })
    expect(reply.status).toBe(400)
  })
})

describe('pages', () => {
  test('the page comes with a policy that lets nothing in from elsewhere', async () => {
    const reply = await loopback.ask({ path: '/' })
    expect(reply.status).toBe(200)
    expect(reply.headers['content-security-policy']).toContain("default-src 'none'")
    expect(reply.headers['content-security-policy']).not.toMatch(/unsafe|\*|https?:/)
    expect(reply.headers).toMatchObject({
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
      'cache-control': 'no-store',
      'content-type': 'text/html; charset=utf-8',
    })
    expect(reply.body).not.toContain(loopback.serving.secret)
  })

  test('a script comes with its type', async () => {
    const reply = await loopback.ask({ path: '/assets/app.js?v=1' })
    expect(reply).toMatchObject({ status: 200, body: 'export const here = true' })
    expect(reply.headers['content-type']).toBe('text/javascript; charset=utf-8')
  })

  test.each([
    '/../outside.txt',
    '/%2e%2e/outside.txt',
    '/..%2foutside.txt',
    '/assets/../../outside.txt',
    '/assets/%2e%2e%2f%2e%2e%2foutside.txt',
    '/..%5coutside.txt',
    '/../renderer-private/index.html',
    '/..%2frenderer-private%2findex.html',
    '//outside.txt',
    '/%252e%252e/outside.txt',
    '/index.html%00.txt',
    '/%',
    '/assets',
    '/assets/',
    '/not-there.html',
  ])('nothing outside the built files is read: %s', async (path) => {
    const reply = await loopback.ask({ path })
    expect(reply.status).toBe(404)
    expect(reply.body).not.toContain('not for a page')
  })

  test('a page of elsewhere may not read them', async () => {
    const foreign = await loopback.ask({ path: '/', headers: { Origin: 'https://elsewhere.example' } })
    const rebound = await loopback.ask({ path: '/', headers: { Host: 'rebound.example' } })
    expect([foreign.status, rebound.status]).toEqual([403, 403])
  })

  test('they are only read', async () => {
    expect((await loopback.ask({ method: 'POST', path: '/index.html' })).status).toBe(405)
  })
})

describe('the line that a page holds open', () => {
  test.each(['/alive', '/goodbye'])('needs the secret as a call does: %s', async (path) => {
    const reply = await loopback.ask({
      method: 'POST',
      path,
      headers: { Origin: own(), 'Content-Type': 'application/json' },
    })
    expect(reply.status).toBe(403)
  })

  test('tells when the last page has gone, not when one comes back in time or only sleeps', async () => {
    let gone = 0
    const other = await loopbackOver(
      async () => ({ ok: false, problem: inEnglish<Problem>(problemOf(null)) }),
      () => {
        gone += 1
      },
    )
    const ask = (path: string, signal: AbortSignal | null = null) =>
      fetch(`http://127.0.0.1:${other.serving.port}${path}`, {
        method: 'POST',
        headers: {
          Origin: `http://127.0.0.1:${other.serving.port}`,
          'Content-Type': 'application/json',
          'X-Drawer-Secret': other.serving.secret,
        },
        signal,
      })
    const open = async () => {
      const leave = new AbortController()
      expect((await ask('/alive', leave.signal)).status).toBe(200)
      return leave
    }
    const close = async (page: AbortController) => {
      expect((await ask('/goodbye')).status).toBe(204)
      page.abort()
    }
    const pass = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))
    const first = await open()
    await close(first)
    const second = await open()
    await pass(100)
    second.abort()
    await pass(250)
    expect(gone, 'a page that is loaded again, and one that sleeps').toBe(0)
    const pages = [await open(), await open()]
    await Promise.all(pages.map(close))
    const closedAt = performance.now()
    await expect.poll(() => gone).toBe(1)
    expect(performance.now() - closedAt).toBeLessThan(400)
    await other.serving.close()
  })
})
