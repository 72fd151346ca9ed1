import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { test as plainTest } from '@playwright/test'
import { callOnFile } from '../support/command-line.ts'
import { open } from './support/open.ts'
import { startApp } from './support/running-app.ts'
import { atTheTable, envelopes, field, gift } from './support/take-in-table.ts'
import { expect } from './support/test.ts'

const plain = plainTest.extend<{ folder: string }>({
  // biome-ignore lint/correctness/noEmptyPattern: the runner reads the names of what is wanted from the pattern
  folder: async ({}, use) => {
    const folder = mkdtempSync(join(tmpdir(), 'drawer-kill-'))
    await callOnFile(join(folder, 'Demo collection.drawer'), 'collection.create', {
      libraryName: 'Hollow Lane Library',
    })
    await use(folder)
    rmSync(folder, { recursive: true, force: true })
  },
})

// Here an app is killed or not answered: its page complains, as the pages of the tests above must not.
plain('a kill of the process loses no letter', { tag: '@long' }, async ({ page, folder }) => {
  const first = await startApp(folder)
  await page.goto(first.address)
  const keys = await atTheTable(page)
  await keys.press('Enter', 'Enter')
  await gift(keys, 'Ferry Blue', 'pea', '2023', '40 seeds')
  await keys.type('Lantern R')
  await expect(async () => {
    const { drafts } = await first.call('draft.list', { kind: 'take-in' })
    expect(drafts[0]?.text).toContain('"Lantern R"')
  }).toPass()
  await first.kill()
  const second = await startApp(folder)
  const fresh = await page.context().newPage()
  await fresh.goto(second.address)
  await open(fresh, '/take-in')
  await expect(field(fresh, 'Variety')).toHaveValue('Lantern R')
  await expect(envelopes(fresh)).toContainText('Ferry Blue')
  expect((await second.call('collection.check', {})).clean).toBe(true)
  expect(await second.end()).toBe(0)
})

plain('a save whose answer was lost takes the gifts in once', { tag: '@long' }, async ({ page, folder }) => {
  const app = await startApp(folder)
  await page.goto(app.address)
  const keys = await atTheTable(page)
  await keys.press('Enter', 'Enter')
  await gift(keys, 'Ferry Blue', 'pea', '2023', '40 seeds')
  let lost = 0
  await page.route('**/call', async (route) => {
    if (lost > 0 || !route.request().postData()?.includes('intake.record')) return route.continue()
    lost++
    await route.fetch()
    await route.abort()
  })
  await keys.press('Control+Enter')
  await expect(page.getByRole('heading', { name: 'Taken in: one gift' })).toBeVisible()
  expect(lost).toBe(1)
  expect((await app.call('lot.list', {})).total).toBe(1)
  expect(await app.end()).toBe(0)
})
