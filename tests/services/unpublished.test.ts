import { strFromU8, unzipSync } from 'fflate'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { contract } from '../../db/contract/contract.ts'
import { answered, listOf } from '../builders/answered-list.ts'
import { aCollection, aGift, type TemporaryCollection, TODAY } from '../builders/temporary-collection.ts'
import { ids, textOf, trayOf, WRITTEN_TO } from '../builders/tray.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const { waiting } = trayOf(() => test)

/** A word that stands nowhere by chance. */
const word = () =>
  Array.from({ length: 12 }, () => 'bcdfghjkmnpqrtvwxz'[Math.floor(Math.random() * 18)]).join('')

interface Told {
  readonly story: string
  readonly donorWords: string
}
const tale = (): Told => ({ story: `${word()} told at the gate.`, donorWords: `${word()}, my aunt said.` })

const QUIET = { publishStory: false, publishName: false }

/**
 * A library in which stories came in every way that a story can come in, with seed that went out, was split, came back and is
 * grown; `limits` hold for all of it. Answers with everything that was told.
 */
async function aLibrary(limits: { publishStory: boolean; publishName: boolean }) {
  const told: Told[] = []
  const gift = (name: string) => {
    const ofIt = tale()
    told.push(ofIt)
    return aGift({ variety: { newVariety: { cropId: 'bean', name } }, amount: '9000 seeds', ...ofIt })
  }
  const { personId: takerId } = await test.call('person.create', {
    ...{ name: 'Teodor Ash', address: '1 Mill Street, Quillhaven', mayWrite: true },
  })
  const holds = async (accessionId: number) => {
    if (!limits.publishStory) await test.call('accession.change-terms', { accessionId, limits })
  }
  const donorName = `Ada ${word()}`
  const donor = { newPerson: { ...WRITTEN_TO, name: donorName, creditAs: donorName } }
  const { taken, personId } = await test.call('intake.record', {
    donor,
    receivedOn: TODAY,
    gifts: [{ ...gift('Weir Pole'), limits }],
  })
  const { lotId = 0, accessionId = 0 } = taken[0] ?? {}
  const offer = async (name: string, own: typeof limits | null) => {
    const { giftId } = await test.call('gift.offer', {
      donor: { personId: personId ?? 0 },
      offeredOn: TODAY,
      gift: { ...gift(name), limits: own },
      decision: { kind: 'later', waitsFor: [{ step: 'drying' }] },
    })
    await test.call('gift.record-step', {
      giftId,
      step: 'drying',
      done: true,
      on: TODAY,
      by: { personId: takerId },
    })
    return giftId
  }
  await offer('Gate Runner', limits)
  const { taken: later } = await test.call('gift.accept', {
    giftId: await offer('Mill Dwarf', null),
    receivedOn: TODAY,
  })
  await holds(later.accessionId)
  const remarks = tale()
  told.push({ story: remarks.story, donorWords: remarks.donorWords })
  const list = `ACCENUMB,GENUS,SPECIES,ACCENAME,CROPNAME,Amount,REMARKS\nQ1,Pisum,sativum,Lock Pea,Pea,90 g,"ACCENAME:${remarks.story} ${remarks.donorWords}"\n`
  const { firstLotId } = await test.call('import.record', await answered(test, listOf(list)))
  const imported = await test.call('lot.get', { lotId: firstLotId })
  await holds(imported.accessionId)
  const { newLotId } = await test.call('lot.split', {
    lotId,
    on: TODAY,
    amount: '900 seeds',
    role: 'working',
  })
  await test.call('withdrawal.record', {
    person: { personId: takerId },
    on: TODAY,
    lines: [{ lotId: newLotId, amount: '25 seeds' }],
    purpose: 'to-return',
    slip: true,
  })
  const back = await test.call('return.record', {
    person: { personId: takerId },
    parentLotId: newLotId,
    receivedOn: TODAY,
    amount: '4000 seeds',
  })
  const { siteId } = await test.call('site.change', {
    ...{ name: 'Lower bed', growerId: takerId, areaM2: 20, mostVarieties: 5 },
  })
  await test.call('season-plan.create', { choices: [{ accessionId, siteId }] })
  const { placeId } = await test.call('place.create', { name: 'Cellar', kind: 'room', parentId: null })
  await test.call('place.change-terms', { placeId, aim: 'short-term', roundDays: 30 })
  await test.call('lot.move', { lotIds: [lotId], placeId, on: TODAY })
  const replicates = [25, 25]
  await test.call('germination.start', { lotId, on: TODAY, replicates, finalDay: 8, fromStock: false })
  const lotIds = [lotId, newLotId, back.taken.lotId, later.lotId, firstLotId]
  return { told, donorName, takerId, lotIds }
}

