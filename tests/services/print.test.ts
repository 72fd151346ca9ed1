import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { CallInput, Value } from '../../db/contract/contract.ts'
import { SHIPPED_LETTER } from '../../db/domain/letters/letter-words.ts'
import { readPdf } from '../builders/read-pdf.ts'
import { aCollection, aGift, type TemporaryCollection, TODAY } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const CONTACT = {
  email: 'ilka@example.org',
  phone: '01632 960 777',
  address: '3 Hollow Lane\nQuillhaven',
  mayWrite: true,
}
const WRITTEN_TO = { name: 'Ilka Brandt', ...CONTACT }

type NewPerson = Extract<
  NonNullable<CallInput<'intake.record'>['donor']>,
  { newPerson: unknown }
>['newPerson']

const give = (donor: NewPerson | null = WRITTEN_TO, gifts = [aGift(), aGift({ amount: '50 seeds' })]) =>
  test.call('intake.record', {
    donor: donor === null ? null : { newPerson: donor },
    receivedOn: TODAY,
    gifts,
  })

const waiting = async (kind: 'label' | 'letter' | 'slip') =>
  (await test.call('tray.list', {})).groups.find((group) => group.kind === kind)?.items ?? []
const ids = (items: readonly { readonly itemId: number }[]) => items.map(({ itemId }) => itemId)

async function textOf({ pdf }: Pick<Value<'tray.preview'>, 'pdf'>): Promise<string> {
  const read = await readPdf(new Uint8Array(Buffer.from(pdf, 'base64')))
  const text = read.pages.flatMap((page) => page.characters.map(({ character }) => character)).join('')
  read.close()
  return text.replace(/\s+/g, ' ')
}

describe('what comes into the tray by itself', () => {
  it('is a label for each gift and one letter for all of them', async () => {
    const { taken } = await give()
    expect((await waiting('label')).map(({ title }) => title)).toEqual(
      taken.map(({ lotNumber }) => lotNumber),
    )
    expect(await waiting('letter')).toMatchObject([{ title: 'Ilka Brandt', heldBack: null }])
    expect((await test.call('tray.list', {})).leftOut).toEqual([])
  })

  it('is no letter for a donor who did not agree, and it says so; none for a gift of nobody', async () => {
    await give({ ...WRITTEN_TO, mayWrite: false })
    await give(null)
    expect(await waiting('label')).toHaveLength(4)
    expect(await waiting('letter')).toEqual([])
    expect((await test.call('tray.list', {})).leftOut).toMatchObject([
      { name: 'Ilka Brandt', sentence: 'Ilka Brandt has not agreed to be written to.' },
    ])
  })

  it('goes out again with the entry, but what is printed stays in the history and is not printed again', async () => {
    const { entryId } = await give()
    const [first] = await waiting('label')
    const { batchId } = await test.call('tray.mark-printed', {
      kind: 'label',
      itemIds: [first?.itemId ?? 0],
      sheet: 'a4-21',
    })
    await test.call('entry.take-back', { entryId })
    expect((await test.call('tray.list', {})).groups).toEqual([])
    const { batches } = await test.call('print.history', {})
    expect(batches[0]?.items[0]?.heldBack).toMatch(/taken back/)
    expect((await test.refused('print.again', { batchId })).code).toBe('value-refused')
  })

  it('is a label for what is brought back, and a slip only where it is asked for', async () => {
    const { taken } = await give(null, [aGift({ amount: '300 seeds' })])
    const lotId = taken[0]?.lotId ?? 0
    const person = { newPerson: { name: 'Teodor Ash' } }
    const lines = [{ lotId, amount: '20 seeds' }]
    await test.call('withdrawal.record', { person, on: TODAY, lines })
    expect(await waiting('slip')).toEqual([])
    await test.call('withdrawal.record', { person, on: TODAY, lines, slip: true })
    expect(await waiting('slip')).toMatchObject([{ title: 'Teodor Ash' }])
    const back = await test.call('return.record', {
      person,
      parentLotId: lotId,
      receivedOn: TODAY,
      amount: '90 seeds',
    })
    expect((await waiting('label')).at(-1)?.title).toBe(back.taken.lotNumber)
  })
})

