import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { type MessageFormatElement, parse, TYPE } from '@formatjs/icu-messageformat-parser'
import { describe, expect, it } from 'vitest'
import { en } from '../../db/messages/en/index.ts'
import { LANGUAGES } from '../../db/messages/languages.ts'
import type { MessageId, Value } from '../../db/messages/message.ts'
import { createTexts } from '../../db/messages/texts.ts'

interface Entry {
  readonly text: string
  readonly about: string
  readonly values?: Readonly<Record<string, Value>>
}

const entries = Object.entries(en) as [MessageId, Entry][]
const folder = join(import.meta.dirname, '../../db/messages')
const METRIC = { locale: 'en-GB', massUnits: 'metric' } as const

/** What a text asks for, what is in its tags and in the forms of its plurals. */
function inside(elements: readonly MessageFormatElement[]): readonly MessageFormatElement[] {
  return elements.flatMap((element) => {
    if (element.type === TYPE.tag) return [element, ...inside(element.children)]
    if (element.type === TYPE.plural || element.type === TYPE.select)
      return [element, ...Object.values(element.options).flatMap(({ value }) => inside(value))]
    return [element]
  })
}

/** The values that a text is told with, and the tags in it. */
function namesIn(text: string): string[] {
  const named = inside(parse(text)).flatMap((element) =>
    element.type === TYPE.literal || element.type === TYPE.pound
      ? []
      : [element.type === TYPE.tag ? `<${element.value}>` : element.value],
  )
  return [...new Set(named)].toSorted()
}

/** What is wrong with a message, by the rules for whoever writes one. */
function faultsOf(entry: Entry): string[] {
  const elements = inside(parse(entry.text))
  const names = namesIn(entry.text).filter((name) => !name.startsWith('<'))
  const plurals = elements.filter((element) => element.type === TYPE.plural)
  return [
    ...(names.join() ===
    Object.keys(entry.values ?? {})
      .toSorted()
      .join()
      ? []
      : ['its values are not those of its text']),
    ...(/\(e?s\)/.test(entry.text) ? ['(s) is no plural: use {count, plural, …}'] : []),
    ...(entry.text.trim() === entry.text ? [] : ['it begins or ends with a space, as a piece to be glued']),
    ...(elements.some((element) => element.type === TYPE.literal && /\p{L}/u.test(element.value))
      ? []
      : ['it has no word']),
    ...(plurals.some((plural) => !('one' in plural.options)) ? ['a plural lacks its form for one'] : []),
    ...(elements.some(({ type }) => type === TYPE.number || type === TYPE.date || type === TYPE.time)
      ? ['numbers and dates are written by the library: {n}, not {n, number}']
      : []),
    ...(/[.!?]\s+\p{Lu}/u.test(entry.text) || /\p{L}/u.test(entry.about)
      ? []
      : ['nobody says what it is for']),
  ]
}

describe('the English catalogue', () => {
  it('obeys the rules for whoever writes a message', () => {
    const wrong = entries.flatMap(([id, entry]) => faultsOf(entry).map((fault) => `${id}: ${fault}`))
    expect(wrong).toEqual([])
  })

  it.each([
    [{ text: '{n} seed(s)', about: 'x', values: { n: 1 } }, '(s) is no plural'],
    [{ text: 'Left: ', about: 'x' }, 'begins or ends with a space'],
    [{ text: '{a}: {b}', about: 'x', values: { a: 'a', b: 'b' } }, 'it has no word'],
    [{ text: '{n} left', about: 'x' }, 'its values are not those'],
    [{ text: '{n, plural, other {# lots}}', about: 'x', values: { n: 1 } }, 'lacks its form for one'],
    [{ text: '{n, number} left', about: 'x', values: { n: 1 } }, 'written by the library'],
  ] as [Entry, string][])('refuses %o', (entry, fault) => {
    expect(faultsOf(entry).join()).toContain(fault)
  })

  it('has every file of its folder, and no id twice', () => {
    const files = readdirSync(join(folder, 'en')).filter((name) => name.endsWith('.json'))
    const ids = files.flatMap((name) =>
      Object.keys(JSON.parse(readFileSync(join(folder, 'en', name), 'utf8'))),
    )
    expect(ids.toSorted()).toEqual(Object.keys(en).toSorted())
  })

  it('tells every message with the values of its example', () => {
    const texts = createTexts({ code: 'en', direction: 'ltr', manner: METRIC, translation: {} })
    for (const [id, { values, text }] of entries) {
      const tags = Object.fromEntries(
        namesIn(text)
          .filter((name) => name.startsWith('<'))
          .map((name) => [name.slice(1, -1), (children: unknown[]) => children.join('')]),
      )
      const told = texts.pieces({ id, values: values ?? {} }, tags).join('')
      expect(told, id).not.toMatch(/[{}]|undefined|\[object|NaN/)
    }
  })
})

describe.each(LANGUAGES.filter(({ code }) => code !== 'en'))('the catalogue in $name', (language) => {
  it('has every message of the English one and no other, with the same values', async () => {
    const texts: Readonly<Record<string, unknown>> = await language.load()
    expect(Object.keys(texts).toSorted()).toEqual(Object.keys(en).toSorted())
    for (const [id, { text }] of entries) expect(namesIn(String(texts[id])), id).toEqual(namesIn(text))
  })

  it('has in each plural the forms that its language has', async () => {
    const forms = new Intl.PluralRules(language.code)
      .resolvedOptions()
      .pluralCategories.filter((form) => form !== 'many')
    for (const [id, text] of Object.entries(await language.load()))
      for (const element of inside(parse(String(text))))
        if (element.type === TYPE.plural)
          expect(Object.keys(element.options), id).toEqual(expect.arrayContaining(forms))
  })
})
