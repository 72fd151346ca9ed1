import {
  type MessageFormatElement,
  type PluralElement,
  parse,
  type SelectElement,
  TYPE,
} from '@formatjs/icu-messageformat-parser'
import { en } from './en/index.ts'
import type { MessageId } from './message.ts'
import { ISOLATED, type Translation } from './texts.ts'

const ACCENTED: Readonly<Record<string, string>> = {
  a: 'á',
  c: 'ç',
  d: 'ð',
  e: 'é',
  g: 'ĝ',
  h: 'ĥ',
  i: 'î',
  k: 'ķ',
  l: 'ł',
  n: 'ñ',
  o: 'ö',
  r: 'ŕ',
  s: 'š',
  t: 'ŧ',
  u: 'ü',
  w: 'ŵ',
  y: 'ý',
  z: 'ž',
  A: 'Á',
  E: 'É',
  I: 'Î',
  O: 'Ö',
  U: 'Ü',
  S: 'Š',
  N: 'Ñ',
  C: 'Ç',
}
/** Texts of other languages are longer than English ones by so much (W3C, Text size in translation). */
const LONGER = 0.4
const OVERRIDDEN = { from: '\u202e', to: '\u202c' }

/**
 * A language that a program made of English: longer, with accents, each message between ⟦ and ⟧.
 *
 * What is seen without brackets is a text that is not in the catalogue, what is cut off was given too little room. From
 * right to left its letters run that way as well, so that a value or a sign that is not kept apart is seen in a wrong place.
 */
export function pseudoTranslation(direction: 'ltr' | 'rtl' = 'ltr'): Translation {
  return Object.fromEntries(
    (Object.keys(en) as MessageId[]).map((id) => {
      const elements = parse(en[id].text)
      const longer = lengthOf(elements) * LONGER
      const told = [literal('⟦'), ...elements.map(accented), literal(`${padding(longer)}⟧`)]
      return [id, direction === 'rtl' ? fromTheRight(told) : told]
    }),
  )
}

function accented(element: MessageFormatElement): MessageFormatElement {
  switch (element.type) {
    case TYPE.literal:
      return literal(element.value.replace(/\p{L}/gu, (letter) => ACCENTED[letter] ?? letter))
    case TYPE.tag:
      return { ...element, children: element.children.map(accented) }
    case TYPE.plural:
    case TYPE.select:
      return inOptions(element, (value) => value.map(accented))
    default:
      return element
  }
}

function inOptions(
  element: PluralElement | SelectElement,
  make: (value: readonly MessageFormatElement[]) => MessageFormatElement[],
): MessageFormatElement {
  const options = Object.entries(element.options).map(([name, { value }]) => [name, { value: make(value) }])
  return { ...element, options: Object.fromEntries(options) } as MessageFormatElement
}

function lengthOf(elements: readonly MessageFormatElement[]): number {
  return elements.reduce((sum, element) => {
    if (element.type === TYPE.literal) return sum + element.value.length
    if (element.type === TYPE.tag) return sum + lengthOf(element.children)
    if (element.type === TYPE.plural || element.type === TYPE.select)
      return sum + Math.max(...Object.values(element.options).map(({ value }) => lengthOf(value)))
    return sum
  }, 0)
}

/** Words of usual length, so that lines break as they do in a language. */
function padding(length: number): string {
  return 'lōngēr '
    .repeat(Math.ceil(length / 7))
    .slice(0, Math.round(length))
    .replace(/^(?=.)/, ' ')
    .trimEnd()
}

function literal(value: string): MessageFormatElement {
  return { type: TYPE.literal, value }
}

/** Letters that run from left to right, overridden; figures and values stand apart (Unicode Standard Annex 9). */
function fromTheRight(elements: readonly MessageFormatElement[]): MessageFormatElement[] {
  return [literal(OVERRIDDEN.from), ...elements.flatMap(keptApart), literal(OVERRIDDEN.to)]
}

function keptApart(element: MessageFormatElement): MessageFormatElement[] {
  switch (element.type) {
    case TYPE.literal:
      return [literal(element.value.replace(/\d[\d.,]*\d|\d/g, `${ISOLATED.from}$&${ISOLATED.to}`))]
    case TYPE.tag:
      return [{ ...element, children: fromTheRight(element.children) }]
    case TYPE.plural:
    case TYPE.select:
      return [inOptions(element, (value) => value.flatMap(keptApart))]
    default:
      return [literal(ISOLATED.from), element, literal(ISOLATED.to)]
  }
}
