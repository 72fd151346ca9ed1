import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { CallInput } from '../../db/contract/contract.ts'
import { answered, listOf } from '../builders/answered-list.ts'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'
import { ids, textOf, trayOf } from '../builders/tray.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const { give, waiting } = trayOf(() => test)
type Limits = CallInput<'accession.change-terms'>['limits']
type Purpose = NonNullable<CallInput<'withdrawal.record'>['purpose']>

/** A gift with terms of its own, of which plenty can be spared. */
const limited = (limits: Limits) => takeIn(test, { amount: '9000 seeds', limits })
const out = (lotId: number, more: Partial<CallInput<'withdrawal.record'>> = {}) => ({
  person: null,
  on: TODAY,
  lines: [{ lotId, amount: '20 seeds' }],
  ...more,
})
const REASON = 'asked the elders by telephone'

describe('at a hand-out', () => {
  it.each<[Limits, Purpose, string]>([
    [{ share: 'community' }, 'to-grow', 'community-only'],
    [{ share: 'ask-first' }, 'other', 'ask-first'],
    [{ share: 'nobody' }, 'grow-out', 'kept-by-us'],
    [{ share: 'nobody' }, 'safety-duplicate', 'kept-by-us'],
    [{ agreement: 'letter', agreementEnds: '2026-03-13' }, 'to-grow', 'agreement-ended'],
  ])('%o wants a reason to go out %s: %s', async (limits, purpose, despite) => {
    const { lotId } = await limited(limits)
    const refused = await test.refused('withdrawal.record', out(lotId, { purpose }))
    expect([refused.code, refused.choices]).toEqual(['caution', [despite]])
    await test.call('withdrawal.record', out(lotId, { purpose, despite: [despite as never], reason: REASON }))
    const { ledger } = await test.call('lot.get', { lotId })
    expect(ledger.at(-1)?.overridden).toContain(REASON)
    expect(ledger.at(-1)?.overridden).not.toContain(despite)
  })

  it('what nobody may have is refused whatever is overridden, and a sheet signed on paper has passed it by', async () => {
    const { lotId } = await limited({ share: 'nobody' })
    const reason = { despite: ['kept-by-us' as const], reason: REASON }
    expect((await test.refused('withdrawal.record', out(lotId, reason))).code).toBe('not-to-give')
    const preview = await test.call('withdrawal.preview', { lines: [{ lotId, amount: '20 seeds' }] })
    expect(preview.lines[0]?.problem?.code).toBe('not-to-give')
    const lines = [{ person: null, lotId, amount: '20 seeds' }]
    await test.call('paper-sheet.record', { on: TODAY, lines })
    expect((await test.call('lot.get', { lotId })).ledger.at(-1)?.overridden).toBe('signed out on paper')
  })

  it('a part that is to be kept elsewhere is asked about once', async () => {
    const { lotId } = await limited({ share: 'nobody' })
    const part = {
      lotId,
      on: TODAY,
      amount: '900 seeds',
      role: 'duplicate-elsewhere',
      heldBy: 'Oakmoor',
    } as const
    const { asks = '', code } = await test.refused('lot.split', part)
    expect(code).toBe('odd-but-possible')
    await test.call('lot.split', { ...part, itIsSo: [asks] })
  })

  it('a lot with limits is offered after one without, and says so', async () => {
    const first = await limited({ share: 'community' })
    const { lotId } = await takeIn(test, { variety: await varietyOf(first.lotId), amount: '9000 seeds' })
    const { lots } = await test.call('withdrawal.list-lots', { text: '' })
    expect(lots.map((lot) => lot.lotId)).toEqual([lotId, first.lotId])
    expect(lots[1]?.why).toMatch(/^Careful: our community only; /)
  })
})

const varietyOf = async (lotId: number) => ({ varietyId: (await test.call('lot.get', { lotId })).varietyId })

describe('the terms of an accession', () => {
  it('hold for what was split off, poured together and grown, and for no other gift', async () => {
    const { lotId } = await limited({ share: 'community' })
    const other = await takeIn(test, { variety: await varietyOf(lotId) })
    const { newLotId } = await test.call('lot.split', {
      lotId,
      on: TODAY,
      amount: '900 seeds',
      role: 'reserve',
    })
    const { taken } = await test.call('return.record', {
      person: { newPerson: { name: 'Isolde Quern' } },
      parentLotId: newLotId,
      receivedOn: TODAY,
      amount: '500 seeds',
    })
    await test.call('lot.merge', { intoLotId: newLotId, fromLotIds: [lotId], on: TODAY })
    const who = async (id: number) => (await test.call('lot.get', { lotId: id })).limits.share
    for (const id of [lotId, newLotId, taken.lotId]) expect(await who(id)).toBe('community')
    expect(await who(other.lotId)).toBe('anyone')
  })

  it('change as often as the giver likes, and each change can be taken back', async () => {
    const { accessionId, accessionNumber, lotId } = await takeIn(test)
    const told = async () => (await test.call('lot.get', { lotId })).limitsTold
    expect(await told()).toEqual([])
    const first = { share: 'community', mayBeSold: false } as const
    const changed = await test.call('accession.change-terms', { accessionId, limits: first })
    expect(changed.said).toBe(`Changed the terms of ${accessionNumber}. Who may have it: our community`)
    expect(await told()).toEqual(changed.limitsTold)
    expect(await told()).toEqual(['For our community only.', 'Not for sale.'])
    expect((await test.refused('accession.change-terms', { accessionId, limits: first })).code).toBe(
      'nothing-to-change',
    )
    const { entryId } = await test.call('accession.change-terms', { accessionId, limits: {} })
    expect(await told()).toEqual([])
    await test.call('entry.undo', { entryId })
    expect(await told()).toEqual(['For our community only.', 'Not for sale.'])
    await test.call('entry.undo', { entryId: changed.entryId })
    expect(await told()).toEqual([])
  })

  it('come with a gift that waited, as they were offered', async () => {
    const { giftId } = await test.call('gift.offer', {
      donor: null,
      offeredOn: TODAY,
      gift: {
        variety: { newVariety: { cropId: 'pea', name: 'Dusk Climber' } },
        amount: '40 seeds',
        limits: { share: 'nobody' },
      },
      decision: { kind: 'later' },
    })
    const { taken } = await test.call('gift.accept', { giftId, receivedOn: TODAY })
    expect((await test.call('lot.get', { lotId: taken.lotId })).limits.share).toBe('nobody')
  })

  it('refuses what is no address of the web, with what to do', async () => {
    const { accessionId } = await takeIn(test)
    const limits = { communityLink: 'weir-valley.example' }
    expect(() => test.call('accession.change-terms', { accessionId, limits })).toThrow('fits.web-address')
    expect((await test.refused('accession.change-terms', { accessionId: 99, limits: {} })).code).toBe(
      'not-found',
    )
  })
})

