import { type MessageFormatElement, TYPE } from '@formatjs/icu-messageformat-parser'
import { type FormatXMLElementFn, IntlMessageFormat } from 'intl-messageformat'
import {
  type Manner,
  massInWords,
  massToFigures,
  massWithin,
  numberInWords,
} from '../domain/amounts/in-words.ts'
import { milligrams } from '../domain/amounts/mass.ts'
import { en } from './en/index.ts'
import { isMessage, type Listed, type Message, type MessageId, message, type Value } from './message.ts'

export type { Manner }

/** The texts of a language, by id: ICU MessageFormat, or that parsed. */
export type Translation = Partial<Readonly<Record<MessageId, string | MessageFormatElement[]>>>

/** Whoever tells messages in one language and manner. */
export interface Texts {
  /** BCP 47: the language, with the region that says how dates are written. */
  readonly locale: string
  readonly direction: 'ltr' | 'rtl'
  /** The text of a message. */
  readonly say: (told: Message) => string
  /** The text of a message by its id. */
  readonly text: <I extends MessageId>(...told: Parameters<typeof message<I>>) => string
  /** A value by itself, as it stands in a message: a date, a mass, a list. */
  readonly value: (value: Value) => string
  /** A message in pieces, each `<tag>` of it made by the function of that name: a link, a strong word. */
  readonly pieces: <T>(
    told: Message,
    tags: Readonly<Record<string, (children: (string | T)[]) => T>>,
  ) => (string | T)[]
}

const FIGURES_SHOWN = 4
const MOST_DECIMALS = 4
/** Keeps a text apart from what runs the other way; its own first letter says how it runs. */
export const ISOLATED = { from: '\u2068', to: '\u2069' }
const LEFT_TO_RIGHT = '\u2066'

/** Which language to tell in, how the library writes numbers and masses, and whether the script runs from the right. */
export interface Speech {
  readonly code: string
  readonly direction: 'ltr' | 'rtl'
  readonly manner: Manner
  readonly translation: Translation
  /** How dates are written: '14 Mar 2026', or as in a letter '14 March 2026'. */
  readonly dates?: 'medium' | 'long'
}

/**
 * Tells messages.
 *
 * A message that the language lacks is told in English. Numbers and masses are written by the library's locale whatever the
 * language, as they are read where they are typed. Dates have words in them: they are written by the language, in the
 * library's region.
 */
