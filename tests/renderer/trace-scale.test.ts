import { describe, expect, test } from 'vitest'
import { isoDate } from '../../db/domain/dates/iso-date.ts'
import { TRACE, traceBand, traceOutlines } from '../../renderer/screens/storage/trace-scale.ts'

describe('the band of a climate trace', () => {
  test.each([
    [[3.2, 6.9], null, [3, 4, 5, 6, 7]],
    [[18.5, null, 18.7], null, [18, 19]],
    [[21, 21], null, [21, 22]],
    [[-19.4, -16.1], null, [-20, -19, -18, -17, -16]],
    [[31, 40], 68, [30, 40, 50, 60, 70]],
  ])('that holds %j and the limit %j is ruled at %j, from edge to edge', (values, limit, marks) => {
    const band = traceBand(values, limit, 12)
    expect(band.marks).toEqual(marks)
    expect([band.y(marks[0] ?? 0), band.y(marks.at(-1) ?? 0)]).toEqual([band.bottom, 12])
  })

  test('a day on which nothing was read is left out', () => {
    const day = (low: number, mean: number | null) => ({
      on: isoDate('2026-03-01'),
      low,
      mean: low + 1,
      high: low + 2,
      lowHumidity: mean,
      meanHumidity: mean,
      highHumidity: mean,
    })
    const days = [day(3, 40), day(4, null), day(5, 60)]
    const { span, mean } = traceOutlines(days, traceBand([40, 60], null, TRACE.top), (each) => ({
      low: each.lowHumidity,
      mean: each.meanHumidity,
      high: each.highHumidity,
    }))
    expect(mean.split(/[ML]/).slice(1)).toHaveLength(2)
    expect(span.split(/[ML]/).slice(1)).toHaveLength(4)
  })
})
