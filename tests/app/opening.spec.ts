import { mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { test as plain } from '@playwright/test'
import { callOnFile } from '../support/command-line.ts'
import { startApp } from './support/running-app.ts'
import { expect, test } from './support/test.ts'

test.describe('opening the app', () => {
  test('shows the frame, and the secret leaves the address at once', async ({ app, page }) => {
    await expect(page).toHaveTitle(/Common Drawer/)
    await expect(page.getByRole('link', { name: 'Take in' }).first()).toBeVisible()
    expect(page.url()).not.toContain('secret')
    expect(app.address).toContain('#secret=')
  })

  test('a page that is loaded again goes on working', { tag: '@long' }, async ({ app, page }) => {
    await expect(page.getByRole('link', { name: 'Shelf' }).first()).toBeVisible()
    await page.reload()
    await expect(page.getByRole('link', { name: 'Shelf' }).first()).toBeVisible()
    const { lots } = await app.call('collection.get', {})
    expect(lots).toBeGreaterThan(0)
  })

  test('loads nothing from elsewhere', async ({ app, page }) => {
    const { host } = new URL(app.address)
    const elsewhere: string[] = []
    page.on('request', (request) => {
      const { protocol, host: asked } = new URL(request.url())
      if (asked !== host && !['data:', 'blob:'].includes(protocol)) elsewhere.push(request.url())
    })
    await page.reload()
    await expect(page.getByRole('link', { name: 'Shelf' }).first()).toBeVisible()
    expect(elsewhere).toEqual([])
  })
})

test.describe('without the secret', () => {
  test('a page gets nothing of the collection', async ({ app, browser }) => {
    const stranger = await browser.newPage()
    await stranger.goto(new URL(app.address).origin)
    await expect(stranger.locator('body')).not.toContainText('Quillhaven')
    const status = await stranger.evaluate(async () => {
      const response = await fetch('/call', {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify({ operation: 'collection.get', input: {} }),
      })
      return response.status
    })
    expect(status).toBe(403)
    await stranger.close()
  })
})

plain(
  'a damaged file is told of, and its last whole backup restored, by keyboard alone',
  { tag: '@long' },
  async ({ page }) => {
    const folder = mkdtempSync(join(tmpdir(), 'drawer-damaged-'))
    const file = join(folder, 'Hollow Lane Library.drawer')
    await callOnFile(file, 'collection.create', { libraryName: 'Hollow Lane Library' })
    await callOnFile(file, 'backup.create', {})
    writeFileSync(file, readFileSync(file).fill(7, 4_096, 60_000))
    renameSync(file, `${file}.away`)
    const app = await startApp(folder, ['--collection', file])
    await page.goto(app.address)
    await expect(page.getByRole('heading', { name: 'No collection is open' })).toBeFocused()
    await expect(page.getByText('There is no collection at')).toBeVisible()
    renameSync(`${file}.away`, file)
    await page.keyboard.press('Tab')
    await expect(page.getByRole('button', { name: 'Try again' })).toBeFocused()
    await page.keyboard.press('Enter')
    await expect(page.getByText('The file of this collection is damaged.')).toBeVisible()
    await page.getByRole('button', { name: 'Restore that backup' }).waitFor()
    await expect(page.getByRole('heading', { name: 'No collection is open' })).toBeFocused()
    await page.keyboard.press('Tab')
    await page.keyboard.press('Enter')
    await expect(page.getByRole('contentinfo')).toContainText('Hollow Lane Library')
    expect((await app.call('collection.get', {})).file).toMatch(/ restored .*\.drawer$/)
    expect(await app.end()).toBe(0)
    rmSync(folder, { recursive: true, force: true })
  },
)