export function createTexts({ code, direction, manner, translation, dates = 'medium' }: Speech): Texts {
  const locale = localeFor(code, manner.locale)
  const plain = new Intl.NumberFormat(manner.locale, { numberingSystem: 'latn' })
  const formatters = { getNumberFormat: () => plain, getDateTimeFormat, getPluralRules }
  const figures = figuresIn(direction)
  const day = new Intl.DateTimeFormat(locale, { dateStyle: dates, timeZone: 'UTC' })
  const moment = new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'short' })
  const tenths = { maximumFractionDigits: 1, signDisplay: 'negative', numberingSystem: 'latn' } as const
  const degrees = {
    about: new Intl.NumberFormat(manner.locale, tenths),
    measured: new Intl.NumberFormat(manner.locale, { ...tenths, minimumFractionDigits: 1 }),
  }
  const lists = {
    and: new Intl.ListFormat(locale, { type: 'conjunction' }),
    or: new Intl.ListFormat(locale, { type: 'disjunction' }),
  }
  const formats = new Map<MessageId, Told>()

  const toldBy = (id: MessageId): Told => {
    const found = formats.get(id)
    if (found !== undefined) return found
    const format = new IntlMessageFormat(translation[id] ?? en[id]?.text ?? id, locale, undefined, {
      formatters,
    })
    const made = { format, choosing: choosingIn(format.getAst()) }
    formats.set(id, made)
    return made
  }
  const written = (
    { id, values = {} }: Message,
    tags: Readonly<Record<string, FormatXMLElementFn<unknown>>>,
  ) => {
    const { format, choosing } = toldBy(id)
    const given = Object.entries(values).map(([name, value]) => [
      name,
      choosing.has(name) && (typeof value === 'number' || typeof value === 'string') ? value : ready(value),
    ])
    return format.format({ ...Object.fromEntries(given), ...tags })
  }
  const say = (told: Message) => wideSpaces(String(written(told, {})))
  const about = (isAbout: boolean | undefined, amount: string) =>
    isAbout === true ? say(message('amount.about', { amount })) : amount
  const listed = ({ list, as = 'and' }: Listed) => lists[as].format(list.map(ready))
  const ready = (value: Value): string => {
    if (typeof value === 'number') return figures(numberInWords(value, manner, MOST_DECIMALS))
    if (typeof value === 'string') return isolated(value)
    if ('seeds' in value) {
      const amount = say(message('amount.seeds', { count: value.seeds, unit: value.unit ?? 'seed' }))
      return about(value.about, amount)
    }
    if ('celsius' in value) {
      const digits = value.about === true ? degrees.about : degrees.measured
      return figures(`${digits.format(value.celsius).replace('-', '−')} °C`)
    }
    if ('mg' in value) {
      if (value.within !== undefined) return figures(massWithin(value.mg, value.within, manner))
      const mass = milligrams(value.mg)
      const exact = massInWords(mass, manner)
      if (value.about === undefined || value.about === false) return figures(exact)
      const shown = massToFigures(mass, FIGURES_SHOWN, manner)
      return about(value.about === true || shown !== exact, figures(shown))
    }
    if ('part' in value)
      return about(value.about, figures(`${numberInWords(100 * value.part, manner)}\u00a0%`))
    if ('day' in value) return day.format(Date.parse(`${value.day}T00:00:00Z`))
    if ('moment' in value) return moment.format(Date.parse(value.moment))
    if ('person' in value)
      return value.name === undefined ? say(message('amount.somebody')) : isolated(value.name)
    return isMessage(value) ? say(value) : listed(value)
  }
  const isolated = (text: string) => (direction === 'rtl' ? `${ISOLATED.from}${text}${ISOLATED.to}` : text)
  return {
    locale,
    direction,
    say,
    text: (...told) => say(message(...told)),
    value: (value) => wideSpaces(ready(value)),
    pieces: <T>(told: Message, tags: Readonly<Record<string, (children: (string | T)[]) => T>>) => {
      const made = written(told, tags as Readonly<Record<string, FormatXMLElementFn<unknown>>>)
      return (Array.isArray(made) ? made : [made]) as (string | T)[]
    },
  }
}

/** A message ready to be told, with the values that choose a form of it: those stay as they are. */
interface Told {
  readonly format: IntlMessageFormat
  readonly choosing: ReadonlySet<string>
}

function choosingIn(elements: readonly MessageFormatElement[]): ReadonlySet<string> {
  const found = elements.flatMap((element) => {
    if (element.type === TYPE.plural || element.type === TYPE.select) {
      const inside = Object.values(element.options).flatMap(({ value }) => [...choosingIn(value)])
      return [element.value, ...inside]
    }
    return element.type === TYPE.tag ? [...choosingIn(element.children)] : []
  })
  return new Set(found)
}

function getDateTimeFormat(...given: ConstructorParameters<typeof Intl.DateTimeFormat>): Intl.DateTimeFormat {
  return new Intl.DateTimeFormat(...given)
}

function getPluralRules(...given: ConstructorParameters<typeof Intl.PluralRules>): Intl.PluralRules {
  return new Intl.PluralRules(...given)
}

/**
 * How figures with a sign or a unit, such as '−15 °C' and '1.2 kg', are written among words of a direction: they run from
 * left to right in every script, and would come apart among words that run the other way.
 */
export function figuresIn(direction: 'ltr' | 'rtl'): (text: string) => string {
  if (direction === 'ltr') return (text) => text
  return (text) => (/^[\d.,]+$/.test(text) ? text : `${LEFT_TO_RIGHT}${text}${ISOLATED.to}`)
}

/** The narrow space between thousands is missing in many typefaces. */
function wideSpaces(text: string): string {
  return text.replaceAll('\u202f', '\u00a0')
}

/** The locale by which a language writes dates and lists: the library's own where it is of that language. */
function localeFor(code: string, library: string): string {
  const own = new Intl.Locale(library)
  const wanted = new Intl.Locale(code)
  if (own.language === wanted.language) return library
  return own.region === undefined ? code : new Intl.Locale(code, { region: own.region }).toString()
}
