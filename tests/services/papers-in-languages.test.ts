import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { en } from '../../db/messages/en/index.ts'
import { es } from '../../db/messages/es/index.ts'
import { aCollection, aGift, type TemporaryCollection, TODAY } from '../builders/temporary-collection.ts'
import { ids, textOf, trayOf, WRITTEN_TO } from '../builders/tray.ts'

let test: TemporaryCollection
beforeEach(async () => {
  test = await aCollection()
  await test.call('settings.change', { settings: { dueDates: true } })
})
afterEach(async () => {
  expect((await test.call('collection.check', {})).findings).toEqual([])
  test.remove()
})

const { waiting } = trayOf(() => test)
const TAKER = 'Teodor Ash'

/** A library with something to print of every kind: two lots, one with every caution, a test, a visit, a round, a plan. */
async function aLibrary() {
  const { taken, personId } = await test.call('intake.record', {
    donor: { newPerson: WRITTEN_TO },
    receivedOn: TODAY,
    gifts: [
      aGift({
        ...{ amount: '6000 seeds', harvest: 'about 2019', grownAt: 'Ruhpolding' },
        ...{ donorWords: 'Xyzzy donor.', story: 'Xyzzy story.', terms: 'Xyzzy terms.' },
      }),
      aGift({
        amount: '12 g',
        cautions: ['treated', 'toxic', 'pests-seen', 'regulated', 'protected-variety'],
        cautionNote: 'thiram',
      }),
    ],
  })
  const [lotId = 0, careful = 0] = taken.map((one) => one.lotId)
  const accessionId = taken[0]?.accessionId ?? 0
  await test.call('germination.record', { lotId, on: TODAY, tested: 100, sprouted: 94, fromStock: false })
  await test.call('germination.start', {
    lotId,
    on: TODAY,
    replicates: [25, 25],
    finalDay: 8,
    fromStock: false,
  })
  const { placeId } = await test.call('place.create', { name: 'Qqq', kind: 'room', parentId: null })
  await test.call('place.change-terms', { placeId, aim: 'short-term', roundDays: 30 })
  await test.call('lot.move', { lotIds: [lotId, careful], placeId, on: TODAY })
  const { personId: takerId } = await test.call('person.create', { name: TAKER })
  const lines = [{ lotId, amount: '20 seeds' }]
  const visit = { on: TODAY, lines, promisedBy: '2026-11-01', slip: true }
  await test.call('withdrawal.record', { person: { personId: takerId }, ...visit, purpose: 'to-return' })
  const { siteId } = await test.call('site.change', {
    ...{ name: 'Www', growerId: takerId, areaM2: 20, mostVarieties: 5 },
  })
  await test.call('season-plan.create', { choices: [{ accessionId, siteId }] })
  return { lotId, careful, donorId: personId ?? 0, takerId }
}

type Made = { readonly pdf: string }

/** Every document, by whom it is for: people, or the keeper and everybody. */
async function papers({ lotId, careful }: { readonly lotId: number; readonly careful: number }) {
  const labels = [lotId, careful].map((id) => ({ lotId: id }))
  const [letters, slips] = [ids(await waiting('letter')), ids(await waiting('slip'))]
  return {
    letter: await test.call('tray.render', { kind: 'letter', itemIds: letters }),
    slip: await test.call('tray.render', { kind: 'slip', itemIds: slips }),
    card: await test.call('keep-card.print', { itemIds: slips }),
    'grower sheet': await test.call('season-plan.print', {}),
    packets: await test.call('label.print', { labels, sheet: 'packet-a4' }),
    labels: await test.call('label.print', { labels, sheet: 'a4-8' }),
    'small labels': await test.call('label.print', { labels, sheet: 'a4-21' }),
    'cards of lots': await test.call('keep-card.print', { lotIds: [lotId, careful] }),
    ruler: await test.call('ruler.print', { offsetMm: [1, -1] }),
    'stocktake sheet': await test.call('stocktake.sheet', {}),
    'bench sheet': await test.call('germination.print', {}),
    'round sheet': await test.call('round.print', {}),
    catalogue: await test.call('catalogue.print', {}),
    'report of a year': await test.call('report.print', { year: 2026 }),
    'report of a year without anything': await test.call('report.print', { year: 2019 }),
  } satisfies Record<string, Made>
}
const FOR_PEOPLE = ['letter', 'slip', 'card', 'grower sheet'] as const

const wordsOf = (text: string) => text.toLowerCase().match(/\p{L}{4,}/gu) ?? []
const ENGLISH_WORDS = new Set(Object.values(en).flatMap(({ text }) => wordsOf(text)))
const SPANISH_WORDS = new Set(Object.values(es).flatMap((text) => wordsOf(String(text))))

/** English words of the catalogue in a text that neither Spanish has nor anybody typed. */
function englishIn(text: string): string[] {
  const typed = test.collection.sqlite
    .prepare(
      `SELECT common_name || ' ' || species FROM crop UNION ALL SELECT name FROM variety UNION ALL SELECT name FROM person
       UNION ALL SELECT library_name FROM collection UNION ALL SELECT address FROM person_contact`,
    )
    .pluck()
    .all() as string[]
  const data = new Set([...typed.flatMap(wordsOf), 'xyzzy', 'donor', 'story', 'terms', 'thiram'])
  const found = wordsOf(text).filter(
    (word) => ENGLISH_WORDS.has(word) && !SPANISH_WORDS.has(word) && !data.has(word),
  )
  return [...new Set(found)]
}

