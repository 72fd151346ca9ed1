import { open } from './support/open.ts'
import { shown } from './support/shown.ts'
import { smallShelf } from './support/small-shelf.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'shelf' })

test('one window sees what another wrote, and neither loses an update', async ({ app, page, context }) => {
  const { bean, today } = smallShelf()
  const other = await context.newPage()
  await other.goto(app.address)
  for (const window of [page, other]) await open(window, `/shelf/lot/${bean.lotId}`)
  await expect(shown(other, '300 seeds', { exact: true }).first()).toBeVisible()

  const visit = (amount: string) =>
    app.call('withdrawal.record', { person: null, on: today, lines: [{ lotId: bean.lotId, amount }] })
  const since = Date.now()
  await Promise.all([visit('20 seeds'), visit('25 seeds')])
  for (const window of [page, other])
    await expect(shown(window, '255 seeds', { exact: true }).first()).toBeVisible()
  console.log(`another window's two hand-outs were seen after ${Date.now() - since} ms`)
  await other.close()
})
