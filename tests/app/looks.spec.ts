import type { Page } from '@playwright/test'
import { open } from './support/open.ts'
import { expect, test } from './support/test.ts'

/** What is chosen and looks like its neighbours that are not. */
const CHOSEN_ALIKE = `(() => {
  const ground = (each) => getComputedStyle(each.querySelector('td') ?? each).backgroundColor
  const chosen = [...document.querySelectorAll('[aria-current], [aria-selected=true]')]
    .filter((each) => each.getClientRects().length > 0)
  const alike = chosen.filter((each) => [...document.getElementsByClassName(each.className)]
    .some((other) => !chosen.includes(other) && ground(other) === ground(each)))
  return { several: chosen.length > 1, alike: alike.map((each) => each.textContent) }
})()`

/** How high the rail is, how wide its field, and in how many lines its words stand; in px. */
const RAIL = `(() => {
  const tops = [...document.querySelectorAll('.rail-word')].map((word) => Math.round(word.getBoundingClientRect().top))
  return {
    height: document.querySelector('.rail').offsetHeight,
    field: document.querySelector('.rail-find input').offsetWidth,
    lines: new Set(tops).size,
  }
})()`

interface Rail {
  readonly height: number
  readonly field: number
  readonly lines: number
}

/** Text spacing, WCAG 2.2 (W3C Recommendation, 2023), 1.4.12. */
const SPACED = `(() => {
  const sheet = new CSSStyleSheet()
  sheet.replaceSync('* { line-height: 1.5; letter-spacing: 0.12em; word-spacing: 0.16em }')
  document.adoptedStyleSheets = [sheet]
})()`

/** The part of the window's height that stands above and below a screen and does not scroll away. */
const STANDING = `['.rail', '.strip-place', '.foot-line'].map((part) => document.querySelector(part))
  .filter((part) => part !== null && part.getBoundingClientRect().top < innerHeight)
  .reduce((sum, part) => sum + part.offsetHeight, 0) / innerHeight`

/** What is printed though paper cannot be pressed, or a heading cannot be unfolded there. */
const PRESSED_ON_PAPER = `[...document.querySelectorAll('button, select, [role=switch], article summary')]
  .filter((each) => each.checkVisibility()).map((each) => each.textContent)`

async function openWhole(page: Page, path: string): Promise<void> {
  await open(page, path)
  await expect(page.locator('main :is(h1, h2)').filter({ visible: true }).first()).toBeVisible()
}

test('the window holds where colours are forced, in little room, with wide text and on paper', {
  tag: '@long',
}, async ({ app, page }) => {
  const { rows } = await app.call('lot.list', {})
  const lot = `/shelf/lot/${rows[0]?.lotId}`
  await page.emulateMedia({ forcedColors: 'active' })
  for (const path of [lot, '/print', '/germination']) {
    await openWhole(page, path)
    await expect.poll(() => page.evaluate(CHOSEN_ALIKE), path).toEqual({ several: true, alike: [] })
  }
  await page.emulateMedia({ forcedColors: 'none' })

  for (const width of [905, 1024, 1100, 1175, 1190, 1280]) {
    await page.setViewportSize({ width, height: 700 })
    const rail = await page.evaluate<Rail>(RAIL)
    expect(rail.lines, `lines of words at ${width}`).toBe(1)
    expect(rail.field, `the field at ${width}`).toBeGreaterThan(185)
    expect(rail.height, `the rail at ${width}`).toBeLessThan(100)
  }
  await page.evaluate(SPACED)
  const spaced = await page.evaluate<Rail>(RAIL)
  expect(spaced.lines).toBe(2)
  expect(spaced.field).toBeGreaterThan(185)
  await page.reload()

  // A window of 1280 by 800 at 200 %.
  await page.setViewportSize({ width: 640, height: 400 })
  await openWhole(page, '/settings')
  expect(await page.evaluate(STANDING)).toBeLessThan(0.4)
  await page.setViewportSize({ width: 1280, height: 800 })
  const libraryName = 'The Seed Library of the Upper Valley and of All Its '.repeat(3).trim()
  await app.call('settings.change', { settings: { libraryName } })
  await page.reload()
  await expect(page.getByRole('contentinfo')).toContainText(libraryName)
  expect(await page.evaluate(`document.querySelector('.foot-line').offsetHeight`)).toBeLessThan(50)

  await page.emulateMedia({ media: 'print' })
  for (const path of ['/regrow/plan', '/written', lot]) {
    await openWhole(page, path)
    await expect.poll(() => page.evaluate(PRESSED_ON_PAPER), path).toEqual([])
  }
})

