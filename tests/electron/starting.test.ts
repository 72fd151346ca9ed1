import { execFile } from 'node:child_process'
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { message } from '../../db/messages/message.ts'
import { fetchElectron } from '../../electron/command-line/fetch-electron.ts'
import { howToGiveJson } from '../../electron/command-line/read-request.ts'
import { findBrowser, type Machine } from '../../electron/loopback/find-browser.ts'
import { findElectron } from '../../electron/loopback/find-electron.ts'
import { appWindowArguments, openWindow } from '../../electron/loopback/open-window.ts'
import { rememberedPort, rememberPort } from '../../electron/loopback/remembered-port.ts'
import { serve } from '../../electron/loopback/serve.ts'
import { readStartOptions } from '../../electron/loopback/start-options.ts'
import { Visitors } from '../../electron/loopback/visitors.ts'
import { inEnglish } from '../builders/in-english.ts'
import { loopbackOver, pagesBesideSecrets } from './support/loopback.ts'

const PROJECT = join(import.meta.dirname, '..', '..')

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'drawer-start-'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

function machine(programs: readonly string[], more: Partial<Machine> = {}): Machine {
  return {
    platform: 'linux',
    environment: { PATH: '/home/ilka/bin', DISPLAY: ':0' },
    home: '/home/ilka',
    isProgram: (file) => programs.includes(file),
    ...more,
  }
}

function program(name: string, script: string): string {
  const file = join(folder, name)
  writeFileSync(file, `#!/bin/sh\n${script}\n`)
  chmodSync(file, 0o755)
  return file
}

describe('a browser is found', () => {
  test.each([
    ['linux', {}, '/usr/bin/chromium'],
    ['linux', {}, '/home/ilka/bin/google-chrome'],
    ['linux', {}, '/snap/bin/chromium'],
    ['darwin', {}, '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome'],
    ['darwin', {}, '/home/ilka/Applications/Chromium.app/Contents/MacOS/Chromium'],
    ['win32', { ProgramFiles: 'C' }, join('C', 'Microsoft', 'Edge', 'Application', 'msedge.exe')],
  ] as const)('on %s %j at %s', (platform, environment, file) => {
    const found = findBrowser(
      machine([file], { platform, environment: { PATH: '/home/ilka/bin', ...environment } }),
    )
    expect(found).toBe(file)
  })

  test('by its variable first, and then nothing else is guessed', () => {
    const environment = { COMMON_DRAWER_BROWSER: '/opt/mine' }
    expect(findBrowser(machine(['/opt/mine', '/usr/bin/chromium'], { environment }))).toBe('/opt/mine')
    expect(findBrowser(machine(['/usr/bin/chromium'], { environment }))).toBeNull()
  })

  test('or not at all', () => {
    expect(findBrowser(machine([]))).toBeNull()
  })
})

describe('Electron is found without being loaded', () => {
  const packageFolder = () => join(folder, 'node_modules', 'electron')

  test('where its program is there', () => {
    mkdirSync(join(packageFolder(), 'dist'), { recursive: true })
    writeFileSync(join(packageFolder(), 'path.txt'), 'electron')
    expect(findElectron(folder, {})).toBeNull()
    writeFileSync(join(packageFolder(), 'dist', 'electron'), '')
    expect(findElectron(folder, {})).toBe(join(packageFolder(), 'dist', 'electron'))
  })

  test('where another folder is named', () => {
    const name = process.platform === 'win32' ? 'electron.exe' : 'electron'
    writeFileSync(join(folder, name), '')
    expect(findElectron(folder, { ELECTRON_OVERRIDE_DIST_PATH: folder })).toBe(join(folder, name))
  })

  test('and not where only its package is', () => {
    mkdirSync(packageFolder(), { recursive: true })
    expect(findElectron(folder, {})).toBeNull()
  })
})

describe('fetching Electron', () => {
  const installer = (code: string) => {
    const file = join(folder, 'install.js')
    writeFileSync(file, code)
    return file
  }

  test('ends when it is done, when it fails, and when its time is over', async () => {
    expect(await fetchElectron(installer(''), 10_000)).toBe('fetched')
    expect(await fetchElectron(installer('process.exit(1)'), 10_000)).toBe('failed')
    const told: number[] = []
    const slow = `require('node:fs').writeFileSync(require('node:os').tmpdir() + '/part', 'x'.repeat(5_000)); setInterval(() => {}, 1000)`
    expect(await fetchElectron(installer(slow), 1_500, (bytes) => told.push(bytes), 50)).toBe('too-slow')
    expect(told.at(-1)).toBe(5_000)
  })
})

