import { expectNoBarrier } from './support/axe.ts'
import { press, type } from './support/keys.ts'
import { open } from './support/open.ts'
import { shown } from './support/shown.ts'
import { LONG_NAME } from './support/small-shelf.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'empty' })

test.describe('with a donor in the book', () => {
  test.use({ drawer: 'shelf' })

  test('finds somebody by a few letters and opens the card, by keyboard alone', { tag: '@long' }, async ({
    app,
    page,
  }) => {
    await app.call('person.create', { name: `Wilhelmina ${LONG_NAME}`, roles: ['member'] })
    await open(page, '/people')
    await expect(shown(page, '2 people')).toBeVisible()
    await expectNoBarrier(page)
    await page.getByRole('textbox', { name: 'Name', exact: true }).focus()
    await type(page, 'bron')
    await expect(shown(page, '1 person')).toBeVisible()
    await press(page, 'Tab', 'Tab', 'Enter')
    const card = page.getByRole('article', { name: 'Zoë Brontë' })
    await expect(card.getByText('a donor')).toBeVisible()
    await expect(card.getByRole('region', { name: 'Gave', exact: true }).getByRole('listitem')).toHaveCount(3)
    await expectNoBarrier(page)
  })
})

test('changes a card, notes the day of consent, and takes the change back', { tag: '@long' }, async ({
  app,
  page,
}) => {
  const { personId } = await app.call('person.create', { name: 'Ilka Brand' })
  await open(page, `/people/${personId}`)
  await page.getByRole('button', { name: 'Change' }).focus()
  await press(page, 'Enter')
  await expect(page.getByRole('textbox', { name: 'Name', exact: true }).last()).toBeFocused()
  await press(page, 'End')
  await type(page, 't')
  await page.getByLabel('E-mail').focus()
  await type(page, 'no address')
  await press(page, 'Enter')
  await expect(shown(page, 'That does not look like an e-mail address.')).toBeVisible()
  await expectNoBarrier(page)
  await page.getByLabel('E-mail').fill('ilka@example.org')
  await page.getByLabel('Language of letters and slips').selectOption('Español')
  await page.getByLabel('We may write to them').focus()
  await press(page, 'Space', 'Enter')
  await expect(page.getByRole('heading', { name: 'Ilka Brandt' })).toBeVisible()
  await expect(shown(page, /agreed on/)).toBeVisible()
  await expect(shown(page, 'Español')).toBeVisible()
  await page.getByRole('button', { name: /undo/i }).focus()
  await press(page, 'Enter')
  await expect(page.getByRole('heading', { name: 'Ilka Brand', exact: true })).toBeVisible()
  const erase = page.getByRole('button', { name: 'Erase', exact: true })
  await erase.press('Enter')
  await expect(page.getByRole('button', { name: 'Not now' })).toBeFocused()
  await press(page, 'Escape')
  await expect(erase).toBeFocused()
})

test('joins two records after a look at both, and takes it back from the foot line', {
  tag: '@long',
}, async ({ app, page }) => {
  const { personId } = await app.call('person.create', { name: 'Ilka Brandt', town: 'Quillhaven' })
  await app.call('person.create', { name: 'I. Sommer', email: 'ilka@example.org' })
  await open(page, `/people/${personId}`)
  await page.getByRole('button', { name: 'Join with another record' }).focus()
  await press(page, 'Enter')
  await expect(page.getByRole('combobox', { name: 'The other record' })).toBeFocused()
  await type(page, 'somm')
  await expect(page.getByRole('option', { name: /I. Sommer/ })).toBeVisible()
  await press(page, 'Enter')
  await expect(page.getByRole('cell', { name: 'ilka@example.org' })).toBeVisible()
  await expectNoBarrier(page)
  await page.getByRole('button', { name: 'Join, and keep Ilka Brandt' }).focus()
  await press(page, 'Enter')
  await expect(shown(page, '1 person')).toBeVisible()
  await expect(shown(page, 'Also in the book as')).toBeVisible()
  await expectNoBarrier(page)
  await page.getByRole('button', { name: /undo/i }).focus()
  await press(page, 'Enter')
  await expect(shown(page, '2 people')).toBeVisible()
})

test('erases somebody, asks about what may be a plant, and lets go of the older backups', {
  tag: '@long',
}, async ({ app, page }) => {
  const { personId } = await app.call('person.create', { name: 'Ilka Brandt', email: 'ilka@example.org' })
  await app.call('variety.create', { cropId: 'bean', name: 'Brandt’s Pole' })
  await app.call('backup.create', {})
  await open(page, `/people/${personId}`)
  await page.getByRole('button', { name: 'Erase' }).focus()
  await press(page, 'Enter')
  await expect(page.getByRole('group', { name: /texts? stays?/ })).toBeVisible()
  const named = page.getByRole('checkbox', { name: 'variety: name: Brandt’s Pole' })
  await expect(named).not.toBeChecked()
  await expectNoBarrier(page)
  await page.getByRole('button', { name: 'Erase for good' }).focus()
  await press(page, 'Enter')
  await expect(page.getByRole('heading', { name: /^Former person/ })).toBeVisible()
  await expect(page.getByRole('button', { name: 'Not now' })).toBeFocused()
  await expect(shown(page, /from before in the Backups folder/)).toBeVisible()
  await expectNoBarrier(page)
  await page.getByRole('button', { name: 'Make a new backup and delete the old ones' }).focus()
  await press(page, 'Enter')
  await expect(shown(page, /deleted \d older/)).toBeVisible()
  expect((await app.call('backup.list', {})).backups).toHaveLength(1)
  expect((await app.call('variety.search', { text: 'brandt' })).varieties).toHaveLength(1)
})

test('says so where nobody is in the book, and folds to one pane', { tag: '@long' }, async ({
  app,
  page,
}) => {
  await open(page, '/people')
  await expect(shown(page, 'Nobody is in the book yet.')).toBeVisible()
  await expectNoBarrier(page)
  await app.call('person.create', { name: `Wilhelmina ${LONG_NAME}` })
  await page.reload()
  await page.setViewportSize({ width: 320, height: 640 })
  await page.getByRole('link', { name: /Wilhelmina/ }).focus()
  await press(page, 'Enter')
  await expect(page.getByRole('heading', { name: /Wilhelmina/ })).toBeVisible()
  await expectNoBarrier(page)
  await page.getByRole('button', { name: 'Back to everybody' }).focus()
  await press(page, 'Enter')
  await expect(page.getByRole('link', { name: /Wilhelmina/ })).toBeVisible()
})