/** Buttons that are told apart by nothing but their place: names that several of them have. */
const NAMED_ALIKE = `(() => {
  const names = [...document.querySelectorAll('main :is(button, summary)')]
    .filter((each) => each.checkVisibility()).map((each) => each.getAttribute('aria-label') ?? each.textContent)
  return names.filter((name, at) => names.indexOf(name) < at)
})()`

/** How often the Tab key is pressed to pass through the screen. */
const STOPS = `[...document.querySelectorAll('main :is(a[href], button, input, select, textarea, summary, [tabindex="0"])')]
  .filter((each) => each.checkVisibility() && each.tabIndex >= 0 && !each.disabled).length`

/** Bars that draw a doubt and do not say it. */
const SILENT_BARS = `[...document.querySelectorAll('.seed-bar:has(.seed-bar-whisker)')]
  .map((bar) => bar.getAttribute('aria-label')).filter((said) => !/ between [\\d,.]+ and [\\d,.]+/.test(said))`

/** Targets under 24 px, WCAG 2.2 (W3C Recommendation, 2023), 2.5.8; a label is pressed with its box. */
const SMALL_TARGETS = `[...document.querySelectorAll('main :is(button, input, select, summary)')]
  .filter((each) => each.checkVisibility()).map((each) => each.closest('label') ?? each)
  .filter((each) => Math.min(each.offsetWidth, each.offsetHeight) < 24).map((each) => each.outerHTML)`

/** Fields whose text does not fit them. */
const CUT_FIELDS = `[...document.querySelectorAll('main input')]
  .filter((each) => each.scrollWidth > each.clientWidth + 1).map((each) => each.value)`

test('every card names the window, tells its buttons apart, and is passed through in few steps', {
  tag: '@long',
}, async ({ app, page }) => {
  const [lots, people, places] = await Promise.all([
    app.call('lot.list', { sort: 'count', descending: true }),
    app.call('person.list', {}),
    app.call('storage.list', {}),
  ])
  const lot = lots.rows[0]
  // Its test wants a temperature that changes from day to night, or another.
  const bean = lots.rows.find(({ crop }) => crop === 'Common bean')
  const person = people.people[0]
  const place = places.places.toSorted((a, b) => b.lots - a.lots)[0]
  const cards = [
    [`/shelf/lot/${lot?.lotId}`, `${lot?.variety}, lot ${lot?.lotNumber} · Shelf`],
    [`/people/${person?.personId}`, `${person?.name} · People`],
    [`/storage/place/${place?.placeId}`, `${place?.path} · Storage`],
    [`/germination/lot/${bean?.lotId}`, `Plan for ${bean?.variety} · Germination`],
    ['/print', 'Print'],
    ['/regrow/season', 'Season notes'],
    ['/regrow', 'Regrow'],
    ['/regrow/plan', 'Season plan'],
  ] as const
  for (const [path, title] of cards) {
    await openWhole(page, path)
    await expect.poll(() => page.title(), path).toContain(title)
    expect.soft(await page.evaluate(NAMED_ALIKE), path).toEqual([])
    expect.soft(await page.evaluate<number>(STOPS), `steps through ${path}`).toBeLessThan(65)
    expect.soft(await page.evaluate(SILENT_BARS), path).toEqual([])
    expect.soft(await page.evaluate(SMALL_TARGETS), path).toEqual([])
    expect.soft(await page.evaluate(CUT_FIELDS), path).toEqual([])
  }
})
