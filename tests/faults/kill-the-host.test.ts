import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, onTestFinished, test } from 'vitest'
import { OneCollection } from '../../electron/command-line/one-collection.ts'
import { answerCall } from '../../electron/host/answer-call.ts'
import { realBackend } from '../../electron/host/real-backend.ts'
import { counted } from '../support/counted.ts'
import { sized } from '../support/sized.ts'
import { killAndLook } from './support/kills.ts'

const KILLS = sized(1, 40)

test.each(sized([20261128], [20261127, 20261128]))(
  'a host killed in the middle of random work keeps every answered write and no half one, seed %i',
  async (seed) => {
    const counts = await killAndLook(KILLS, seed)
    expect(counts).toMatchObject({ kills: KILLS })
    expect(counts.answered, 'some writes were answered before a kill').toBeGreaterThanOrEqual(KILLS)
    counted('kills of the host survived', counts.kills)
    counted('writes answered before a kill, and found after it', counts.answered)
  },
  300_000,
)

describe('a process that died with half a transaction in the file', () => {
  test.each(['collection.check', 'collection.get'])('is undone before %s reads', async (name) => {
    const folder = mkdtempSync(join(tmpdir(), 'drawer-half-'))
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
    const file = join(folder, 'a.drawer')
    const call = async (name: string, input: object) => {
      const answer = await answerCall(new OneCollection(file, realBackend), name, input, () => {})
      return answer.ok ? answer.value : expect.fail(`${name} was refused: ${answer.problem.sentence}`)
    }
    await call('collection.create', { key: 'first-key', libraryName: 'Hollow Lane Library' })
    const before = await call('crop.list', {})
    spawnSync(process.execPath, [join(import.meta.dirname, 'support/die-in-the-middle.ts'), file])
    expect(existsSync(`${file}-journal`), 'the half transaction was in the file').toBe(true)
    await call(name, {})
    expect(existsSync(`${file}-journal`)).toBe(false)
    expect(await call('crop.list', {})).toEqual(before)
  })
})
