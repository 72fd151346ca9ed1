import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { bare } from '../builders/packets.ts'
import { readPdf } from '../builders/read-pdf.ts'
import { aCollection, type TemporaryCollection, TODAY, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(() => test.remove())

async function accession(cropId: string, name: string): Promise<number> {
  const { accessionId } = await takeIn(test, {
    variety: { newVariety: { cropId, name } },
    amount: '40 seeds',
  })
  return accessionId
}

async function garden(name: string, eastM: number, more: object = {}): Promise<number> {
  const { siteId } = await test.call('site.change', {
    name,
    growerId: null,
    areaM2: 60,
    mostVarieties: 3,
    place: { eastM, northM: 0 },
    ...more,
  })
  return siteId
}

describe('gardens', () => {
  it('are kept with what flowers nearby, changed in place, and know how reliable their grower was', async () => {
    const { personId } = await test.call('person.create', { name: 'Tamsin Lugg', roles: ['grower'] })
    const siteId = await garden('Orrin strip', 0, {
      growerId: personId,
      neighbours: [{ cropId: 'maize', metres: 90 }],
    })
    const { lotId } = await takeIn(test, { amount: '400 seeds' })
    for (let visit = 0; visit < 2; visit += 1) {
      const { withdrawalId } = await test.call('withdrawal.record', {
        person: { personId },
        on: TODAY,
        purpose: 'grow-out',
        lines: [{ lotId, amount: '20 seeds' }],
      })
      if (visit === 0) {
        await test.call('return.record', {
          person: { personId },
          parentLotId: lotId,
          withdrawalId,
          receivedOn: TODAY,
          amount: '80 seeds',
        })
      }
    }
    await test.call('site.change', {
      siteId,
      name: 'Orrin field',
      growerId: personId,
      areaM2: 80,
      mostVarieties: 2,
    })
    const { sites } = await test.call('site.list', {})
    expect(sites).toMatchObject([
      {
        siteId,
        name: 'Orrin field',
        grower: 'Tamsin Lugg',
        areaM2: 80,
        place: null,
        took: 2,
        broughtBack: 1,
        reliability: 0.5,
      },
    ])
    expect(sites[0]?.neighbours).toEqual([])
  })

  it('are placed in one way, and know crops and people of the book only', async () => {
    await garden('Sketch', 0)
    const facts = { name: 'Map', growerId: null, areaM2: 10, mostVarieties: 1 }
    const mixed = await test.refused('site.change', { ...facts, place: { latitude: 51, longitude: 0 } })
    expect(mixed).toMatchObject({ field: 'place', sentence: expect.stringContaining('metres on a sketch') })
    expect(await test.refused('site.change', { ...facts, takes: ['dragonfruit'] })).toMatchObject({
      field: 'takes',
    })
    const twice = ['beet', 'chard', 'beet'].map((cropId, at) => ({ cropId, metres: 90 + at }))
    expect(await test.refused('site.change', { ...facts, neighbours: twice })).toMatchObject({
      field: 'neighbours',
      sentence: expect.stringContaining('named twice'),
    })
    expect(await test.refused('site.change', { ...facts, growerId: 9 })).toMatchObject({ field: 'growerId' })
    expect(await test.refused('site.change', { ...facts, siteId: 99 })).toMatchObject({ field: 'siteId' })
  })
})

describe('a season plan', () => {
  it('keeps what crosses apart, says what was left out and why, and how good it is', async () => {
    const [beet, chard, bean] = [
      await accession('beet', 'Red'),
      await accession('chard', 'Silver'),
      await accession('bean', 'Pole'),
    ]
    const here = await garden('Here', 0)
    const near = await garden('Near', 150)
    const answer = await test.call('season-plan.preview', { accessionIds: [beet, chard, bean], seconds: 5 })
    expect(answer).toMatchObject({ by: 'solver', gap: expect.any(Number), left: [] })
    expect(answer.lines.filter(({ way }) => way === 'covered')).toHaveLength(1)
    expect(answer.worth).toBeGreaterThanOrEqual(answer.greedyWorth)
    const open = [
      { accessionId: beet, siteId: here },
      { accessionId: chard, siteId: near },
    ]
    const { clashes, lines } = await test.call('season-plan.check', { choices: open })
    expect(clashes).toEqual([
      {
        kind: 'isolation',
        accessionIds: [beet, chard],
        sentence:
          'Red and Silver cross: at Here and Near, 150 m apart, and they need about 250 m. Cover one of them, or move it.',
      },
    ])
    expect(lines.map(({ biennial, plants }) => [biennial, plants])).toEqual([
      [true, 20],
      [true, 20],
    ])
    expect(await test.refused('season-plan.create', { choices: open })).toMatchObject({
      sentence: clashes[0]?.sentence,
    })
    expect(await test.refused('season-plan.preview', { accessionIds: [bean], locked: open })).toMatchObject({
      field: 'locked',
      sentence: expect.stringContaining('does not work: Red and Silver cross'),
    })
  })

  it('keeps two maizes of one garden apart by time, and tells their grower which is sown first', async () => {
    const [flint, sweet] = [
      await accession('maize', 'Lugg Flint'),
      await accession('sweet-corn', 'Pier Sugar'),
    ]
    const siteId = await garden('Here', 0, { areaM2: 60, seasonDays: 140 })
    const answer = await test.call('season-plan.preview', { accessionIds: [flint, sweet], seconds: 5 })
    expect(answer).toMatchObject({ by: 'solver', left: [] })
    expect(answer.lines).toMatchObject([
      { accessionId: flint, way: 'open', hours: 0, shortSeason: '' },
      { accessionId: sweet, way: 'later', hours: 2, laterDays: 28, shortSeason: '' },
    ])
    const choices = answer.lines.map(({ accessionId, way }) => ({ accessionId, siteId, way }))
    await test.call('season-plan.create', { choices })
    const { plan } = await test.call('season-plan.get', {})
    expect(plan?.lines.map(({ way }) => way)).toEqual(['open', 'later'])
    const { pdf } = await test.call('season-plan.print', {})
    const { pages } = await readPdf(Buffer.from(pdf, 'base64'))
    const words = bare(
      pages.flatMap(({ characters }) => characters.map(({ character }) => character)).join(''),
    )
    expect(words).toContain(bare('Sow it on time: Pier Sugar follows 28 days later'))
    expect(words).toContain(bare('Sow it 28 days after Lugg Flint, so that'))
    expect(words).toContain(
      bare(
        'Grow no other Maize (flint, dent, pop) or Sweet corn (species Zea mays) but what is planned within',
      ),
    )
  })

  it('goes by the keeper’s own days to ripe seed before the usual ones', async () => {
    const pepper = await accession('pepper', 'Nine Gates')
    const siteId = await garden('Here', 0, { seasonDays: 100 })
    const short = async () =>
      (await test.call('season-plan.check', { choices: [{ accessionId: pepper, siteId }] })).lines[0]
        ?.shortSeason
    expect(await short()).toMatch(/^Pepper usually takes 110 days.*Here has 100/)
    const reason = 'an early one'
    const { entryId } = await test.call('crop.change-policy', { cropId: 'pepper', daysToSeed: 95, reason })
    expect(await test.call('crop.get', { cropId: 'pepper' })).toMatchObject({
      daysToSeed: 95,
      daysToSeedIsOverride: true,
    })
    expect(await short()).toBe('')
    await test.call('entry.undo', { entryId })
    expect(await test.call('crop.get', { cropId: 'pepper' })).toMatchObject({
      daysToSeed: 110,
      daysToSeedIsOverride: false,
    })
  })

  it('is greedy alone where no time is given, and says what does not fit', async () => {
    const squash = await accession('squash-maxima', 'Crown')
    await garden('Window box', 0, { areaM2: 1 })
    const answer = await test.call('season-plan.preview', { accessionIds: [squash], seconds: 0 })
    expect(answer).toMatchObject({ by: 'greedy', gap: null, lines: [] })
    expect(answer.left).toEqual([
      { accessionId: squash, variety: 'Crown', why: 'Crown takes 10 m² of bed, and Window box has 1.' },
    ])
  })

  it('is saved, opened again, and taken back', async () => {
    const bean = await accession('bean', 'Pole')
    const siteId = await garden('Here', 0)
    expect(await test.call('season-plan.get', {})).toEqual({ plan: null })
    const { entryId, planId } = await test.call('season-plan.create', {
      choices: [{ accessionId: bean, siteId, way: 'covered' }],
      note: 'Ask in March',
    })
    const { plan } = await test.call('season-plan.get', {})
    expect(plan).toMatchObject({
      planId,
      season: 2026,
      note: 'Ask in March',
      lines: [
        {
          variety: 'Pole',
          site: 'Here',
          way: 'covered',
          became: [],
          sow: { seeds: 27 },
        },
      ],
    })
    await test.call('entry.undo', { entryId })
    expect(await test.call('season-plan.get', {})).toEqual({ plan: null })
  })

  it('prints a sheet for each garden, with what to do and what to be careful about', async () => {
    expect(await test.refused('season-plan.print', {})).toMatchObject({ code: 'not-found' })
    const [beet, tomato] = [await accession('beet', 'Quay Red'), await accession('tomato', 'Widow Tarn')]
    const [here, far] = [await garden('Orrin strip', 0), await garden('Mill field', 900)]
    await test.call('season-plan.create', {
      choices: [
        { accessionId: beet, siteId: here },
        { accessionId: tomato, siteId: far, way: 'covered' },
      ],
    })
    const { pdf, pages, warnings, fileName } = await test.call('season-plan.print', {})
    expect([pages, warnings, fileName]).toEqual([2, [], 'grower-sheets-2026.pdf'])
    const { pages: read } = await readPdf(Buffer.from(pdf, 'base64'))
    const words = read.map(({ characters }) => bare(characters.map(({ character }) => character).join('')))
    expect(words[0]).toContain(bare('Beet ‘Quay Red’'))
    expect(words[0]).toContain(
      bare(
        'Grow no other Beet or Swiss chard (species Beta vulgaris) within about 250 m, farther if you can',
      ),
    )
    expect(words[0]).toContain(bare('It flowers in its second year'))
    expect(words[1]).toContain(bare('Keep it covered while it flowers'))
    expect(words[1]).toContain(bare('let it stand for two days, then wash it'))
    expect((await test.call('season-plan.print', { siteId: far })).pages).toBe(1)
    expect(await test.refused('season-plan.print', { siteId: 77 })).toMatchObject({ field: 'siteId' })
  })

  it('says the same of the last seeds on card, plan and sheet, and of a full sowing that it is none', async () => {
    const sown = [2, 9, 17, 30, 400].map(async (held) => {
      const { accessionId } = await takeIn(test, {
        variety: { newVariety: { cropId: 'bean', name: `Held ${held}` } },
        amount: `${held} seeds`,
      })
      return accessionId
    })
    const siteId = await garden('Here', 0, { mostVarieties: 9 })
    const choices = (await Promise.all(sown)).map((accessionId) => ({ accessionId, siteId }))
    await test.call('season-plan.create', { choices })
    const { plan } = await test.call('season-plan.get', {})
    const { pdf } = await test.call('season-plan.print', {})
    const { pages } = await readPdf(Buffer.from(pdf, 'base64'))
    const sheet = bare(
      pages.map(({ characters }) => characters.map(({ character }) => character).join('')).join(''),
    )
    for (const line of plan?.lines ?? []) {
      const need = await test.call('regeneration.get', { accessionId: line.accessionId })
      expect([line.sow, line.rescue.forKeeper]).toEqual([need.sow, need.rescue])
      expect(line.sow?.enough).toBe(need.state !== 'rescue')
      expect(need.rescue.length > 0).toBe(need.state === 'rescue')
      const mine = sheet.slice(sheet.indexOf(bare(line.variety)))
      const sow = line.sow ?? { seeds: 0, expected: 0 }
      const said =
        need.state === 'rescue'
          ? `You get ${sow.seeds} ${sow.seeds === 1 ? 'seed' : 'seeds'}, the last that there are. Expect about ${Math.round(sow.expected)} of the 10 plants`
          : `You get ${sow.seeds} seeds. Raise 10 plants`
      expect(mine.slice(0, mine.indexOf(bare('Keep apart')))).toContain(bare(said))
      for (const care of line.rescue.forGrower) expect(mine).toContain(bare(care))
    }
    expect(plan?.lines.filter(({ rescue }) => rescue.forGrower.length > 0)).toHaveLength(3)
  })

  it('says on the sheet, and on the plan, why no seed goes with it', async () => {
    const { accessionId, lotId, lotNumber } = await takeIn(test, {
      variety: { newVariety: { cropId: 'bean', name: 'Mouldy' } },
      amount: '300 seeds',
    })
    await test.call('lot.quarantine', { lotId, reason: 'a smell of mould' })
    const siteId = await garden('Here', 0)
    await test.call('season-plan.create', { choices: [{ accessionId, siteId }] })
    const { plan } = await test.call('season-plan.get', {})
    const why = `300 seeds of ${lotNumber} are in quarantine (a smell of mould)`
    expect(plan?.lines[0]).toMatchObject({ sow: null, noSeed: [why] })
    const { pdf } = await test.call('season-plan.print', {})
    const { pages } = await readPdf(Buffer.from(pdf, 'base64'))
    const words = bare(pages[0]?.characters.map(({ character }) => character).join('') ?? '')
    expect(words).toContain(bare(`No seed is ready yet: ${why}.`))
    await test.call('lot.release', { lotId, checked: 'no mould' })
    await test.call('lot.discard', { lotId, on: TODAY, amount: 'everything', reason: 'mould after all' })
    expect((await test.call('season-plan.get', {})).plan?.lines[0]).toMatchObject({
      sow: null,
      noSeed: ['no seed of it is left here'],
    })
  })
})
