import { describe, expect, it } from 'vitest'
import { es } from '../../db/messages/es/index.ts'
import { message } from '../../db/messages/message.ts'
import { pseudoTranslation } from '../../db/messages/pseudo.ts'
import { createTexts, figuresIn, type Translation } from '../../db/messages/texts.ts'
import { saidOf } from '../../db/services/book/said.ts'
import { excusedInVain, sourceOf, textsIn, textsOutside } from '../architecture/texts-outside.ts'

const texts = (
  code: string,
  locale: string,
  translation: Translation = {},
  direction: 'ltr' | 'rtl' = 'ltr',
) => createTexts({ code, direction, manner: { locale, massUnits: 'metric' }, translation })

describe('telling a message', () => {
  it('writes numbers as the library does, whatever the language', () => {
    const seeds = { count: 12_400, unit: 'seed' }
    expect(texts('en', 'en-GB').text('amount.seeds', seeds)).toBe('12,400 seeds')
    expect(texts('es', 'es-ES', es).text('amount.seeds', seeds)).toBe('12.400 semillas')
    expect(texts('es', 'en-US', es).text('amount.seeds', seeds)).toBe('12,400 semillas')
    const weight = { weight: 1_240.5 }
    expect(texts('es', 'en-GB', es).text('amount.per-hundred', weight)).toBe('1,240.5 g por cien')
    expect(texts('en', 'es-ES').text('amount.per-hundred', { weight: 12.5 })).toBe('12,5 g per hundred')
    expect(texts('en', 'de-DE').say({ id: 'amount.about', values: { amount: { celsius: -18 } } })).toBe(
      'about −18,0 °C',
    )
    expect(texts('en', 'fr-FR').locale).toBe('en-FR')
  })

  it('chooses the form of a word by the number', () => {
    const one = { count: 1, unit: 'cluster' }
    expect(texts('en', 'en-GB').text('amount.seeds', one)).toBe('1 cluster')
    expect(texts('es', 'es-ES', es).text('amount.seeds', one)).toBe('1 glomérulo')
  })

  it('tells in English what a language lacks', () => {
    expect(texts('es', 'es-ES', {}).text('amount.somebody')).toBe('somebody')
  })

  it('tells the id of a message that this version does not know, as a newer one may have stored', () => {
    const unknown = { id: 'later.unknown', values: {} } as unknown as ReturnType<typeof message>
    expect(texts('en', 'en-GB').say(unknown)).toBe('later.unknown')
  })

  it.each([
    [{ seeds: 3, unit: 'fruit', about: true }, 'about 3 fruits'],
    [{ mg: 2_405_760 }, '2.40576 kg'],
    [{ mg: 2_405_760, about: true }, 'about 2.406 kg'],
    [{ mg: 370.454, within: 0.5 }, '370 mg'],
    [{ mg: 370.454, within: 0.1 }, '370.5 mg'],
    [{ celsius: -17.96 }, '−18.0 °C'],
    [{ celsius: -0.04 }, '0.0 °C'],
    [{ celsius: 20, about: true }, '20 °C'],
    [{ mg: 2_500_000, about: 'where-rounded' }, '2.5 kg'],
    [{ mg: 2_405_760, about: 'where-rounded' }, 'about 2.406 kg'],
    [{ part: 0.85 }, '85\u00a0%'],
    [{ day: '2026-03-14' }, '14 Mar 2026'],
    [{ person: 7, name: 'Ada Quill' }, 'Ada Quill'],
    [{ person: 7 }, 'somebody'],
    [{ list: ['a', 'b', { seeds: 2 }] }, 'a, b and 2 seeds'],
    [{ list: ['a', 'b'], as: 'or' }, 'a or b'],
    [1240.5, '1,240.5'],
    [message('amount.somebody'), 'somebody'],
  ] as const)('writes %o as %s', (amount, told) => {
    expect(texts('en', 'en-GB').say({ id: 'amount.about', values: { amount } })).toBe(`about ${told}`)
  })

  it('chooses by a word in a language from right to left as well', () => {
    const told = texts('ar', 'en-GB', {}, 'rtl').text('amount.seeds', { count: 2, unit: 'cluster' })
    expect(told).toBe('2 clusters')
  })

  it('keeps names apart from a script that runs the other way', () => {
    const told = texts('ar', 'en-GB', {}, 'rtl').text('amount.about', { amount: 'Ada {x} <b>' })
    expect(told).toBe('about \u2068Ada {x} <b>\u2069')
  })

  it('keeps figures with a sign or a unit whole there', () => {
    expect(figuresIn('rtl')('−15 °C')).toBe('\u2066−15 °C\u2069')
    expect(figuresIn('rtl')('1,240')).toBe('1,240')
    expect(figuresIn('ltr')('−15 °C')).toBe('−15 °C')
  })

  it('chooses by a code there too', () => {
    const one = { count: 1, unit: 'cluster' }
    expect(texts('ar', 'en-GB', {}, 'rtl').text('amount.seeds', one)).toBe('1 cluster')
  })

  it('reads what an entry kept, and the text of an entry from before', () => {
    const kept = message('stock.released', { lot: 'HL26-0004', checked: 'no pests' })
    expect(saidOf(JSON.stringify(kept))).toEqual(kept)
    for (const text of ['Released HL26-0004: no pests', '{"id":1}', '{"id":"a"'])
      expect(saidOf(text)).toBe(text)
  })
})