/** Every operation that makes something to take out of the library, by its name, each in every manner that it has. */
async function everythingThatLeaves({ takerId, lotIds }: { takerId: number; lotIds: number[] }) {
  const all = { people: true, places: true }
  const labels = lotIds.map((lotId) => ({ lotId }))
  const slipIds = ids(await waiting('slip'))
  const sheet = 'a4-8'
  const made = {
    'lot.export': [
      await test.call('lot.export', { lotIds }),
      await test.call('lot.export', { lotIds, exact: true }),
    ],
    'lot.workbook': [await test.call('lot.workbook', { lotIds })],
    'germination.print': [await test.call('germination.print', {})],
    'round.print': [await test.call('round.print', {})],
    'season-plan.print': [await test.call('season-plan.print', {})],
    'label.print': [
      await test.call('label.print', { labels, sheet }),
      await test.call('label.print', { labels, sheet: 'packet-a4' }),
    ],
    'tray.render': [await test.call('tray.render', { kind: 'slip', itemIds: slipIds })],
    'keep-card.print': [await test.call('keep-card.print', { lotIds })],
    'stocktake.sheet': [await test.call('stocktake.sheet', {})],
    'catalogue.print': [await test.call('catalogue.print', {})],
    'catalogue.export': [await test.call('catalogue.export', {})],
    'report.print': [await test.call('report.print', { year: 2026 })],
    'package.export': [await test.call('package.export', all)],
    'passport.export': [await test.call('passport.export', all), await test.call('passport.export', {})],
    'stock.export': [await test.call('stock.export', { people: true }), await test.call('stock.export', {})],
    'occurrence.export': [await test.call('occurrence.export', all)],
    'fire-sheet.render': [await test.call('fire-sheet.render', {})],
    'person.export': [await test.call('person.export', { personId: takerId })],
  }
  // Last, since recalled seed is listed nowhere.
  const [lotId = 0, splitOff = 0] = lotIds
  const why = { reason: 'Weevils in the jar', advice: 'Freeze the packet' }
  const { recallId } = await test.call('recall.record', { lotId, lotIds: [splitOff], on: TODAY, ...why })
  return {
    ...made,
    'recall.export': [await test.call('recall.export', { recallId })],
    'recall.render-letters': [await test.call('recall.render-letters', { recallId })],
  }
}

/** To the donor alone, to whoever made the list, or with nothing of the book in it. */
const NOT_FOR_OTHERS = ['letter.render', 'ruler.print', 'import.list-refused']

/** Whatever of a thing can be read, however it is packed; white space is left out, as lines break anywhere. */
async function readable(made: object): Promise<string> {
  const { pdf, content, ...rest }: { pdf?: unknown; content?: unknown } = made
  const inside =
    typeof content === 'string'
      ? Object.values(unzipSync(Buffer.from(content, 'base64'))).map((bytes) => strFromU8(bytes))
      : []
  const printed = typeof pdf === 'string' ? await textOf({ pdf }) : ''
  return [printed, ...inside, JSON.stringify(rest)].join('').replaceAll(/\s/g, '')
}

const wordsIn = (text: string) => text.match(/[b-z]{12}/g) ?? []

it('a story that is not to be published is in no byte that leaves, nor is the name of its donor', async () => {
  const library = await aLibrary(QUIET)
  const { told, donorName } = library
  const secret = wordsIn(JSON.stringify([told, donorName]))
  expect(secret.length).toBe(2 * told.length + 1)
  const leaving = await everythingThatLeaves(library)
  const makesFile = Object.entries(contract)
    .filter(([, { output }]) => 'shape' in output && 'fileName' in (output.shape as object))
    .map(([name]) => name)
  expect([...Object.keys(leaving), ...NOT_FOR_OTHERS].toSorted()).toEqual(makesFile.toSorted())
  for (const [name, things] of Object.entries(leaving)) {
    const text = (await Promise.all(things.map(readable))).join('')
    expect(
      secret.filter((one) => text.includes(one)),
      name,
    ).toEqual([])
  }
})

it('one that may be published stands where it did, so that the law above has something to find', async () => {
  const library = await aLibrary({ publishStory: true, publishName: true })
  const leaving = await everythingThatLeaves(library)
  const [{ story, donorWords } = tale(), ...more] = library.told
  const found = async (name: keyof typeof leaving, texts: unknown) => {
    const text = (await Promise.all(leaving[name].map(readable))).join('')
    return wordsIn(JSON.stringify(texts)).filter((one) => !text.includes(one))
  }
  expect(await found('package.export', [story, donorWords, more, library.donorName])).toEqual([])
  expect(await found('label.print', [story, library.donorName])).toEqual([])
  expect(await found('catalogue.export', [story, library.donorName])).toEqual([])
  expect(await found('passport.export', [story, library.donorName])).toEqual([])
  expect(await found('stock.export', library.donorName)).toEqual([])
})
