import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { contract, isOperationName, type OperationName } from '../../db/contract/contract.ts'
import type { Answer } from '../../db/contract/problem.ts'
import { noFacts } from './support/story/step.ts'
import { story } from './support/story/story.ts'
import { WAYS_IN, type WayIn } from './support/ways-in.ts'

const NAMES = Object.keys(contract) as OperationName[]
const SENDS_NO_FIELDS = ['nothing at all', null, 7, [], true]

async function tell(way: WayIn): Promise<ReadonlyMap<string, Answer<unknown>>> {
  const facts = noFacts()
  const answers = new Map<string, Answer<unknown>>()
  for (const { name, input, note } of story()) {
    const answer = await way.call(name, input(facts))
    answers.set(name, answer)
    if (!answer.ok) throw new Error(`${name} was refused: ${JSON.stringify(answer.problem)}`)
    note(facts, answer.value)
  }
  return answers
}

/** What differs from one folder to the next is left out; everything else must be the same. */
function comparable(way: WayIn, answer: Answer<unknown> | undefined): unknown {
  const text = JSON.stringify(answer).replaceAll(JSON.stringify(way.folder).slice(1, -1), '')
  return JSON.parse(text, (name, value: unknown) => (name === 'pdf' ? typeof value : value))
}

test('the story tells every operation of the contract', () => {
  expect(new Set(story().map((step) => step.name))).toEqual(new Set(NAMES))
})

interface Told {
  readonly way: WayIn
  readonly answers: ReadonlyMap<string, Answer<unknown>>
  /** What each operation says to an input that does not fit. */
  readonly unfitting: readonly Answer<unknown>[]
}

const told = new Map<string, Told>()

beforeAll(async () => {
  for (const [name, open] of Object.entries(WAYS_IN)) {
    const way = await open()
    const answers = await tell(way)
    const unfitting = await Promise.all(
      NAMES.map((name) => way.call(name, { key: 'unfitting-key', lotId: 'one' })),
    )
    told.set(name, { way, answers, unfitting })
  }
}, 180_000)
afterAll(async () => {
  for (const { way } of told.values()) await way.close()
})

function toldBy(name: string): Told {
  const found = told.get(name)
  if (found === undefined) throw new Error(`The story was not told over ${name}`)
  return found
}

describe.each(Object.keys(WAYS_IN))('over %s', (name) => {
  let way: WayIn
  let answers: ReadonlyMap<string, Answer<unknown>>
  beforeAll(() => {
    ;({ way, answers } = toldBy(name))
  })

  test.each(NAMES)('%s answers what the contract says, and nothing more', (name) => {
    const answer = answers.get(name)
    expect(answer).toMatchObject({ ok: true })
    const value = answer?.ok ? answer.value : null
    expect(contract[name].output.parse(value)).toEqual(value)
  })

  test('the book is right at the end', () => {
    expect(answers.get('collection.check')).toMatchObject({ ok: true, value: { clean: true } })
  })

  test.each(NAMES)('%s refuses an input that does not fit, and logs none of it', async (name) => {
    way.logged.length = 0
    const unknown = await way.call(name, { key: 'unfitting-key', 'no such field': 'Ilka' })
    expect(unknown).toMatchObject({ ok: false, problem: { code: 'bad-request' } })
    for (const raw of SENDS_NO_FIELDS) {
      expect(await way.call(name, raw)).toMatchObject({ ok: false, problem: { code: 'bad-request' } })
    }
    expect(way.logged).toEqual([])
  })

  test('a name that is no operation is refused', async () => {
    for (const name of ['lot.destroy', '', 'toString', '__proto__', 'constructor']) {
      expect(isOperationName(name)).toBe(false)
      expect(await way.call(name, {})).toMatchObject({ ok: false, problem: { code: 'unknown-operation' } })
    }
  })

  test('a refusal carries its code, field and what to do, and no more', async () => {
    const answer = await way.call('lot.get', { lotId: 999_999 })
    expect(answer).toMatchObject({ ok: false, problem: { code: 'not-found' } })
    if (!answer.ok) {
      expect(Object.keys(answer.problem).sort()).toEqual(['choices', 'code', 'field', 'sentence', 'todo'])
    }
  })

  test('one key twice answers twice and acts once; the same key for something else is refused', async () => {
    const place = { key: 'one-intention', name: 'Cupboard', kind: 'cupboard' }
    const [first, second] = [await way.call('place.create', place), await way.call('place.create', place)]
    expect(first).toMatchObject({ ok: true })
    expect(second).toEqual(first)
    expect(await way.call('place.create', { ...place, name: 'Shelf' })).toMatchObject({
      ok: false,
      problem: { code: 'key-used-otherwise' },
    })
  })
})

test('every way in answers the same', () => {
  const [loopback, electron, commandLine] = Object.keys(WAYS_IN).map((name) => {
    const { way, answers, unfitting } = toldBy(name)
    return {
      answers: NAMES.map((name) => [name, comparable(way, answers.get(name))]),
      unfitting: NAMES.map((name, index) => [name, unfitting[index]]),
    }
  })
  expect(electron).toEqual(loopback)
  expect(commandLine).toEqual(loopback)
})
