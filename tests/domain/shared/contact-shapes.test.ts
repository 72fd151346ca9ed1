import { expect, test } from 'vitest'
import { isContact, withoutContact as leftOut } from '../../../db/domain/shared/contact-shapes.ts'

const withoutContact = (text: string) => leftOut(text, '(contact left out)')

const REACHED = [
  ...['ada@example.org', 'Ada.Wren+seed@mail.example.co.uk', 'émile@exemple.fr'],
  ...[
    '+44 1632 960001',
    '+44 (0)1632-960 001',
    '+441632960001',
    '01632 960001',
    '(01632) 960 001',
    '0555/014273',
  ],
  ...['01 42 73 55 10', '555-014-2730', '(555) 014 2730'],
]
const NOT_REACHED = [
  ...[
    '2017-2019',
    '03/04/2024',
    '02.03.2024',
    '2024-03-14',
    '12 500 000 seeds',
    '0.5 g of 1,000',
    '25 x 0.125 g',
  ],
  ...['HL26-0001-A', 'NLD037:CGN00254', '+120.9123', '-44.6975', '2026-03-14T10:30:00.000Z', '1.250,5 g'],
  ...['00000000-0000-4000-8000-000000000001', 'sown 14.03., up 21.03.2024', '0012345'],
]

test('an e-mail address and a telephone number go, whatever stands around them', () => {
  for (const contact of REACHED) {
    expect(isContact(` ${contact} `), contact).toBe(true)
    expect(withoutContact(`Ask her (${contact}), or write.`), contact).toBe(
      'Ask her ((contact left out)), or write.',
    )
  }
  expect(withoutContact('Tel. 4273 551')).toBe('Tel. (contact left out)')
})

test('a street with its house number goes; a place without one, and numbers of seed, stay', () => {
  for (const street of [
    ...['3 Ferry Lane', '12a Upper Mill Road', 'Lindenweg 12', 'Mühlenstraße 4 b', 'Hauptstr. 7'],
    ...['14, rue du Port', '4 bis rue de l’Église', 'calle Mayor 12', 'Avenida de la Paz, 4'],
  ])
    expect(withoutContact(`Fetched from ${street}.`), street).toBe('Fetched from (contact left out).')
  for (const text of [
    ...['Ferry Lane', 'grown on the Lindenweg', '40 seeds of Long Lane Marrow', 'sow 3 rows', '2 Close Rows'],
    ...['20 Seeds', '3 place settings', 'from 12 plants in Mill Road'],
  ])
    expect(withoutContact(text), text).toBe(text)
})

test('dates, amounts, numbers of lots and places stay', () => {
  for (const text of NOT_REACHED) expect(withoutContact(text), text).toBe(text)
})
