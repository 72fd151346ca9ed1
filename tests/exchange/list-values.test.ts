import { expect, test } from 'vitest'
import { readListDay, readListYear } from '../../db/exchange/list-values.ts'

const OTHER =
  'before after not until since never pre vor nach nicht bis avant après sauf antes después hasta'.split(' ')
const GUESS = [
  ...['maybe', 'perhaps', 'probably', 'ca.', 'vielleicht', 'peut-être'],
  ...['quizás', 'creo que', 'alrededor de', 'más o menos', 'unos', 'hacia', 'verano, hacia'],
]
const harvested = (cell: string) => readListYear(cell, 2026)

test('a year beside a word that turns it into another statement is never taken for the year', () => {
  for (const word of OTHER)
    for (const cell of [`${word} 2010`, `${word.toUpperCase()} 2010`, `2010 ${word}`, `${word} summer 2010`])
      expect(harvested(cell), cell).toEqual({ kind: 'harvest', harvest: { kind: 'unknown' }, words: cell })
})

test('a guess at a year stays a guess', () => {
  for (const word of GUESS)
    expect(harvested(`${word} 2019`), word).toEqual({
      kind: 'harvest',
      harvest: { kind: 'year', year: 2019, about: true },
      words: '',
    })
})

test('a season, a month or a day says the year', () => {
  for (const cell of [
    'summer 2020',
    'Late autumn of 2020',
    'Ernte 2020',
    'Mai 2020',
    '12.08.2020',
    '3 août 2020',
    'verano de 2020',
    'a finales del otoño de 2020',
    'cosechada en 2020',
    'agosto de 2020',
    '3 de agosto de 2020',
  ])
    expect(harvested(cell), cell).toMatchObject({
      harvest: { kind: 'year', year: 2020, about: false },
      words: '',
    })
})

test('a date beside such a word is no day, and a word that begins like a month is none', () => {
  for (const word of [...OTHER, 'maybe'])
    for (const cell of [`${word} 12.08.2019`, `${word} 2019`, `${word} June 2019`, `${word} 3 June 2019`])
      expect(readListDay(cell, 'day-first'), cell).toEqual({ kind: 'unreadable' })
  for (const cell of ['Fri 14 June 2019', 'Freitag, 14. Juni 2019', '14 juin 2019', 'June 14, 2019'])
    expect(readListDay(cell, 'day-first'), cell).toEqual({ kind: 'day', day: '2019-06-14' })
})
