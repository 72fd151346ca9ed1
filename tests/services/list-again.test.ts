import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { firstChoices } from '../../renderer/screens/spreadsheet-import/first-choices.ts'
import { type List, listOf, previewed as previewIn } from '../builders/answered-list.ts'
import { aCollection, type TemporaryCollection } from '../builders/temporary-collection.ts'
import { sized } from '../support/sized.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const previewed = (list: List) => previewIn(test, list)

/** Answers by first choices as the window's button does, again and again until nothing is left that it answers. */
async function byFirstChoices(list: List): Promise<List> {
  const answers = firstChoices((await previewed(list)).questions)
  return Object.keys(answers).length === 0
    ? list
    : byFirstChoices({ ...list, answers: { ...list.answers, ...answers } })
}

describe('a number alone is no identity', () => {
  const first = 'Number,Crop,Variety,Amount\n1,Tomato,Lantern,5 g\n2,Bean,Old Tithe,60 g\n'

  it('so that a second list with running numbers comes in, after one question', async () => {
    await test.call('import.record', listOf(first))
    const second = listOf(
      'Number,Crop,Variety,Amount\n1,Lettuce,Quay,2 g\n2,Carrot,Weir,3 g\n3,Onion,Ferry,4 g\n',
    )
    const read = await previewed(second)
    expect(read.questions).toMatchObject([{ id: 'number', rows: 2, firstRow: 2 }])
    expect(read.questions[0]?.sentence).toContain('HL26-0001')
    expect(read.counts).toMatchObject({ new: 1, doubtful: 2, there: 0 })
    const answered = await byFirstChoices(second)
    expect((await test.call('import.record', answered)).taken).toBe(3)
  })

  it('while a gift of the same number, crop and variety is known without a question', async () => {
    await test.call('import.record', listOf(first))
    const read = await previewed(listOf(`${first}3,Pea,Quay,4 g\n`))
    expect([read.counts, read.questions]).toMatchObject([{ there: 2, new: 1 }, []])
  })

  it('and a variety that came in since the list was looked at is not made once more', async () => {
    const list = listOf('Crop,Variety,Amount\nPea,Quay,4 g\n')
    expect((await previewed(list)).counts).toMatchObject({ new: 1 })
    await test.call('intake.record', {
      ...{ donor: null, receivedOn: '2026-03-14' },
      gifts: [{ variety: { newVariety: { cropId: 'pea', name: 'Quay' } }, amount: '30 seeds' }],
    })
    expect((await test.call('import.record', list)).taken).toBe(1)
    const { varieties } = await test.call('variety.search', { text: 'Quay' })
    expect(varieties).toMatchObject([{ name: 'Quay', accessions: 2 }])
  })

  it('nor in passports: the institution that gave it is part of the number', async () => {
    const passport = (code: string, number: string, name: string) =>
      listOf(
        `INSTCODE,ACCENUMB,GENUS,SPECIES,CROPNAME,ACCENAME\n${code},${number},Pisum,sativum,Garden pea,${name}\n`,
      )
    const empty = { answers: { 'no-amount': 'empty' } }
    await test.call('import.record', { ...passport('XXA001', '1', 'Lantern'), ...empty })
    const elsewhere = await previewed({ ...passport('XXB002', '1', 'Quay'), ...empty })
    expect(elsewhere.counts.new).toBe(1)
    const same = await previewed({ ...passport('XXA001', '1', 'Lantern'), ...empty })
    expect(same.counts.there).toBe(1)
    const taken = await previewed({ ...passport('XXA001', '1', 'Quay'), ...empty })
    expect(taken.questions).toMatchObject([{ id: 'number' }, { id: 'no-amount', answered: 'empty' }])
  })
})

