import { expect, test } from './support/test.ts'

test.describe('opening the app', () => {
  test('shows the frame, and the secret leaves the address at once', async ({ app, page }) => {
    await expect(page).toHaveTitle(/Common Drawer/)
    await expect(page.getByRole('link', { name: 'Take in' }).first()).toBeVisible()
    expect(page.url()).not.toContain('secret')
    expect(app.address).toContain('#secret=')
  })

  test('a page that is loaded again goes on working', async ({ app, page }) => {
    await expect(page.getByRole('link', { name: 'Shelf' }).first()).toBeVisible()
    await page.reload()
    await expect(page.getByRole('link', { name: 'Shelf' }).first()).toBeVisible()
    const { lots } = await app.call('collection.about', {})
    expect(lots).toBeGreaterThan(0)
  })

  test('loads nothing from elsewhere', async ({ app, page }) => {
    const { host } = new URL(app.address)
    const elsewhere: string[] = []
    page.on('request', (request) => {
      const { protocol, host: asked } = new URL(request.url())
      if (asked !== host && !['data:', 'blob:'].includes(protocol)) elsewhere.push(request.url())
    })
    await page.reload()
    await expect(page.getByRole('link', { name: 'Shelf' }).first()).toBeVisible()
    expect(elsewhere).toEqual([])
  })
})

test.describe('without the secret', () => {
  test('a page gets nothing of the collection', async ({ app, browser }) => {
    const stranger = await browser.newPage()
    await stranger.goto(new URL(app.address).origin)
    await expect(stranger.locator('body')).not.toContainText('Quillhaven')
    const status = await stranger.evaluate(async () => {
      const response = await fetch('/call', {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify({ operation: 'collection.about', input: {} }),
      })
      return response.status
    })
    expect(status).toBe(403)
    await stranger.close()
  })
})
