import type { Page } from '@playwright/test'
import { expectNoBarrier } from './support/axe.ts'
import { open } from './support/open.ts'
import { fillSmallShelf, LONG_NAME } from './support/small-shelf.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'empty' })

const key = (page: Page, ...names: string[]) =>
  names.reduce((before, name) => before.then(() => page.keyboard.press(name)), Promise.resolve())

test('finds somebody by a few letters and opens the card, by keyboard alone', async ({ app, page }) => {
  await fillSmallShelf(app)
  await app.call('person.create', { name: `Wilhelmina ${LONG_NAME}`, roles: ['member'] })
  await open(page, '/people')
  await expect(page.getByText('2 people')).toBeVisible()
  await expectNoBarrier(page)
  await page.getByRole('textbox', { name: 'Name', exact: true }).focus()
  await page.keyboard.type('bron', { delay: 60 })
  await expect(page.getByText('1 person')).toBeVisible()
  await key(page, 'Tab', 'Tab', 'Enter')
  const card = page.getByRole('article', { name: 'Zoë Brontë' })
  await expect(card.getByText('a donor')).toBeVisible()
  await expect(card.getByRole('region', { name: 'Gave', exact: true }).getByRole('listitem')).toHaveCount(3)
  await expectNoBarrier(page)
})

test('changes a card, notes the day of consent, and takes the change back', async ({ app, page }) => {
  const { personId } = await app.call('person.create', { name: 'Ilka Brand' })
  await open(page, `/people/${personId}`)
  await page.getByRole('button', { name: 'Change' }).focus()
  await key(page, 'Enter')
  await expect(page.getByRole('textbox', { name: 'Name', exact: true }).last()).toBeFocused()
  await key(page, 'End')
  await page.keyboard.type('t', { delay: 60 })
  await page.getByLabel('E-mail').focus()
  await page.keyboard.type('no address', { delay: 60 })
  await key(page, 'Enter')
  await expect(page.getByText('That does not look like an e-mail address.')).toBeVisible()
  await expectNoBarrier(page)
  await page.getByLabel('E-mail').fill('ilka@example.org')
  await page.getByLabel('We may write to them').focus()
  await key(page, 'Space', 'Enter')
  await expect(page.getByRole('heading', { name: 'Ilka Brandt' })).toBeVisible()
  await expect(page.getByText(/agreed on/)).toBeVisible()
  await page.getByRole('button', { name: /undo/i }).focus()
  await key(page, 'Enter')
  await expect(page.getByRole('heading', { name: 'Ilka Brand', exact: true })).toBeVisible()
})

test('joins two records after a look at both, and takes it back from the foot line', async ({
  app,
  page,
}) => {
  const { personId } = await app.call('person.create', { name: 'Ilka Brandt', town: 'Quillhaven' })
  await app.call('person.create', { name: 'I. Sommer', email: 'ilka@example.org' })
  await open(page, `/people/${personId}`)
  await page.getByRole('button', { name: 'Join with another record' }).focus()
  await key(page, 'Enter')
  await expect(page.getByRole('combobox', { name: 'The other record' })).toBeFocused()
  await page.keyboard.type('somm', { delay: 60 })
  await expect(page.getByRole('option', { name: /I. Sommer/ })).toBeVisible()
  await key(page, 'Enter')
  await expect(page.getByRole('cell', { name: 'ilka@example.org' })).toBeVisible()
  await expectNoBarrier(page)
  await page.getByRole('button', { name: 'Join, and keep Ilka Brandt' }).focus()
  await key(page, 'Enter')
  await expect(page.getByText('1 person')).toBeVisible()
  await expect(page.getByText('Also in the book as')).toBeVisible()
  await expectNoBarrier(page)
  await page.getByRole('button', { name: /undo/i }).focus()
  await key(page, 'Enter')
  await expect(page.getByText('2 people')).toBeVisible()
})

test('says so where nobody is in the book, and folds to one pane', async ({ app, page }) => {
  await open(page, '/people')
  await expect(page.getByText('Nobody is in the book yet.')).toBeVisible()
  await expectNoBarrier(page)
  await app.call('person.create', { name: `Wilhelmina ${LONG_NAME}` })
  await page.reload()
  await page.setViewportSize({ width: 320, height: 640 })
  await page.getByRole('link', { name: /Wilhelmina/ }).focus()
  await key(page, 'Enter')
  await expect(page.getByRole('heading', { name: /Wilhelmina/ })).toBeVisible()
  await expectNoBarrier(page)
  await page.getByRole('button', { name: 'Back to everybody' }).focus()
  await key(page, 'Enter')
  await expect(page.getByRole('link', { name: /Wilhelmina/ })).toBeVisible()
})
