import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium } from '@playwright/test'
import { buildIfNeeded } from '../../electron/loopback/build-if-needed.ts'
import { Keys } from '../app/support/keys.ts'
import { startApp } from '../app/support/running-app.ts'
import { callOnFile, PROJECT_FOLDER } from '../support/command-line.ts'
import { getTestBrowser } from '../support/find-browser.ts'
import { printTheDay, takeStock, undoTwoMistakes } from './evening.ts'
import { seen } from './seen.ts'
import { goTo, handOut, paperSheet, type Tables, tabTo, takeBack, takeIn } from './tables.ts'

// npm run swap-day: a whole swap day at the tables of the real app, from the first envelope to the last thank-you, by
// keyboard alone. Prints the key presses of every part; with --look it leaves pictures and what was printed in the
// temporary folder.

const look = process.argv.includes('--look')
const target = join(tmpdir(), 'common-drawer-swap-day')
const browserFile = await getTestBrowser(PROJECT_FOLDER)
if (browserFile === null) throw new Error('There is no browser on this machine to play the day in.')
await buildIfNeeded(PROJECT_FOLDER, 'loopback')
if (look) mkdirSync(target, { recursive: true })

const folder = mkdtempSync(join(tmpdir(), 'drawer-swap-day-'))
await callOnFile(join(folder, 'Demo collection.drawer'), 'collection.create', {
  libraryName: 'Hollow Lane Library',
  accessionPattern: 'HL{yy}-{####}',
})
const app = await startApp(folder)
const browser = await chromium.launch({ executablePath: browserFile })
const page = await browser.newPage({
  viewport: { width: 1280, height: 800 },
  locale: 'en-GB',
  timezoneId: 'Europe/London',
  reducedMotion: 'reduce',
})
const wrong: string[] = []
page.on('pageerror', (thrown) => wrong.push(thrown.message))
const tables: Tables = { page, app, keys: new Keys(page) }

/** Plays a part of the day, prints what it took, and looks at how the window then stands. */
async function part(name: string, play: () => Promise<void>): Promise<void> {
  const before = tables.keys.pressed
  await play()
  console.log(`${name}: ${tables.keys.pressed - before} key presses.`)
  if (look) await page.screenshot({ path: join(target, `${name.replaceAll(' ', '-')}.png`) })
}

try {
  const { places } = await app.call('place.list', {})
  const room = places.find(({ path }) => path === 'Seed room')
  await app.call('place.create', { parentId: room?.placeId, name: 'Window shelf', kind: 'shelf' })
  await page.goto(app.address)
  await seen(page.getByRole('combobox', { name: /Find a lot/ })).toBeVisible()
  await part('to the first table', () => goTo(tables, 'Take in'))
  await part('8 donors with 20 gifts', () => takeIn(tables))
  await part('to the second table', () => goTo(tables, 'Hand out'))
  await part('10 members with their packets', () => handOut(tables))
  await part('to the third table', () => goTo(tables, 'Take back'))
  await part('3 returns', () => takeBack(tables))
  await part('to the paper sheet', async () => {
    await goTo(tables, 'Hand out')
    await tabTo(tables, /^Type in a paper sheet/, 'Shift+Tab')
    await tables.keys.press('Enter')
  })
  await part('a paper sheet of 12 lines', () => paperSheet(tables))
  await part('stocktake of one shelf', () => takeStock(tables))
  await part('two mistakes undone', () => undoTwoMistakes(tables))
  await part('letters and labels', () =>
    printTheDay(tables, async (name, file) => {
      if (look) await file.saveAs(join(target, name))
    }),
  )
  console.log(`The whole day: ${tables.keys.pressed} key presses.`)
  const check = await app.call('collection.check', {})
  console.log(`The book: ${JSON.stringify(check)}`)
  seen(check.clean, 'the book is right').toBe(true)
  seen(wrong, 'nothing went wrong in the page').toEqual([])
} catch (thrown) {
  await page.screenshot({ path: join(tmpdir(), 'common-drawer-swap-day-stopped.png') })
  throw thrown
} finally {
  await browser.close()
  await app.end()
  rmSync(folder, { recursive: true, force: true })
}
