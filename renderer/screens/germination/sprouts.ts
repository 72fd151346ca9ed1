import { scaleLinear } from 'd3-scale'
import { curveStepAfter, line } from 'd3-shape'
import type { TestRecord } from '../../../db/contract/germination-operations.ts'
import { type Message, message } from '../../../db/messages/message.ts'

/** The drawing's size in its own units, and the field that the sprouts have inside it. */
export const DRAWING = { width: 560, height: 200, left: 44, right: 544, top: 18, bottom: 174 } as const

/**
 * Where days and parts of the seeds sown lie in the picture of a test, the last day that is drawn, and the line through
 * the counts: nothing new is known between two of them, so it runs level.
 */
export function sproutScale({ curve, finalDay, sown }: Pick<TestRecord, 'curve' | 'finalDay' | 'sown'>) {
  const days = Math.max(1, finalDay ?? 0, ...curve.map(({ day }) => day))
  const x = scaleLinear([0, days], [DRAWING.left, DRAWING.right])
  const y = scaleLinear([0, 1], [DRAWING.bottom, DRAWING.top])
  const sprouts = curve.map(({ day, germinated }) => ({ day, x: x(day), y: y(germinated / sown) }))
  const steps = [{ x: x(0), y: y(0) }, ...sprouts]
  return {
    days,
    x,
    y,
    sprouts,
    steps:
      line<(typeof steps)[number]>(
        ({ x }) => x,
        ({ y }) => y,
      ).curve(curveStepAfter)(steps) ?? '',
  }
}

/** The picture in parts of a sentence: 'By day 5, 246 of 400 had sprouted (62 %)', 'by day 8, 341 (85 %)'. */
export function sproutsTold({ curve, sown }: Pick<TestRecord, 'curve' | 'sown'>): Message[] {
  return curve.map(({ day, germinated }, index) => {
    const facts = { day, germinated, part: { part: germinated / sown } }
    return index === 0
      ? message('germination.sprouts-first', { ...facts, sown })
      : message('germination.sprouts-then', facts)
  })
}