describe('a list that is sent again', () => {
  const CROPS = ['Pea', 'Bean', 'Tomato', 'Lettuce']
  const row = fc.record({
    crop: fc.constantFrom(...CROPS),
    year: fc.constantFrom('2019', '', 'about 2020', 'before 2010'),
    amount: fc.constantFrom('50 g', '1,5 g', '200', '0', '', '2 packets of 20'),
    donor: fc.constantFrom('', 'Ada Fennimore', 'Tobias Wren'),
    day: fc.constantFrom('', '14.03.2025', '2024'),
    number: fc.constantFrom('', 'x'),
  })

  it('later, with a row more, doubles none of its rows, whatever they leave out', async () => {
    const line = (one: { [field: string]: string }, index: number) =>
      `${one['number'] === '' ? '' : `N${index}`};${one['crop']};${'ABCDEFGHIJKL'[index]} sort ${index};${one['year']};${one['amount']};${one['donor']};${one['day']}`
    const head = 'Number;Crop;Variety;Year;Amount;Donor;Received'
    const answers = { 'no-amount': 'empty', 'unit:amount': 'seeds' }
    const runs = sized(4, 200)
    await fc.assert(
      fc.asyncProperty(fc.array(row, { minLength: 1, maxLength: 10 }), async (rows) => {
        test.remove()
        test = await aCollection()
        const lines = rows.map(line)
        const first = listOf([head, ...lines].join('\n'), { answers })
        await test.call('import.record', first)
        test.goTo('2026-04-23')
        const more = [...lines, ';Pea;Weir Marrowfat;2024;9 g;;']
        const again = listOf([head, ...more].join('\n'), { answers: { ...answers, there: 'leave-out' } })
        const read = await previewed(again)
        expect(read.counts).toMatchObject({ new: 1, there: rows.length, doubtful: 0, refused: 0 })
      }),
      { numRuns: runs },
    )
  })

  it('is asked about where rows say the same from end to end, and only there', async () => {
    const long = 'x '.repeat(100)
    const head = 'Crop,Variety,Amount,Note'
    const alike = listOf(`${head}\nPea,Quay,5 g,${long}1\nPea,Quay,5 g,${long}2\n`)
    expect((await previewed(alike)).questions).toEqual([])
    const same = listOf(`${head}\nPea,Quay,5 g,${long}1\nPea,Quay,5 g,${long}1\n`)
    expect((await previewed(same)).questions).toMatchObject([{ id: 'same', rows: 1 }])
  })
})

it('the first choice for all leaves no row out', async () => {
  await test.call('import.record', listOf('Crop,Variety,Amount\nPea,Quay Red,5 g\nPea,Lantern,6 g\n'))
  const list = listOf(
    'Crop,Variety,Amount,Donor,Place,Received\n' +
      'Gartenwunder,Alte,5 g,Ada Wren,Kiste,02/03/2024\nPea,Quay Red,5 g,,,\nPea,Quay Rad,some g,,,\n' +
      'Pea,Lantern,12 packets,,Kiste 2,\nPea,Ferry,8,,,\nPea,Ferry,8,,,\nPea,Weir,,,,\n',
  )
  const answered = await byFirstChoices(list)
  const read = await previewed(answered)
  expect(read.counts).toMatchObject({ 'left-out': 0, there: 0 })
  expect(read.openQuestions, 'the rest is for the keeper').toBeGreaterThan(0)
})

it('what a list asks of the book never looks through one entry for each gift: a list of 60,000 is one entry', async () => {
  const { sqlite } = test.collection
  await test.call('import.record', listOf('Crop,Variety,Amount\nPea,Quay,5 g\n'))
  const other = await aCollection()
  const asked = new Set<string>()
  const prepare = other.collection.sqlite.prepare.bind(other.collection.sqlite)
  other.collection.sqlite.prepare = ((sql: string) => {
    asked.add(sql)
    return prepare(sql)
  }) as typeof prepare
  await previewIn(other, listOf('Crop,Variety,Amount\nPea,Lantern,5 g\n'))
  other.remove()
  const plans = [...asked]
    .filter((sql) => /^\s*SELECT/i.test(sql))
    .flatMap(
      (sql) =>
        sqlite.prepare(`EXPLAIN QUERY PLAN ${sql.replaceAll('?', 'NULL')}`).all() as { detail: string }[],
    )
  expect(plans.length).toBeGreaterThan(5)
  expect(plans.map(({ detail }) => detail).filter((detail) => /_by_entry \(entry_id=/.test(detail))).toEqual(
    [],
  )
})
