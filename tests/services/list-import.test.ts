import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import {
  answered as answeredIn,
  type List,
  listOf,
  previewed as previewIn,
} from '../builders/answered-list.ts'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const previewed = (list: List) => previewIn(test, list)
const answered = (list: List) => answeredIn(test, list)

const fatesOf = (read: Awaited<ReturnType<typeof previewed>>) => read.rows.map(({ row, fate }) => [row, fate])

describe('a list', () => {
  it('comes in whole: crop, variety, harvest, amount, weight, donor, day, place and note', async () => {
    const { placeId } = await test.call('place.create', { name: 'Cellar', kind: 'room' })
    const list = listOf(
      'Crop,Variety,Year,Amount,100 seed weight (g),Donor,Received,Place,Notes,Flavour\n' +
        'Common bean,Widow Tarn,about 2019,50 g,25,Ada Fennimore,2023-03-14,Cellar,Climbs,nutty\n',
    )
    expect((await previewed(list)).counts).toMatchObject({ new: 1, refused: 0, doubtful: 0 })
    const { taken, firstLotId, said } = await test.call('import.record', list)
    expect([taken, said]).toEqual([1, 'Took in one gift from list.csv'])
    const lot = await test.call('lot.get', { lotId: firstLotId })
    expect(lot).toMatchObject({ variety: 'Widow Tarn', receivedOn: '2023-03-14', placeId })
    expect(lot.quantity).toMatchObject({ massMg: 50_000, count: 200, weighed: true })
    expect(JSON.stringify(lot)).toContain('Flavour: nutty')
  })

  it('comes in whole where it is written in Spanish, and its story is kept in the library’s language', async () => {
    await test.call('settings.change', { settings: { language: 'es' } })
    await test.call('place.create', { name: 'Nevera', kind: 'fridge' })
    const list = listOf(
      'Cultivo;Variedad;Año de cosecha;Cantidad;Donante;Recibida el;Lugar;Tratamiento;Correo electrónico;Observaciones\n' +
        'judía;Viuda Tarn;hacia 2019;unas 200 semillas;Ada Fennimore;1998;Nevera;sin tratar;ada@example.org;Trepa\n' +
        'guisante;Farol;verano de 2021;2 sobres de 25;desconocido;14/03/2023;Nevera;sí;;\n',
    )
    expect((await previewed(list)).counts).toMatchObject({ new: 2, refused: 0, doubtful: 0 })
    const { firstLotId } = await test.call('import.record', list)
    const bean = await test.call('lot.get', { lotId: firstLotId })
    expect(bean).toMatchObject({ variety: 'Viuda Tarn', harvest: 'about 2019', quarantined: false })
    expect(bean.quantity).toMatchObject({ count: 200, weighed: false })
    expect(JSON.stringify(bean)).toContain('Recibida en 1998; no se sabe el día.')
    expect(JSON.stringify(bean)).not.toContain('example.org')
    const pea = await test.call('lot.get', { lotId: firstLotId + 1 })
    expect(pea).toMatchObject({ harvest: '2021', quarantined: true, receivedOn: '2023-03-14' })
    expect(pea.quantity.count).toBe(50)
  })

  it('knows crops as people call them in four languages, and asks which where several are called so', async () => {
    const list = listOf(
      'Sorte,Art,Menge\nHeide,Zucchini,10 g\nMoor,Stangenbohnen,10 g\nDüne,betterave,10 g\nGeest,ajo,10 g\nFehn,corn,10 g\nTiede,Tomatte,10 g\n',
    )
    const read = await previewed(list)
    expect(read.questions.map(({ choices }) => choices.slice(0, 2).map(({ value }) => value))).toEqual([
      ['crop:maize', 'crop:sweet-corn'],
      ['crop:tomato', 'leave-out'],
    ])
    await test.call('import.record', await answered(list))
    const { rows } = await test.call('lot.list', { text: '' })
    expect(rows.map(({ variety, cropId }) => `${variety} ${cropId}`).toSorted()).toEqual([
      'Düne beet',
      'Fehn maize',
      'Geest garlic',
      'Heide squash-pepo',
      'Moor bean',
      'Tiede tomato',
    ])
    for (const [text, variety] of [
      ['courgettes', 'Heide'],
      ['Rote Bete', 'Düne'],
      ['popcorn', 'Fehn'],
    ] as const)
      expect((await test.call('lot.list', { text })).rows.map((row) => row.variety)).toEqual([variety])
    expect(
      (await test.call('regeneration.list', { text: 'judías' })).needs.map((need) => need.variety),
    ).toEqual(['Moor'])
  })

  it('is taken back as one, and can then come in again', async () => {
    const list = listOf('Crop,Variety,Amount\nPea,Widow Tarn,50 g\nPea,Lantern,60 g\n')
    const { entryId } = await test.call('import.record', list)
    expect(await test.refused('import.record', list)).toMatchObject({ code: 'already-there' })
    await test.call('entry.undo', { entryId })
    const { rows } = await test.call('lot.list', {})
    expect(rows).toEqual([])
    expect((await test.call('import.record', list)).taken).toBe(2)
  })

  it('writes nothing while a row is doubtful, or refused and not agreed to be left out', async () => {
    const list = listOf('Crop,Variety,Amount\nPea,Widow Tarn,50\nPea,Lantern,some\nPea,Ferry,60 g\n')
    expect(fatesOf(await previewed(list))).toEqual([
      [2, 'doubtful'],
      [3, 'refused'],
      [4, 'new'],
    ])
    expect(await test.refused('import.record', list)).toMatchObject({ field: 'answers' })
    const sure = { ...list, answers: { 'unit:amount': 'g' } }
    expect(await test.refused('import.record', sure)).toMatchObject({ field: 'leaveOut' })
    expect((await test.call('collection.get', {})).accessions).toBe(0)
    const { csv, rows } = await test.call('import.list-refused', sure)
    expect(rows).toBe(1)
    expect(csv.split('\r\n')[1]).toMatch(/^3,"‘some’ is not an amount\. .*",Pea,Lantern,some$/)
    expect(await test.call('import.record', { ...sure, leaveOut: true })).toMatchObject({
      taken: 2,
      leftOut: 1,
    })
  })

  it('remembers what the keeper said its columns hold', async () => {
    const text = (name: string) => `Gewächs;Benennung;Vorrat\nPea;${name};50 g\n`
    const columns = ['crop', 'variety', 'amount']
    const list = listOf(text('Lantern'), { choices: { columns } })
    expect((await previewed(listOf(text('Lantern')))).remembered).toBe(false)
    await test.call('import.record', list)
    const next = await previewed(listOf(text('Widow Tarn')))
    expect([next.remembered, next.columns.map(({ use }) => use)]).toEqual([true, columns])
  })

  it('asks about a name that is spelt nearly like one of the book, once for all its rows', async () => {
    const { taken } = await test.call('intake.record', {
      donor: { newPerson: { name: 'Tobias Wren' } },
      receivedOn: TODAY,
      gifts: [
        { variety: { newVariety: { cropId: 'pea', name: 'Saltmarsh' } }, amount: '5 g', harvest: '2024' },
      ],
    })
    const list = listOf(
      'Crop,Variety,Amount,Donor\nPea,Salt marsh,50 g,Tobias Wrenn\nPea,Saltmarsch,20 g,Tobias Wrenn\nPea,Saltmarsh 2,9 g,\n',
    )
    const { questions } = await previewed(list)
    expect(questions.map(({ about, rows }) => [about, rows])).toEqual([
      ['variety', 1],
      ['person', 2],
      ['variety', 1],
    ])
    const { firstLotId } = await test.call('import.record', await answered(list))
    const one = await test.call('lot.get', { lotId: firstLotId })
    const before = await test.call('lot.get', { lotId: taken[0]?.lotId ?? 0 })
    expect(one.varietyId).toBe(before.varietyId)
    expect((await test.call('collection.get', {})).people).toBe(1)
  })

  it('asks about two spellings that the list itself brings, and writes what is one once', async () => {
    const list = listOf(
      'Crop,Variety,Amount,Donor\n' +
        'Pea,Ferry Lane Pink,50 g,Ilka Brandt\n' +
        'Pea,Ferry Lane Pank,60 g,Ilka Brant\n' +
        'Pea,ferry lane pink,70 g,Ilka Brandt\n' +
        'Common bean,Ferry Lane Pank,80 g,Ilka Brandt\n' +
        'Pea,Ferry Lane Pank,90 g,Ilka Brandt\n',
    )
    const { questions } = await previewed(list)
    expect(questions).toMatchObject([
      { about: 'variety', rows: 2, firstRow: 3, answered: null },
      { about: 'person', rows: 1, firstRow: 3, answered: null },
    ])
    expect(questions.map(({ sentence }) => sentence)).toEqual([
      'Is ‘Ferry Lane Pank’ the same as ‘Ferry Lane Pink’ in row 2 of this list?',
      'Is ‘Ilka Brant’ the same as ‘Ilka Brandt’ in row 2 of this list?',
    ])
    expect(await test.refused('import.record', list)).toMatchObject({ code: 'rows-undecided' })
    expect((await test.call('import.record', await answered(list))).taken).toBe(5)
    const { varieties } = await test.call('variety.search', { text: 'ferry lane' })
    expect(varieties.map(({ name, cropId, accessions }) => [name, cropId, accessions]).toSorted()).toEqual([
      ['Ferry Lane Pank', 'bean', 1],
      ['Ferry Lane Pink', 'pea', 4],
    ])
    const { people } = await test.call('person.search', { text: 'ilka' })
    expect(people.map(({ name }) => name)).toEqual(['Ilka Brandt'])
  })

  it('keeps two spellings apart where the keeper says that they are two', async () => {
    const list = listOf('Crop,Variety,Amount\nPea,Quay Red,50 g\nPea,Quay Rod,60 g\nPea,Quay Rod,70 g\n')
    const [question] = (await previewed(list)).questions
    const answers = { [question?.id ?? '']: 'new' }
    const read = await previewed({ ...list, answers })
    expect(read.questions).toMatchObject([{ rows: 2, answered: 'new' }])
    expect((await test.call('import.record', { ...list, answers })).taken).toBe(3)
    const { varieties } = await test.call('variety.search', { text: 'quay' })
    expect(varieties.map(({ name, accessions }) => [name, accessions]).toSorted()).toEqual([
      ['Quay Red', 1],
      ['Quay Rod', 2],
    ])
  })

  it('knows a gift that is in the book, and asks rather than writing it twice', async () => {
    await takeIn(test, { amount: '100 g' })
    const list = listOf(`Crop,Variety,Harvest,Amount,Received\nBean,Miller’s Pole,2024,100 g,${TODAY}\n`)
    const { questions } = await previewed(list)
    expect(questions).toMatchObject([{ id: 'there', about: 'same' }])
    expect((await previewed({ ...list, answers: { there: 'leave-out' } })).counts.there).toBe(1)
    expect((await previewed({ ...list, answers: { there: 'another' } })).counts.new).toBe(1)
  })

  it('knows a number that a gift had before, and leaves it out', async () => {
    const line = 'Number,Crop,Variety,Amount\nQH-12,Pea,Lantern,50 g\n'
    await test.call('import.record', listOf(line))
    const again = await previewed(listOf(`${line}QH-13,Pea,Widow Tarn,50 g\n`))
    expect(fatesOf(again)).toEqual([
      [2, 'there'],
      [3, 'new'],
    ])
    expect(again.rows[0]?.because).toContain('HL26-0001')
  })

  it('puts seed that is said to be treated into quarantine', async () => {
    const list = listOf(
      'Crop,Variety,Amount,Notes\nPea,Lantern,50 g,was treated with thiram\nPea,Ferry,5 g,untreated\n',
    )
    const { firstLotId } = await test.call('import.record', list)
    expect((await test.call('lot.get', { lotId: firstLotId })).quarantineReason).toContain('thiram')
    expect((await test.call('lot.get', { lotId: firstLotId + 1 })).quarantineReason).toBe('')
  })

  it('never invents a day where only a year is known, and says so in the story', async () => {
    const list = listOf('Crop,Variety,Amount,Date\nPea,Lantern,50 g,1998\n')
    const { firstLotId } = await test.call('import.record', list)
    const lot = await test.call('lot.get', { lotId: firstLotId })
    expect(JSON.stringify(lot)).toContain('Received in 1998; the day is not known.')
  })

  it('asks whether day or month comes first only where no date tells', async () => {
    const told = listOf('Crop,Variety,Amount,Date\nPea,Lantern,5 g,02/03/2024\nPea,Ferry,5 g,25/03/2024\n')
    expect((await previewed(told)).questions).toEqual([])
    const open = listOf('Crop,Variety,Amount,Date\nPea,Lantern,5 g,02/03/2024\n')
    expect((await previewed(open)).questions).toMatchObject([{ id: 'order' }])
    const { firstLotId } = await test.call('import.record', { ...open, answers: { order: 'month-first' } })
    expect((await test.call('lot.get', { lotId: firstLotId })).receivedOn).toBe('2024-02-03')
  })
})