describe('letters for all gifts of a time', () => {
  const person = (name: string, mayWrite: boolean) => ({ ...WRITTEN_TO, name, mayWrite })
  const onDay = (donor: NewPerson, receivedOn: string) =>
    test.call('intake.record', { donor: { newPerson: donor }, receivedOn, gifts: [aGift()] })
  const agree = async (name: string) => {
    const [found] = (await test.call('person.search', { text: name })).people
    await test.call('person.update', { personId: found?.personId ?? 0, mayWrite: true })
  }
  const letters = (from: string, until: string) => test.call('tray.add-letters', { from, until })

  it('are those that nobody was thanked for, first and last day included, and say who has not agreed', async () => {
    await onDay(person('Ilka Brandt', true), '2025-10-01')
    await onDay(person('Teodor Ash', false), '2025-10-31')
    await onDay(person('Mira Sool', false), '2025-10-10')
    await onDay(person('Ansa Reed', false), '2025-11-01')
    expect(
      (await test.refused('tray.add-letters', { from: '2025-10-01', until: '2025-10-31' })).sentence,
    ).toBe('No gift of that time waits for a letter; 2 donors have not agreed to be written to.')
    await agree('Teodor')
    const { said, entryId } = await letters('2025-10-01', '2025-10-31')
    expect(said).toBe(
      'Put letters to one donor into the print tray; one donor has not agreed to be written to',
    )
    expect((await waiting('letter')).map(({ title }) => title)).toEqual(['Ilka Brandt', 'Teodor Ash'])
    await test.refused('tray.add-letters', { from: '2025-10-01', until: '2025-10-31' })
    await test.call('entry.take-back', { entryId })
    expect(await waiting('letter')).toHaveLength(1)
    expect((await letters('2025-10-31', '2025-10-31')).letters).toBe(1)
    expect((await test.refused('tray.add-letters', { from: '2025-11-02', until: '2025-11-01' })).field).toBe(
      'from',
    )
  })

  it('begin where letters were printed last', async () => {
    expect((await test.call('tray.list', {})).lettersSince).toBe(`${TODAY.slice(0, 4)}-01-01`)
    await give()
    await test.call('tray.mark-printed', { kind: 'letter', itemIds: ids(await waiting('letter')) })
    expect((await test.call('tray.list', {})).lettersSince).toBe(TODAY)
    await test.refused('tray.add-letters', { from: TODAY, until: TODAY })
  })

  it('tell a donor of a list of their own gifts alone', async () => {
    const rows = [
      'Donor;Crop;Variety;Amount;Received',
      'Ilka Brandt;Garden pea;Hollow Tall;50 seeds;2025-10-02',
      'Teodor Ash;Garden pea;Secret Pod;60 seeds;2025-10-02',
    ]
    const content = Buffer.from(rows.join('\n')).toString('base64')
    await test.call('list.take-in', { fileName: 'list.csv', content })
    await agree('Ilka')
    const { itemIds } = await letters('2025-10-01', '2025-10-31')
    const text = await textOf(await test.call('tray.preview', { kind: 'letter', itemIds }))
    expect(text).toContain('Hollow Tall')
    expect(text).not.toContain('Secret Pod')
  })
})

