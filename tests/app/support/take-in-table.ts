import { expect, type Page } from '@playwright/test'
import { Keys } from './keys.ts'
import { open } from './open.ts'

/** A field of the table by its whole name. */
export const field = (page: Page, name: string) => page.getByLabel(name, { exact: true })

/** The gifts listed so far. */
export const envelopes = (page: Page) => page.getByRole('region', { name: 'Take in' }).locator('.envelope')

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
