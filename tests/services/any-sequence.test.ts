import fc from 'fast-check'
import { expect, it } from 'vitest'
import { Refusal } from '../../db/contract/refusal.ts'
import { keptAndFound } from '../builders/kept-and-found.ts'
import { aCollection, aGift, type TemporaryCollection, TODAY } from '../builders/temporary-collection.ts'
import { counted } from '../support/counted.ts'
import { sized } from '../support/sized.ts'

/** One thing a keeper may do; lots and entries are picked among those there are, by remainder. */
type Step =
  | { do: 'take-in'; amount: string }
  | { do: 'hand-out' | 'discard' | 'take-stock' | 'split'; lot: number; amount: string }
  | { do: 'merge' | 'bring-back'; lot: number; other: number }
  | { do: 'weigh'; lot: number; grams: number }
  | { do: 'test'; lot: number; tested: number }
  | { do: 'lay-out'; lot: number; tested: number }
  | { do: 'count' | 'finish' | 'give-up' | 'put-back'; test: number; seeds: number }
  | { do: 'take-back'; entry: number }

const amount = fc.oneof(
  fc.integer({ min: 1, max: 500 }).map((count) => `${count} seeds`),
  fc.integer({ min: 1, max: 200_000 }).map((mg) => `${mg} mg`),
  fc.integer({ min: 1, max: 300 }).map((count) => `about ${count}`),
)
const pick = fc.nat(50)
const step: fc.Arbitrary<Step> = fc.oneof(
  fc.record({ do: fc.constant('take-in' as const), amount }),
  fc.record({
    do: fc.constantFrom('hand-out' as const, 'discard' as const, 'take-stock' as const, 'split' as const),
    lot: pick,
    amount,
  }),
  fc.record({ do: fc.constantFrom('merge' as const, 'bring-back' as const), lot: pick, other: pick }),
  fc.record({
    do: fc.constant('weigh' as const),
    lot: pick,
    grams: fc.double({ min: 0.5, max: 30, noNaN: true }),
  }),
  fc.record({ do: fc.constant('test' as const), lot: pick, tested: fc.integer({ min: 1, max: 50 }) }),
  fc.record({ do: fc.constant('lay-out' as const), lot: pick, tested: fc.integer({ min: 1, max: 50 }) }),
  fc.record({
    do: fc.constantFrom('count' as const, 'finish' as const, 'give-up' as const, 'put-back' as const),
    test: pick,
    seeds: fc.nat(30),
  }),
  fc.record({ do: fc.constant('take-back' as const), entry: pick }),
)

interface Balance {
  readonly count: number
  readonly massMg: number
}

async function balances(test: TemporaryCollection): Promise<Map<number, Balance>> {
  const rows = test.collection.sqlite
    .prepare('SELECT id, balance_count, balance_mass_mg FROM lot ORDER BY id')
    .all() as {
    id: number
    balance_count: number
    balance_mass_mg: number
  }[]
  return new Map(rows.map((row) => [row.id, { count: row.balance_count, massMg: row.balance_mass_mg }]))
}

function total(of: Map<number, Balance>): Balance {
  return [...of.values()].reduce(
    (sum, lot) => ({ count: sum.count + lot.count, massMg: sum.massMg + lot.massMg }),
    { count: 0, massMg: 0 },
  )
}

/** What was there before each entry, so that taking the last one back can be held against it. */
interface Written {
  readonly entryId: number
  readonly before: Map<number, Balance>
}

