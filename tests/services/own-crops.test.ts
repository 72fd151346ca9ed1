import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { contract } from '../../db/contract/contract.ts'
import { bare } from '../builders/packets.ts'
import { readPdf } from '../builders/read-pdf.ts'
import {
  aCollection,
  aGift,
  type TemporaryCollection,
  TODAY,
  takeIn,
} from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const lotOf = async (lotId: number) => test.call('lot.get', { lotId })
const newOf = (crop: string, name: string) => ({ variety: { newVariety: { newCrop: { name: crop }, name } } })
const wordsOf = async (pdf: string) => {
  const { pages } = await readPdf(Buffer.from(pdf, 'base64'))
  return bare(pages[0]?.characters.map(({ character }) => character).join('') ?? '')
}
const ownCrops = async () => (await test.call('crop.list', {})).crops.filter(({ own }) => own)

describe('a crop of the keeper’s own', () => {
  it('needs a name only, and says what is not known instead of borrowing it', async () => {
    const { cropId, said } = await test.call('crop.create', { name: 'Lantern vine' })
    expect(said).toBe('Added Lantern vine as a crop of your own')
    const crop = await test.call('crop.get', { cropId })
    expect(crop).toMatchObject({
      own: true,
      species: '',
      family: '',
      hundredSeedWeightG: null,
      plausibleWeightG: null,
      packetSeeds: null,
      matingSystem: null,
      storageClass: null,
      facts: [],
    })
    expect(crop.unknown).toHaveLength(6)
    expect(crop.unknown.join(' ')).toMatch(/weighs.*pollinated.*nothing is forecast/s)
    expect(crop.assumedViability).toBe(0.5)
    expect(crop.assumedViabilityNote).toContain('a cautious rule of thumb')
  })

  it('asks once about cuttings, which have no place in the book, and about no egg plant', async () => {
    const asked = await test.refused('crop.create', { name: 'Rose cuttings' })
    expect(asked).toMatchObject({ code: 'odd-but-possible', field: 'name' })
    expect(asked.sentence).toContain('have to grow at once')
    await test.call('crop.create', { name: 'Rose cuttings', itIsSo: [asked.asks ?? ''] })
    await test.call('crop.create', { name: 'Moon egg plant' })
  })

  it('keeps what is known of it, and says nothing is unknown that was said', async () => {
    const { cropId } = await test.call('crop.create', {
      name: 'Lantern vine',
      species: 'Lychnitis errans',
      family: 'Lychnitidaceae',
      packetSeeds: 25,
      hundredSeedWeightG: 0.04,
    })
    const crop = await test.call('crop.get', { cropId })
    expect(crop).toMatchObject({ species: 'Lychnitis errans', packetSeeds: 25, hundredSeedWeightG: 0.04 })
    expect(crop.unknown).toHaveLength(3)
  })

  it.each(['Common bean', ' cómmon  BEAN ', 'Lantern vine', 'lantern-vine'])(
    'is refused as %s, which is there',
    async (name) => {
      await test.call('crop.create', { name: 'Lantern vine' })
      const problem = await test.refused('crop.create', { name })
      expect(problem).toMatchObject({ code: 'already-there', field: 'name' })
      expect(problem.sentence).toMatch(/^There is a crop called (Common bean|Lantern vine) already\.$/)
      expect(await ownCrops()).toHaveLength(1)
    },
  )

  it('is refused without a letter in its name', async () => {
    expect((await test.refused('crop.create', { name: '—' })).sentence).toContain('has no letters')
  })
})

