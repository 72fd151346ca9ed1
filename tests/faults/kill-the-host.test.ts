import { spawn, spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import type { Value } from '../../db/contract/contract.ts'
import { OneCollection } from '../../electron/command-line/one-collection.ts'
import { answerCall } from '../../electron/host/answer-call.ts'
import { realHands } from '../../electron/host/real-hands.ts'

const KILLS = 10

let folder: string
let file: string
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'drawer-kill-'))
  file = join(folder, 'a.drawer')
  await call('collection.start', { key: 'first-key', libraryName: 'Hollow Lane Library' })
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

async function call<T>(name: string, input: object): Promise<T> {
  const answer = await answerCall(new OneCollection(file, realHands), name, input, () => {})
  if (!answer.ok) throw new Error(`${name} was refused: ${JSON.stringify(answer.problem)}`)
  return answer.value as T
}

const support = (name: string) => join(import.meta.dirname, 'support', name)

/** Lets the host hand out seed and kills it, some time after its first answer; gives all it said. */
async function killAtWork(
  run: number,
  afterMs: number,
): Promise<{ asked: string[]; answered: string[]; lotId: number }> {
  const child = spawn(process.execPath, [support('hand-out-without-end.ts'), folder, file, String(run)])
  const ended = new Promise((resolve) => child.once('exit', resolve))
  let said = ''
  let wrong = ''
  child.stderr.on('data', (part: Buffer) => {
    wrong += part.toString('utf8')
  })
  await new Promise<void>((resolve, reject) => {
    child.stdout.on('data', (part: Buffer) => {
      said += part.toString('utf8')
      if (said.includes('answered')) resolve()
    })
    ended.then(() => reject(new Error(`It ended by itself: ${wrong}`)))
  })
  await setTimeout(afterMs)
  child.kill('SIGKILL')
  await ended
  const lines = said.split('\n').map((line) => line.split(' '))
  const keysOf = (word: string) => lines.filter(([first]) => first === word).map(([, key = '']) => key)
  return { asked: keysOf('asked'), answered: keysOf('answered'), lotId: Number(lines[0]?.[2]) }
}

describe('a host that is killed in the middle of its work', () => {
  test(`loses nothing that it answered, and does nothing twice, ${KILLS} times over`, {
    timeout: 120_000,
  }, async () => {
    let unanswered = 0
    for (let run = 0; run < KILLS; run += 1) {
      const { asked, answered, lotId } = await killAtWork(run, (run * 37) % 120)
      const before = await call<Value<'lot.get'>>('lot.get', { lotId })
      const written = 100_000 - before.quantity.count
      expect([answered.length, asked.length]).toContain(written)
      const last = asked.at(-1)
      if (last !== undefined && last !== answered.at(-1)) {
        unanswered += 1
        const again = { key: last, person: null, on: '2026-03-14', lines: [{ lotId, amount: '1 seeds' }] }
        await call('withdrawal.record', again)
        const after = await call<Value<'lot.get'>>('lot.get', { lotId })
        expect(100_000 - after.quantity.count).toBe(asked.length)
      }
      expect(await call<Value<'collection.check'>>('collection.check', {})).toMatchObject({
        clean: true,
        findings: [],
      })
    }
    expect(unanswered, 'some kill came between a question and its answer').toBeGreaterThan(0)
  })
})

describe('a process that died with half a transaction in the file', () => {
  test.each(['collection.check', 'collection.about'])('is undone before %s reads', async (name) => {
    const before = await call<Value<'crop.list'>>('crop.list', {})
    spawnSync(process.execPath, [support('die-in-the-middle.ts'), file])
    expect(existsSync(`${file}-journal`), 'the half transaction was in the file').toBe(true)
    await call(name, {})
    expect(existsSync(`${file}-journal`)).toBe(false)
    expect(await call('crop.list', {})).toEqual(before)
  })
})
