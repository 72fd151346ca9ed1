import {
  chmodSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { expect, onTestFinished, test, vi } from 'vitest'
import { findRunning, openerFile } from '../../electron/loopback/opener.ts'
import { rememberedPort } from '../../electron/loopback/remembered-port.ts'
import { runLoopback } from '../../electron/loopback/run-loopback.ts'
import { pagesBesideSecrets } from './support/loopback.ts'
import { testBackend } from './support/ways-in.ts'

// A browser that stays when its last window is closed, as on a Mac: it loads the page, holds the line, says goodbye
// and drops it once it is told to by a file, and runs on.
const BROWSER = `
import { appendFileSync, existsSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
const folder = process.argv[2]
appendFileSync(folder + '/browsers.txt', JSON.stringify({ pid: process.pid, args: process.argv.slice(3) }) + '\\n')
const opener = process.argv.find((word) => word.startsWith('--app=')).slice('--app='.length)
const [, origin, secret] = /url=(http[^#]*)\\/#secret=([\\w-]+)/.exec(readFileSync(fileURLToPath(opener), 'utf8'))
const navigation = { 'Sec-Fetch-Site': 'cross-site', 'Sec-Fetch-Dest': 'document', 'Sec-Fetch-Mode': 'navigate' }
const page = await fetch(origin + '/', { headers: navigation })
const headers = { Origin: origin, 'Content-Type': 'application/json', 'X-Drawer-Secret': secret }
const line = new AbortController()
await fetch(origin + '/alive', { method: 'POST', headers, signal: line.signal })
appendFileSync(folder + '/shown.txt', String(page.status) + '\\n')
while (!existsSync(folder + '/close')) await new Promise((resolve) => setTimeout(resolve, 20))
await fetch(origin + '/goodbye', { method: 'POST', headers })
line.abort()
setInterval(() => {}, 1_000)
`

async function aMachine() {
  const folder = mkdtempSync(join(tmpdir(), 'drawer-window-'))
  const tools = mkdtempSync(join(tmpdir(), 'drawer-tools-'))
  writeFileSync(join(tools, 'browser.mjs'), BROWSER)
  const browser = join(tools, 'browser')
  writeFileSync(browser, `#!/bin/sh\nexec "${process.execPath}" "${tools}/browser.mjs" "${tools}" "$@"\n`)
  chmodSync(browser, 0o755)
  vi.stubEnv('DISPLAY', ':0')
  vi.stubEnv('COMMON_DRAWER_BROWSER', browser)
  const said = vi.spyOn(console, 'log').mockImplementation(() => {})
  const before = process.umask(0o077)
  const begun = await testBackend.begin(join(folder, 'a.drawer'), {
    key: 'first-key',
    libraryName: 'Hollow Lane',
  })
  begun.collection.close()
  process.umask(0o022)
  onTestFinished(() => {
    process.umask(before)
    vi.unstubAllEnvs()
    said.mockRestore()
    for (const made of [folder, tools]) rmSync(made, { recursive: true, force: true })
  })
  const linesOf = (name: string) =>
    existsSync(join(tools, name)) ? readFileSync(join(tools, name), 'utf8').trim().split('\n') : []
  return { folder, tools, said, linesOf }
}

const start = (folder: string, window: boolean, file: string | null = null) =>
  runLoopback({ folder, file, window, electron: false }, dirname(dirname(pagesBesideSecrets())), '', {
    afterGoodbye: 100,
    afterSilence: 60_000,
  })

function isRunning(pid: number): boolean {
  try {
    return process.kill(pid, 0)
  } catch {
    return false
  }
}

test.skipIf(process.platform === 'win32')(
  'a window opens without the secret in any command line, is shown again by a second start, and ends with its page',
  async () => {
    const { folder, tools, said, linesOf } = await aMachine()
    const first = start(folder, true)
    await expect.poll(() => linesOf('shown.txt'), { timeout: 20_000 }).toEqual(['200'])
    const secret = /secret=([\w-]+)/.exec(readFileSync(openerFile(folder, false), 'utf8'))?.[1]
    expect(secret).toMatch(/^[\w-]{43}$/)
    const { pid, args } = JSON.parse(linesOf('browsers.txt')[0] ?? '')
    expect(args.join(' ')).not.toContain(secret)
    expect(args.join(' ')).not.toContain('secret')
    const port = rememberedPort(folder)

    expect(await start(folder, true), 'a second start').toBe(0)
    expect(said.mock.lastCall?.[0]).toContain('is open already')
    await expect.poll(() => linesOf('shown.txt'), { timeout: 20_000 }).toHaveLength(2)
    expect(rememberedPort(folder)).toBe(port)

    const others = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .map((name) => `${name} ${(statSync(join(folder, name)).mode & 0o077).toString(8)}`)
      .filter((line) => !line.endsWith(' 0'))
    expect(others, 'what other accounts may read').toEqual([])

    writeFileSync(join(tools, 'close'), '')
    expect(await first).toBe(0)
    await expect.poll(() => isRunning(pid)).toBe(false)
    expect(existsSync(openerFile(folder, false))).toBe(false)
    expect(await findRunning(folder)).toBeNull()
    for (const line of linesOf('browsers.txt')) {
      const other = JSON.parse(line).pid
      if (isRunning(other)) process.kill(other)
    }
  },
)

test.skipIf(process.platform === 'win32')(
  'a host beside another keeps its hands off port and opener',
  { tags: 'long' },
  async () => {
    const { folder, said, linesOf } = await aMachine()
    const first = start(folder, false)
    await expect.poll(() => existsSync(openerFile(folder, false)), { timeout: 20_000 }).toBe(true)
    const [port, opener] = [rememberedPort(folder), readFileSync(openerFile(folder, false), 'utf8')]
    const second = start(folder, false, join(folder, 'other.drawer'))
    await expect
      .poll(() => said.mock.calls.filter(([line]) => String(line).includes('Open http')).length, {
        timeout: 20_000,
      })
      .toBe(2)
    expect([rememberedPort(folder), readFileSync(openerFile(folder, false), 'utf8')]).toEqual([port, opener])
    expect(linesOf('browsers.txt')).toEqual([])
    process.emit('SIGTERM')
    expect(await Promise.all([first, second])).toEqual([0, 0])
    expect(readdirSync(folder).filter((name) => name.endsWith('.html'))).toEqual([])
  },
)
