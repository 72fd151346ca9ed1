import fc from 'fast-check'
import { expect, test } from 'vitest'
import { contract, type OperationName } from '../../db/contract/contract.ts'
import { Refusal } from '../../db/contract/refusal.ts'
import type { ServiceName } from '../../db/services/run-operation.ts'
import { germination, readings } from '../builders/forecasts.ts'
import { aCollection, type TemporaryCollection, takeIn } from '../builders/temporary-collection.ts'
import { counted } from '../support/counted.ts'
import { LONG_RUN, sized } from '../support/sized.ts'

/** What makes a file takes seconds, and is asked in the long run only. */
const MAKES_A_FILE = /\.(print|export)$|^backup\.create$/

/** Answered by the host, which no service does. */
const OF_THE_HOST: OperationName = 'backup.list'

/** What may be odd about a lot, each figure at an end of what the book takes. */
interface Extreme {
  readonly cropId: string
  readonly amount: string
  readonly harvest: string
  readonly celsius: number
  readonly humidity: number
  readonly tests: readonly (readonly [sprouted: number, tested: number])[]
  readonly threshold: number
  readonly regrowings: number
  readonly plants: number
}

const extreme: fc.Arbitrary<Extreme> = fc.record({
  cropId: fc.constantFrom('bean', 'onion', 'lettuce', 'maize', 'beet', 'parsnip'),
  amount: fc.constantFrom('1 seed', '2 seeds', '1000000 seeds', '1 mg', '100 kg'),
  harvest: fc.constantFrom('1900', '2025', ''),
  celsius: fc.constantFrom(-30, 20, 50, 90),
  humidity: fc.constantFrom(0, 5, 80, 100),
  tests: fc.array(fc.constantFrom([0, 1] as const, [1, 1] as const, [400, 400] as const, [0, 400] as const), {
    maxLength: 3,
  }),
  threshold: fc.constantFrom(0.05, 0.85, 1),
  regrowings: fc.constantFrom(1, 20),
  plants: fc.constantFrom(1, 1_000),
})

async function stand(book: TemporaryCollection, at: number, of: Extreme) {
  const { placeId } = await book.call('place.create', { name: `Place ${at}`, kind: 'room', parentId: null })
  readings(book, placeId, of.celsius, of.humidity)
  const { lotId, accessionId } = await takeIn(book, {
    variety: { newVariety: { cropId: of.cropId, name: `Extreme ${at}` } },
    amount: of.amount,
    harvest: of.harvest,
    placeId,
  })
  for (const [index, [sprouted, tested]] of of.tests.entries())
    await germination(book, lotId, tested, sprouted, `2026-03-0${index + 1}`)
  await book.call('accession.change-policy', {
    accessionId,
    plantsToKeep: of.plants,
    regrowingsKept: of.regrowings,
    viabilityThreshold: of.threshold,
  })
  return { lotId, accessionId, placeId }
}

/** Every reading operation that answers from a lot, an accession, a place or nothing at all, by the contract. */
function inputsFrom(ids: Record<string, unknown>): readonly (readonly [ServiceName, object])[] {
  const inputs = [{}, ...Object.entries(ids).map(([field, id]) => ({ [field]: id }))]
  const names = (Object.keys(contract) as OperationName[]).filter(
    (name) =>
      contract[name].access === 'reads' && name !== OF_THE_HOST && (LONG_RUN || !MAKES_A_FILE.test(name)),
  )
  return (names as ServiceName[]).flatMap((name) => {
    const input = inputs.findLast((one) => {
      const parsed = contract[name].input.safeParse(one)
      return parsed.success && Object.keys(one).every((field) => field in (parsed.data as object))
    })
    return input === undefined ? [] : [[name, input] as const]
  })
}

test('no extreme of one lot ends an operation for the whole library or gives a figure that is none', async () => {
  const asked = new Set<string>()
  const book = await aCollection()
  try {
    const lots = fc.sample(extreme, { numRuns: sized(5, 400), seed: 20261130 })
    for (const [at, of] of lots.entries()) {
      const ids = await stand(book, at, of)
      const ofOneLot = inputsFrom({ ...ids, lotIds: [ids.lotId] }).filter(
        ([, input]) => at === lots.length - 1 || Object.keys(input).length > 0,
      )
      for (const [name, input] of ofOneLot) {
        const told = `${name} ${JSON.stringify(input)} ${JSON.stringify(of)}`
        const value = await book.call(name, input as never).catch((cause: unknown) => {
          if (cause instanceof Refusal) return null
          throw new Error(told, { cause })
        })
        if (value === null) continue
        asked.add(name)
        expect(contract[name].output.safeParse(value).error?.issues, told).toBeUndefined()
      }
    }
    const { needs } = await book.call('regeneration.list', { limit: 200 })
    const chosen = needs.map(({ accessionId }) => accessionId)
    const { listId } = await book.call('season-list.create', { chosen, note: '' })
    expect((await book.call('season-list.get', { listId })).lines.length).toBeGreaterThanOrEqual(
      chosen.length,
    )
    expect((await book.call('collection.check', {})).findings).toEqual([])
  } finally {
    book.remove()
  }
  for (const name of [
    'lot.list',
    'accession.list-states',
    'regeneration.list',
    'regeneration.get',
    'forecast.get',
    'germination.plan',
  ])
    expect(asked).toContain(name)
  counted('reading operations asked about extreme lots', asked.size)
}, 600_000)
