import { afterAll, beforeAll, expect, it } from 'vitest'
import { type CallInput, contract, type ParsedInput, type Value } from '../../db/contract/contract.ts'
import { type OpenCollection, openCollection } from '../../db/migrations/open-file.ts'
import { runOperation, type ServiceName } from '../../db/services/run-operation.ts'
import { demoCopy } from '../builders/demo-copy.ts'
import { inEnglish } from '../builders/in-english.ts'
import { readPdf } from '../builders/read-pdf.ts'

let copy: Awaited<ReturnType<typeof demoCopy>>
let demo: OpenCollection
let now = new Date(2027, 1, 20, 10)
let keys = 0

beforeAll(async () => {
  copy = await demoCopy()
  demo = await openCollection(copy.file, { access: 'write', now: () => now })
}, 120_000)

afterAll(() => {
  demo.close()
  copy.remove()
})

type WithoutKey<T> = T extends { key: string } ? Omit<T, 'key'> : T

async function call<N extends ServiceName>(name: N, input: WithoutKey<CallInput<N>>): Promise<Value<N>> {
  keys += 1
  const withKey =
    contract[name].access === 'writes' ? { key: `season-${String(keys).padStart(6, '0')}`, ...input } : input
  return inEnglish(
    await runOperation(demo, name, contract[name].input.parse(withKey) as ParsedInput<N>, () => now),
  )
}

const choicesOf = (lines: Value<'season-plan.preview'>['lines']) =>
  lines.map(({ accessionId, siteId, way }) => ({ accessionId, siteId, way }))