describe('printing', () => {
  it('marks nothing by looking; marked, it is done; taken back, it waits again', async () => {
    await give()
    const itemIds = ids(await waiting('label'))
    const input = { kind: 'label', itemIds, sheet: 'a4-21', startAt: 20, offsetMm: [1, -0.5] } as const
    const made = await test.call('tray.preview', { ...input, offsetMm: [1, -0.5] })
    expect(made.pages).toBe(1)
    expect(await waiting('label')).toHaveLength(2)
    const { entryId, said } = await test.call('tray.mark-printed', { ...input, offsetMm: [1, -0.5] })
    expect(said).toBe('Printed 2 labels')
    expect(await waiting('label')).toEqual([])
    expect((await test.refused('tray.mark-printed', { ...input, offsetMm: [1, -0.5] })).code).toBe(
      'not-found',
    )
    await test.call('entry.take-back', { entryId })
    expect(ids(await waiting('label'))).toEqual(itemIds)
    expect((await test.call('print.history', {})).batches).toEqual([])
    expect((await test.call('tray.list', {})).sheets).toEqual([])
  })

  it('goes on at the next free label of the sheet, and each printer with its offset, and begins a new sheet after the last', async () => {
    await give()
    const [one, two] = ids(await waiting('label'))
    const print = (itemId: number | undefined, startAt: number) =>
      test.call('tray.mark-printed', {
        kind: 'label',
        itemIds: [itemId ?? 0],
        sheet: 'a4-21',
        startAt,
        offsetMm: [0.5, 1],
      })
    await print(one, 19)
    const sheets = async () => (await test.call('tray.list', {})).sheets
    expect(await sheets()).toEqual([{ sheet: 'a4-21', startAt: 20 }])
    const last = await print(two, 21)
    expect(await sheets()).toEqual([{ sheet: 'a4-21', startAt: 1 }])
    await test.call('entry.take-back', { entryId: last.entryId })
    await test.call('tray.mark-printed', {
      kind: 'label',
      itemIds: [two ?? 0],
      sheet: 'packet-a4',
      offsetMm: [-1, 0],
      printer: 'Back room',
    })
    expect((await test.call('tray.list', {})).printers).toEqual([
      { name: 'Back room', offsetMm: [-1, 0] },
      { name: '', offsetMm: [0.5, 1] },
    ])
  })

  it('refuses a mixture, labels without a sheet, a label that is not on it, and what is not there', async () => {
    await give()
    const [label] = ids(await waiting('label'))
    const [letter] = ids(await waiting('letter'))
    const itemIds = [label ?? 0]
    const sheet = 'a4-21' as const
    const field = async (input: CallInput<'tray.preview'>) =>
      (await test.refused('tray.preview', input)).field
    expect(await field({ kind: 'label', itemIds: [...itemIds, letter ?? 0], sheet })).toBe('itemIds')
    expect(await field({ kind: 'label', itemIds })).toBe('sheet')
    expect(await field({ kind: 'label', itemIds, sheet, startAt: 22 })).toBe('startAt')
    expect(await field({ kind: 'label', itemIds: [9_999], sheet })).toBe('itemIds')
  })

  it('prints again from the history, with copies and contents as they were', async () => {
    await give()
    const [first] = await waiting('label')
    const { itemId } = await test.call('tray.change', {
      itemId: first?.itemId ?? 0,
      copies: 5,
      contents: '25 seeds',
    })
    const { batchId } = await test.call('tray.mark-printed', {
      kind: 'label',
      itemIds: [itemId],
      sheet: 'letter-30',
    })
    await test.call('print.again', { batchId })
    expect((await waiting('label')).find(({ title }) => title === first?.title)).toMatchObject({
      copies: 5,
      contents: '25 seeds',
    })
    expect((await test.call('print.history', {})).batches).toMatchObject([
      { words: '5 labels', sheet: 'letter-30' },
    ])
  })
})

it('changes and takes out what waits, and both can be taken back', async () => {
  await give(null, [aGift()])
  const [first] = await waiting('label')
  const itemId = first?.itemId ?? 0
  const change = await test.call('tray.change', { itemId, copies: 8, contents: '' })
  expect(await waiting('label')).toMatchObject([{ itemId: change.itemId, copies: 8 }])
  const removal = await test.call('tray.remove', { itemIds: [change.itemId] })
  expect(await waiting('label')).toEqual([])
  expect((await test.refused('tray.remove', { itemIds: [change.itemId] })).code).toBe('not-found')
  await test.call('entry.take-back', { entryId: removal.entryId })
  await test.call('entry.take-back', { entryId: change.entryId })
  expect(await waiting('label')).toMatchObject([{ itemId, copies: 1 }])
})

it('adds labels for chosen lots, and no letter to whoever did not agree', async () => {
  const { taken } = await give(null, [aGift()])
  const lotId = taken[0]?.lotId ?? 0
  await test.call('tray.add', { items: [{ kind: 'label', lotId, copies: 12, contents: '20 seeds' }] })
  expect((await waiting('label')).at(-1)).toMatchObject({ copies: 12, contents: '20 seeds' })
  const letter = await test.refused('tray.add', {
    items: [{ kind: 'letter', accessionId: taken[0]?.accessionId ?? 0 }],
  })
  expect(letter.sentence).toMatch(/agreed to be written to/)
  expect((await test.refused('tray.add', { items: [{ kind: 'slip', withdrawalId: 77 }] })).code).toBe(
    'not-found',
  )
})

