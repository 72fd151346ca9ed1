import type { Page } from '@playwright/test'

/** Watches what a page asks of the host. What it answers waits until nothing is asked and the page stands as it will. */
export function calmOf(page: Page): () => Promise<void> {
  const asked = new Set<unknown>()
  page.on('request', (request) => request.url().endsWith('/call') && asked.add(request))
  page.on('requestfinished', (request) => asked.delete(request))
  page.on('requestfailed', (request) => asked.delete(request))
  return async () => {
    let calm = 0
    while (calm < 3) {
      await page.evaluate('new Promise((drawn) => requestAnimationFrame(() => setTimeout(drawn, 15)))')
      calm = asked.size === 0 ? calm + 1 : 0
    }
  }
}
