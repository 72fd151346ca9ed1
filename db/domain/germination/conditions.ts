/** The conditions of a test as the crop table has them, in words. */
export interface TestConditions {
  readonly temperature: string
  /** Media that the rules allow, the one nearest to hand in a kitchen first. */
  readonly media: readonly string[]
}

/** 7 CFR 201.58(b), 2015 edition (seen); TP and BP as in the rules of ISTA (from memory). */
const MEDIA: Readonly<Record<string, string>> = {
  T: 'rolled paper towel',
  B: 'between blotters',
  BP: 'between paper',
  P: 'on paper in a covered dish',
  TP: 'on top of paper',
  TB: 'on top of blotters',
  RB: 'blotter with a raised cover',
  C: 'creped paper under a blotter',
  TC: 'on top of creped paper',
  S: 'in sand or planting mix',
  TS: 'on top of sand or mix',
}
const BY_HAND = Object.keys(MEDIA)

/** What a home test is laid in where the table has nothing. Common practice, no source. */
const PLAIN_CONDITIONS: TestConditions = { temperature: 'about 20 °C', media: ['rolled paper towel'] }

/**
 * The codes of the crop table in words: '20-30 or 25' and 'B,T,S'.
 *
 * A dash means 16 hours at the first and 8 at the second each day, 'or' the regular method and its alternative (7 CFR
 * 201.58(a): seen).
 */
export function testConditions(temperature: string | null, substrata: string | null): TestConditions {
  if (temperature === null || substrata === null) return PLAIN_CONDITIONS
  const media = substrata.split(',').toSorted((one, other) => BY_HAND.indexOf(one) - BY_HAND.indexOf(other))
  return {
    temperature: temperatureInWords(temperature),
    media: media.map((code) => MEDIA[code] ?? code),
  }
}

function temperatureInWords(codes: string): string {
  return codes
    .split(' or ')
    .map((part) => {
      const [, day, night] = /^(\d+)-(\d+)$/.exec(part) ?? []
      if (day !== undefined) return `${day} °C for 16 hours and ${night} °C for 8`
      return part.replace(/^\d+/, (figure) => `${figure} °C`)
    })
    .join(' or ')
}
