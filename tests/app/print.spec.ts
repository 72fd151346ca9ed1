import type { Page } from '@playwright/test'
import { expectNoBarrier } from './support/axe.ts'
import { press, type } from './support/keys.ts'
import { open } from './support/open.ts'
import type { RunningApp } from './support/running-app.ts'
import { shown } from './support/shown.ts'
import { LONG_NAME, type SmallShelf, smallShelf } from './support/small-shelf.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'shelf' })

let shelf: SmallShelf

async function fill(app: RunningApp, page: Page): Promise<void> {
  shelf = smallShelf()
  await app.call('intake.record', {
    donor: { newPerson: { name: 'Ilka Brandt', address: '3 Hollow Lane\nQuillhaven', mayWrite: true } },
    receivedOn: shelf.today,
    gifts: [{ variety: { newVariety: { cropId: 'pea', name: 'Hollow Lane Tall' } }, amount: '80 seeds' }],
  })
  await open(page, '/print')
}

/** Goes on with Tab until something has the focus. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let step = 0; step < 80; step++) {
    await page.keyboard.press('Tab')
    const at = await page.evaluate<string>(
      `document.activeElement === document.body ? ''
        : ((document.activeElement.labels?.[0] ?? document.activeElement).textContent ?? '')`,
    )
    if (name.test(at)) return
  }
  throw new Error(`Tab does not reach ${name}`)
}

const kind = (page: Page, name: RegExp) =>
  page.getByRole('navigation', { name: 'What to print' }).getByRole('button', { name })

test.describe('while nothing was taken in', () => {
  test.use({ drawer: 'empty' })

  test('says how the empty tray fills', { tag: '@long' }, async ({ app, page }) => {
    expect((await app.call('tray.list', {})).groups).toEqual([])
    await open(page, '/print')
    await expect(shown(page, 'Nothing waits to be printed.')).toBeVisible()
    await expect(shown(page, 'A label comes here by itself')).toBeVisible()
    await expectNoBarrier(page)
  })
})

test('labels are printed, noted, undone and printed again by keyboard alone', async ({ app, page }) => {
  test.slow()
  await fill(app, page)
  await expect(kind(page, /Packet labels/)).toContainText('4 wait')
  await expect(shown(page, LONG_NAME)).toBeVisible()
  await expect(page.getByTitle('Packet labels, as they will be printed')).toBeVisible()
  await expectNoBarrier(page)

  await tabTo(page, /^How many/)
  await press(page, 'ControlOrMeta+a')
  await type(page, '6')
  await press(page, 'Enter')
  await expect(page.getByRole('contentinfo')).toContainText(`6 labels of ${shelf.bean.lotNumber} to print`)
  // The tray itself has it too: four labels and five more of the bean are marked on the sheet.
  await expect(page.getByRole('radio', { name: /to be printed$/ })).toHaveCount(9)
  await tabTo(page, /^label 1, row 1/)
  await press(page, 'ArrowRight')
  await press(page, 'ArrowRight')
  await expect(shown(page, 'First free label: 3')).toBeVisible()
  await expect(shown(page, 'is no longer in the tray')).toHaveCount(0)
  await expect(page.getByRole('button', { name: 'They came out well' })).toBeEnabled()
  await tabTo(page, /They came out well/)
  await press(page, 'Enter')
  await expect(page.getByRole('contentinfo')).toContainText('Printed 9 labels')
  await expect(kind(page, /Packet labels/)).toContainText('none wait')
  await expect(kind(page, /Packet labels/)).toHaveAttribute('aria-current', 'true')
  expect((await app.call('tray.list', {})).sheets).toMatchObject([{ sheet: 'a4-21', startAt: 12 }])

  await tabTo(page, /^undo/)
  await press(page, 'Enter')
  await expect(kind(page, /Packet labels/)).toContainText('4 wait')
  await expect(page.getByRole('button', { name: 'They came out well' })).toBeEnabled()
  await tabTo(page, /They came out well/)
  await press(page, 'Enter')
  await expect(kind(page, /Packet labels/)).toContainText('none wait')
  await tabTo(page, /^Printed before/)
  await press(page, 'Enter')
  await expectNoBarrier(page)
  await tabTo(page, /^print again/)
  await press(page, 'Enter')
  await expect(kind(page, /Packet labels/)).toContainText('4 wait')
  expect((await app.call('tray.list', {})).groups[0]?.items[0]).toMatchObject({ copies: 6 })
})

test('a number that is none is asked about, and nothing typed is lost', async ({ app, page }) => {
  await fill(app, page)
  const copies = page.getByLabel('How many').first()
  await copies.fill('a few')
  await copies.press('Enter')
  await expect(shown(page, 'Type a whole number, such as 8.').first()).toBeVisible()
  await expect(copies).toHaveValue('a few')
  await page.getByLabel('Move right, mm').fill('much')
  await expect(shown(page, 'Type millimetres from -10 to 10.').first()).toBeVisible()
  await expect(page.getByRole('button', { name: 'They came out well' })).toBeDisabled()
})

test('letters go only to whoever agreed, in words that are changed beside a real letter', {
  tag: '@long',
}, async ({ app, page }) => {
  test.slow()
  const { people } = await app.call('person.search', { text: 'zoe' })
  await app.call('intake.record', {
    donor: { personId: people[0]?.personId },
    receivedOn: smallShelf().today,
    gifts: [{ variety: { newVariety: { cropId: 'pea', name: 'Lane Dwarf' } }, amount: '20 seeds' }],
  })
  await fill(app, page)
  await tabTo(page, /^Thank-you letters/)
  await press(page, 'Enter')
  await expect(page.getByRole('listitem').filter({ hasText: 'Ilka Brandt' })).toBeVisible()
  await expect(shown(page, 'Zoë Brontë has not agreed to be written to.')).toBeVisible()
  await expect(page.getByTitle('Thank-you letters, as they will be printed')).toBeVisible()
  await expectNoBarrier(page)
  await tabTo(page, /^Put their letters into the tray/)
  await press(page, 'Enter')
  await expect(shown(page, 'No gift of that time waits for a letter; one donor has not agreed')).toBeVisible()

  await tabTo(page, /^The words of the letter/)
  await press(page, 'Enter')
  await expect(page.getByRole('heading', { name: 'As it would go to Ilka Brandt' })).toBeVisible()
  await expectNoBarrier(page)
  const words = page.getByRole('textbox', { name: 'The letter' })
  await words.focus()
  await press(page, 'ControlOrMeta+End')
  await type(page, ' {kepeer}')
  await expect(shown(page, /No letter knows the field \{kepeer\}/).first()).toBeVisible()
  await page.getByRole('button', { name: 'Save' }).press('Enter')
  await expect(shown(page, /Correct it, or write it without braces/).first()).toBeVisible()
  await expect(words).toHaveValue(/\{kepeer\}$/)
  await words.fill('Bless you, {donor}!')
  await page.getByLabel('Who signs').fill('Ansa Reed')
  await page.getByLabel('Who signs').press('Enter')
  await expect(page.getByRole('contentinfo')).toContainText('Changed the words')
  expect(await app.call('letter.get', {})).toMatchObject({
    words: 'Bless you, {donor}!',
    keeper: 'Ansa Reed',
  })
})

test('fits a narrow window, and what is taken out can be put back', { tag: '@long' }, async ({
  app,
  page,
}) => {
  await fill(app, page)
  await page.setViewportSize({ width: 320, height: 800 })
  await expect(page.getByTitle('Packet labels, as they will be printed')).toBeVisible()
  expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(320)
  await page.setViewportSize({ width: 1280, height: 800 })
  await page.getByRole('button', { name: new RegExp(`take out.*${shelf.tomato.lotNumber}`) }).press('Enter')
  await expect(kind(page, /Packet labels/)).toContainText('3 wait')
  await page.getByRole('button', { name: 'undo' }).press('Enter')
  await expect(kind(page, /Packet labels/)).toContainText('4 wait')
})
