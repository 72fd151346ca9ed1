import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium } from '@playwright/test'
import { buildIfNeeded } from '../../electron/loopback/build-if-needed.ts'
import { findBrowser } from '../../electron/loopback/find-browser.ts'
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
/** More than this is a fault: the most that the host and the page's own heap may take, megabytes. */
const MOST_HOST_MB = 900
const MOST_PAGE_MB = 150
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

const browserFile = findBrowser() ?? (await getTestBrowser(PROJECT_FOLDER))
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

/** Where the time of opening a screen went, in milliseconds: until the host answered, under way, and the page's own. */
interface Opened {
  readonly total: number
  readonly host: number
  readonly transfer: number
  readonly page: number
  readonly kilobytes: number
}

/** Opens a screen and tells where the time went: answers that were waited for side by side count once. */
async function openScreen(path: string): Promise<Opened> {
  await page.evaluate('performance.clearResourceTimings()')
  const total = await untilDrawn(
    `location.hash = '#${path}'`,
    `document.querySelector('main .waiting') === null && !document.querySelector('main').textContent.startsWith('What was written') && document.querySelector('main').textContent.length > 40`,
  )
  const calls = await page.evaluate<{ asked: number; begun: number; ended: number; bytes: number }[]>(
    `performance.getEntriesByType('resource').filter(({ name }) => name.endsWith('/call')).map((call) => ({
      asked: call.requestStart, begun: call.responseStart, ended: call.responseEnd, bytes: call.encodedBodySize,
    }))`,
  )
  const host = covered(calls.map(({ asked, begun }) => [asked, begun]))
  const away = covered(calls.map(({ asked, ended }) => [asked, ended]))
  const bytes = calls.reduce((sum, call) => sum + call.bytes, 0)
  return { total, host, transfer: away - host, page: Math.max(0, total - away), kilobytes: bytes / 1_000 }
}

/** How much of the time some spans cover together. */
function covered(spans: readonly (readonly [from: number, until: number])[]): number {
  let sum = 0
  let reached = Number.NEGATIVE_INFINITY
  for (const [from, until] of spans.toSorted((a, b) => a[0] - b[0])) {
    sum += Math.max(0, until - Math.max(from, reached))
    reached = Math.max(reached, until)
  }
  return sum
}

/** What the host has in memory, megabytes; null where the system does not tell. */
function hostMemory(): number | null {
  const status = `/proc/${app.processId}/status`
  if (!existsSync(status)) return null
  const [, kilobytes] = /VmRSS:\s+(\d+) kB/.exec(readFileSync(status, 'utf8')) ?? []
  return kilobytes === undefined ? null : (Number(kilobytes) * 1_024) / 1e6
}

/** What the page holds once its rubbish is taken away, megabytes. */
async function pageMemory(): Promise<number> {
  const session = await page.context().newCDPSession(page)
  await session.send('HeapProfiler.collectGarbage')
  const { usedSize } = await session.send('Runtime.getHeapUsage')
  return usedSize / 1e6
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
    const { total, host, transfer, page: own, kilobytes } = await openScreen(path)
    console.log(
      `${path.padEnd(12)} opened: ${total.toFixed(0).padStart(5)} ms, of it ${host.toFixed(0)} until the host answered, ${transfer.toFixed(0)} under way (${kilobytes.toFixed(0)} kB), ${own.toFixed(0)} the page's own`,
    )
  }

  const [host, inPage] = [hostMemory(), await pageMemory()]
  console.log(
    `memory: host ${host === null ? 'not told by this system' : `${host.toFixed(0)} MB (at most ${MOST_HOST_MB})`}, the page's heap ${inPage.toFixed(0)} MB (at most ${MOST_PAGE_MB})`,
  )
  if ((host ?? 0) > MOST_HOST_MB || inPage > MOST_PAGE_MB)
    throw new Error('That is more memory than allowed.')
} finally {
  await browser.close()
  await app.end()
  rmSync(folder, { recursive: true, force: true })
}