async function perform(test: TemporaryCollection, step: Step, written: Written[]): Promise<number | null> {
  const lots = [...(await balances(test)).keys()]
  const lotId = 'lot' in step ? lots[step.lot % lots.length] : undefined
  if ('lot' in step && lotId === undefined) return null
  const on = TODAY
  switch (step.do) {
    case 'take-in':
      return (
        await test.call('intake.record', {
          donor: null,
          receivedOn: on,
          gifts: [aGift({ amount: step.amount })],
        })
      ).entryId
    case 'hand-out':
      return (
        await test.call('withdrawal.record', {
          person: null,
          on,
          lines: [{ lotId: lotId ?? 0, amount: step.amount }],
          despite: ['too-few-left', 'reserve'],
          reason: 'any sequence',
        })
      ).entryId
    case 'discard':
      return (
        await test.call('lot.discard', { lotId: lotId ?? 0, on, amount: step.amount, reason: 'any sequence' })
      ).entryId
    case 'take-stock':
      return (
        await test.call('lot.record-count', {
          lotId: lotId ?? 0,
          on,
          found: step.amount,
          reason: 'any sequence',
        })
      ).entryId
    case 'split':
      return (await test.call('lot.split', { lotId: lotId ?? 0, on, amount: step.amount, role: 'reserve' }))
        .entryId
    case 'merge':
      return (
        await test.call('lot.merge', {
          intoLotId: lotId ?? 0,
          fromLotIds: [lots[step.other % lots.length] ?? 0],
          on,
        })
      ).entryId
    case 'bring-back':
      return (
        await test.call('return.record', {
          person: { newPerson: { name: 'Any One' } },
          parentLotId: lotId ?? 0,
          receivedOn: on,
          amount: `${step.other + 1} seeds`,
        })
      ).entryId
    case 'weigh':
      return (
        await test.call('lot.record-weight', {
          lotId: lotId ?? 0,
          on,
          replicates: [{ seeds: 50, grams: step.grams }],
        })
      ).entryId
    case 'test':
      return (
        await test.call('germination.record', { lotId: lotId ?? 0, on, tested: step.tested, sprouted: 0 })
      ).entryId
    case 'lay-out': {
      const replicates = [step.tested, step.tested]
      return (await test.call('germination.start', { lotId: lotId ?? 0, on, replicates, finalDay: 7 }))
        .entryId
    }
    case 'count':
    case 'finish':
    case 'give-up':
    case 'put-back':
      return onBench(test, step)
    case 'take-back': {
      const target = written[step.entry % Math.max(1, written.length)]
      return target ? (await test.call('entry.undo', { entryId: target.entryId })).entryId : null
    }
  }
}

/** Does something with a test that is under way; null where there is none. */
async function onBench(
  test: TemporaryCollection,
  step: Extract<Step, { test: number }>,
): Promise<number | null> {
  const { tests } = await test.call('germination.list', {})
  const testId = tests[step.test % Math.max(1, tests.length)]?.testId
  if (testId === undefined) return null
  const at = { testId, on: TODAY }
  if (step.do === 'count') {
    const replicates = [{ normal: step.seeds }, { hard: step.seeds }]
    return (await test.call('germination.record-count', { ...at, replicates })).entryId
  }
  if (step.do === 'finish')
    return (await test.call('germination.finish', { ...at, choice: { hard: step.seeds > 15, fresh: false } }))
      .entryId
  const given = { ...at, reason: 'any sequence', seedsBack: step.do === 'put-back' }
  return (await test.call('germination.cancel', given)).entryId
}

/** Takes the latest entry back: every lot there was before it holds exactly what it held, or it is refused. */
async function expectRestored(test: TemporaryCollection, latest: Written): Promise<void> {
  try {
    await test.call('entry.undo', { entryId: latest.entryId })
  } catch (cause) {
    expect(cause).toBeInstanceOf(Refusal)
    return
  }
  const after = await balances(test)
  for (const [id, balance] of latest.before) expect(after.get(id)).toEqual(balance)
}

it(
  'keeps the book right through any sequence, and refuses whole or not at all',
  async () => {
    let done = 0
    let refused = 0
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 4, maxLength: 22 }), async (steps) => {
        const test = await aCollection()
        try {
          const written: Written[] = []
          let latest: Written | null = null
          for (const next of [{ do: 'take-in', amount: '60 g' } as const, ...steps]) {
            const before = await balances(test)
            try {
              const entryId = await perform(test, next, written)
              if (entryId === null) continue
              done += 1
              if (next.do === 'split' || next.do === 'merge')
                expect(total(await balances(test))).toEqual(total(before))
              latest = next.do === 'take-back' ? null : { entryId, before }
              if (latest) written.push(latest)
            } catch (cause) {
              if (!(cause instanceof Refusal)) throw cause
              refused += 1
              expect(await balances(test)).toEqual(before)
            }
            await test.call('regeneration.list', {})
            await test.call('germination.list-due', {})
          }
          if (latest !== null) await expectRestored(test, latest)
          expect((await test.call('collection.check', {})).findings).toEqual([])
          const { kept, found } = await keptAndFound(test)
          expect(kept).toEqual(found)
        } finally {
          test.remove()
        }
      }),
      { numRuns: sized(8, 300), seed: 20261125 },
    )
    counted('operations done in random order, the book right after each sequence', done)
    counted('operations refused in random order, nothing written', refused)
  },
  sized(60_000, 1_800_000),
)
