import { type Message, message } from '../../messages/message.ts'

/** Days to the last count where the table has none. Common practice, no source. */
export const USUAL_FINAL_DAY = 14

/** The conditions of a test as the crop table has them. */
export interface TestConditions {
  readonly temperature: Message | string
  /** Media that the rules allow, the one nearest to hand in a kitchen first. */
  readonly media: readonly (Message | string)[]
}

/** The one nearest to hand first. 7 CFR 201.58(b), 2015 edition (seen); TP and BP as in the rules of ISTA (from memory). */
const MEDIA = ['T', 'B', 'BP', 'P', 'TP', 'TB', 'RB', 'C', 'TC', 'S', 'TS'] as const
type Medium = (typeof MEDIA)[number]

/**
 * The codes of the crop table: '20-30 or 25' and 'B,T,S'. Where it has none, what a home test is laid in (common practice, no
 * source).
 *
 * A dash means 16 hours at the first and 8 at the second each day, 'or' the regular method and its alternative (7 CFR
 * 201.58(a): seen).
 */
export function testConditions(temperature: string | null, substrata: string | null): TestConditions {
  if (temperature === null || substrata === null)
    return { temperature: message('germination.temperature-plain'), media: [mediumTold('T')] }
  const codes = substrata.split(',')
  const known = MEDIA.filter((code) => codes.includes(code))
  return {
    temperature: temperatureTold(temperature),
    media: [...codes.filter((code) => !MEDIA.some((one) => one === code)), ...known.map(mediumTold)],
  }
}

function mediumTold(code: Medium): Message {
  return message(`germination.medium-${code.toLowerCase() as Lowercase<Medium>}`)
}

function temperatureTold(codes: string): Message | string {
  return codes
    .split(' or ')
    .map((part): Message | string => {
      const [, day, night] = /^(\d+)-(\d+)$/.exec(part) ?? []
      if (day !== undefined && night !== undefined)
        return message('germination.temperature-varies', { day, night })
      return part.replace(/^\d+/, (figure) => `${figure} °C`)
    })
    .reduce((one, other) => message('germination.temperature-or', { one, other }))
}
