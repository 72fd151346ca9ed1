import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium } from '@playwright/test'
import { buildIfNeeded } from '../../electron/loopback/build-if-needed.ts'
import { open } from '../app/support/open.ts'
import { startApp } from '../app/support/running-app.ts'
import { PROJECT_FOLDER } from '../support/command-line.ts'
import { getTestBrowser } from '../support/find-browser.ts'
import { benchCollection } from './build-collection.ts'

// npm run bench:page: the shelf of the bench collection in a real browser: how long a keystroke, a record and a screen
// take until they are drawn, and whether a scroll ever shows a row that is not there. For a quiet machine.

const LOTS = 100_000
const ROUNDS = 15
/** As quickly as a hand spins a wheel. */
const PIXELS_A_FRAME = 120
const FRAMES = 300
const SCREENS = [
  '/take-in',
  '/hand-out',
  '/take-back',
  '/germination',
  '/storage',
  '/print',
  '/people',
  '/regrow',
]

const browserFile = await getTestBrowser(PROJECT_FOLDER)
if (browserFile === null) throw new Error('There is no browser on this machine to measure in.')
await buildIfNeeded(PROJECT_FOLDER, 'loopback')
const kept = await benchCollection({ lots: LOTS, movementsPerLot: 10 })
const folder = mkdtempSync(join(tmpdir(), 'drawer-page-'))
copyFileSync(kept, join(folder, 'Demo collection.drawer'))
const begun = performance.now()
const app = await startApp(folder)
const browser = await chromium.launch({ executablePath: browserFile })
const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, reducedMotion: 'reduce' })

/** The middle one of some milliseconds, and the worst. */
function inWords(times: readonly number[]): string {
  const sorted = times.toSorted((a, b) => a - b)
  return `${sorted[Math.floor(sorted.length / 2)]?.toFixed(0)} ms, at worst ${sorted.at(-1)?.toFixed(0)} ms`
}

/** Does something in the page and waits, frame by frame there, until a condition holds; gives the milliseconds. */
function untilDrawn(act: string, holds: string): Promise<number> {
  return page.evaluate<number>(`new Promise((resolve) => {
    const from = performance.now()
    ${act}
    const look = () => (${holds}) ? resolve(performance.now() - from) : requestAnimationFrame(look)
    requestAnimationFrame(look)
  })`)
}

/** The milliseconds from a key until its rows are drawn; with the way to the measuring program and back, so never too few. */
async function keystroke(key: string): Promise<number> {
  await page.evaluate(
    "void addEventListener('input', () => { window.typedAt = performance.now() }, { once: true, capture: true })",
  )
  const answered = page.waitForResponse((response) =>
    (response.request().postData() ?? '').includes('"lot.list"'),
  )
  await page.keyboard.press(key)
  await answered
  return page.evaluate<number>(`new Promise((resolve) => {
    const look = () =>
      document.querySelector('.shelf-scroller')?.dataset.stale === 'false'
        ? resolve(performance.now() - window.typedAt)
        : requestAnimationFrame(look)
    look()
  })`)
}

try {
  await page.goto(app.address)
  const rows = page.locator('.shelf-row[id]')
  await rows.first().waitFor()
  console.log(
    `cold start to the shelf, the browser with it: ${((performance.now() - begun) / 1000).toFixed(1)} s`,
  )

  const filter = page.getByRole('searchbox')
  const typed: number[] = []
  for (const word of ['amber', 'hill']) {
    await filter.focus()
    for (const letter of word) typed.push(await keystroke(letter))
    await filter.fill('')
    await rows.nth(5).waitFor()
  }
  console.log(`a keystroke in the search until its rows are drawn: ${inWords(typed)}`)

  const opened: number[] = []
  for (let round = 0; round < ROUNDS; round++) {
    const row = rows.nth((round % 6) + 1)
    const number = (await row.locator('input').getAttribute('aria-label'))?.replace('tick ', '') ?? ''
    const id = (await row.getAttribute('id')) ?? ''
    opened.push(
      await untilDrawn(
        `document.getElementById('${id}').querySelector('td:nth-child(2)').click()`,
        `document.querySelector('.shelf-card').textContent.includes('${number}') && document.querySelector('.shelf-card h2') !== null`,
      ),
    )
  }
  console.log(`a record opened: ${inWords(opened)}`)

  const scrolled = await page.evaluate<{
    frames: number
    waiting: number
    longest: number
  }>(`new Promise((resolve) => {
    const list = document.querySelector('.shelf-scroller')
    let frames = 0, waiting = 0, now = 0, longest = 0
    const step = () => {
      const seen = list.getBoundingClientRect()
      const blank = [...list.querySelectorAll('.shelf-waiting')].some((row) => {
        const at = row.getBoundingClientRect()
        return at.bottom > seen.top && at.top < seen.bottom
      })
      frames += 1
      now = blank ? now + 1 : 0
      waiting += blank ? 1 : 0
      longest = Math.max(longest, now)
      list.scrollTop += ${PIXELS_A_FRAME}
      if (frames < ${FRAMES}) requestAnimationFrame(step)
      else resolve({ frames, waiting, longest })
    }
    requestAnimationFrame(step)
  })`)
  console.log(
    `scrolled ${FRAMES * PIXELS_A_FRAME} pixels in ${scrolled.frames} frames: in ${scrolled.waiting} of them a row was still on its way, at most ${scrolled.longest} in a row`,
  )

  for (const path of SCREENS) {
    await open(page, '/written')
    await page.getByRole('heading', { name: 'What was written', level: 1 }).waitFor()
    const took = await untilDrawn(
      `location.hash = '#${path}'`,
      `document.querySelector('main .waiting') === null && !document.querySelector('main').textContent.startsWith('What was written') && document.querySelector('main').textContent.length > 40`,
    )
    console.log(`${path} opened: ${took.toFixed(0)} ms`)
  }
} finally {
  await browser.close()
  await app.end()
  rmSync(folder, { recursive: true, force: true })
}