describe('taking in seed of a crop that is not in the table', () => {
  it('adds the crop with the visit, once for two gifts, and takes the visit back without losing it', async () => {
    const { taken, entryId } = await test.call('intake.record', {
      donor: null,
      receivedOn: TODAY,
      gifts: [
        aGift({ ...newOf('Lantern vine', 'Ferry Flame'), amount: '40 seeds' }),
        aGift({ ...newOf('lantern vine', 'Quay White'), amount: '2 g' }),
      ],
    })
    expect((await ownCrops()).map(({ commonName }) => commonName)).toEqual(['Lantern vine'])
    const [counted, weighed] = taken
    expect(counted?.words).toBe('40 seeds')
    expect(counted?.warnings).toEqual([])
    expect(weighed?.words).toBe('2 g, how many seeds is not known')
    expect(weighed?.warnings.join()).toContain('Nobody has said how much Lantern vine seed weighs')
    expect((await test.call('entry.undo', { entryId })).said).toContain('Undone')
    expect(await ownCrops()).toHaveLength(1)
  })

  it('uses the crop of that name where there is one', async () => {
    const { lotId } = await takeIn(test, newOf('common bean', 'Ferry Pole'))
    expect((await lotOf(lotId)).crop).toBe('Common bean')
    expect(await ownCrops()).toEqual([])
  })

  it('refuses at the crop where its name has no letters, and writes nothing', async () => {
    const problem = await test.refused('intake.record', {
      donor: { newPerson: { name: 'Half Written' } },
      receivedOn: TODAY,
      gifts: [aGift(newOf('?', 'Ferry Flame'))],
    })
    expect(problem.field).toBe('gifts.0.variety.newVariety.newCrop.name')
    expect((await test.call('person.search', { text: 'half' })).people).toEqual([])
  })

  it('is kept for later with its name, and becomes a crop when it is taken in', async () => {
    const { giftId } = await test.call('gift.offer', {
      donor: null,
      offeredOn: TODAY,
      gift: aGift({ ...newOf('Lantern vine', 'Ferry Flame'), amount: '40 seeds' }),
      decision: { kind: 'later' },
    })
    const { gifts } = await test.call('gift.list', {})
    expect(gifts[0]).toMatchObject({ crop: 'Lantern vine', variety: 'Ferry Flame' })
    expect(await ownCrops()).toEqual([])
    const { taken } = await test.call('gift.accept', { giftId, receivedOn: TODAY })
    expect((await lotOf(taken.lotId)).crop).toBe('Lantern vine')
    expect(await ownCrops()).toHaveLength(1)
  })
})

describe('correcting a crop of the keeper’s own', () => {
  it('renames it, finds its lots by the new name, and is taken back', async () => {
    const { lotId } = await takeIn(test, { ...newOf('Lantern vine', 'Ferry Flame'), amount: '40 seeds' })
    const [crop] = await ownCrops()
    const { said, entryId } = await test.call('crop.change', {
      cropId: crop?.cropId ?? '',
      correction: { name: 'Lamp vine', species: 'Lychnitis errans' },
    })
    expect(said).toBe('Corrected Lamp vine, called Lantern vine before: name and botanical name')
    const found = async (text: string) => (await test.call('lot.list', { text })).rows.map((row) => row.lotId)
    expect(await found('lamp')).toEqual([lotId])
    expect(await found('lychnitis')).toEqual([lotId])
    expect(await found('lantern')).toEqual([])
    await test.call('entry.undo', { entryId })
    expect(await found('lantern')).toEqual([lotId])
    expect(await ownCrops()).toEqual([crop])
  })

  it('computes lots that nobody weighed by the hundred anew, leaves weighed ones, and is taken back', async () => {
    const unweighed = await takeIn(test, { ...newOf('Lantern vine', 'Ferry Flame'), amount: '2 g' })
    const sampled = await takeIn(test, {
      ...newOf('Lantern vine', 'Quay White'),
      amount: '2 g',
      sample: '100 weigh 0.10 g',
    })
    const [crop] = await ownCrops()
    const { entryId } = await test.call('crop.change', {
      cropId: crop?.cropId ?? '',
      correction: { hundredSeedWeightG: 0.04 },
    })
    // 2 g at 0.04 g a hundred: 100 x 2 / 0.04.
    expect((await lotOf(unweighed.lotId)).quantity).toMatchObject({ count: 5_000, massMg: 2_000 })
    expect((await lotOf(sampled.lotId)).quantity).toMatchObject({ count: 2_000, massMg: 2_000 })
    await test.call('entry.undo', { entryId })
    expect((await lotOf(unweighed.lotId)).quantity.words).toBe('2 g, how many seeds is not known')
    await test.call('entry.undo', { entryId: unweighed.entryId })
  })

  it('is not taken back before a later correction of the same thing', async () => {
    const { cropId } = await test.call('crop.create', { name: 'Lantern vine' })
    const first = await test.call('crop.change', { cropId, correction: { packetSeeds: 20 } })
    await test.call('crop.change', { cropId, correction: { packetSeeds: 30 } })
    const problem = await test.refused('entry.undo', { entryId: first.entryId })
    expect(problem.sentence).toContain('It was changed again later')
    expect((await test.call('crop.get', { cropId })).packetSeeds).toBe(30)
  })

  it('leaves the crop table alone, and other crops their names', async () => {
    const shipped = await test.refused('crop.change', { cropId: 'bean', correction: { name: 'Haricot' } })
    expect(shipped.sentence).toContain('is in the crop table')
    const { cropId } = await test.call('crop.create', { name: 'Lantern vine' })
    const taken = await test.refused('crop.change', { cropId, correction: { name: 'Common Bean' } })
    expect(taken).toMatchObject({ code: 'already-there', field: 'correction.name' })
    const same = await test.call('crop.change', { cropId, correction: { name: 'Lantern vine' } })
    expect(same.said).toBe('Lantern vine stays as it was')
  })

  it('sets its own plants and threshold as for any crop, and takes that back', async () => {
    const { cropId } = await test.call('crop.create', { name: 'Lantern vine' })
    const own = { plantsToKeep: 33, viabilityThreshold: 0.6, reason: 'sets little seed' }
    const { entryId } = await test.call('crop.change-policy', { cropId, ...own })
    expect(await test.call('crop.get', { cropId })).toMatchObject({
      plantsToKeep: 33,
      plantsToKeepIsOverride: true,
      viabilityThreshold: 0.6,
      viabilityThresholdIsOverride: true,
      ownReason: 'sets little seed',
    })
    await test.call('entry.undo', { entryId })
    expect(await test.call('crop.get', { cropId })).toMatchObject({
      plantsToKeepIsOverride: false,
      viabilityThresholdIsOverride: false,
      ownReason: '',
    })
  })
})

