import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { shippedLetter } from '../../db/domain/letters/letter-words.ts'
import { saidInEnglish } from '../builders/in-english.ts'
import { aCollection, aGift, type TemporaryCollection, TODAY } from '../builders/temporary-collection.ts'
import { CONTACT, ids, type NewPerson, textOf, trayOf, WRITTEN_TO } from '../builders/tray.ts'

const SHIPPED_LETTER = saidInEnglish(shippedLetter())

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const { give, waiting } = trayOf(() => test)

describe('letters for all gifts of a time', () => {
  const person = (name: string, mayWrite: boolean) => ({ ...WRITTEN_TO, name, mayWrite })
  const onDay = (donor: NewPerson, receivedOn: string) =>
    test.call('intake.record', { donor: { newPerson: donor }, receivedOn, gifts: [aGift()] })
  const agree = async (name: string) => {
    const [found] = (await test.call('person.search', { text: name })).people
    await test.call('person.change', { personId: found?.personId ?? 0, mayWrite: true })
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
    await test.call('entry.undo', { entryId })
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
    await test.call('import.record', { fileName: 'list.csv', content })
    await agree('Ilka')
    const { itemIds } = await letters('2025-10-01', '2025-10-31')
    const text = await textOf(await test.call('tray.render', { kind: 'letter', itemIds }))
    expect(text).toContain('Hollow Tall')
    expect(text).not.toContain('Secret Pod')
  })
})

describe('letters', () => {
  it('go to each donor once, with all their gifts, what they told, and how to reach them', async () => {
    const { personId } = await give(WRITTEN_TO, [
      aGift({ donorWords: 'Carried over the pass in a tobacco tin.', story: 'Weak, and not what she says.' }),
    ])
    await test.call('intake.record', {
      donor: { personId: personId ?? 0 },
      receivedOn: TODAY,
      gifts: [aGift({ amount: '50 seeds', terms: 'Never for sale.' })],
    })
    const made = await test.call('tray.render', { kind: 'letter', itemIds: ids(await waiting('letter')) })
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
    expect(text).not.toContain('Weak')
  })

  it('say of each gift only what is done with it', async () => {
    const letterOf = async (...gifts: object[]) => {
      await give(
        { ...WRITTEN_TO, name: `Ilka ${gifts.length} Brandt ${JSON.stringify(gifts).length}` },
        gifts.map(aGift),
      )
      const items = await waiting('letter')
      return textOf(await test.call('tray.render', { kind: 'letter', itemIds: ids(items.slice(-1)) }))
    }
    const treated = { cautions: ['treated' as const], cautionNote: 'thiram' }
    const reserve = { role: 'reserve' as const }
    const shared = /share a part of it|share in part/
    expect(await letterOf({})).toMatch(shared)
    for (const [gifts, told] of [
      [[treated], 'nobody is given any of it before'],
      [[reserve], 'as a reserve'],
      [[treated, reserve], 'None of it is handed out'],
    ] as const) {
      const text = await letterOf(...gifts)
      expect(text).not.toMatch(shared)
      expect(text).toContain(told)
      expect(text).not.toContain('thiram')
    }
    const mixed = await letterOf({}, treated)
    expect(mixed).toMatch(shared)
    expect(mixed).toContain('Set apart until it has been checked')
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
    const made = await test.call('tray.render', { kind: 'letter', itemIds: ids(items) })
    expect(made.warnings[0]).toMatch(/^No letter to Ilka Brandt/)
    expect(await textOf(made)).not.toContain('Ilka')
  })

  it('are in the words of the library, with unknown fields named', async () => {
    expect(await test.call('letter.get', {})).toMatchObject({ words: SHIPPED_LETTER, keeper: '' })
    const words = 'Dear {doner},\n\n{gifts}\n\n{keeper}'
    const problem = await test.refused('letter.change', { words, keeper: '' })
    expect(problem.sentence).toMatch(/^No letter knows the field {doner}\. There are {donor}/)
    const preview = await test.call('letter.render', { words, keeper: '' })
    expect(preview.to).toBe('')
    expect(preview.warnings[0]).toContain('{doner}')
    await give()
    await test.call('letter.change', { words: 'Bless you, {donor}! {keeper}', keeper: 'Ansa Reed' })
    const made = await test.call('tray.render', { kind: 'letter', itemIds: ids(await waiting('letter')) })
    expect(await textOf(made)).toContain('Bless you, Ilka Brandt! Ansa Reed')
    expect((await test.call('letter.render', { words: 'x', keeper: '' })).to).toBe('Ilka Brandt')
    await test.call('letter.change', { words: '', keeper: '' })
    expect((await test.call('letter.get', {})).words).toBe(SHIPPED_LETTER)
  })
})

it('makes slips with amounts, promise and cautions, and puts nobody’s address on them or on labels', async () => {
  await test.call('settings.change', { settings: { dueDates: true } })
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
    despite: ['toxic'],
    reason: 'he knows, and it is on the packet',
    slip: true,
  })
  const slip = await textOf(
    await test.call('tray.render', { kind: 'slip', itemIds: ids(await waiting('slip')) }),
  )
  for (const part of [
    'Seed for Teodor Ash',
    '20 seeds',
    'Hopes to bring back: 40 seeds of the best plants, by 1 November 2026',
    'POISONOUS IF EATEN',
    'For sowing only; check your local seed law',
  ])
    expect(slip).toContain(part)
  await test.call('settings.change', { settings: { dueDates: false } })
  const noDay = await textOf(
    await test.call('tray.render', { kind: 'slip', itemIds: ids(await waiting('slip')) }),
  )
  expect(noDay).toContain('Hopes to bring back: 40 seeds of the best plants')
  expect(noDay).not.toContain('November')
  const labels = await textOf(
    await test.call('tray.render', {
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
    await test.call('person.merge', { keepId, joinId })
    await test.call('tray.add', { items: [{ kind: 'letter', accessionId: taken[0]?.accessionId ?? 0 }] })
    for (const kind of ['slip', 'letter'] as const) {
      const items = await waiting(kind)
      expect(items.map(({ title }) => title)).toEqual(['Tove Lindqvist'])
      const text = await textOf(await test.call('tray.render', { kind, itemIds: ids(items) }))
      expect(text).toContain('Tove Lindqvist')
      expect(text).not.toContain('Lindquist')
    }
  })
})
