import type { TestRecord } from '../../../db/contract/germination-operations.ts'

/** A count in the picture of a test: where it stands, as parts of its width and height. */
export interface Sprout {
  readonly day: number
  readonly germinated: number
  readonly x: number
  readonly y: number
}

export interface SproutPicture {
  readonly sprouts: readonly Sprout[]
  /** The last day that is drawn. */
  readonly days: number
}

/** Lays out the normal seedlings of a test by day, as parts from 0 to 1 of the days drawn and of the seeds sown. */
export function sproutPicture({
  curve,
  finalDay,
  sown,
}: Pick<TestRecord, 'curve' | 'finalDay' | 'sown'>): SproutPicture {
  const days = Math.max(1, finalDay ?? 0, ...curve.map(({ day }) => day))
  return {
    days,
    sprouts: curve.map(({ day, germinated }) => ({ day, germinated, x: day / days, y: germinated / sown })),
  }
}

/** The picture in a sentence: 'By day 5 246 of 400 had sprouted (62 %), by day 8 341 (85 %).' */
export function sproutsInWords({ curve, sown }: Pick<TestRecord, 'curve' | 'sown'>): string {
  const parts = curve.map(({ day, germinated }, index) => {
    const share = `(${Math.round((100 * germinated) / sown)} %)`
    return index === 0
      ? `By day ${day}, ${germinated} of ${sown} had sprouted ${share}`
      : `by day ${day}, ${germinated} ${share}`
  })
  return parts.length === 0 ? '' : `${parts.join('; ')}.`
}
