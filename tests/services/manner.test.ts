import { afterEach, expect, it } from 'vitest'
import type { Value } from '../../db/contract/contract.ts'
import { readPdf } from '../builders/read-pdf.ts'
import { aCollection, aGift, type TemporaryCollection, TODAY } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const print = async (kind: 'label' | 'letter') => {
  const items = (await test.call('tray.list', {})).groups.find((group) => group.kind === kind)?.items ?? []
  const itemIds = items.map(({ itemId }) => itemId)
  const sheet = kind === 'label' ? { sheet: 'a4-21' as const } : {}
  return textOf(await test.call('tray.render', { kind, itemIds, ...sheet }))
}

async function textOf({ pdf, warnings }: Value<'tray.render'>): Promise<string> {
  expect(warnings).toEqual([])
  const read = await readPdf(new Uint8Array(Buffer.from(pdf, 'base64')))
  const text = read.pages.flatMap((page) => page.characters.map(({ character }) => character)).join('')
  read.close()
  return text.replace(/\s+/g, ' ')
}

it('writes masses and numbers as the library does, on paper and in sentences, and keeps the milligrams', async () => {
  test = await aCollection()
  const { taken } = await test.call('intake.record', {
    donor: { newPerson: { name: 'Ilka Brandt', address: '3 Hollow Lane', mayWrite: true } },
    receivedOn: TODAY,
    gifts: [aGift({ amount: '0.5 lb', sample: '100 weigh 12.5 g' }), aGift({ amount: '1.240 seeds' })],
  })
  const [weighed, counted] = taken.map(({ lotId }) => lotId)
  const record = async (lotId = 0) => (await test.call('lot.get', { lotId })).quantity
  const before = await record(weighed)
  expect(before).toMatchObject({ massMg: 226_796, words: 'about 1,810 seeds, about 226.8 g' })
  expect(await print('letter')).toContain('about 226.8 g')

  await test.call('settings.change', { settings: { locale: 'de-DE', massUnits: 'ounces' } })
  expect(await record(weighed)).toMatchObject({ ...before, words: 'about 1.810 seeds, 8 oz' })
  expect(await record(counted)).toMatchObject({ words: '1.240 seeds' })
  expect(await print('letter')).toMatch(/ 8 oz.*1\.240 seeds/)
  expect(await print('label')).toMatch(/about 1\.810 seeds, 8 oz.*1\.240 seeds/)
  const tooMuch = await test.refused('withdrawal.record', {
    person: { newPerson: { name: 'Teodor Ash' } },
    on: TODAY,
    lines: [{ lotId: weighed ?? 0, amount: '9 oz' }],
  })
  expect(tooMuch).toMatchObject({ choices: ['8 oz'] })
  expect(tooMuch.sentence).toMatch(/8 oz, less than the 2\.04\d seeds, 9 oz asked for/)
})

it('writes thousands with a space where the locale does, in letters that the paper has', async () => {
  test = await aCollection()
  await test.call('settings.change', { settings: { locale: 'fr-FR' } })
  await test.call('intake.record', {
    donor: { newPerson: { name: 'Ilka Brandt', address: '3 Hollow Lane', mayWrite: true } },
    receivedOn: TODAY,
    gifts: [aGift({ amount: '1 240 seeds' })],
  })
  expect(await print('label')).toContain('1 240 seeds')
})

it('refuses a language tag that nothing can be written by', async () => {
  test = await aCollection()
  expect(() => test.call('settings.change', { settings: { locale: 'en-12' } })).toThrow(/language tag/)
})
