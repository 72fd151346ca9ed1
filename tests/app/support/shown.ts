import type { Locator, Page } from '@playwright/test'

/**
 * What is written for the eye. What a field says is also kept for the ear in a second place, once typing rests: a text
 * looked for on the whole page would be found once or twice, by how quickly the test goes on.
 */
export function shown(
  page: Page,
  text: string | RegExp,
  options: { readonly exact?: boolean } = {},
): Locator {
  return page.getByText(text, options).and(page.locator(':not(.only-aloud)'))
}