describe('letters', () => {
  it('go to each donor once, with all their gifts, what they told, and how to reach them', async () => {
    const { personId } = await give(WRITTEN_TO, [aGift({ story: 'Carried over the pass in a tobacco tin.' })])
    await test.call('intake.record', {
      donor: { personId: personId ?? 0 },
      receivedOn: TODAY,
      gifts: [aGift({ amount: '50 seeds', terms: 'Never for sale.' })],
    })
    const made = await test.call('tray.preview', { kind: 'letter', itemIds: ids(await waiting('letter')) })
    expect(made.pages).toBe(1)
    const text = await textOf(made)
    for (const part of [
      'Dear Ilka Brandt',
      '3 Hollow Lane',
      '14 March 2026',
      'HL26-0001',
      'HL26-0002',
      'You told us: Carried over the pass in a tobacco tin.',
      'You asked: Never for sale.',
      '50 seeds',
    ])
      expect(text).toContain(part)
    expect(text).not.toContain('{')
  })

  it('leaves whoever agrees no longer out, and says why', async () => {
    await give()
    await give({ ...WRITTEN_TO, name: 'Odile Marsh' })
    test.collection.sqlite
      .prepare(
        "UPDATE person_contact SET may_write = 0 WHERE person_id = (SELECT id FROM person WHERE name = 'Ilka Brandt')",
      )
      .run()
    const items = await waiting('letter')
    expect(items.map(({ heldBack }) => heldBack === null)).toEqual([false, true])
    const made = await test.call('tray.preview', { kind: 'letter', itemIds: ids(items) })
    expect(made.warnings[0]).toMatch(/^No letter to Ilka Brandt/)
    expect(await textOf(made)).not.toContain('Ilka')
  })

  it('are in the words of the library, with unknown fields named', async () => {
    expect(await test.call('letter.words', {})).toMatchObject({ words: SHIPPED_LETTER, keeper: '' })
    const words = 'Dear {doner},\n\n{gifts}\n\n{keeper}'
    const problem = await test.refused('letter.change-words', { words, keeper: '' })
    expect(problem.sentence).toMatch(/^No letter knows the field {doner}\. There are {donor}/)
    const preview = await test.call('letter.preview', { words, keeper: '' })
    expect(preview.to).toBe('')
    expect(preview.warnings[0]).toContain('{doner}')
    await give()
    await test.call('letter.change-words', { words: 'Bless you, {donor}! {keeper}', keeper: 'Ansa Reed' })
    const made = await test.call('tray.preview', { kind: 'letter', itemIds: ids(await waiting('letter')) })
    expect(await textOf(made)).toContain('Bless you, Ilka Brandt! Ansa Reed')
    expect((await test.call('letter.preview', { words: 'x', keeper: '' })).to).toBe('Ilka Brandt')
    await test.call('letter.change-words', { words: '', keeper: '' })
    expect((await test.call('letter.words', {})).words).toBe(SHIPPED_LETTER)
  })
})

it('makes slips with amounts, promise and cautions, and puts nobody’s address on them or on labels', async () => {
  const { taken } = await give(WRITTEN_TO, [aGift({ amount: '300 seeds', cautions: ['toxic'] })])
  const lotId = taken[0]?.lotId ?? 0
  await test.call('lot.release', { lotId, checked: 'Known to be poisonous, fit to grow' })
  await test.call('withdrawal.record', {
    person: { newPerson: { ...WRITTEN_TO, name: 'Teodor Ash' } },
    on: TODAY,
    purpose: 'to-return',
    lines: [{ lotId, amount: '20 seeds' }],
    promised: '40 seeds of the best plants',
    promisedBy: '2026-11-01',
    slip: true,
  })
  const slip = await textOf(
    await test.call('tray.preview', { kind: 'slip', itemIds: ids(await waiting('slip')) }),
  )
  for (const part of [
    'Seed for Teodor Ash',
    '20 seeds',
    'Promised back: 40 seeds of the best plants, by 1 November 2026',
    'POISONOUS IF EATEN',
    'For sowing only; check your local seed law',
  ])
    expect(slip).toContain(part)
  const labels = await textOf(
    await test.call('tray.preview', {
      kind: 'label',
      itemIds: ids(await waiting('label')),
      sheet: 'letter-10',
    }),
  )
  for (const text of [slip, labels]) expect(text).not.toMatch(/Hollow Lane|01632|example/)
  expect(JSON.stringify(await test.call('tray.list', {}))).not.toMatch(/Hollow Lane|01632|example/)
})

