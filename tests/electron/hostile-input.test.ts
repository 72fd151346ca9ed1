import fc from 'fast-check'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { contract } from '../../db/contract/contract.ts'
import type { Answer } from '../../db/contract/problem.ts'
import { counted } from '../support/counted.ts'
import { sized } from '../support/sized.ts'
import { noFacts } from './support/story/step.ts'
import { story } from './support/story/story.ts'
import { WAYS_IN, type WayIn } from './support/ways-in.ts'

/** Texts that break what was not made for them: markup, SQL, other directions, signs of four bytes, a megabyte. */
const TEXTS = [
  '<img src=x onerror="alert(1)">',
  "'); DROP TABLE lot; --",
  '\u202eesrever \u200f\u05d0\u05d1\u05d2',
  '\u{1f331}\u{1f468}\u200d\u{1f33e} e\u0301',
  '=HYPERLINK("http://example.org")',
  '{{7*7}}%s%n\\',
  '\ud800',
  '\u0000\u0007',
  'x'.repeat(1_000_000),
] as const
const NUMBERS = [Number.NaN, Number.POSITIVE_INFINITY, -1, 0, 0.5, 1e308, 2 ** 53, -(2 ** 31)] as const
const OTHER = [null, true, [], {}, ['a'], { __proto__: null, a: 1 }, 12n, new Date(0)] as const

/** How many of these values each field gets. */
const VALUES_EACH = sized(1, 14)

const hostile = fc.constantFrom<unknown>(...TEXTS, ...NUMBERS, ...OTHER)

/** Every way to put one hostile value in place of one part of an input. */
function spoilt(value: unknown, by: unknown): unknown[] {
  if (Array.isArray(value)) {
    return value.flatMap((part, at) => spoilt(part, by).map((bad) => value.with(at, bad))).concat([by])
  }
  if (typeof value !== 'object' || value === null) return [by]
  return Object.entries(value)
    .filter(([name]) => name !== 'key')
    .flatMap(([name, part]) => spoilt(part, by).map((bad) => ({ ...value, [name]: bad })))
}

let way: WayIn
beforeAll(async () => {
  way = await WAYS_IN.electron()
})
afterAll(() => way.close())

const revision = async () => {
  const answer = await way.call('collection.get-revision', {})
  return answer.ok ? (answer.value as { revision: number }).revision : 0
}

function expectPlain(name: string, bad: unknown, answer: Answer<unknown>): void {
  if (answer.ok) return
  const { code, sentence, todo } = answer.problem
  const told = `${name} with ${String(JSON.stringify(bad, (_, part) => (typeof part === 'bigint' ? 'big' : part))).slice(0, 300)}`
  expect.soft(code, told).not.toBe('unexpected')
  expect.soft(`${sentence} ${todo}`, told).not.toMatch(/\bat .*\.ts:|Error:|SQLITE|undefined|\[object/)
  expect.soft(sentence.length, told).toBeLessThan(1_000)
}

test(
  'no operation breaks, shows its insides or writes by halves, whatever stands in any one of its fields',
  async () => {
    const facts = noFacts()
    let tried = 0
    let taken = 0
    const refused: string[] = []
    for (const { name, input, note } of story()) {
      const whole = input(facts) as object
      if (!name.startsWith('collection.open') && name !== 'collection.create' && name !== 'backup.restore') {
        for (const by of fc.sample(hostile, { numRuns: VALUES_EACH, seed: 20261127 + tried })) {
          // In every run one field in sixteen, others for every operation.
          for (const [at, bad] of spoilt(whole, by).entries()) {
            if (at % sized(16, 1) !== tried % sized(16, 1)) continue
            tried += 1
            const before = await revision()
            const key = contract[name].access === 'writes' ? { key: `hostile-${tried}-input` } : {}
            const answer = await way.call(name, { ...(bad as object), ...key })
            expectPlain(name, bad, answer)
            if (answer.ok) taken += 1
            else expect(await revision(), `${name} wrote, though it refused`).toBe(before)
          }
        }
      }
      const answer = await way.call(name, whole)
      expectPlain(name, whole, answer)
      if (answer.ok) note(facts, answer.value)
      else refused.push(name)
    }
    // A hostile text can be a good reason, such as one for declining a gift, and has then done a later step already.
    expect(refused.length, `as it is refused: ${refused.join(', ')}`).toBeLessThan(story().length / 4)
    expect(await way.call('collection.check', {})).toMatchObject({ ok: true, value: { findings: [] } })
    counted('hostile values tried in the fields of operations', tried)
    counted('hostile values taken as they are, the book right after', taken)
  },
  sized(60_000, 1_800_000),
)

test('no text of an operation may hold what is no letter, and a name has something to be seen', async () => {
  const known = noFacts()
  const ones = Object.entries(known).map(([name, value]) => [name, value === 0 ? 1 : value])
  const facts = { ...known, ...Object.fromEntries(ones), lots: [1, 2, 3, 4, 5, 6, 7, 8] }
  let names = 0
  for (const { name, input } of story()) {
    const whole = input(facts) as object
    for (const text of ['a\u0000b', 'a\ud800b'])
      for (const [field, value] of Object.entries(whole)) {
        if (typeof value !== 'string' || /^(key|content|text)$/.test(field)) continue
        names += 1
        const answer = await way.call(name, { ...whole, [field]: text })
        expect
          .soft(answer, `${name} ${field}`)
          .toMatchObject({ ok: false, problem: { code: 'bad-request', field } })
      }
  }
  expect(names).toBeGreaterThan(50)
  for (const invisible of ['\u200b', '\u00ad\u2060', '\u0301'])
    expect(
      await way.call('person.create', { key: `invisible-${invisible.length}-name`, name: invisible }),
    ).toMatchObject({ ok: false, problem: { field: 'name' } })
})

test.each(TEXTS.slice(0, 6))('the text %j comes back as it was typed', async (text) => {
  const key = (what: string) => ({ key: `text-${what}-${TEXTS.indexOf(text)}` })
  const person = { name: text, town: text, creditAs: text, note: text, address: text }
  const made = await way.call('person.create', { ...key('person'), ...person })
  const { personId } = (made as { value: { personId: number } }).value
  expect(await way.call('person.get', { personId })).toMatchObject({ ok: true, value: person })
  await way.call('draft.save', { draftId: `draft-${TEXTS.indexOf(text)}-text`, kind: 'take-in', text })
  expect(JSON.stringify(await way.call('draft.list', { kind: 'take-in' }))).toContain(
    JSON.stringify(text).slice(1, -1),
  )
})