describe('what goes out', () => {
  const LABEL = 'Weir Valley people ask you to come and talk first.'
  const limits: Limits = {
    share: 'ask-first',
    mayBeSold: false,
    agreement: 'letter of 3 May',
    communityLabel: LABEL,
    communityLink: 'https://weir-valley.example/label',
  }
  const SHORT = ['Ask the library before you pass it on.', 'Not for sale.']

  it('says it on labels, packets, slips, cards and the list; packets carry the community’s label as issued', async () => {
    const { lotId } = await limited(limits)
    const despite = { despite: ['ask-first' as const], reason: REASON, slip: true }
    await test.call('withdrawal.record', out(lotId, despite))
    const labels = [{ lotId }]
    const papers = [
      await test.call('label.print', { labels, sheet: 'a4-21' }),
      await test.call('label.print', { labels, sheet: 'packet-a4' }),
      await test.call('tray.render', { kind: 'slip', itemIds: ids(await waiting('slip')) }),
      await test.call('keep-card.print', { lotIds: [lotId] }),
      await test.call('catalogue.print', {}),
    ]
    const texts = await Promise.all(papers.map(textOf))
    const unbroken = (text: string) => text.replaceAll(/\s/g, '')
    for (const [index, text] of texts.entries())
      for (const line of index === 0 ? SHORT : [...SHORT, LABEL])
        expect(unbroken(text)).toContain(unbroken(line))
    const { html } = await test.call('catalogue.export', {})
    for (const line of [...SHORT, LABEL]) expect(html).toContain(line)
  })

  it.each(['community', 'nobody'] as const)('for %s is on no list that anybody reads', async (share) => {
    await limited({ share })
    expect((await test.refused('catalogue.export', {})).code).toBe('nothing-to-print')
    const { lotId } = await takeIn(test, { amount: '9000 seeds' })
    expect(lotId).toBeGreaterThan(0)
    expect((await test.call('catalogue.export', {})).listed).toBe(1)
  })

  it('says it in passports, in occurrences and in lists of lots', async () => {
    await limited(limits)
    const line = 'Ask the library before you pass it on. Not for sale. By agreement: letter of 3 May'
    const { csv, findings } = await test.call('passport.export', {})
    expect(csv).toContain(`ACCENUMB:${line}`)
    expect(findings.filter(({ level }) => level === 'error')).toEqual([])
    expect((await test.call('occurrence.export', {})).csv).toContain(line)
    expect((await test.call('stock.export', {})).csv).toContain(line)
  })

  it.each(['en', 'es'] as const)(
    'holds again where such a list or passport is read, in %s too',
    async (language) => {
      await test.call('settings.change', { settings: { language } })
      await limited({ share: 'community', mayBeSold: false, publishStory: false })
      const files = [
        (await test.call('stock.export', {})).csv,
        (await test.call('passport.export', {})).csv,
        'crop,variety,terms\nbean,Weir Pole,"Solo para nuestra comunidad. No se vende."\n',
      ]
      for (const [index, csv] of files.slice(0, language === 'es' ? 3 : 2).entries()) {
        const other = await aCollection('BB-{####}')
        await other.call('settings.change', { settings: { language } })
        const { firstLotId } = await other.call('import.record', await answered(other, listOf(csv)))
        const { limits: held } = await other.call('lot.get', { lotId: firstLotId })
        expect(held).toMatchObject({ share: 'community', mayBeSold: false, publishStory: index > 0 })
        other.remove()
      }
    },
  )

  it('tells the donor in their letter what the library keeps to', async () => {
    const { taken } = await give()
    const { accessionId = 0 } = taken[0] ?? {}
    await test.call('accession.change-terms', { accessionId, limits: { ...limits, publishStory: false } })
    const letter = await test.call('tray.render', { kind: 'letter', itemIds: ids(await waiting('letter')) })
    expect(await textOf(letter)).toContain(
      'We keep to this: Ask the library before you pass it on. Not for sale. Its story is not published.',
    )
  })
})
