import { expect, test } from 'vitest'
import { contract, type OperationName } from '../../db/contract/contract.ts'
import { Refusal } from '../../db/contract/refusal.ts'
import type { ServiceName } from '../../db/services/run-operation.ts'
import { aCollection, takeIn } from '../builders/temporary-collection.ts'
import { noFacts } from '../electron/support/story/step.ts'
import { story } from '../electron/support/story/story.ts'

/** What may have happened before the seed came here. */
const BEFORE_IT_CAME = [
  'germination.begin',
  'germination.record',
  'lot.weigh-seeds',
  'moisture.note',
  'lot.note-container',
]
/** Days that may be to come, or that only ask: of a promise, of waiting, of a season, of a span. */
const MAY_COME = /^(promisedBy|due|lettersSince|from|until|sowing)$/
const LOTS = /lotIds?"|LotIds?"/

function daysOf(input: object): string[] {
  return Object.entries(input).flatMap(([name, value]) =>
    typeof value === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(value) && !MAY_COME.test(name) ? [name] : [],
  )
}

test('every dated operation refuses a day to come, and a day before its lots were in the book', async () => {
  const here = await aCollection()
  const facts = noFacts()
  let tried = 0
  const refusalOf = async (name: OperationName, input: object) => {
    tried += 1
    try {
      await here.call(name as ServiceName, { ...input, key: `odd-day-${tried}` } as never)
    } catch (cause) {
      if (cause instanceof Refusal) return cause.problem
      throw cause
    }
    throw new Error(`${name} took ${JSON.stringify(input)}`)
  }
  for (const { name, input, note } of story()) {
    if (/^(collection\.(open|start|close|back|read|choose)|backup\.|package\.|demo\.)/.test(name)) continue
    const whole = input(facts) as object
    if (contract[name].access === 'writes') {
      for (const field of daysOf(whole)) {
        expect.soft(await refusalOf(name, { ...whole, [field]: '9999-01-01' }), name).toMatchObject({ field })
        if (!LOTS.test(JSON.stringify(whole)) || BEFORE_IT_CAME.includes(name)) continue
        expect.soft(await refusalOf(name, { ...whole, [field]: '1990-01-01' }), name).toMatchObject({ field })
      }
    }
    try {
      note(facts, await here.call(name as ServiceName, whole as never))
    } catch {}
  }
  expect(tried).toBeGreaterThan(30)
  here.remove()
})

test('a sheet of the day before takes nothing from a lot that came after it', async () => {
  const here = await aCollection()
  const { lotId, lotNumber } = await takeIn(here, { amount: '400 seeds' })
  const sheet = { on: '2026-03-12', lines: [{ person: null, lotId, amount: '10 seeds' }] }
  expect(await here.refused('paper-sheet.record', sheet)).toMatchObject({
    field: 'on',
    sentence: `${lotNumber} is in the book from 2026-03-14 on only.`,
  })
  here.remove()
})
