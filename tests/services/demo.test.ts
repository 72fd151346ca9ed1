import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { z } from 'zod'
import { type CallInput, contract, type ParsedInput, type Value } from '../../db/contract/contract.ts'
import { type OpenCollection, openCollection } from '../../db/migrations/open-file.ts'
import { runOperation, type ServiceName } from '../../db/services/run-operation.ts'
import { makeDemoCollection } from '../../demo-data/load-demo.ts'
import { readRows } from '../../demo-data/read-rows.ts'
import { demoCopy } from '../builders/demo-copy.ts'
import { inEnglish } from '../builders/in-english.ts'
import { sized } from '../support/sized.ts'

/** The day the demonstration is meant to be opened on: its last entries are a few days old. */
const now = () => new Date(2026, 10, 25, 10)

let folder: string
let copy: Awaited<ReturnType<typeof demoCopy>>
let demo: OpenCollection
let lots: Value<'lot.get'>[]

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'drawer-demo-'))
  copy = await demoCopy()
  demo = await openCollection(copy.file, { access: 'read', now })
  const { total } = await call('lot.list', { emptyToo: true, limit: 1 })
  lots = await Promise.all(Array.from({ length: total }, (_, index) => call('lot.get', { lotId: index + 1 })))
}, 120_000)

afterAll(() => {
  demo.close()
  copy.remove()
  rmSync(folder, { recursive: true, force: true })
})

async function call<N extends ServiceName>(name: N, input: CallInput<N>): Promise<Value<N>> {
  return inEnglish(await runOperation(demo, name, contract[name].input.parse(input) as ParsedInput<N>, now))
}

const sql = (query: string) => demo.sqlite.prepare(query).pluck().all()

/** Every row of every table, those of the search index included. */
/** Columns drawn by chance: the salts of texts, and what is hashed with them. */
const OF_CHANCE = new Set(['entry.hash', 'entry_text.salt', 'entry_text.digest'])

function everything(collection: OpenCollection): Record<string, unknown[]> {
  const { sqlite } = collection
  const tables = sqlite
    .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name")
    .pluck()
    .all() as string[]
  return Object.fromEntries(
    tables.map((table) => {
      const columns = (sqlite.pragma(`table_info("${table}")`) as { name: string }[])
        .map(({ name }) => name)
        .filter((name) => !OF_CHANCE.has(`${table}.${name}`))
      return [table, sqlite.prepare(`SELECT "${columns.join('", "')}" FROM "${table}"`).all()]
    }),
  )
}

describe('the demonstration', () => {
  it('is a demonstration and says so', async () => {
    const about = await call('collection.get', {})
    expect(about.kind).toBe('demo')
    expect(about.settings.libraryName).toContain('demo')
  })

  it('has the size of a town’s drawer', async () => {
    const about = await call('collection.get', {})
    const near = (value: number, aim: number) => expect(Math.abs(value - aim) / aim).toBeLessThan(0.05)
    near(about.accessions, 120)
    near(about.lots, 260)
    near(about.people, 60)
    expect(about.movements).toBeGreaterThan(900)
    expect(lots.flatMap(({ germination }) => germination).length).toBeGreaterThan(150)
  })

  it('is a book that is right', async () => {
    expect(await call('collection.check', {})).toMatchObject({ clean: true, findings: [] })
  })

  it('holds the same whenever it is made', { tags: 'long' }, async () => {
    await makeDemoCollection(join(folder, 'demo.drawer'))
    const other = await openCollection(join(folder, 'demo.drawer'), { access: 'read', now })
    expect(everything(other)).toEqual(everything(demo))
    other.close()
  })

  it('was written day after day from September 2022 to November 2026', () => {
    const days = sql('SELECT substr(recorded_at, 1, 10) FROM entry ORDER BY id') as string[]
    expect(days).toEqual(days.toSorted())
    expect([days[0], days.at(-1)]).toEqual(['2022-09-03', '2026-11-22'])
    expect(new Set(days.map((day) => day.slice(0, 4)))).toEqual(
      new Set(['2022', '2023', '2024', '2025', '2026']),
    )
  })

  it('stands in every state, most of it well', async () => {
    const { counts } = await call('accession.list-states', {})
    const { rescue = 0, regrow = 0, watch = 0, 'well-stocked': well = 0 } = counts
    const within = (value: number, low: number, high: number) => {
      expect(value).toBeGreaterThanOrEqual(low)
      expect(value).toBeLessThanOrEqual(high)
    }
    within(rescue, 5, 10)
    within(regrow, 14, 24)
    within(watch, 11, 20)
    within(well, 65, 90)
  })
})