/** Early spring on the demonstration's twelve gardens, then a season on: sow, fail one, harvest two. */
it('goes from what to regrow to seed brought back, and the needs follow', {
  tags: 'long',
  timeout: 90_000,
}, async () => {
  const spring = await call('regeneration.list', { limit: 40 })
  expect(spring.season.year).toBe(2027)
  const wanted = spring.needs.filter(({ sow, state }) => sow !== null && state !== 'well-stocked')
  const list = await call('season-list.create', { chosen: wanted.map(({ accessionId }) => accessionId) })

  const { sites } = await call('site.list', {})
  expect(sites).toHaveLength(12)
  const made = await call('season-plan.preview', {
    accessionIds: wanted.map(({ accessionId }) => accessionId),
    seconds: 5,
  })
  expect(made.worth).toBeGreaterThanOrEqual(made.greedyWorth - 1e-9)
  expect(made.lines.length).toBeGreaterThan(6)
  expect((await call('season-plan.check', { choices: choicesOf(made.lines) })).clashes).toEqual([])

  const first = made.lines[0]
  const small = sites.toSorted((a, b) => a.areaM2 - b.areaM2)[0]
  const large = made.lines.toSorted((a, b) => b.areaM2 - a.areaM2)[0]
  if (first === undefined || small === undefined || large === undefined) throw new Error('An empty plan')
  const moved = choicesOf(made.lines).map((choice) =>
    choice.accessionId === large.accessionId ? { ...choice, siteId: small.siteId } : choice,
  )
  const { clashes } = await call('season-plan.check', { choices: moved })
  expect(clashes.map(({ sentence }) => sentence).join(' ')).toContain(small.name)
  await expect(call('season-plan.create', { choices: moved })).rejects.toThrow('plan-clash')
  await call('season-plan.create', { choices: choicesOf(made.lines) })

  const withGrower = made.lines.filter(
    ({ growerId, sow, biennial }) => growerId !== null && sow?.enough && !biennial,
  )
  const gardens = [...new Set(withGrower.map(({ siteId }) => siteId))].slice(0, 2)
  expect(gardens).toHaveLength(2)
  for (const siteId of gardens) {
    const sheet = await call('season-plan.print', { siteId })
    expect(sheet).toMatchObject({ pages: expect.any(Number), warnings: [] })
    const { pages } = await readPdf(Buffer.from(sheet.pdf, 'base64'))
    expect(pages.length).toBe(sheet.pages)
  }

  const grown = withGrower.slice(0, 3)
  expect(grown).toHaveLength(3)
  const growOutOf = async (accessionId: number) =>
    (await call('grow-out.list', {})).growOuts.find((one) => one.accessionId === accessionId)
  const idOf = async (accessionId: number) => (await growOutOf(accessionId))?.growOutId ?? 0
  const note = async (
    accessionId: number,
    kind: 'sown' | 'emerged' | 'flowered' | 'saved-from' | 'failed',
    on: string,
    more: object = {},
  ) => call('grow-out.record', { growOutId: await idOf(accessionId), kind, on, ...more })
  const rankOf = async (accessionId: number) => (await call('regeneration.get', { accessionId })).rank

  now = new Date(2027, 2, 20, 10)
  for (const line of grown) {
    await call('withdrawal.record', {
      person: { personId: line.growerId ?? 0 },
      on: '2027-03-20',
      purpose: 'grow-out',
      lines: (line.sow?.lots ?? []).map(({ lotId, seeds }) => ({ lotId, amount: `${seeds} seeds` })),
      growOutId: await idOf(line.accessionId),
      despite: ['reserve'],
      reason: 'planned for this season',
    })
    expect(await growOutOf(line.accessionId)).toMatchObject({ state: 'seed-out' })
  }
  const growing = await rankOf(grown[0]?.accessionId ?? 0)

  now = new Date(2027, 4, 10, 10)
  for (const { accessionId } of grown) await note(accessionId, 'sown', '2027-05-01')
  const [lost, ...kept] = grown.map(({ accessionId }) => accessionId)
  if (lost === undefined) throw new Error('Nothing is grown')
  await note(lost, 'failed', '2027-05-09', { note: 'drowned in the May flood' })
  expect(await rankOf(lost)).toBeLessThan(growing)
  expect(await call('regeneration.get', { accessionId: lost })).toMatchObject({
    growOut: {
      failed: true,
      words: expect.stringContaining('failed 9 May 2027 (drowned in the May flood)'),
    },
  })

  now = new Date(2027, 9, 2, 10)
  const livingBefore = new Map<number, number>()
  for (const accessionId of kept) {
    livingBefore.set(accessionId, (await call('regeneration.get', { accessionId })).stock.living)
    await note(accessionId, 'emerged', '2027-05-12', { plants: 30 })
    await note(accessionId, 'flowered', '2027-07-04')
    await note(accessionId, 'saved-from', '2027-09-18', { plants: 22 })
    const line = await growOutOf(accessionId)
    const out = line?.out[0]
    const { taken } = await call('return.record', {
      person: { personId: line?.growerId ?? 0 },
      parentLotId: out?.lotId ?? 0,
      growOutId: line?.growOutId ?? 0,
      receivedOn: '2027-10-02',
      harvest: String(line?.harvestSeason),
      amount: '1500 seeds',
      plantsGrown: line?.plantsSavedFrom ?? null,
      grownAt: line?.site ?? '',
      floweredNear: 'kept-apart',
    })
    await call('return.check', { lotId: taken.lotId, on: '2027-10-02', trueToType: 'yes', outcome: 'keep' })
    const [lot, parent] = [
      await call('lot.get', { lotId: taken.lotId }),
      await call('lot.get', { lotId: out?.lotId ?? 0 }),
    ]
    expect(lot).toMatchObject({ generation: parent.generation + 1, grownAt: line?.site })
    expect(lot.parents).toMatchObject([{ lotId: out?.lotId, relation: 'grown' }])
    expect(await growOutOf(accessionId)).toMatchObject({ state: 'brought-back' })
    const after = await call('regeneration.get', { accessionId })
    expect(after.stock.living).toBeGreaterThan((livingBefore.get(accessionId) ?? 0) + 700)
    expect(after).toMatchObject({
      growOut: null,
      generations: expect.arrayContaining([expect.objectContaining({ plants: 22 })]),
    })
  }

  const { lines } = await call('season-list.get', { listId: list.listId })
  const became = (accessionId: number) =>
    lines.find((line) => line.accessionId === accessionId)?.became.join('; ')
  expect(became(lost)).toMatch(
    /went out to be grown; at .*: sown 1 May 2027 and failed 9 May 2027 \(drowned in the May flood\)/,
  )
  expect(became(kept[0] ?? 0)).toMatch(
    /sown 1 May 2027.*seed saved 18 Sept 2027, 22 plants; 1,500 .* came back as/,
  )
  const autumn = await call('regeneration.list', { limit: 500 })
  expect(autumn.needs.find(({ accessionId }) => accessionId === lost)?.state).not.toBe('well-stocked')
  for (const accessionId of kept) {
    expect(autumn.needs.find((need) => need.accessionId === accessionId)?.state).toMatch(/watch|well-stocked/)
  }
  expect(await call('collection.check', {})).toMatchObject({ clean: true })
})
