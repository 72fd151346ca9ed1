import type { Download } from '@playwright/test'
import { seen } from './seen.ts'
import { goTo, type Tables, tabTo } from './tables.ts'

/** A stocktake of the shelf: every lot looked at, two differ, posted together. */
export async function takeStock(tables: Tables): Promise<void> {
  const { page, keys } = tables
  await goTo(tables, 'Shelf')
  await tabTo(tables, /^Stocktake/)
  await keys.press('Enter')
  await seen(page.getByLabel('Which place?', { exact: true })).toBeFocused()
  await keys.type('wind')
  await keys.press('Enter')
  const found = page.getByLabel('Found', { exact: true })
  await seen(found).toBeFocused()
  const card = page.locator('.table-card')
  const lots = Number(/of (\d+)/.exec((await card.textContent()) ?? '')?.[1])
  for (let at = 1; at <= lots; at++) {
    await seen(card).toContainText(`Lot ${at} of ${lots}`)
    const says = /the book says (?:about )?([\d.,]+ (?:seeds|g|kg))/.exec(
      (await card.textContent()) ?? '',
    )?.[1]
    await keys.type(at === 2 ? 'nothing' : at === 3 ? '5 seeds' : (says ?? 'nothing'))
    await seen(page.locator('.table-total')).toContainText(`${at} of ${lots} looked at`)
    if (at < lots) await keys.press('Enter')
  }
  await keys.press('Shift+Enter')
  await keys.type('spilt at the table')
  await keys.press('Control+Enter')
  await seen(page.getByRole('heading', { name: /^Posted/ })).toBeVisible()
}

/** Takes back the stocktake and, from what was written today, one visit of a member. */
export async function undoTwoMistakes(tables: Tables): Promise<void> {
  const { page, keys } = tables
  await tabTo(tables, /^undo/)
  await keys.press('Enter')
  await seen(page.getByRole('contentinfo')).toContainText('Undone')
  await tabTo(tables, /^what was written today/)
  await keys.press('Enter')
  await seen(page.getByRole('heading', { name: 'What was written', level: 1 })).toBeVisible()
  await tabTo(tables, /^undo this entry: Handed out/)
  await keys.press('Enter')
  await seen(page.getByText('(undone)')).toHaveCount(2)
}

/** Prints the labels of the day and the letters, as they will come out, and notes that they came out well. */
export async function printTheDay(
  tables: Tables,
  keep: (name: string, file: Download) => Promise<void>,
): Promise<void> {
  const { page, keys, app } = tables
  await goTo(tables, 'Print')
  for (const [name, words] of [
    ['labels', /^Packet labels/],
    ['letters', /^Thank-you letters/],
  ] as const) {
    await tabTo(tables, words)
    await keys.press('Enter')
    const pages = page.getByTitle(/as they will be printed/)
    await seen(pages).toBeVisible()
    await keys.press('F6')
    await tabTo(tables, /^Save .*pdf/)
    const saved = page.waitForEvent('download')
    await keys.press('Enter')
    await keep(`${name}.pdf`, await saved)
    await tabTo(tables, /^They came out well/)
    await keys.press('Enter')
    await seen(page.getByRole('contentinfo')).toContainText('Printed')
  }
  const { groups } = await app.call('tray.list', {})
  seen(groups.filter(({ kind }) => kind === 'label')).toEqual([])
}