describe('what is said of a crop of the keeper’s own', () => {
  const GROWN = {
    species: 'Lychnitis errans',
    countedUnit: 'fruit',
    matingSystem: 'outcrosser',
    pollination: 'wind',
    lifeCycle: 'biennial',
    isolationHomeM: 300,
    isolationStrictM: 900,
    laterSowingDays: 21,
    bedArea: 0.5,
    seedExtraction: 'fermented',
  } as const
  const CONSTANTS = { ke: 8.5, cw: 4.8, ch: 0.0329, cq: 0.000478 }

  it('is kept field by field, corrected and taken back', async () => {
    const { cropId } = await test.call('crop.create', {
      name: 'Lantern vine',
      ...GROWN,
      viabilityConstants: CONSTANTS,
    })
    const { countedUnit, ...kept } = GROWN
    const said = { ...kept, countedUnit: { one: countedUnit, many: 'fruits' }, viabilityConstants: CONSTANTS }
    const before = await test.call('crop.get', { cropId })
    expect(before).toMatchObject(said)
    expect(before.unknown.join(' ')).not.toMatch(/pollinated|so nothing is forecast/)
    const change = { bedArea: 2, pollination: null, viabilityConstants: { ...CONSTANTS, ke: 9 } }
    const { entryId, said: told } = await test.call('crop.change', { cropId, correction: change })
    expect(told).toBe(
      'Corrected Lantern vine: what carries its pollen, bed for one plant and constants of ageing',
    )
    expect(await test.call('crop.get', { cropId })).toMatchObject({ ...said, ...change })
    await test.call('entry.undo', { entryId })
    expect(await test.call('crop.get', { cropId })).toEqual(before)
  })

  it('is used by the season plan and told to the grower', { tags: 'long' }, async () => {
    const { siteId } = await test.call('site.change', {
      name: 'Orrin strip',
      growerId: null,
      areaM2: 60,
      mostVarieties: 3,
      place: { eastM: 0, northM: 0 },
    })
    const variety = { newVariety: { newCrop: { name: 'Lantern vine', ...GROWN }, name: 'Ferry Flame' } }
    const { accessionId, lotId } = await takeIn(test, { variety, amount: '400 seeds' })
    expect((await lotOf(lotId)).quantity.words).toBe('400 fruits')
    const choices = [{ accessionId, siteId }]
    const { lines } = await test.call('season-plan.check', { choices })
    const [line] = lines
    expect(line).toMatchObject({
      pollination: 'wind',
      biennial: true,
      laterDays: 21,
      isolationM: 300,
      isolationWhy: expect.stringMatching(/^Source: your own figure\./),
      unknown: '',
    })
    expect(line?.areaM2).toBeCloseTo(0.5 * (line?.plants ?? 0), 9)
    await test.call('season-plan.create', { choices })
    const { pdf } = await test.call('season-plan.print', {})
    expect(await wordsOf(pdf)).toContain(bare('let it stand for two days'))
  })

  it('ages seed by its constants: a forecast comes with them, changes with them and goes with them', async () => {
    const { lotId } = await takeIn(test, { ...newOf('Lantern vine', 'Ferry Flame'), amount: '40 seeds' })
    const [crop] = await ownCrops()
    const cropId = crop?.cropId ?? ''
    const forecast = async () => test.call('forecast.get', { lotId })
    const correct = (viabilityConstants: typeof CONSTANTS | null) =>
      test.call('crop.change', { cropId, correction: { viabilityConstants } })
    expect((await forecast()).kind).toBe('refused')
    const { entryId } = await correct(CONSTANTS)
    const slow = await forecast()
    expect(JSON.stringify(slow)).toContain('constants of the keeper: KE 8.5, CW 4.8, CH 0.0329, CQ 0.000478')
    expect(JSON.stringify(slow)).toContain('said by the keeper')
    await correct({ ...CONSTANTS, ke: 7 })
    expect(await forecast()).not.toEqual(slow)
    await correct(null)
    expect((await forecast()).kind).toBe('refused')
    expect((await test.refused('entry.undo', { entryId })).sentence).toContain('It was changed again later')
  })

  it.each([
    { ke: 1, cw: 15, ch: 0.2, cq: 0.01 },
    { ke: 20, cw: 1, ch: 0, cq: 0.00001 },
  ])(
    'at the bounds of what constants may be, %j, a forecast stays within none and all',
    async (constants) => {
      const { lotId } = await takeIn(test, { ...newOf('Lantern vine', 'Ferry Flame'), amount: '40 seeds' })
      const [crop] = await ownCrops()
      await test.call('crop.change', {
        cropId: crop?.cropId ?? '',
        correction: { viabilityConstants: constants },
      })
      const forecast = await test.call('forecast.get', { lotId })
      if (forecast.kind !== 'forecast') throw new Error(forecast.because)
      for (const part of Object.values(forecast.alive)) {
        expect(part).toBeGreaterThanOrEqual(0)
        expect(part).toBeLessThanOrEqual(1)
      }
    },
  )

  it.each([
    [{ bedArea: 0 }, 'bedArea'],
    [{ isolationHomeM: -5 }, 'isolationHomeM'],
    [{ laterSowingDays: 400 }, 'laterSowingDays'],
    [{ viabilityConstants: { ...CONSTANTS, cq: 0 } }, 'viabilityConstants.cq'],
    [{ viabilityConstants: { ke: 8 } }, 'viabilityConstants.cw'],
  ])('cannot be %j', (correction, field) => {
    const { error } = contract['crop.change'].input.safeParse({
      key: 'test-key-0',
      cropId: 'own-1-1',
      correction,
    })
    expect(error?.issues.map(({ path }) => path.join('.'))).toContain(`correction.${field}`)
  })
})

