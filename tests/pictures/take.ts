import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, type Page } from '@playwright/test'
import { open } from '../app/support/open.ts'
import { startApp } from '../app/support/running-app.ts'
import { callOnFile, PROJECT_FOLDER } from '../support/command-line.ts'
import { getTestBrowser } from '../support/find-browser.ts'
import { firstPage, PAPERS } from './papers.ts'
import { SCENES } from './scenes.ts'
import { giveInScripts, papersInScripts } from './scripts.ts'

// npm run pictures: every screen of the app on the demonstration, light and dark, and the first page of every document,
// into docs/pictures; with --look also at 1920 x 1080 into the temporary folder, for looking at.

const PICTURES = join(PROJECT_FOLDER, 'docs', 'pictures')
const SMALL = { width: 1280, height: 800 }
const LARGE = { width: 1920, height: 1080 }

const look = process.argv.includes('--look')
const only = process.argv.slice(2).filter((word) => !word.startsWith('--'))
const browserFile = await getTestBrowser(PROJECT_FOLDER)
if (browserFile === null) throw new Error('There is no browser on this machine to take pictures with.')

const folder = mkdtempSync(join(tmpdir(), 'drawer-pictures-'))
const target = look ? join(tmpdir(), 'common-drawer-look') : PICTURES
mkdirSync(target, { recursive: true })
await callOnFile(join(folder, 'Demo collection.drawer'), 'collection.open-demo', {})
const app = await startApp(folder)
const browser = await chromium.launch({ executablePath: browserFile })
try {
  for (const viewport of look ? [SMALL, LARGE] : [SMALL]) {
    for (const colorScheme of ['light', 'dark'] as const) {
      const context = await browser.newContext({
        viewport,
        colorScheme,
        locale: 'en-GB',
        timezoneId: 'Europe/London',
        reducedMotion: 'reduce',
      })
      const page = await context.newPage()
      await page.goto(app.address)
      for (const scene of SCENES) {
        if (only.length > 0 && !only.includes(scene.name)) continue
        await scene.play(page, app)
        await settled(page)
        const size = look ? `-${viewport.width}` : ''
        await page.screenshot({ path: join(target, `${scene.name}-${colorScheme}${size}.png`) })
      }
      await context.close()
    }
  }
  for (const paper of PAPERS) {
    if (only.length > 0 && !only.includes(paper.name)) continue
    const { pdf } = await paper.make(app)
    writeFileSync(join(target, `${paper.name}.png`), await firstPage(pdf))
  }
  if (only.length === 0 || only.includes('scripts')) await takeScripts()
} finally {
  await browser.close()
  await app.end()
  rmSync(folder, { recursive: true, force: true })
}
console.log(`Pictures are in ${look ? target : 'docs/pictures'}.`)

/** Names in five scripts: three screens and three documents. Last, since it writes into the collection. */
async function takeScripts(): Promise<void> {
  const given = await giveInScripts(app)
  const page = await browser.newPage({ viewport: SMALL, locale: 'en-GB', timezoneId: 'Europe/London' })
  await page.goto(app.address)
  const screens = { shelf: '/shelf', record: `/shelf/lot/${given.lotIds[0]}`, written: '/written' }
  for (const [name, path] of Object.entries(screens)) {
    await open(page, path)
    if (name === 'shelf') {
      await page.getByRole('searchbox').fill('QH26-001')
      await page.getByRole('columnheader', { name: 'Lot' }).getByRole('button').click()
    }
    await settled(page)
    await page.screenshot({ path: join(target, `scripts-${name}.png`) })
  }
  for (const paper of papersInScripts(given)) {
    const { pdf } = await paper.make(app)
    writeFileSync(join(target, `${paper.name}.png`), await firstPage(pdf))
  }
}

/** Fonts are there and nothing is being fetched any more. */
async function settled(page: Page): Promise<void> {
  await page.evaluate('document.fonts.ready')
  await page.waitForTimeout(600)
}