describe('the window', () => {
  test('has no tabs and a profile of its own; the sandbox is off for root alone, who may not have it', () => {
    const usual = appWindowArguments('file:///a.html', folder, false)
    expect(usual).toContain('--app=file:///a.html')
    expect(usual).toContain(`--user-data-dir=${join(folder, '.window')}`)
    expect(usual.join(' ')).not.toMatch(/--no-sandbox|--disable-web-security|--remote-debugging/)
    expect(appWindowArguments('file:///a.html', folder, true)).toContain('--no-sandbox')
  })

  test('is the address alone on a machine without a display', async () => {
    const shown = await openWindow(join(folder, 'a.html'), folder, machine([], { environment: {} }))
    expect(shown).toEqual({ kind: 'address-only', because: message('start.no-display') })
  })

  test('closes when its browser ends', async () => {
    const browser = program('browser', 'sleep 2')
    const shown = await openWindow(
      join(folder, 'a.html'),
      folder,
      machine([browser], {
        environment: { DISPLAY: ':0', COMMON_DRAWER_BROWSER: browser },
      }),
    )
    expect(shown).toMatchObject({ kind: 'app-window', browser: 'browser' })
    if (shown.kind === 'app-window') await shown.ended
  })

  test('is the default browser’s where the first will not start', async () => {
    const browser = program('browser', 'exit 3')
    program('xdg-open', 'exit 0')
    const before = process.env['PATH']
    process.env['PATH'] = `${folder}:${before}`
    const shown = await openWindow(
      join(folder, 'a.html'),
      folder,
      machine([browser], {
        environment: { DISPLAY: ':0', COMMON_DRAWER_BROWSER: browser },
      }),
    )
    process.env['PATH'] = before
    expect(shown).toEqual({ kind: 'browser-page' })
  })
})

describe('what is asked at the start', () => {
  test('is read, or not understood', () => {
    expect(readStartOptions([], { COMMON_DRAWER_FOLDER: folder })).toEqual({
      folder,
      file: null,
      window: true,
      electron: true,
    })
    expect(readStartOptions(['--no-window', '--folder', folder, '--collection', '/a.drawer'], {})).toEqual({
      folder,
      file: '/a.drawer',
      window: false,
      electron: false,
    })
    expect(readStartOptions(['--help'], {})).toBe('help')
    expect(readStartOptions(['--colour', 'red'], {})).toBeNull()
    expect(readStartOptions(['stray'], {})).toBeNull()
  })
})

describe('the port', () => {
  test('is that of the run before, so that the page finds what it kept', async () => {
    const first = await loopbackOver(async () => ({ ok: true, value: null }))
    await rememberPort(folder, first.serving.port)
    await first.serving.close()
    const options = {
      host: { call: async () => ({ ok: true, value: null }) as const },
      pages: pagesBesideSecrets(),
    }
    const visitors = new Visitors(() => {})
    const again = await serve({ ...options, visitors, preferredPort: rememberedPort(folder) })
    expect(again.port).toBe(first.serving.port)
    await again.close()
  })

  test('is another where that one is taken', async () => {
    const taken = createServer()
    const port = await new Promise<number>((resolve) => {
      taken.listen(0, '127.0.0.1', () => resolve((taken.address() as { port: number }).port))
    })
    const visitors = new Visitors(() => {})
    const serving = await serve({
      host: { call: async () => ({ ok: true, value: null }) },
      visitors,
      pages: pagesBesideSecrets(),
      preferredPort: port,
    })
    expect(serving.port).not.toBe(port)
    await serving.close()
    taken.close()
  })

  test.each(['', 'abc', '0', '80', '70000', '1.5'])('that was kept as %j is not believed', (text) => {
    writeFileSync(join(folder, '.last-port'), text)
    expect(rememberedPort(folder)).toBeNull()
  })
})

describe('an old Node', () => {
  test('is told so in a sentence before anything is loaded', async () => {
    const old = join(folder, 'old.mjs')
    writeFileSync(
      old,
      "Object.defineProperty(process, 'versions', { value: { ...process.versions, node: '20.20.2' } })\n",
    )
    const ended = await new Promise<{ code: unknown; said: string }>((resolve) => {
      const args = [
        '--import',
        old,
        '--import',
        join(PROJECT, 'electron', 'check-node.mjs'),
        '-e',
        'console.log("ran")',
      ]
      execFile(process.execPath, args, (failure, stdout, stderr) =>
        resolve({ code: failure?.code ?? 0, said: stdout + stderr }),
      )
    })
    expect(ended.code).toBe(1)
    expect(ended.said).toContain('needs Node.js 22.18 or later; this is 20.20.2')
    expect(ended.said).not.toContain('ran')
  })
})

describe('after an install', () => {
  const script = join(PROJECT, 'electron', 'link-node.mjs')
  const linkIn = (modules: string) =>
    new Promise<void>((resolve, reject) => {
      execFile(process.execPath, [script, modules], (failure) =>
        failure === null ? resolve() : reject(failure),
      )
    })

  test('the command node is there where npm has not linked it, and is left alone where it has', async () => {
    const modules = join(folder, 'node_modules')
    const system = process.platform === 'win32' ? 'win' : process.platform
    const bin = join(modules, `node-${system}-${process.arch}`, 'bin')
    mkdirSync(bin, { recursive: true })
    await linkIn(modules)
    expect(existsSync(join(modules, '.bin', 'node'))).toBe(false)
    writeFileSync(join(bin, process.platform === 'win32' ? 'node.exe' : 'node'), 'the program')
    await linkIn(modules)
    expect(existsSync(join(modules, '.bin', 'node'))).toBe(true)
    writeFileSync(join(modules, '.bin', 'node'), 'linked by npm')
    await linkIn(modules)
    expect(readFileSync(join(modules, '.bin', 'node'), 'utf8')).toBe('linked by npm')
  })
})

test('JSON is told to be given as the shells of the system take it', () => {
  expect(inEnglish(howToGiveJson('linux'))).toContain(`'{"lotId": 1}'`)
  expect(inEnglish(howToGiveJson('win32'))).not.toContain("'")
  expect(inEnglish(howToGiveJson('win32'))).toMatch(/echo \{"lotId": 1\} \| .* -$/)
})