describe('what leans on figures that a crop of the keeper’s own has not', () => {
  it('says so in words, screen by screen, and goes on working', async () => {
    const gift = await takeIn(test, { ...newOf('Lantern vine', 'Ferry Flame'), amount: '2 g' })
    const { lotId, accessionId } = gift
    const record = await lotOf(lotId)
    expect(record.weight.words).toContain('nobody has said how much Lantern vine seed weighs')
    expect(record.stock.viabilityNotes.join()).toMatch(
      /a cautious rule of thumb.*how many seeds there are is a guess/,
    )
    expect(await test.call('forecast.get', { lotId })).toMatchObject({
      kind: 'refused',
      because: 'Nobody knows how long seed of this crop keeps.',
    })
    const need = await test.call('regeneration.get', { accessionId })
    expect(need.plantsFrom).toContain('how Lantern vine is pollinated is not known')
    expect((await test.call('lot.export', { lotIds: [lotId] })).csv).toContain('guessed')
    const plan = await test.call('germination.plan', { lotId })
    expect(plan.conditions).toMatchObject({ source: 'common practice, no source' })
    const read = await test.call('amount.preview', { text: '3 g', lotId })
    expect(read).toMatchObject({ words: '3 g, how many seeds is not known', count: null })
    expect(read.warning).toContain('Nobody has said')
    expect((await test.call('amount.preview', { text: '30 seeds', lotId })).words).toBe('30 seeds')
    const ask = await test.call('amount.preview', { text: '2 packets', lotId })
    expect(ask.reading).not.toBe('amount')
  })

  it('is kept apart only from what is of its name in the season plan, and the grower reads why', async () => {
    const { siteId } = await test.call('site.change', {
      name: 'Orrin strip',
      growerId: null,
      areaM2: 60,
      mostVarieties: 3,
      place: { eastM: 0, northM: 0 },
    })
    const ids: number[] = []
    for (const [crop, name] of [
      ['Lantern vine', 'Ferry Flame'],
      ['Quay daisy', 'Quay White'],
    ] as const) {
      ids.push((await takeIn(test, { ...newOf(crop, name), amount: '400 seeds' })).accessionId)
    }
    const choices = ids.map((accessionId) => ({ accessionId, siteId }))
    const { lines, clashes } = await test.call('season-plan.check', { choices })
    expect(clashes).toEqual([])
    expect(lines.map(({ group }) => group)).toEqual(['Lantern vine', 'Quay daisy'])
    expect(lines[0]?.unknown).toMatch(/No distance is known.*its botanical name is not known/)
    await test.call('season-plan.create', { choices })
    const { pdf } = await test.call('season-plan.print', {})
    const words = await wordsOf(pdf)
    expect(words).toContain(bare('No distance is known for it'))
  })
})