describe('somebody whose record was joined into another', () => {
  it('stands under the kept name in the tray, on the slip and in the letter', async () => {
    const { personId: keepId } = await test.call('person.create', { name: 'Tove Lindqvist', ...CONTACT })
    const { personId: joinId } = await test.call('person.create', { name: 'T. Lindquist' })
    const { taken } = await test.call('intake.record', {
      donor: { personId: joinId },
      receivedOn: TODAY,
      gifts: [aGift({ amount: '400 seeds' })],
    })
    await test.call('withdrawal.record', {
      person: { personId: joinId },
      on: TODAY,
      lines: [{ lotId: taken[0]?.lotId ?? 0, amount: '20 seeds' }],
      slip: true,
    })
    await test.call('person.join', { keepId, joinId })
    await test.call('tray.add', { items: [{ kind: 'letter', accessionId: taken[0]?.accessionId ?? 0 }] })
    for (const kind of ['slip', 'letter'] as const) {
      const items = await waiting(kind)
      expect(items.map(({ title }) => title)).toEqual(['Tove Lindqvist'])
      const text = await textOf(await test.call('tray.preview', { kind, itemIds: ids(items) }))
      expect(text).toContain('Tove Lindqvist')
      expect(text).not.toContain('Lindquist')
    }
  })
})

describe('label sheets of the library’s own', () => {
  const measures = {
    name: 'Jars, bottom shelf',
    pageWidthMm: 210,
    pageHeightMm: 297,
    columns: 2,
    rows: 5,
    widthMm: 90,
    heightMm: 50,
    leftMm: 12,
    topMm: 20,
    pitchXMm: 95,
    pitchYMm: 52,
  }
  const kept = async () => (await test.call('label.sheets', {})).sheets.filter(({ own }) => own !== null)

  it('are measured once, printed on, changed and offered no more', async () => {
    const { taken } = await give(null, [aGift({ story: 'Carried over the pass in a tobacco tin.' })])
    const { sheet } = await test.call('label-sheet.keep', { measures })
    expect(await kept()).toMatchObject([{ sheet, name: 'Jars, bottom shelf', columns: 2, own: measures }])
    const labels = [{ lotId: taken[0]?.lotId ?? 0, copies: 11 }]
    expect((await test.call('label.print', { labels, sheet })).pages).toBe(2)
    const problem = await test.refused('label.print', { labels, sheet, startAt: 11 })
    expect(problem.sentence).toBe('That sheet has 10 labels. Start at one of them.')
    await test.call('label-sheet.keep', { sheetId: 1, measures: { ...measures, rows: 4 } })
    expect(await kept()).toMatchObject([{ rows: 4 }])
    const itemIds = ids(await waiting('label'))
    await test.call('tray.mark-printed', { kind: 'label', itemIds, sheet })
    await test.call('label-sheet.retire', { sheetId: 1 })
    expect(await kept()).toEqual([])
    expect((await test.call('print.history', {})).batches).toMatchObject([{ sheet }])
    expect((await test.refused('label.print', { labels, sheet: 'own-7' })).field).toBe('sheet')
  })

  it('are refused where they pass the page, with the measure that is wrong', async () => {
    const field = async (wrong: Partial<typeof measures>) =>
      (await test.refused('label-sheet.keep', { measures: { ...measures, ...wrong } })).field
    expect(await field({ columns: 3 })).toBe('measures.columns')
    expect(await field({ rows: 6 })).toBe('measures.rows')
    expect(await field({ pitchXMm: 80 })).toBe('measures.pitchXMm')
    expect(await field({ heightMm: 6 })).toBe('measures.heightMm')
  })
})

it('prints packets to fold with their story, and the number alone for a jar', async () => {
  const story = 'Carried over the pass in a tobacco tin.'
  const { taken } = await give(null, [aGift({ story, grownAt: 'Hollow Lane' })])
  const labels = [{ lotId: taken[0]?.lotId ?? 0 }]
  const packet = await textOf(await test.call('label.print', { labels, sheet: 'packet-a4' }))
  expect(packet).toContain(story)
  expect(packet).toContain('Never freeze seed')
  expect(packet).not.toContain('Hollow Lane')
  const jar = await textOf(await test.call('label.print', { labels, sheet: 'letter-6' }))
  for (const part of [story, 'Grown at Hollow Lane', 'Came on 14 March 2026']) expect(jar).toContain(part)
  const small = await textOf(
    await test.call('label.print', { labels, sheet: 'a4-21', says: 'number-only', cropMarks: true }),
  )
  expect(small.trim()).toBe(taken[0]?.lotNumber)
})