describe('the mess of real life', () => {
  const named = (variety: string) => lots.filter((lot) => lot.variety === variety)

  it('has harvests unknown, guessed and over several years', () => {
    const harvests = lots.map(({ harvest }) => harvest)
    expect(harvests).toEqual(expect.arrayContaining(['year unknown', 'about 2019', '2021–2022']))
  })

  it('has tiny gifts', () => {
    const gifts = lots.flatMap(({ ledger }) => ledger.filter(({ kind }) => kind === 'intake'))
    expect(gifts.some(({ count, measured }) => count === 3 && measured === 'count')).toBe(true)
    expect(gifts.some(({ massMg, measured }) => massMg === 40 && measured === 'mass')).toBe(true)
  })

  it.each([
    ['accents', /[ęłőřøÞ]/u],
    ['Greek', /\p{Script=Greek}/u],
    ['Cyrillic', /\p{Script=Cyrillic}/u],
    ['right-to-left', /\p{Script=Arabic}/u],
  ])('has people named in %s', (_, letters) => {
    expect((sql('SELECT name FROM person') as string[]).some((name) => letters.test(name))).toBe(true)
  })

  it('has two people of one name, told apart by their town', async () => {
    const { people } = await call('person.search', { text: 'Margaret Pell' })
    expect(people.map(({ name }) => name)).toEqual(['Margaret Pell', 'Margaret Pell'])
    expect(people.map(({ town }) => town).toSorted()).toEqual(['Quillhaven', 'Upper Quill'])
  })

  it('has one variety under three names', async () => {
    const { varieties } = await call('variety.search', { text: 'Aunt Hesper' })
    expect(varieties).toMatchObject([{ name: "Pilot's Thumb", accessions: 3 }])
    expect(varieties[0]?.synonyms.toSorted()).toEqual(["Aunt Hesper's Bean", 'Long Harbour'])
  })

  it('has a variety nearly lost', () => {
    const orde = named('Lady Orde')
    expect(orde[0]?.stock.state).toBe('rescue')
    expect(orde.map(({ quantity, generation }) => [generation, quantity.count])).toEqual([
      [0, 9],
      [1, 5],
    ])
  })

  it('keeps treated seed, a protected variety and damp seed in quarantine, and let checked seed out', () => {
    const treated = lots.find(({ cautions }) => cautions.some(({ caution }) => caution === 'treated'))
    expect(treated).toMatchObject({ quarantined: true, cautions: [{ note: 'thiram' }] })
    const isProtected = lots.find(({ cautions }) => cautions[0]?.caution === 'protected-variety')
    expect(isProtected?.quarantined).toBe(true)
    expect(named('Lettuce, name unknown')[0]?.quarantineReason).toContain('damp')
    const pests = lots.find(({ cautions }) => cautions[0]?.caution === 'pests-seen')
    expect(pests?.quarantined).toBe(false)
  })

  it('passes bought seed on, has closed what it can not keep, and renews its garlic', () => {
    const decided = (variety: string) => named(variety)[0]?.keeping
    expect(decided('Copper Sprite')).toMatchObject({ breeding: 'first-generation-hybrid', policy: 'pass-on' })
    expect(decided('Sugar Quay')?.policy).toBe('closed')
    const garlic = named('Quay White').map(({ quantity, generation }) => [generation, quantity.count])
    expect(garlic).toEqual([
      [0, 0],
      [1, 210],
    ])
  })

  it('has recalled a squash that crossed, with what was grown from it, and knows whom to tell', async () => {
    const { recalls } = await call('recall.list', {})
    expect(recalls).toHaveLength(1)
    const recall = await call('recall.get', { recallId: recalls[0]?.recallId ?? 0 })
    expect(recall.lots.map(({ affected, quarantined }) => [affected, quarantined])).toEqual([
      ['source', true],
      ['same-seed', true],
      ['perhaps', true],
    ])
    expect(recall.toWrite + recall.inPerson).toBeGreaterThan(2)
    expect(recall.outcomes).toHaveLength(1)
    const { returns } = await call('return.list-to-check', {})
    expect(returns.some(({ lotId }) => lotId === recall.lots.at(-1)?.lotId)).toBe(true)
  })

  it('sees fewer returns than hopes of them', async () => {
    const hoped = sql("SELECT id FROM withdrawal WHERE purpose = 'to-return' OR promised <> ''")
    const kept = sql('SELECT DISTINCT withdrawal_id FROM seed_return WHERE withdrawal_id IS NOT NULL')
    expect(kept.length / hoped.length).toBeLessThan(0.5)
  })

  it('has gifts that wait, one of them late, and one declined', async () => {
    const { gifts } = await call('gift.list', {})
    expect(gifts.map(({ state }) => state).toSorted()).toEqual(['declined', 'offered', 'offered', 'offered'])
    expect(gifts.flatMap(({ waitsFor }) => waitsFor).filter(({ late }) => late)).toHaveLength(1)
  })

  it('keeps reserves apart, reference samples of fifty and more, and two duplicates elsewhere', () => {
    const roles = Map.groupBy(lots, ({ role }) => role)
    expect(roles.get('reserve')?.length).toBeGreaterThan(50)
    const references = roles.get('reference') ?? []
    expect(references.length).toBeGreaterThan(5)
    for (const { quantity } of references) expect(quantity.count).toBeGreaterThanOrEqual(50)
    expect(roles.get('duplicate-elsewhere')?.map(({ heldBy }) => heldBy !== '')).toEqual([true, true])
  })

  it('has seed grown on to the third generation', () => {
    expect(Math.max(...lots.map(({ generation }) => generation))).toBe(3)
  })

  it('has a join, a discard of mouldy seed, and stocktakes that found another amount', () => {
    const lines = lots.flatMap(({ ledger }) => ledger)
    const of = (kind: string) => lines.filter((line) => line.kind === kind)
    expect(of('merge')).toHaveLength(2)
    expect(of('discard').some(({ note }) => note.includes('mould'))).toBe(true)
    expect(of('stocktake').filter(({ count }) => count !== 0).length).toBeGreaterThan(10)
  })

  it('took back two entries', () => {
    expect(sql('SELECT said FROM entry WHERE undoes_id IS NOT NULL')).toHaveLength(2)
  })

  it('weighed single samples and eight times a hundred, one of them to weigh again', () => {
    const weights = lots.flatMap((lot) => lot.weights)
    const sets = weights.filter(({ replicates, seedsCounted }) => replicates === 8 && seedsCounted === 800)
    expect(new Set(sets.map(({ judgement }) => judgement))).toEqual(new Set(['agree', 'weigh-again']))
    expect(weights.some(({ replicates }) => replicates === 1)).toBe(true)
  })

  it('has tests under way, over and given up, one of them to be repeated', async () => {
    const { total, toCount } = await call('germination.list', {})
    expect([total, toCount]).toEqual([4, 1])
    const finished = await call('germination.list', { state: 'finished', limit: 500 })
    const bench = await Promise.all(
      finished.tests.slice(0, 40).map(({ testId }) => call('germination.get', { testId })),
    )
    const tolerances = bench.map(({ result }) => result?.tolerance.kind)
    expect(new Set(tolerances)).toEqual(new Set(['within', 'outside', 'not-judged']))
    expect(bench.some(({ choice, result }) => choice.hard && (result?.tally.hard ?? 0) > 0)).toBe(true)
    expect((await call('germination.list', { state: 'cancelled' })).tests).toHaveLength(1)
  })

  it('counts clusters, fruits and cloves', () => {
    const units = new Set(lots.map(({ unit }) => unit.many))
    expect(units).toEqual(new Set(['seeds', 'clusters', 'fruits', 'cloves']))
  })

  it('waits for what was promised, some of it overdue', async () => {
    const { overdue, total } = await call('promise.list', {})
    expect(overdue).toBeGreaterThan(3)
    expect(total).toBeGreaterThan(overdue)
  })

  it('lies in a tree of places, some of it moved', async () => {
    const { places } = await call('place.list', {})
    expect(new Set(places.map(({ kind }) => kind))).toEqual(
      new Set(['room', 'cupboard', 'shelf', 'box', 'jar', 'fridge', 'freezer']),
    )
    expect(Math.max(...places.map(({ path }) => path.split(' / ').length))).toBe(4)
    expect(lots.filter(({ placeHistory }) => placeHistory.length > 1).length).toBeGreaterThan(20)
  })

  it('has a round that was walked and found something, and none due', async () => {
    const { rounds } = await call('round.list', {})
    expect(rounds).toMatchObject([{ places: 3, findings: [{ path: 'Chest freezer', look: 'seals' }] }])
    expect(await call('round.list-due', {})).toMatchObject({ toWalk: 0, unvisited: [] })
  })

  it('printed what came before November and has the rest in the tray', async () => {
    const { groups } = await call('tray.list', {})
    const waiting = groups.flatMap(({ items }) => items)
    expect(waiting.length).toBeGreaterThan(3)
    expect(waiting.length).toBeLessThan(30)
    expect(waiting.every(({ heldBack }) => heldBack === null)).toBe(true)
  })
})

