import { expect, test } from 'vitest'
import { isContact, withoutContact } from '../../../db/domain/shared/contact-shapes.ts'

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

test('dates, amounts, numbers of lots and places stay', () => {
  for (const text of NOT_REACHED) expect(withoutContact(text), text).toBe(text)
})
