import type { Page } from '@playwright/test'
import { expectNoBarrier } from './support/axe.ts'
import { press, scan } from './support/keys.ts'
import { open } from './support/open.ts'
import { shown } from './support/shown.ts'
import { type SmallShelf, smallShelf } from './support/small-shelf.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'shelf' })

let shelf: SmallShelf

test.beforeEach(async ({ page }) => {
  shelf = smallShelf()
  await expect(page.getByRole('row', { name: /Widow Tarn/ })).toBeVisible()
})

const oneField = (page: Page) => page.getByRole('combobox', { name: /Find a lot/ })

test.describe('a label reader', () => {
  test('goes to the lot and leaves no letter in a half-filled form', async ({ page }) => {
    await open(page, `/shelf/lot/${shelf.tomato.lotId}`)
    await page.getByRole('button', { name: 'Quarantine', exact: true }).click()
    const reason = page.getByLabel('What to check')
    await reason.fill('is it the ')
    await scan(page, shelf.bean.scanCode)
    await expect(page.getByRole('heading', { name: 'Hrášek’s Climber' })).toBeVisible()
    await open(page, `/shelf/lot/${shelf.tomato.lotId}`)
    await page.getByRole('button', { name: /Quarantine \(begun\)/ }).click()
    await expect(reason).toHaveValue('is it the ')
  })

  test('does not fire the button that has the focus, is understood under a French keyboard, and says what was misread', async ({
    app,
    page,
  }) => {
    await open(page, `/shelf/lot/${shelf.tomato.lotId}`)
    await page.getByRole('button', { name: 'Throw away' }).click()
    await page.getByLabel('Why').fill('mould')
    await page.getByLabel('everything in this lot').check()
    await page.getByRole('button', { name: 'Throw away the whole lot' }).focus()
    await scan(page, shelf.bean.scanCode)
    await expect(page.getByRole('heading', { name: 'Hrášek’s Climber' })).toBeVisible()
    expect((await app.call('lot.get', { lotId: shelf.tomato.lotId })).quantity.count).toBe(12)
    const french = new Map(
      [...'QWAZ1234567890'].map((letter, at) => [letter, 'AZQWé&"\'(-è_çà'[at] ?? letter]),
    )
    await open(page, `/shelf/lot/${shelf.tomato.lotId}`)
    await scan(page, shelf.bean.scanCode, { stands: (letter) => french.get(letter) ?? letter })
    await expect(page.getByRole('heading', { name: 'Hrášek’s Climber' })).toBeVisible()
    const { scanCode } = shelf.bean
    const misread = `${scanCode.slice(0, -1)}${scanCode.endsWith('A') ? 'B' : 'A'}`
    await scan(page, misread)
    await expect(shown(page, 'does not fit the rest')).toBeVisible()
    await expect(oneField(page)).toHaveValue(misread)
    await expect(oneField(page)).toBeFocused()
  })

  test('does not change a choice that has the focus', { tag: '@long' }, async ({ page }) => {
    await open(page, '/shelf')
    const state = page.getByRole('combobox', { name: 'State' })
    await state.focus()
    await scan(page, 'R2601427')
    await expect(page.getByRole('status').filter({ hasText: '‘R2601427’' })).toBeVisible()
    await expect(state).toHaveValue('')
  })

  test('is not taken for a hand: slow letters stay where they are typed', { tag: '@long' }, async ({
    page,
  }) => {
    const filter = page.getByRole('searchbox')
    await filter.focus()
    await page.keyboard.type(shelf.bean.lotNumber, { delay: 90 })
    await press(page, 'Enter')
    await expect(filter).toHaveValue(shelf.bean.lotNumber)
  })
})