async function allTexts(made: Awaited<ReturnType<typeof papers>>): Promise<[string, string][]> {
  return Promise.all(
    Object.entries(made).map(async ([name, pdf]): Promise<[string, string]> => [name, await textOf(pdf)]),
  )
}

describe('every document', () => {
  it('of a library that writes Spanish holds no English word of the catalogue', async () => {
    const library = await aLibrary()
    await test.call('settings.change', { settings: { language: 'es' } })
    const texts = await allTexts(await papers(library))
    expect(texts.map(([name, text]) => [name, englishIn(text)])).toEqual(texts.map(([name]) => [name, []]))
    for (const [name, text] of texts) expect(text.length, name).toBeGreaterThan(60)
    const page = await test.call('catalogue.export', {})
    expect(englishIn(page.html.replace(/<style>.*<\/style>|<[^>]*>/gs, ' '))).toEqual([])
    expect(page.html).toContain('<html lang="es-GB">')
  })

  it('in a language that is longer holds none either, and nothing of it is cut', {
    tags: 'long',
  }, async () => {
    const library = await aLibrary()
    test.collection.sqlite.exec("UPDATE collection SET language = 'en-XA'")
    const texts = await allTexts(await papers(library))
    // Dates of that language are English ones.
    const english = (text: string) => englishIn(text).filter((word) => word !== 'april')
    expect(texts.map(([name, text]) => [name, english(text)])).toEqual(texts.map(([name]) => [name, []]))
    // Labels say by warnings what they cut.
    for (const [name, text] of texts.filter(([called]) => !called.includes('labels')))
      expect(text.split('⟦').length, name).toBe(text.split('⟧').length)
  })

  it('holds English where nobody asked for another language', { tags: 'long' }, async () => {
    const library = await aLibrary()
    const texts = await allTexts(await papers(library))
    expect(texts.filter(([, text]) => englishIn(text).length === 0)).toEqual([])
  })
})

describe('somebody with a language of their own', () => {
  it('gets letter, slip, card and grower sheet in it, and the keeper everything else in the library’s', async () => {
    const library = await aLibrary()
    for (const personId of [library.donorId, library.takerId])
      await test.call('person.change', { personId, language: 'es' })
    const made = await papers(library)
    for (const name of FOR_PEOPLE) expect([name, englishIn(await textOf(made[name]))]).toEqual([name, []])
    const letter = await textOf(made.letter)
    expect(letter).toContain('Hola, Ilka Brandt:')
    expect(letter).toContain('14 de marzo de 2026')
    expect(letter).toContain('Judía ‘Miller’s Pole’')
    const others = (await allTexts(made)).filter(
      ([name]) => !(FOR_PEOPLE as readonly string[]).includes(name),
    )
    expect(others.filter(([, text]) => englishIn(text).length === 0)).toEqual([])
  })

  it('stands on their record, can be changed and put back, and goes when they are erased', async () => {
    const { personId } = await test.call('person.create', { name: TAKER, language: 'es' })
    const language = async () => (await test.call('person.get', { personId })).language
    expect(await language()).toBe('es')
    const { entryId } = await test.call('person.change', { personId, language: '' })
    expect(await language()).toBe('')
    expect((await test.call('person.get', { personId })).changes[0]?.words).toBe('language: it was ‘Español’')
    await test.call('entry.undo', { entryId })
    expect(await language()).toBe('es')
    await test.call('person.erase', { personId })
    expect(await language()).toBe('')
  })

  it('reads the words that the library wrote itself as they are, with the list of gifts in their language', async () => {
    const { donorId } = await aLibrary()
    await test.call('person.change', { personId: donorId, language: 'es' })
    await test.call('letter.change', {
      words: 'Bless you, {donor}, for what came on {date}!\n\n{gifts}\n\n{keeping}',
      keeper: '',
    })
    const itemIds = ids(await waiting('letter'))
    const letter = await textOf(await test.call('tray.render', { kind: 'letter', itemIds }))
    expect(letter).toContain('Bless you, Ilka Brandt, for what came on 14 March 2026!')
    expect(letter).toContain('Nos contaste: Xyzzy donor.')
    expect(letter).toContain('What is not set apart above we keep cool and dry')
    await test.call('letter.change', { words: (await test.call('letter.get', {})).shipped, keeper: '' })
    expect(await textOf(await test.call('tray.render', { kind: 'letter', itemIds }))).toContain(
      'Hola, Ilka Brandt:',
    )
  })

  it('does not change what others get in the same file', async () => {
    const { donorId } = await aLibrary()
    await test.call('person.change', { personId: donorId, language: 'es' })
    await test.call('intake.record', {
      donor: { newPerson: { ...WRITTEN_TO, name: 'Mira Sool' } },
      receivedOn: TODAY,
      gifts: [aGift({ amount: '50 seeds' })],
    })
    const itemIds = ids(await waiting('letter'))
    const text = await textOf(await test.call('tray.render', { kind: 'letter', itemIds }))
    expect(text).toContain('Hola, Ilka Brandt:')
    expect(text).toContain('Dear Mira Sool,')
  })
})
