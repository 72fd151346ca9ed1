import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { COUNTS_FILE, counted, countsIn } from './counted.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'drawer-counts-'))
})
afterEach(() => {
  vi.unstubAllEnvs()
  rmSync(folder, { recursive: true, force: true })
})

test('what several tests counted is summed by its kind', () => {
  const file = join(folder, 'counts.ndjson')
  vi.stubEnv(COUNTS_FILE, file)
  counted('kills survived', 8)
  counted('hostile values tried', 2_000)
  counted('kills survived', 5)
  expect(countsIn(file)).toEqual(['hostile values tried: 2,000', 'kills survived: 13'])
})

test('a part of the tests run alone tells its counts and gathers them nowhere', () => {
  vi.stubEnv(COUNTS_FILE, undefined)
  const told = vi.spyOn(console, 'log').mockImplementation(() => {})
  counted('kills survived', 8)
  expect(told).toHaveBeenCalledWith('kills survived: 8')
  expect(countsIn(join(folder, 'counts.ndjson'))).toEqual([])
})
