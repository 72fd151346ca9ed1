import { readFile } from 'node:fs/promises'
import { expectNoBarrier } from './support/axe.ts'
import { open } from './support/open.ts'
import { expect, test } from './support/test.ts'

test.use({ drawer: 'empty' })

const PASSPORTS =
  'INSTCODE\tACCENUMB\tGENUS\tSPECIES\tACCENAME\tDONORNAME\tSAMPSTAT\n' +
  'XYZ001\tW-7\tPhaseolus\tvulgaris\tWeir Runner\tAda Fennimore\t305\n'

test('passports are looked at before they come in and before they go out, and people stay here unless ticked', {
  tag: '@long',
}, async ({ app, page }) => {
  await open(page, '/take-in/list')
  await page
    .getByLabel(/^The list: a workbook/)
    .setInputFiles({ name: 'mcpd.txt', mimeType: 'text/plain', buffer: Buffer.from(PASSPORTS) })
  await expect(page.getByRole('region', { name: 'What does not fit' })).toContainText('SAMPSTAT 305')
  await page.getByLabel(/^Some rows do not say how much seed/).selectOption('empty')
  const takeIn = page.getByRole('button', { name: 'Take 1 gift in' })
  await expect(takeIn).toBeEnabled()
  await takeIn.press('Enter')
  await expect(page.getByRole('heading', { name: 'One gift came in' })).toBeFocused()

  await open(page, '/in-and-out')
  await page.getByRole('button', { name: 'Look at the passports' }).press('Enter')
  const out = page.getByRole('region', { name: 'Going out' })
  await expect(out).toContainText('SAMPSTAT 305 is not in its list of codes')
  await expect(out.getByRole('status').filter({ hasText: 'People are left out' })).toBeVisible()
  await expectNoBarrier(page)
  const saved = async (word: string) => {
    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: word }).press('Enter'),
    ])
    return readFile(await file.path(), 'utf8')
  }
  expect(await saved('Save the passports')).not.toContain('Fennimore')
  await page.getByLabel('with names and contacts of people').press('Space')
  await page.getByRole('button', { name: 'Look at the passports' }).press('Enter')
  await expect(out.getByRole('status').filter({ hasText: 'It holds people’s names' })).toBeVisible()
  expect(await saved('Save the passports')).toContain('Ada Fennimore')
  expect(await saved('Save as Darwin Core')).toContain('Phaseolus')
  expect((await app.call('collection.get', {})).accessions).toBe(1)
})

test('a first name that stands in a text is shown where it stands, and goes as somebody once ticked', {
  tag: '@long',
}, async ({ app, page }) => {
  await app.call('intake.record', {
    donor: { newPerson: { name: 'Rosalind Penhallow', town: '' } },
    receivedOn: '2026-01-02',
    gifts: [
      {
        variety: { newVariety: { cropId: 'bean', name: 'Ferry Blue' } },
        amount: '300 seeds',
        story: 'Rosalind grew it by the lock each year.',
      },
    ],
  })
  await open(page, '/in-and-out')
  await page.getByRole('button', { name: 'Look for names' }).press('Enter')
  const names = page.getByRole('list', { name: 'Names in texts' })
  await names.getByText(/^in 1 text/).press('Enter')
  await expect(names.getByText('Rosalind grew it by the lock each year.')).toBeVisible()
  await expectNoBarrier(page)
  await names.getByLabel('say somebody for Rosalind').press('Space')
  await expect(page.getByRole('contentinfo')).toContainText('Changed the settings')
  await expect(names.getByLabel('say somebody for Rosalind')).toBeChecked()
  const { html } = await app.call('catalogue.export', {})
  expect(html).not.toContain('Rosalind')
})