describe('the files', () => {
  const Bean = z.strictObject({ name: z.string(), seeds: z.string().regex(/^\d+$/, 'Write a whole number') })

  it('are read by their headings, with commas, quotes and other scripts in a cell', () => {
    const rows = readRows('beans.csv', 'name,seeds\r\n"Nell’s, ""black""",3\r\nΘάλασσα,40\r\n', Bean)
    expect(rows).toEqual([
      { where: 'beans.csv, row 2', cells: { name: 'Nell’s, "black"', seeds: '3' } },
      { where: 'beans.csv, row 3', cells: { name: 'Θάλασσα', seeds: '40' } },
    ])
  })

  it.each([
    ['a value', 'name,seeds\na,3\nb,few\n', 'beans.csv, row 3, column seeds: Write a whole number'],
    ['a missing cell', 'name,seeds\na,3\nb\n', 'beans.csv, row 3: Too few fields'],
    ['a cell too many', 'name,seeds\na,3,4\n', 'beans.csv, row 2: Too many fields'],
    ['another heading', 'name,grams\na,3\n', 'beans.csv, row 2'],
  ])('say where %s does not fit', (_, text, sentence) => {
    expect(() => readRows('beans.csv', text, Bean)).toThrow(sentence)
  })

  const spoilt: readonly (readonly [string, string, string, string, RegExp])[] = [
    ['a lot nobody gave', 'splits', 'sexton', 'no-such-lot', /^splits\.csv, row 2: There is no lot/],
    ['more seed than there is', 'visit-lines', '40 seeds', '5000 seeds', /^visits\.csv, row \d+: .*holds/],
    ['a person nobody knows', 'visits', 'quill-street', 'nobody-known', /^visits\.csv, row \d+: .*people/],
  ]
  it.each(sized(spoilt.slice(0, 1), spoilt))(
    'name the row that has %s',
    async (_, file, before, after, sentence) => {
      const data = mkdtempSync(join(folder, 'data-'))
      cpSync(join(import.meta.dirname, '../../demo-data'), data, { recursive: true })
      const path = join(data, `${file}.csv`)
      const text = readFileSync(path, 'utf8')
      writeFileSync(path, text.replace(`,${before},`, `,${after},`))
      await expect(makeDemoCollection(join(data, 'spoilt.drawer'), data)).rejects.toThrow(sentence)
    },
  )
})
