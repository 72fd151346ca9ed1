import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect } from './test.ts'

/** What is to be looked at in each appearance: everything in the first, and what rests on colour in the other. */
const APPEARANCES = [
  ['light', []],
  ['dark', ['color-contrast', 'link-in-text-block']],
] as const

/** No rule of axe is broken on the page as it stands, or in a part of it, in light and in dark. */
export async function expectNoBarrier(page: Page, within = 'html'): Promise<void> {
  for (const [colorScheme, rules] of APPEARANCES) {
    await page.emulateMedia({ colorScheme })
    // The other mode opens a page of its own for each look, to reach into frames of strangers: there are none.
    const axe = new AxeBuilder({ page }).include(within).setLegacyMode(true)
    const { violations } = await (rules.length === 0 ? axe : axe.withRules([...rules])).analyze()
    expect(
      violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`),
      `no barrier in ${colorScheme}`,
    ).toEqual([])
  }
  await page.emulateMedia({ colorScheme: null })
}
