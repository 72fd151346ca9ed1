import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { build } from 'vite'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { Value } from '../../db/contract/contract.ts'
import type { startHost } from '../../electron/host/start-host.ts'
import { testBackend } from './support/ways-in.ts'

// The bundles that Electron loads, built into a folder of their own: Electron itself is not needed to see that the
// collection's thread finds its migrations, its crop table and its fonts from there.
const PROJECT = join(import.meta.dirname, '..', '..')
const BUILT = join(PROJECT, 'dist', 'tried-by-tests')

let folder: string
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'drawer-built-'))
  const common = { root: PROJECT, logLevel: 'error' } as const
  await build({ ...common, configFile: join(PROJECT, 'vite.main.config.ts'), build: { outDir: BUILT } })
  const preload = join(BUILT, 'electron', 'preload')
  await build({ ...common, configFile: join(PROJECT, 'vite.preload.config.ts'), build: { outDir: preload } })
})
afterAll(() => {
  rmSync(folder, { recursive: true, force: true })
  rmSync(BUILT, { recursive: true, force: true })
})

test('the built thread starts a collection, reads it and prints a label', async () => {
  const file = join(folder, 'a.drawer')
  const begun = await testBackend.begin(file, { key: 'first-key', libraryName: 'Hollow Lane Library' })
  begun.collection.close()
  const built = (await import(pathToFileURL(join(BUILT, 'electron', 'host', 'start-host.mjs')).href)) as {
    startHost: typeof startHost
  }
  const host = built.startHost({ folder, file })
  expect(await host.opened).toBeNull()
  const value = async <T>(name: string, input: object) => {
    const answer = await host.call(name, input)
    if (!answer.ok) throw new Error(`${name}: ${answer.problem.sentence}`)
    return answer.value as T
  }
  await value('collection.create', { key: 'another-key', libraryName: 'Ferry Lane' })
  expect(existsSync(join(folder, 'Ferry Lane.drawer'))).toBe(true)
  expect((await value<Value<'crop.list'>>('crop.list', {})).crops.length).toBeGreaterThan(20)
  const gift = {
    variety: { newVariety: { cropId: 'bean', name: 'Ferry Bean שעועית 豆 🍅' } },
    amount: '30 seeds',
  }
  const taken = await value<Value<'intake.record'>>('intake.record', {
    key: 'a-first-gift',
    donor: null,
    receivedOn: '2026-03-14',
    gifts: [gift],
  })
  const labels = [{ lotId: taken.taken[0]?.lotId }]
  const printed = await value<Value<'label.print'>>('label.print', { labels, sheet: 'a4-21' })
  expect(Buffer.from(printed.pdf, 'base64').subarray(0, 5).toString()).toBe('%PDF-')
  expect(printed.warnings).toEqual([])
  await host.close()
})

test('the demonstration’s data lie beside its loader', () => {
  expect(existsSync(join(BUILT, 'demo-data', 'gifts.csv'))).toBe(true)
  expect(existsSync(join(BUILT, 'demo-data', 'load-demo.mjs'))).toBe(true)
})

test('the preload is one script without any import but Electron’s, which exposes one function', async () => {
  const text = readFileSync(join(BUILT, 'electron', 'preload', 'preload.cjs'), 'utf8')
  expect(text.match(/require\(/g)).toEqual(['require('])
  const exposed: unknown[] = []
  const invoked: unknown[] = []
  const electron = {
    contextBridge: { exposeInMainWorld: (...given: unknown[]) => exposed.push(given) },
    ipcRenderer: { invoke: async (...given: unknown[]) => invoked.push(given) },
  }
  const run = new Function('require', text) as (load: (name: string) => unknown) => void
  run((name) => (name === 'electron' ? electron : createRequire(import.meta.url)(name)))
  expect(exposed).toEqual([['commonDrawer', { call: expect.any(Function) }]])
  const [[, drawer]] = exposed as [[string, { call: (name: string, input: object) => Promise<unknown> }]]
  await drawer.call('lot.get', { lotId: 1 })
  expect(invoked).toEqual([['call', 'lot.get', { lotId: 1 }]])
})

test('Electron’s entry is where package.json says', () => {
  const { main } = JSON.parse(readFileSync(join(PROJECT, 'package.json'), 'utf8')) as { main: string }
  expect(main).toBe('dist/app/electron/main/main.mjs')
  expect(existsSync(join(BUILT, 'electron', 'main', 'main.mjs'))).toBe(true)
})
