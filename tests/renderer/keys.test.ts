import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { orderKey } from '../../renderer/shared/format/keys.ts'

test('the key for orders is Cmd on a Mac and Ctrl elsewhere', () => {
  expect(['MacIntel', 'iPad', 'Win32', 'Linux x86_64', ''].map(orderKey)).toEqual([
    'Cmd',
    'Cmd',
    'Ctrl',
    'Ctrl',
    'Ctrl',
  ])
})

test('no word on screen names the key by itself', () => {
  const renderer = join(import.meta.dirname, '..', '..', 'renderer')
  const told = readdirSync(renderer, { recursive: true, encoding: 'utf8' }).filter((file) => {
    if (!/\.tsx?$/.test(file) || file.endsWith('keys.ts')) return false
    const code = readFileSync(join(renderer, file), 'utf8').replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '')
    return /\bCtrl\b/.test(code)
  })
  expect(told).toEqual([])
})
