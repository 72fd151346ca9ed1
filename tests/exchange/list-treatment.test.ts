import { expect, test } from 'vitest'
import { treatmentSaid } from '../../db/exchange/list-treatment.ts'

const TREATED = {
  en: ['treated', 'treatment', 'chemically treated', 'dressed', 'fungicide', 'seed treatment'],
  de: ['behandelt', 'gebeizt', 'Behandlung', 'Beize'],
  fr: ['traité', 'traitée', 'traitement'],
  es: ['tratado', 'tratada', 'tratamiento', 'tratamientos químicos', 'fungicida'],
}
const NO = {
  en: ['no', 'not', 'without', 'never', 'not been'],
  de: ['nicht', 'keine', 'ohne'],
  fr: ['non', 'sans', 'pas'],
  es: ['sin', 'no', 'nunca', 'no ha sido', 'no está', 'sin ningún', 'la semilla no fue'],
}
const WRITTEN: readonly ((text: string) => string)[] = [
  (text) => text,
  (text) => text.toUpperCase(),
  (text) => `${text}.`,
  (text) => `  ${text.replace(' ', '-')} `,
  (text) => text.normalize('NFD'),
]

test('no is never a treatment, in any language of the lists, however it is written', () => {
  const denied = Object.entries(NO).flatMap(([language, words]) =>
    words.flatMap((no) => TREATED[language as keyof typeof TREATED].map((treated) => `${no} ${treated}`)),
  )
  const alone = ['untreated', 'unbehandelt', 'ungebeizt', 'unbehandeltes Saatgut', 'none', 'no', 'nil', 'n/a']
  const more = ['keine', 'aucun', 'ninguno', '-', '', 'non', '0', 'unknown', 'seed is untreated']
  for (const cell of [...denied, ...alone, ...more]) {
    for (const write of WRITTEN) expect(treatmentSaid(write(cell), ''), write(cell)).toBeNull()
  }
})

test('what is no plain no stays a treatment: seed waits rather than goes out', () => {
  for (const cell of [
    ...['thiram', 'Captan 2019', 'untreated by us, but the shop used thiram', 'not sure, perhaps thiram'],
    ...[
      'no longer sticky, was treated',
      'fungicide',
      'Beize',
      'traité au thirame',
      'tratada con tiram',
      'no tratada con fungicida',
      'sí, con captan',
      'sin tratar por nosotros, pero la tienda usó fungicida',
      'curasemilla rosa',
      'non traité? voir sachet rouge',
    ],
  ])
    expect(treatmentSaid(cell, ''), cell).toBe(cell)
  for (const yes of ['yes', 'Ja', 'x', 'behandelt', 'traitée', 'TREATED', 'Sí', 'tratadas', 'VERDADERO'])
    expect(treatmentSaid(yes, ''), yes).toBe('')
})

test('a note is heeded too, and what it denies is not', () => {
  for (const note of [
    'seed was treated by the shop',
    'not treated by us, yet gebeizt',
    'Thiram on it',
    'Semilla tratada en la tienda',
  ])
    expect(treatmentSaid('', note), note).toBe(note)
  for (const note of [
    'untreated',
    'never treated',
    'Not chemically treated.',
    'no fungicide',
    'nicht gebeizt',
    'Semilla sin tratar.',
    'No está tratada',
    'sin fungicida',
  ])
    expect(treatmentSaid('', note), note).toBeNull()
})
