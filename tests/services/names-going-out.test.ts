import { expect, it, onTestFinished } from 'vitest'
import { aCollection, aGift, TODAY } from '../builders/temporary-collection.ts'

async function aBook() {
  const test = await aCollection()
  onTestFinished(() => test.remove())
  await test.call('intake.record', {
    donor: { newPerson: { name: 'Molly Brandt', creditAs: 'the Brandt family' } },
    receivedOn: TODAY,
    gifts: [
      aGift({
        variety: { newVariety: { cropId: 'bean', name: 'Aunt Molly' } },
        story: 'Molly had it of Molly Brandt’s mother; the family grew it.',
        terms: 'Ask Brandt first.',
        amount: '900 g',
      }),
    ],
  })
  return test
}

it('points out first names and surnames in texts that go out, with where, and names no more', async () => {
  const test = await aBook()
  const { names } = await test.call('person.list-names-in-texts', {})
  expect(names.map(({ name, masked, total }) => [name, masked, total])).toEqual([
    ['brandt', false, 1],
    ['molly', false, 1],
  ])
  expect(names[0]?.places).toEqual([{ where: 'accession HL26-0001: terms', text: 'Ask Brandt first.' }])
})

it('leaves out those that the keeper chose, wherever a text goes out, and lets the variety keep its name', async () => {
  const test = await aBook()
  const page = async () => (await test.call('catalogue.export', {})).html
  expect(await page()).toContain('Molly had it of somebody’s mother')
  await test.call('settings.change', { settings: { maskedNames: ['MOLLY', 'Brandt'] } })
  expect(await page()).toContain('somebody had it of somebody’s mother')
  expect(await page()).toContain('Aunt Molly')
  const { names } = await test.call('person.list-names-in-texts', {})
  expect(names.map(({ name, masked }) => [name, masked])).toEqual([
    ['brandt', true],
    ['molly', true],
  ])
  const { content } = await test.call('package.export', {})
  const { unzipSync, strFromU8 } = await import('fflate')
  const files = Object.entries(unzipSync(Buffer.from(content, 'base64')))
  for (const [name, bytes] of files) {
    if (/variety/.test(name)) continue
    expect(strFromU8(bytes), name).not.toMatch(/molly|brandt/i)
  }
  await test.call('settings.change', { settings: { maskedNames: [] } })
  expect(await page()).toContain('Molly had it')
})
