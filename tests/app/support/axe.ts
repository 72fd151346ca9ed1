import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect } from './test.ts'

/** No rule of axe is broken on the page as it stands, or in a part of it, in light and in dark. */
export async function expectNoBarrier(page: Page, within = 'html'): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    const { violations } = await new AxeBuilder({ page }).include(within).analyze()
    expect(
      violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`),
      `no barrier in ${colorScheme}`,
    ).toEqual([])
  }
  await page.emulateMedia({ colorScheme: null })
}
