import { expect, test } from 'vitest'
import { printPages } from '../../renderer/shared/labels/print-pages.ts'

test('printing says so where a browser keeps the frame of a PDF to itself, or shows none', () => {
  const asked: string[] = []
  const view = { focus: () => asked.push('focus'), print: () => asked.push('print') }
  expect(printPages(view, true)).toBe(true)
  expect(asked).toEqual(['focus', 'print'])
  const refuses = () => {
    throw new DOMException('Permission denied to access property "print"', 'SecurityError')
  }
  expect(printPages({ ...view, print: refuses }, true)).toBe(false)
  expect(printPages({ ...view, focus: refuses }, true)).toBe(false)
  expect(printPages(view, false)).toBe(false)
  expect(printPages(null, true)).toBe(false)
})