test.describe('the one field', () => {
  test('takes a full number and Enter straight to the lot, and finds by a few letters, by arrows', async ({
    page,
  }) => {
    await oneField(page).fill(shelf.tomato.lotNumber.toLowerCase())
    await oneField(page).press('Enter')
    await expect(page).toHaveURL(new RegExp(`#/shelf/lot/${shelf.tomato.lotId}$`))
    await expect(oneField(page)).toHaveValue('')
    await oneField(page).fill('hrasek')
    await expect(page.getByRole('option', { name: /Hrášek’s Climber/ })).toHaveAttribute(
      'aria-selected',
      'true',
    )
    await press(page, 'ArrowDown')
    await press(page, 'Enter')
    await expect(page).toHaveURL(/#\/shelf\/find\/hrasek$/)
    await expect(page.getByRole('searchbox')).toHaveValue('hrasek')
    await expect(page.getByRole('row', { name: /Hrášek’s Climber/ })).toBeVisible()
  })

  test('takes letters that an address cannot hold as they are', { tag: '@long' }, async ({ page }) => {
    await oneField(page).fill('100 % Ζου/μερή?')
    await page.getByRole('option', { name: /Show all on the shelf/ }).click()
    await expect(page.getByRole('searchbox')).toHaveValue('100 % Ζου/μερή?')
    await expect(shown(page, 'No lot fits all of that.')).toBeVisible()
  })
})

test('the focus and the title follow to the screen that was opened', async ({ page }) => {
  await page.getByRole('link', { name: 'Settings' }).click()
  await expect(page.getByRole('heading', { name: 'Settings', level: 1 })).toBeFocused()
  await expect(page).toHaveTitle('Settings · Hollow Lane Library · Common Drawer')
  await page.getByRole('link', { name: 'Take in' }).click()
  await expect(page.locator('main')).toContainText('Who brings it?')
  await expect(page.locator('main :focus')).toHaveCount(1)
})

test('F6 goes to the rail and back to the field, and arrows go along its words', async ({ page }) => {
  await page.getByRole('link', { name: 'Take in' }).click()
  await expect(page.getByRole('combobox', { name: 'Who brings it?' })).toBeFocused()
  await page.keyboard.press('Shift+F6')
  await expect(page.getByRole('link', { name: 'Take in' })).toBeFocused()
  await page.keyboard.press('F6')
  await expect(page.getByRole('combobox', { name: 'Who brings it?' })).toBeFocused()
  await page.keyboard.press('F6')
  await expect(page.getByLabel('Where it goes', { exact: true })).toBeFocused()
  await page.keyboard.press('F6')
  await expect(page.getByRole('link', { name: 'what was written today' })).toBeFocused()
  await page.keyboard.press('F6')
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('combobox', { name: 'Who takes it?' })).toBeFocused()
})

test('the rail can be skipped', { tag: '@long' }, async ({ page }) => {
  await press(page, 'Tab')
  await expect(page.getByRole('button', { name: 'Skip to the work' })).toBeFocused()
  await press(page, 'Enter')
  await expect(page.locator('main')).toBeFocused()
})

test('Enter and Escape in the middle of a word of an input method do nothing else', { tag: '@long' }, async ({
  app,
  page,
}) => {
  await open(page, `/shelf/lot/${shelf.bean.lotId}`)
  await page.getByRole('button', { name: 'Move', exact: true }).click()
  await page.getByLabel('To', { exact: true }).selectOption({ label: 'a new place…' })
  const name = page.getByLabel('Its name')
  await name.focus()
  const devTools = await page.context().newCDPSession(page)
  await devTools.send('Input.imeSetComposition', { text: 'たな', selectionStart: 2, selectionEnd: 2 })
  for (const key of ['Enter', 'Escape']) {
    await devTools.send('Input.dispatchKeyEvent', { type: 'rawKeyDown', key, windowsVirtualKeyCode: 229 })
    await devTools.send('Input.dispatchKeyEvent', { type: 'keyUp', key, windowsVirtualKeyCode: 229 })
  }
  await devTools.send('Input.insertText', { text: '棚' })
  await expect(name).toHaveValue('棚')
  expect((await app.call('place.list', {})).places.map(({ name: place }) => place)).not.toContain('たな')
  await press(page, 'Enter')
  await expect(page.getByLabel('To', { exact: true })).toHaveValue(/\d/)
  expect((await app.call('place.list', {})).places.map(({ name: place }) => place)).toContain('棚')
})

