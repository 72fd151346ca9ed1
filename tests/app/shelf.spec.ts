import { readFileSync } from 'node:fs'
import { expectNoBarrier } from './support/axe.ts'
import { press } from './support/keys.ts'
import { open } from './support/open.ts'
import { shown } from './support/shown.ts'
import { LONG_NAME, type SmallShelf, smallShelf } from './support/small-shelf.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'empty' })

test('an empty shelf says how to fill it', async ({ app, page }) => {
  await open(page, '/shelf')
  await expect(shown(page, 'The shelf is empty.')).toBeVisible()
  await expectNoBarrier(page)
  await page.getByRole('link', { name: 'Take in the first gift' }).click()
  await expect(page).toHaveURL(/#\/take-in$/)
  expect((await app.call('collection.get', {})).lots).toBe(0)
})

test.describe('a shelf of a few lots', () => {
  let shelf: SmallShelf

  test.use({ drawer: 'shelf' })
  test.beforeEach(async ({ page }) => {
    shelf = smallShelf()
    await expect(page.getByRole('row', { name: /Widow Tarn/ })).toBeVisible()
  })

  test('is narrowed by letters without accents and by choices, shown whole again, and sorted by its headings', async ({
    page,
  }) => {
    await page.getByRole('searchbox').fill('hrasek')
    await expect(page.getByRole('row')).toHaveCount(2)
    await expect(shown(page, '1 lot', { exact: true })).toBeVisible()
    await page.getByRole('button', { name: 'show all' }).click()
    await expect(page.getByRole('row')).toHaveCount(4)
    await page.getByLabel('in quarantine').check()
    await expect(page.getByRole('row', { name: new RegExp(LONG_NAME) })).toBeVisible()
    await expect(page.getByRole('row')).toHaveCount(2)
    await page.getByLabel('Role').selectOption('reserve')
    await expect(shown(page, 'No lot fits all of that.')).toBeVisible()
    await page.getByRole('button', { name: 'Show the whole shelf' }).click()
    await expect(page.getByRole('row')).toHaveCount(4)
    const heading = page.getByRole('columnheader', { name: /Holds/ })
    await heading.getByRole('button').click()
    await expect(heading).toHaveAttribute('aria-sort', 'ascending')
    await expect(page.getByRole('row').nth(1)).toContainText('Widow Tarn')
    await heading.getByRole('button').press('Enter')
    await expect(heading).toHaveAttribute('aria-sort', 'descending')
    await expect(page.getByRole('row').nth(3)).toContainText('Widow Tarn')
  })

  test('is gone through by arrows; Enter goes to the card', async ({ page }) => {
    const grid = page.getByRole('grid')
    await grid.focus()
    await press(page, 'ArrowDown')
    await expect(page).toHaveURL(new RegExp(`/lot/${shelf.bean.lotId}$`))
    await press(page, 'ArrowDown')
    await expect(page).toHaveURL(new RegExp(`/lot/${shelf.tomato.lotId}$`))
    await expect(grid).toHaveAttribute('aria-activedescendant', `lot-${shelf.tomato.lotId}`)
    await expect(page.getByRole('article', { name: /Widow Tarn/ })).toBeVisible()
    await press(page, 'End')
    await expect(page.getByRole('article', { name: new RegExp(LONG_NAME) })).toBeVisible()
    await press(page, 'Enter')
    await expect(page.getByRole('heading', { name: LONG_NAME })).toBeFocused()
  })

  test('on a narrow screen arrows mark a row, Enter opens its card, and back leads to the list', async ({
    page,
  }) => {
    await page.setViewportSize({ width: 800, height: 700 })
    await page.getByRole('grid').focus()
    await press(page, 'ArrowDown')
    await press(page, 'ArrowDown')
    await expect(page.getByRole('article')).toHaveCount(0)
    await expect(page.getByRole('row', { name: /Widow Tarn/ })).toHaveAttribute('aria-selected', 'true')
    await press(page, 'Enter')
    await expect(page.getByRole('heading', { name: 'Widow Tarn' })).toBeFocused()
    await expect(page.getByRole('grid')).toBeHidden()
    await page.getByRole('link', { name: 'Back to the list' }).click()
    await expect(page.getByRole('grid')).toBeFocused()
    await expect(page.getByRole('row', { name: /Widow Tarn/ })).toHaveAttribute('aria-selected', 'true')
  })

  test('several lots are ticked by keyboard, moved together, saved as a table and taken stock of', {
    tag: '@long',
  }, async ({ app, page }) => {
    const ticked = page.getByRole('region', { name: 'Ticked lots' })
    await page.getByRole('grid').focus()
    await press(page, 'ArrowDown')
    await press(page, 'Space')
    await expect(ticked).toContainText('1 lot ticked')
    await press(page, 'ArrowDown')
    await expect(page.getByRole('article', { name: /Widow Tarn/ })).toBeVisible()
    await press(page, 'Space')
    await expect(ticked).toContainText('2 lots ticked')
    await expectNoBarrier(page)

    await ticked.getByRole('button', { name: 'Move', exact: true }).press('Enter')
    await ticked.getByLabel('To', { exact: true }).selectOption('Seed room / Window shelf')
    await ticked.getByRole('button', { name: 'Move 2 lots there' }).press('Enter')
    await expect(ticked.getByRole('button', { name: 'Move', exact: true })).toBeFocused()
    await expect
      .poll(async () => (await app.call('lot.get', { lotId: shelf.tomato.lotId })).place)
      .toBe('Seed room / Window shelf')

    const container = ticked.getByRole('button', { name: 'Container' })
    await container.press('Enter')
    const kept = ticked.getByRole('form', { name: 'What they are kept in' })
    await kept.getByLabel('In', { exact: true }).selectOption('a jar')
    await kept.getByLabel('airtight').press('Space')
    await kept.getByRole('button', { name: 'Save for 2 lots' }).press('Enter')
    await expect(container).toBeFocused()
    for (const { lotId } of [shelf.bean, shelf.tomato])
      expect((await app.call('lot.get-storage', { lotId })).container).toMatchObject({
        kind: 'jar',
        airtight: true,
      })

    await ticked.getByRole('button', { name: 'Labels to the tray' }).press('Enter')
    await expect(shown(page, '2 things put into the print tray')).toBeVisible()

    const downloading = page.waitForEvent('download')
    await ticked.getByRole('button', { name: 'Save as a table' }).press('Enter')
    const file = await downloading
    expect(file.suggestedFilename()).toMatch(/^lots-.*\.csv$/)
    expect(readFileSync(await file.path(), 'utf8')).toContain('Hrášek’s Climber')

    await ticked.getByRole('link', { name: 'Take stock of them' }).press('Enter')
    await expect(page.getByRole('heading', { name: 'Stocktake: the lots you ticked' })).toBeVisible()
    await expect(shown(page, 'Widow Tarn').first()).toBeVisible()
    await page.goBack()
    await page.getByRole('checkbox', { name: 'tick all lots of this list' }).click()
    await expect(ticked).toContainText('3 lots ticked')
    await ticked.getByRole('button', { name: 'untick all' }).press('Enter')
    await expect(ticked).toHaveCount(0)
  })

  test('shows how it stands while no card lies open', { tag: '@long' }, async ({ page }) => {
    await expect(page.getByRole('heading', { name: 'How the shelf stands' })).toBeVisible()
    await page.getByRole('button', { name: /rescue/ }).click()
    await expect(page.getByLabel('State')).toHaveValue('rescue')
    await expect(page.getByRole('row', { name: /Widow Tarn/ })).toBeVisible()
    await expect(page.getByRole('row', { name: /Hrášek/ })).toHaveCount(0)
  })

  test('adds a column and remembers it', { tag: '@long' }, async ({ page }) => {
    await page.getByLabel('show place').check()
    await expect(page.getByRole('columnheader', { name: 'Place' })).toBeVisible()
    await expect(page.getByRole('row', { name: /Hrášek/ })).toContainText('Window shelf')
    await page.reload()
    await expect(page.getByRole('columnheader', { name: 'Place' })).toBeVisible()
  })

  test('a card says how the lot stands, with the arithmetic line by line, what nobody weighed, and its cautions', async ({
    app,
    page,
  }) => {
    await open(page, `/shelf/lot/${shelf.bean.lotId}`)
    const card = page.getByRole('article')
    const { stock } = await app.call('lot.get', { lotId: shelf.bean.lotId })
    await expect(card.getByRole('img', { name: stock.sentence })).toBeVisible()
    await expect(card.getByText(stock.arithmetic[0] ?? 'no arithmetic')).toBeHidden()
    await card.getByText('How this is worked out').click()
    for (const line of stock.arithmetic) await expect(card.getByText(line, { exact: true })).toBeVisible()
    await expect(card.getByText(/usual for .*not measured/)).toHaveCount(2)
    await open(page, `/shelf/lot/${shelf.maize.lotId}`)
    const { cautions } = await app.call('lot.get', { lotId: shelf.maize.lotId })
    const part = page.getByRole('region', { name: 'Cautions' })
    await expect(part).toContainText(cautions[0]?.text ?? 'no caution')
    await expect(part).toContainText('not to be handed out')
  })

  test('what is half typed stays, whatever card is looked at meanwhile', { tag: '@long' }, async ({
    page,
  }) => {
    await open(page, `/shelf/lot/${shelf.bean.lotId}`)
    await page.getByRole('button', { name: 'Take stock' }).click()
    await page.getByLabel(/^Found/).fill('12,5')
    await page.getByLabel(/^Found/).press('Escape')
    await expect(page.getByRole('button', { name: 'Take stock (begun)' })).toBeFocused()
    await page.getByRole('grid').focus()
    await press(page, 'ArrowDown')
    await expect(page.getByRole('article', { name: /Widow Tarn/ })).toBeVisible()
    await press(page, 'ArrowUp')
    await page.getByRole('button', { name: 'Take stock (begun)' }).click()
    await expect(page.getByLabel(/^Found/)).toHaveValue('12,5')
  })

  test('an entry of the book is taken back on the card', { tag: '@long' }, async ({ page, app }) => {
    await app.call('lot.discard', {
      lotId: shelf.bean.lotId,
      on: shelf.today,
      amount: '40 seeds',
      reason: 'weevils',
    })
    await open(page, `/shelf/lot/${shelf.bean.lotId}`)
    const line = page.getByRole('row', { name: /thrown away/ })
    await expect(line).toContainText('260')
    await line.getByRole('button', { name: /undo this entry/ }).click()
    await expect(line).toContainText('this entry was undone')
    expect((await app.call('lot.get', { lotId: shelf.bean.lotId })).quantity.count).toBe(300)
  })

  test('long names fold and nothing runs off, card and list alike', { tag: '@long' }, async ({ page }) => {
    await open(page, `/shelf/lot/${shelf.maize.lotId}`)
    await expect(page.getByRole('article')).toBeVisible()
    for (const width of [320, 1280]) {
      await page.setViewportSize({ width, height: 800 })
      const tooWide = await page.evaluate<number>(`Math.max(
        ...[document.documentElement, ...document.querySelectorAll('.shelf-card, .shelf-scroller')].map(
          (part) => part.scrollWidth - part.clientWidth))`)
      expect(tooWide, `at ${width} px`).toBeLessThanOrEqual(0)
    }
  })

  test('labels are made as a PDF that can be saved', async ({ page }) => {
    await open(page, `/shelf/lot/${shelf.bean.lotId}`)
    await page.getByRole('button', { name: 'Print label' }).click()
    await page.getByLabel('How many').fill('2')
    await page.getByRole('radio', { name: 'label 3, row 1' }).check()
    await expect(shown(page, 'First free label: 3')).toBeVisible()
    await page.getByRole('button', { name: 'Make the labels' }).click()
    const downloading = page.waitForEvent('download')
    await page.getByRole('link', { name: /^Save .*\.pdf$/ }).click()
    const file = await (await downloading).path()
    expect(readFileSync(file).subarray(0, 5).toString('latin1')).toBe('%PDF-')
  })
})

test('a long shelf draws only what is in view, and the last row is one key away', { tag: '@long' }, async ({
  page,
  app,
}) => {
  const { today } = await app.call('collection.get', {})
  const { crops } = await app.call('crop.list', {})
  for (let visit = 0; visit < 4; visit += 1) {
    await app.call('intake.record', {
      donor: null,
      receivedOn: today,
      gifts: Array.from({ length: 100 }, (_, i) => ({
        variety: {
          newVariety: { cropId: crops[i % crops.length]?.cropId, name: `Variety ${visit * 100 + i + 1}` },
        },
        amount: '60 seeds',
      })),
    })
  }
  await open(page, '/shelf')
  await page.reload()
  await expect(shown(page, '400 lots')).toBeVisible()
  await page.getByRole('grid').focus()
  await press(page, 'End')
  await expect(page.getByRole('article', { name: /Variety 400,/ })).toBeVisible()
  await expect(page.getByRole('row', { name: /Variety 400/ })).toBeInViewport()
  expect(await page.getByRole('grid').getByRole('row').count()).toBeLessThan(60)
  await page.getByRole('grid').focus()
  await press(page, 'Home')
  await expect(page.getByRole('article', { name: /Variety 1,/ })).toBeVisible()
})
