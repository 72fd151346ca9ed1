import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { _electron, expect, test } from '@playwright/test'
import { findElectron } from '../../electron/loopback/find-electron.ts'
import { isRoot } from '../../electron/loopback/open-window.ts'
import { callOnFile, PROJECT_FOLDER } from '../support/command-line.ts'

test('the desktop window opens on a collection, reaches it, and keeps the page from everything else', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'drawer-electron-'))
  const file = join(folder, 'Hollow Lane.drawer')
  await callOnFile(file, 'collection.create', { libraryName: 'Hollow Lane Library' })
  const program = findElectron(PROJECT_FOLDER, process.env)
  if (program === null) throw new Error("Electron's program was there when the tests began")
  const electron = await _electron.launch({
    executablePath: program,
    args: [
      PROJECT_FOLDER,
      `--folder=${folder}`,
      `--collection=${file}`,
      ...(isRoot() ? ['--no-sandbox'] : []),
    ],
  })
  const page = await electron.firstWindow()
  await expect(page.getByRole('link', { name: 'Take in' }).first()).toBeVisible()
  expect(page.url()).toMatch(/^app:\/\/drawer\//)
  const seen = await page.evaluate(async () => {
    const drawer = Reflect.get(globalThis, 'commonDrawer') as {
      call(name: string, input: object): Promise<unknown>
    }
    const outside = await fetch('http://127.0.0.1:9/').then(
      () => 'reached',
      () => 'refused',
    )
    return {
      about: await drawer.call('collection.get', {}),
      keys: Object.keys(drawer),
      node: typeof Reflect.get(globalThis, 'require') + typeof Reflect.get(globalThis, 'process'),
      outside,
      opened:
        (Reflect.get(globalThis, 'open') as (address: string) => unknown)('https://elsewhere.example') ===
        null,
    }
  })
  expect(seen).toMatchObject({
    about: { ok: true, value: { settings: { libraryName: 'Hollow Lane Library' } } },
    keys: ['call'],
    node: 'undefinedundefined',
    outside: 'refused',
    opened: true,
  })
  await electron.close()
  expect(await callOnFile(file, 'collection.check', {})).toMatchObject({ clean: true })
  rmSync(folder, { recursive: true, force: true })
})
