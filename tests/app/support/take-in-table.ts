import { expect, type Page } from '@playwright/test'
import { Keys } from './keys.ts'
import { open } from './open.ts'

/** A field of the table by its whole name. */
export const field = (page: Page, name: string) => page.getByLabel(name, { exact: true })

/** The lines listed so far at a table: each can be taken off again. */
export const listedLines = (page: Page, table: string) =>
  page
    .getByRole('region', { name: table })
    .getByRole('listitem')
    .filter({ has: page.getByRole('button', { name: /^remove/ }) })

/** The gifts listed so far. */
export const envelopes = (page: Page) => listedLines(page, 'Take in')

/** Opens the table, ready for the first letter of the donor. */
export async function atTheTable(page: Page): Promise<Keys> {
  await open(page, '/take-in')
  await expect(page.getByRole('combobox', { name: 'Who brings it?' })).toBeFocused()
  return new Keys(page)
}

/** Types one gift from the variety on; the sample stays empty. */
export async function gift(
  keys: Keys,
  variety: string,
  crop: string,
  harvest: string,
  amount: string,
): Promise<void> {
  await keys.type(variety)
  await keys.press('Enter')
  await keys.type(crop)
  await keys.press('Enter')
  await keys.type(harvest)
  await keys.press('Enter')
  await keys.type(amount)
  await keys.press('Enter', 'Enter')
}
