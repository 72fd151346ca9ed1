import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

/** The colours of tokens.css by name: light, then dark. */
const tokens = new Map(
  [
    ...readFileSync(new URL('../../renderer/shared/tokens.css', import.meta.url), 'utf8').matchAll(
      /--([\w-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g,
    ),
  ].map(([, name = '', light = '', dark = '']) => [name, [light, dark]] as const),
)

/** Relative luminance and contrast ratio, WCAG 2.2 (W3C Recommendation, 2023), definitions. */
function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

function contrast(one: string, other: string): number {
  const [low = 0, high = 0] = [luminance(one), luminance(other)].toSorted((a, b) => a - b)
  return (high + 0.05) / (low + 0.05)
}

function least(front: string, backs: readonly string[]): number {
  const of = (name: string) => tokens.get(name) ?? []
  return Math.min(
    ...backs.flatMap((back) => of(front).map((colour, i) => contrast(colour, of(back)[i] ?? colour))),
  )
}

const GROUNDS = ['paper', 'sheet', 'chosen']

describe('the colours can be read, in light and in dark', () => {
  it.each(['ink', 'soft-ink', 'moss', 'clay', 'ochre', 'slate'])(
    '%s as text: at least 4.5 to 1 (1.4.3)',
    (name) => {
      expect(least(name, GROUNDS)).toBeGreaterThanOrEqual(4.5)
    },
  )

  it('writing on a button: at least 4.5 to 1', () => {
    expect(least('on-moss', ['moss'])).toBeGreaterThanOrEqual(4.5)
  })

  it.each(['edge', 'slate', 'moss'])(
    '%s as the edge of a control or a drawing: at least 3 to 1 (1.4.11)',
    (name) => {
      expect(least(name, GROUNDS)).toBeGreaterThanOrEqual(3)
    },
  )
})