test('the foot line says what was done and takes it back', async ({ app, page }) => {
  await open(page, `/shelf/lot/${shelf.bean.lotId}`)
  await page.getByRole('button', { name: 'Take stock' }).click()
  await page.getByLabel(/^Found/).fill('280 seeds')
  await page.getByLabel('Why it differs').fill('counted again')
  await page.getByRole('button', { name: 'Save what was found' }).click()
  const footLine = page.getByRole('contentinfo')
  await expect(footLine.getByRole('status')).toContainText(`Took stock of ${shelf.bean.lotNumber}`)
  await footLine.getByRole('button', { name: 'undo' }).click()
  await expect(footLine.getByRole('status')).toContainText('Undone')
  await expect(footLine.getByRole('button', { name: 'undo' })).toHaveCount(0)
  expect((await app.call('lot.get', { lotId: shelf.bean.lotId })).quantity.count).toBe(300)
})

test('an answer that is lost on the way is asked for again, and seed is taken once', async ({
  app,
  page,
}) => {
  let lost = 0
  await page.route('**/call', async (route) => {
    const taking = route.request().postData()?.includes('lot.discard') ?? false
    if (!taking || lost > 0) return route.continue()
    lost += 1
    await route.fetch()
    return route.fulfill({ status: 200, contentType: 'text/plain', body: 'cut off' })
  })
  await open(page, `/shelf/lot/${shelf.bean.lotId}`)
  await page.getByRole('button', { name: 'Throw away' }).click()
  await page.getByLabel('How much').fill('20 seeds')
  await page.getByLabel('Why').fill('weevils')
  await page.getByRole('button', { name: 'Throw away', exact: true }).last().click()
  await expect(page.getByRole('contentinfo')).toContainText('undo')
  expect(lost).toBe(1)
  expect((await app.call('lot.get', { lotId: shelf.bean.lotId })).quantity.count).toBe(280)
})

test('silence is said calmly, what was typed stays, and it goes on by itself', { tag: '@long' }, async ({
  page,
}) => {
  await open(page, `/shelf/lot/${shelf.bean.lotId}`)
  await page.getByRole('button', { name: 'Quarantine', exact: true }).click()
  await page.getByLabel('What to check').fill('a strange smell')
  await page.route('**/call', (route) =>
    route.fulfill({ status: 200, contentType: 'text/plain', body: 'nobody here' }),
  )
  await page.getByRole('button', { name: 'Put it in quarantine' }).click()
  await expect(page.getByRole('alert')).toContainText('is not answering just now')
  await expect(page.getByLabel('What to check')).toHaveValue('a strange smell')
  await page.unroute('**/call')
  await expect(shown(page, 'Trying again…')).toHaveCount(0)
  await page.getByRole('button', { name: 'Put it in quarantine' }).click()
  await expect(page.getByRole('article')).toContainText('a strange smell')
})

const SCREENS = [
  '/take-in',
  '/hand-out',
  '/shelf',
  '/germination',
  '/storage',
  '/regrow',
  '/settings',
] as const

for (const screen of SCREENS) {
  const tag = screen === '/shelf' ? [] : '@long'
  test(`${screen} has no barrier, reflows at 320 px and holds text of twice the size`, { tag }, async ({
    page,
  }) => {
    await open(page, screen)
    await expect(page.locator('main h1').first()).toBeAttached()
    await expectNoBarrier(page)
    await page.setViewportSize({ width: 320, height: 640 })
    await expectNoSideways(page)
    await expectWordsApart(page)
    await page.setViewportSize({ width: 1280, height: 800 })
    await page.evaluate("document.documentElement.style.fontSize = '200%'")
    await expectNoSideways(page)
  })
}

/** No word of the rail lies over another. */
async function expectWordsApart(page: Page): Promise<void> {
  const boxes = await page.evaluate<{ left: number; right: number; top: number; bottom: number }[]>(
    '[...document.querySelectorAll(".rail-word")].map((word) => word.getBoundingClientRect().toJSON())',
  )
  expect(boxes.length).toBeGreaterThan(5)
  const over = boxes.filter((a, index) =>
    boxes
      .slice(index + 1)
      .some(
        (b) =>
          Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 &&
          Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1,
      ),
  )
  expect(over, 'words of the rail that lie over others').toEqual([])
}

async function expectNoSideways(page: Page): Promise<void> {
  const tooWide = await page.evaluate<number>(
    'document.documentElement.scrollWidth - document.documentElement.clientWidth',
  )
  expect(tooWide, 'nothing runs off the side').toBeLessThanOrEqual(0)
}

test('motion stops when the system asks', { tag: '@long' }, async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  const moving = await page.evaluate<number>('document.getAnimations().length')
  expect(moving).toBe(0)
})
