import type { Page } from '@playwright/test'
import { type LanguageCode, languageOf } from '../../db/messages/languages.ts'
import type { Texts } from '../../db/messages/texts.ts'
import { createTexts } from '../../db/messages/texts.ts'
import { UNTIL_OPEN } from '../../db/messages/texts-of.ts'
import { Keys } from './support/keys.ts'
import { escaped } from './support/look-over.ts'
import { open } from './support/open.ts'
import type { RunningApp } from './support/running-app.ts'
import { smallShelf } from './support/small-shelf.ts'
import { gift } from './support/take-in-table.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'shelf' })

/** The languages of the journey; the made-up ones have codes that no keeper can choose. */
const SPOKEN = [
  { code: 'es', run: ['@long'], typed: '' },
  { code: 'ar-XB', run: ['@long'], typed: '20 seeds' },
  { code: 'en-XA', run: ['@long'], typed: '20 seeds' },
] as const

async function textsIn(code: LanguageCode | string): Promise<Texts> {
  const language = languageOf(code)
  return createTexts({ ...language, manner: UNTIL_OPEN, translation: await language.load() })
}

/** What a screen calls something, in its language. */
type Named = Texts['text']

const chosen = (page: Page, words: string) => page.getByRole('combobox', { name: words, exact: true })

/** Somebody brings peas. */
async function takeIn(page: Page, app: RunningApp, t: Named): Promise<void> {
  await app.call('person.create', {
    name: 'Ilka Brandt',
    address: '3 Hollow Lane\nQuillhaven',
    mayWrite: true,
  })
  await open(page, '/take-in')
  await expect(chosen(page, t('take-in.who'))).toBeFocused()
  const keys = new Keys(page)
  await keys.type('ilk')
  await keys.press('Enter')
  await gift(keys, 'Hollow Lane Tall', 'pea', '2024', '20 g')
  await expect(
    page.getByRole('main').getByRole('listitem').filter({ hasText: 'Hollow Lane Tall' }),
  ).toHaveCount(1)
  await keys.press('Control+Enter')
  await expect(page.getByRole('region', { name: t('take-in.taken-in') })).toContainText('Hollow Lane Tall')
  const { rows } = await app.call('lot.list', {})
  expect(rows.map(({ variety }) => variety)).toContain('Hollow Lane Tall')
}

/** A packet of beans goes out. */
async function handOut(page: Page, app: RunningApp, t: Named, typed: string): Promise<void> {
  await open(page, '/hand-out')
  await expect(chosen(page, t('hand-out.who'))).toBeFocused()
  const keys = new Keys(page)
  await keys.type('zo')
  await keys.press('Enter')
  await keys.type('clim')
  await keys.press('Enter')
  // The app reads no amounts in a made-up language, not even the one that it offers itself.
  if (typed !== '') await keys.type(typed)
  await keys.press('Enter')
  await expect(page.getByRole('region', { name: t('screen.hand-out') })).toContainText('Climber')
  await keys.press('Control+Enter')
  await expect(page.getByRole('region', { name: t('hand-out.what-is-left') })).toContainText('280')
  const { quantity } = await app.call('lot.get', { lotId: smallShelf().bean.lotId })
  expect(quantity.count).toBe(280)
}

/** The tomato of which almost nothing is left is to be grown. */
async function decideToRegrow(page: Page, app: RunningApp, t: Named): Promise<void> {
  await open(page, '/regrow')
  const tomato = page.getByRole('list', { name: t('needs.needs') }).getByRole('link', { name: /Widow Tarn/ })
  await tomato.focus()
  const keys = new Keys(page)
  await keys.press('Space')
  await expect(tomato).toContainText(t('needs.to-grow'))
  await keys.press('Enter')
  await expect(page.getByLabel(t('needs.grow-it'))).toBeChecked()
  const save = escaped(t('needs.save-list', { year: 'YEAR', chosen: 1 })).replace('YEAR', '\\d{4}')
  await page.getByRole('button', { name: new RegExp(save) }).press('Enter')
  await keys.press('Enter')
  await expect.poll(async () => (await app.call('season-list.list', {})).lists.length).toBe(1)
}

/** Labels of the new lots, and a letter to the donor. */
async function print(page: Page, app: RunningApp, t: Named): Promise<void> {
  await open(page, '/print')
  const kinds = page.getByRole('navigation', { name: t('print.what') })
  for (const kind of ['print.label', 'print.letter'] as const) {
    await kinds.getByRole('button', { name: t(kind) }).press('Enter')
    await expect(page.locator('iframe.label-frame')).toBeVisible()
    await page.getByRole('button', { name: t('print.came-out-well') }).press('Enter')
    await expect(page.getByRole('button', { name: t('print.came-out-well') })).toBeHidden()
  }
  const { groups } = await app.call('tray.list', {})
  expect(groups.filter(({ kind }) => kind === 'label' || kind === 'letter')).toEqual([])
}

for (const { code, run, typed } of SPOKEN) {
  test.describe(`in the language ${code}`, () => {
    test.use({ language: code })

    test('seed is taken in and handed out, regrowing decided, and paper printed', { tag: [...run] }, async ({
      app,
      page,
    }) => {
      const { text: t } = await textsIn(code)
      await takeIn(page, app, t)
      await handOut(page, app, t, typed)
      await decideToRegrow(page, app, t)
      await print(page, app, t)
    })
  })
}

/** Where the years stand beneath a curve, in the order in which they come. */
const YEARS = `[...document.querySelectorAll('.curve text')].filter((text) => /^\\d{4}$/.test(text.textContent))
  .toSorted((a, b) => a.textContent - b.textContent).map((text) => text.getBoundingClientRect().left)`

/** From which side the living seeds of a bar begin, and on which side its list stands, both 0 to 1 of their room. */
const SIDES = `(() => {
  const part = (inner, outer) => {
    const [a, b] = [inner, outer].map((each) => each.getBoundingClientRect())
    return (a.left + a.width / 2 - b.left) / b.width
  }
  const bar = document.querySelector('.panes-card .seed-bar, .shelf-card .seed-bar')
  return {
    living: part(bar.querySelector('.seed-bar-notch'), bar),
    rail: part(document.querySelector('.rail-word'), document.querySelector('.rail')),
  }
})()`

test.describe('from right to left', () => {
  test.use({ language: 'ar-XB' })

  test('time, bars, the rail and the arrows run that way', async ({ page }) => {
    await open(page, `/shelf/lot/${smallShelf().bean.lotId}`)
    await expect(page.locator('html')).toHaveAttribute('dir', 'rtl')
    await expect(page.locator('.curve')).toBeVisible()
    const years = await page.evaluate<number[]>(YEARS)
    expect(years.length).toBeGreaterThan(1)
    expect(years).toEqual(years.toSorted((a, b) => b - a))
    const { living, rail } = await page.evaluate<{ living: number; rail: number }>(SIDES)
    expect(living, 'what must be kept stands left of the middle of a bar read from the left').toBeGreaterThan(
      0.5,
    )
    expect(rail).toBeGreaterThan(0.8)
    const words = page.locator('.rail-word')
    await words.first().focus()
    await page.keyboard.press('ArrowLeft')
    await expect(words.nth(1)).toBeFocused()
    await page.keyboard.press('ArrowRight')
    await expect(words.first()).toBeFocused()
  })
})