describe('the language made by program', () => {
  it('is longer, in brackets, and chooses forms and values as English does', () => {
    const made = texts('en', 'en-GB', pseudoTranslation())
    const [pseudo, english] = [made, texts('en', 'en-GB')].map((each) =>
      each.text('amount.seeds', { count: 2, unit: 'seed' }),
    )
    expect(pseudo).toMatch(/^⟦2 šééðš.*⟧$/)
    expect(pseudo?.length).toBeGreaterThan((english?.length ?? 0) * 1.3)
  })

  it('from right to left turns its letters round and keeps values apart', () => {
    const told = texts('ar', 'en-GB', pseudoTranslation('rtl'), 'rtl').text('amount.about', { amount: 'Ada' })
    expect(told).toMatch(/^\u202e⟦.*\u2068\u2068Ada\u2069\u2069.*⟧\u202c$/)
  })
})

describe('texts outside the catalogue', () => {
  it('there are none, and one is found wherever it is planted, but in the few files that are excused as a whole', () => {
    const PLANTED = 'Weigh it first, then say so.'
    const read = new Set<string>()
    const found = textsOutside(undefined, (file) => {
      read.add(file)
      return `${sourceOf(file)}\nrefuse('x', '${PLANTED}')\n`
    })
    expect(found.filter(({ text }) => text !== PLANTED)).toEqual([])
    const planted = found.filter(({ text }) => text === PLANTED)
    const missed = [...read].filter((file) => !planted.some((found) => found.file === file))
    expect(read.size).toBeGreaterThan(500)
    expect(missed.map((file) => file.replace(/^.*\//, '')).toSorted()).toEqual([
      'built-files.ts',
      'entry-chain.ts',
      'list-fields.ts',
      'list-treatment.ts',
      'list-values.ts',
      'lost-focus.ts',
      'public-list.ts',
    ])
  })

  it('are excused only where they still stand', () => {
    expect(excusedInVain()).toEqual([])
  })

  it.each([
    ['a.ts', 'refuse("words-missing", "Say in a few words why.")'],
    ['a.ts', `const said = \`Handed out from $\{lot}; none left\``],
    ['a.tsx', 'const a = <p>Shelf</p>'],
    ['a.tsx', 'const a = <Field label="Lot" />'],
    ['a.tsx', 'const a = <Way about="Every table as CSV" />'],
    ['a.tsx', 'const a = <p title={open ? "Close this" : "b"} />'],
  ])('notices one in %s: %s', (file, source) => {
    expect(textsIn(file, source)).toHaveLength(1)
  })

  it.each([
    ['a.ts', 'throw new RangeError("A line needs its lot")'],
    ['a.ts', 'prepared(sqlite, `SELECT id FROM lot`)'],
    ['a.ts', 'type Kind = "two words here"'],
    ['a.tsx', 'const a = <p className="soft waiting">{text}</p>'],
    ['a.tsx', 'const a = <Field step="lot" />'],
  ])('lets pass in %s: %s', (file, source) => {
    expect(textsIn(file, source)).toEqual([])
  })
})
