import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  closeLines,
  type LineStep,
  noLines,
  stepLines,
  type VisitLines,
} from '../../renderer/shared/table-form/visit-lines.ts'

interface Note {
  readonly id: string
  readonly text: string
}

const make = (id: string): Note => ({ id, text: '' })
const step = (lines: VisitLines<Note>, ...steps: readonly LineStep[]) =>
  steps.reduce((was, each) => stepLines(was, each, make), lines)
const typed = (lines: VisitLines<Note>, text: string): VisitLines<Note> => ({
  ...lines,
  line: { ...lines.line, text },
})
const texts = (lines: VisitLines<Note>) => lines.listed.map(({ text }) => text)

function twoListed(): VisitLines<Note> {
  const one = step(typed(noLines(make('a')), 'first'), { kind: 'list-line', nextId: 'b' })
  return step(typed(one, 'second'), { kind: 'list-line', nextId: 'c' })
}

describe('the lines of a visit', () => {
  test('a listed line leaves an empty one to type into', () => {
    const lines = twoListed()
    expect(texts(lines)).toEqual(['first', 'second'])
    expect(lines.line).toEqual({ id: 'c', text: '' })
  })

  test('a line taken up for a change puts what is being typed aside and gives it back', () => {
    const taken = step(typed(twoListed(), 'half typed'), { kind: 'change-line', id: 'a' })
    expect(taken.line.text).toBe('first')
    const listed = step(typed(taken, 'first, mended'), { kind: 'list-line', nextId: 'x' })
    expect(texts(listed)).toEqual(['first, mended', 'second'])
    expect(listed.line.text).toBe('half typed')
    expect(listed.changing).toBeNull()
  })

  test('taking up a second line lists the first change and keeps what was put aside', () => {
    const first = step(typed(twoListed(), 'half typed'), { kind: 'change-line', id: 'a' })
    const second = step(typed(first, 'first, mended'), { kind: 'change-line', id: 'b' })
    expect(texts(second)).toEqual(['first, mended', 'second'])
    expect(second.line.text).toBe('second')
    expect(step(second, { kind: 'list-line', nextId: 'x' }).line.text).toBe('half typed')
  })

  test('a line taken off can be put back where it was', () => {
    const off = step(twoListed(), { kind: 'take-off', id: 'a' })
    expect(texts(off)).toEqual(['second'])
    expect(texts(step(off, { kind: 'put-back' }))).toEqual(['first', 'second'])
  })

  test('a line taken off while it is being changed comes back as it was last typed', () => {
    const changing = typed(step(typed(twoListed(), 'half typed'), { kind: 'change-line', id: 'b' }), 'mended')
    const off = step(changing, { kind: 'take-off', id: 'b' })
    expect(off.line.text).toBe('half typed')
    expect(texts(step(off, { kind: 'put-back' }))).toEqual(['first', 'mended'])
  })

  test('nothing typed leaves the visit, whatever is done', () => {
    const act = fc.record({
      kind: fc.constantFrom('list-line', 'change-line', 'take-off', 'put-back', 'type'),
      pick: fc.nat(20),
    })
    fc.assert(
      fc.property(fc.array(act, { maxLength: 30 }), (acts) => {
        let lines = noLines(make('l0'))
        let typedSoFar = 0
        for (const [at, { kind, pick }] of acts.entries()) {
          const id = lines.listed[pick % Math.max(1, lines.listed.length)]?.id ?? 'none'
          if (kind === 'type') {
            if (lines.line.text === '') lines = typed(lines, `text ${++typedSoFar}`)
          } else if (kind === 'list-line') {
            if (lines.line.text !== '') lines = step(lines, { kind, nextId: `l${at + 1}` })
          } else if (kind === 'put-back') lines = step(lines, { kind })
          // Only the line taken off last can be put back: one that is replaced as such is gone by the keeper's own wish.
          else if (kind === 'change-line' || lines.takenOff === null) {
            lines = step(lines, { kind: kind as 'change-line' | 'take-off', id })
          }
        }
        const kept = new Set(
          [...lines.listed, lines.line, lines.setAside, lines.takenOff?.line].map((line) => line?.text),
        )
        for (let n = 1; n <= typedSoFar; n++) expect(kept).toContain(`text ${n}`)
      }),
    )
  })
})

describe('closing a visit for saving', () => {
  const rules = {
    make,
    isUntouched: (line: Note) => line.text === '',
    problems: (line: Note): { text?: string } => (line.text.endsWith('?') ? { text: 'unclear' } : {}),
    nothingListed: { text: 'nothing' },
  }

  test('lists what is still being typed', () => {
    const closed = closeLines(typed(twoListed(), 'third'), rules, 'next')
    expect(closed.problems).toBeNull()
    expect(texts(closed.lines)).toEqual(['first', 'second', 'third'])
  })

  test('lists a change and the line put aside for it', () => {
    const changing = step(typed(twoListed(), 'third'), { kind: 'change-line', id: 'a' })
    expect(texts(closeLines(changing, rules, 'next').lines)).toEqual(['first', 'second', 'third'])
  })

  test('takes up the first listed line that lacks something', () => {
    const unclear = step(typed(twoListed(), 'how much?'), { kind: 'list-line', nextId: 'd' })
    const closed = closeLines(unclear, rules, 'next')
    expect(closed.problems).toEqual({ text: 'unclear' })
    expect(closed.lines.line.text).toBe('how much?')
    expect(closed.lines.changing).toBe('c')
  })

  test('says so where nothing is listed', () => {
    expect(closeLines(noLines(make('a')), rules, 'next').problems).toEqual({ text: 'nothing' })
  })
})
