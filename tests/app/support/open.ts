import type { Page } from '@playwright/test'

/** Goes to an address inside the app, such as /shelf/lot/3. */
export async function open(page: Page, path: string): Promise<void> {
  await page.goto(`${new URL(page.url()).origin}/#${path}`)
}
