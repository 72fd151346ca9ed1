import { existsSync, readFileSync } from 'node:fs'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { fold } from '../../db/domain/shared/fold.ts'
import {
  aCollection,
  aGift,
  type TemporaryCollection,
  TODAY,
  takeIn,
} from '../builders/temporary-collection.ts'

let book: TemporaryCollection
beforeEach(async () => {
  book = await aCollection()
})
afterEach(() => book.remove())

const SECRETS = ['Ilka', 'Brandt', 'ilka@example.org', '555 0142', '3 Ferry Lane', 'Millbrook', 'likes tea']

/** Somebody who gave, took, was renamed, joined with another record and is written of in a story and a draft. */
async function somebody() {
  const newPerson = {
    name: 'Ilka Brandt',
    town: 'Millbrook',
    email: 'ilka@example.org',
    phone: '555 0142',
    address: '3 Ferry Lane',
    note: 'likes tea',
    creditAs: 'Ilka of Millbrook',
    mayWrite: true,
  }
  const { personId, taken } = await book.call('intake.record', {
    donor: { newPerson },
    receivedOn: TODAY,
    gifts: [aGift({ story: 'Grown by Ilka Brandt since 1950.' })],
  })
  if (personId === null) throw new Error('Nobody was made')
  const lotId = taken[0]?.lotId ?? 0
  const line = { lotId, amount: '20 seeds' }
  await book.call('withdrawal.record', { person: { personId }, on: TODAY, lines: [line] })
  await book.call('person.change', { personId, name: 'Ilka Brandt-Reed', phone: '555 0142 9' })
  const other = await book.call('person.create', { name: 'Brandt Ilka', phone: '555 0142' })
  await book.call('person.merge', { keepId: personId, joinId: other.personId })
  await book.call('draft.save', { draftId: 'a-draft-01', kind: 'take-in', text: '{"donor":"Ilka Brandt"}' })
  return { personId, lotId }
}

it('exports every row that names somebody, of all their records', async () => {
  const { personId } = await somebody()
  const { text, fileName } = await book.call('person.export', { personId })
  expect(fileName).toMatch(/\.json$/)
  const { held } = JSON.parse(text)
  expect(held.person).toHaveLength(2)
  for (const part of ['person_contact', 'person_change', 'accession', 'withdrawal']) {
    expect(
      Object.keys(held).some((name) => name.startsWith(`${part} by`)),
      part,
    ).toBe(true)
  }
  for (const secret of SECRETS) expect(text).toContain(secret)
})

it('exports what belongs to their visits and the recalls of what they have, and not those of others', async () => {
  const { personId, lotId } = await somebody()
  const { withdrawalId } = await book.call('withdrawal.record', {
    person: { personId },
    on: TODAY,
    purpose: 'other',
    lines: [{ lotId, amount: '20 seeds' }],
  })
  await book.call('institution.change', { withdrawalId, intendedUse: 'a trial of early sowing' })
  await book.call('institution.record-report', { withdrawalId, on: TODAY, note: 'came up in six days' })
  const words = { on: TODAY, advice: 'Shut it in.' }
  await book.call('recall.record', { lotId, reason: 'weevils in the jar', ...words })
  const other = await takeIn(book)
  await book.call('recall.record', { lotId: other.lotId, reason: 'mould in the tin', ...words })
  const { text } = await book.call('person.export', { personId })
  for (const known of ['a trial of early sowing', 'came up in six days', 'weevils in the jar'])
    expect(text).toContain(known)
  expect(text).not.toContain('mould in the tin')
  await book.call('person.erase', { personId })
  expect((await book.call('recall.list', {})).recalls).toHaveLength(2)
  const [recall] = (await book.call('recall.list', { lotId })).recalls
  const told = await book.call('recall.get', { recallId: recall?.recallId ?? 0 })
  expect(told).toMatchObject({ toWrite: 0, inPerson: 1, people: [{ personId, mayWrite: false, town: '' }] })
  expect(JSON.stringify(told)).not.toContain('Ilka')
  expect((await book.call('recall.export', { recallId: recall?.recallId ?? 0 })).toWrite).toBe(0)
})

it('erases who somebody was from every byte of the file, and keeps what they gave and took', async () => {
  const { personId, lotId } = await somebody()
  const before = await book.call('lot.get', { lotId })
  const erased = await book.call('person.erase', { personId })
  expect(erased).toMatchObject({
    undoable: false,
    said: `Erased the name and details of Former person 000${personId}`,
  })
  const after = await book.call('lot.get', { lotId })
  expect(after.quantity).toEqual(before.quantity)
  expect(after.ledger.map(({ count, massMg }) => [count, massMg])).toEqual(
    before.ledger.map(({ count, massMg }) => [count, massMg]),
  )
  const record = await book.call('person.get', { personId })
  expect(record).toMatchObject({ town: '', email: '', phone: '', address: '', note: '', mayWrite: false })
  expect(record.gave).toHaveLength(1)
  expect(record.took).toHaveLength(1)
  expect((await book.call('collection.check', {})).findings).toEqual([])
  expect((await book.call('lot.list', { text: 'ilka' })).total, 'the search has forgotten the name').toBe(0)
  const bytes = readFileSync(book.collection.file, 'latin1')
  for (const secret of SECRETS) expect(bytes.includes(secret), secret).toBe(false)
})

it('erases the name from what a list said, from an unfinished list and from the lines of the ledger', async () => {
  const { personId, lotId } = await somebody()
  const { personId: rose } = await book.call('person.create', { name: 'Rosalind' })
  await book.call('person.create', { name: 'Ilka Brandtner' })
  const content = Buffer.from('Crop;Variety;Amount\nBean;Ferry Pole;50 g\n').toString('base64')
  await book.call('import.record', { fileName: 'beans of Ilka Brandt.csv', content })
  const keep = book.collection.sqlite.prepare(
    'INSERT INTO accession_passport (accession_id, code, value, entry_id) SELECT max(id), ?, ?, entry_id FROM accession',
  )
  keep.run('COLLNAME', 'Brandt, Ilka')
  keep.run('DONORNAME', 'Rosalind')
  keep.run('REMARKS', 'ACCENAME:told by ILKA BRANDT')
  const text = JSON.stringify({ rows: [{ donor: 'Ilka Brandt', note: 'for "Ilka Brandt"' }] })
  await book.call('draft.save', { draftId: 'a-draft-02', kind: 'paper-sheet', text })
  await book.call('lot.record-count', { lotId, on: TODAY, found: '90 seeds', reason: 'Ilka Brandt counted' })
  const notes = () =>
    book.collection.sqlite.prepare("SELECT note FROM movement WHERE note LIKE '%counted'").pluck()
  expect(notes().all()).toEqual(['Ilka Brandt counted'])
  const passport = () =>
    book.collection.sqlite.prepare('SELECT code, value FROM accession_passport').raw().all()
  expect(JSON.stringify(passport())).toContain('Rosalind')
  await book.call('person.erase', { personId })
  await book.call('person.erase', { personId: rose })
  expect(notes().all()).toEqual([`Former person 000${personId} counted`])
  expect(JSON.stringify(passport())).not.toContain('Rosalind')
  const left = readFileSync(book.collection.file, 'latin1').replaceAll(/Ilka Brandtner|ilka brandtner/g, '')
  expect(left).not.toMatch(/Ilka Brandt|Brandt, Ilka|ILKA BRANDT/)
  expect((await book.call('person.list', { text: 'brandtner' })).people).toHaveLength(1)
  expect((await book.call('collection.check', {})).findings).toEqual([])
})

/** Every column of the file that may hold a text about people, as the file itself lists them. */
function textColumns(): { table: string; column: string }[] {
  const columns = book.collection.sqlite
    .prepare(
      `SELECT schema.name AS "table", info.name AS "column" FROM sqlite_schema AS schema, pragma_table_info(schema.name) AS info
       WHERE schema.type = 'table' AND info.type = 'TEXT' AND schema.name NOT GLOB 'accession_search*' AND schema.name NOT GLOB '__drizzle*'`,
    )
    .all() as { table: string; column: string }[]
  return columns.filter(({ table, column }) => !LEFT_ALONE.test(`${table}.${column}`))
}

const EMILE = {
  name: 'Émile Brûlard',
  town: 'Aubépine',
  email: 'emile.b@example.org',
  phone: '0555 / 01 42 73',
  address: '14, ruelle du Œillet\nAubépine',
}
/** What of him may be in no byte, as it is found once capitals, accents and signs are laid aside. */
const OF_EMILE = [
  'emile brulard',
  'brulard emile',
  'emile b example',
  'ruelle du oeillet',
  'lucien of aubepine',
]
const WRITTEN = [
  'ÉMILE BRÛLARD',
  'Emile\nBrulard',
  'Brûlard, Émile'.normalize('NFD'),
  'Emile.B@Example.org',
  'tel. 0555-014273',
  'RUELLE DU ŒILLET 14; 14, ruelle du oeillet',
  'Lucien of Aubépine',
].join('; ')
/**
 * Not looked through: names of plants, what other people are called and how they are reached, what is worked out from those,
 * and the locale: a book is not opened with one that is none.
 */
const LEFT_ALONE =
  /^(?:variety|variety_synonym)\.name$|^crop\.common_name$|^person\.(?:name|credit_as|town)$|^person_contact\.|_folded$|^collection\.locale$/

/** Writes a text over one value of every column that takes it, and gives the columns. */
function plantEverywhere(text: string): string[] {
  const forms = [text, JSON.stringify({ [text]: text, within: JSON.stringify([text]) })]
  return textColumns().flatMap(({ table, column }) => {
    const plant = book.collection.sqlite.prepare(
      `UPDATE "${table}" SET "${column}" = ? WHERE "${column}" = (SELECT max("${column}") FROM "${table}")`,
    )
    const takes = forms.some((form) => {
      try {
        return plant.run(form).changes > 0
      } catch {
        // The file refuses the text here: its own check, a link, or a number that never changes.
        return false
      }
    })
    return takes ? [`${table}.${column}`] : []
  })
}

async function emile() {
  const { personId } = await book.call('person.create', { ...EMILE, name: 'Lucien Pré', mayWrite: true })
  await book.call('person.change', { personId, name: EMILE.name })
  return personId
}

/** The whole file and what may lie beside it, with capitals, accents and signs laid aside. */
function everyByte(): string {
  const { file } = book.collection
  return ['', '-wal', '-journal']
    .filter((end) => existsSync(`${file}${end}`))
    .map((end) => fold(readFileSync(`${file}${end}`, 'utf8')))
    .join(' ')
}

it('leaves no byte of somebody in any column of the file, whatever table a later version adds', async () => {
  await somebody()
  const gifts = [aGift({ grownAt: 'ÉMILE BRÛLARD, 14 ruelle du Œillet' })]
  await book.call('intake.record', { donor: null, receivedOn: TODAY, gifts })
  const personId = await emile()
  const { sqlite } = book.collection
  sqlite.exec('CREATE TABLE later_table (id INTEGER PRIMARY KEY, told TEXT NOT NULL, at TEXT) STRICT')
  sqlite.exec('CREATE TABLE later_words (word TEXT PRIMARY KEY, told TEXT NOT NULL) STRICT, WITHOUT ROWID')
  sqlite.exec("INSERT INTO later_table VALUES (1, 'x', 'y')")
  const tell = sqlite.prepare('INSERT INTO later_words VALUES (?, ?)')
  // Texts of many lengths, so that SQLite moves them from page to page as they change and leaves parts behind.
  sqlite.transaction(() => {
    for (let n = 0; n < 1_000; n += 1) {
      const text = `${'a'.repeat((n * 7_919) % 300)}${n % 2 === 0 ? ' Émile Brûlard ' : ''}${'b'.repeat((n * 104_729) % 900)}`
      tell.run(`${text.slice(0, 200)} ${n}`, text)
    }
  })()
  const planted = plantEverywhere(WRITTEN)
  // The app reads these settings as the list that it writes.
  sqlite.prepare('UPDATE collection SET masked_names = json_array(masked_names)').run()
  expect(planted).toEqual(
    expect.arrayContaining([
      'accession.grown_at',
      'lot.grown_at',
      'variety.story',
      'crop.own_reason',
      'draft.text',
      'later_table.at',
    ]),
  )
  for (const secret of OF_EMILE.slice(0, 4)) expect(everyByte(), secret).toContain(secret)
  const { traces } = await book.call('person.list-traces', { personId })
  await book.call('person.erase', { personId, mask: traces.map(({ traceId }) => traceId) })
  const left = everyByte()
  for (const secret of OF_EMILE) expect(left.includes(secret), secret).toBe(false)
  expect(left.replace(/\s/g, '')).not.toContain('014273')
  expect(left, 'nor in what the search keeps').not.toMatch(/brulard|emile/)
})
it('leaves a variety alone that is called like a person of one word', async () => {
  const { personId } = await book.call('person.create', { name: 'Rose' })
  await book.call('variety.create', { cropId: 'bean', name: 'Rose' })
  await book.call('person.erase', { personId })
  const { entries } = await book.call('entry.list', {})
  expect(entries.map(({ said }) => said)).toContain('Added the variety Rose')
  expect(entries.map(({ said }) => said)).not.toContain('Added Rose')
})

it('refuses somebody who is not there', async () => {
  expect(await book.refused('person.erase', { personId: 99 })).toMatchObject({
    code: 'not-found',
    field: 'personId',
  })
})

it('shows where a name stands that is also a plant, and takes it out only where the keeper says so', async () => {
  const newPerson = { name: 'Aunt Molly', town: 'Millbrook', phone: '12 34' }
  const { personId } = await book.call('intake.record', {
    donor: { newPerson },
    receivedOn: TODAY,
    gifts: [
      aGift({
        variety: { newVariety: { cropId: 'bean', name: 'Aunt Molly’s Green' } },
        story: 'Aunt Molly’s Green, as Aunt Molly of Millbrook said',
      }),
      aGift({ story: 'A gift by Aunt Molly.' }),
    ],
  })
  if (personId === null) throw new Error('Nobody was made')
  const { traces, total } = await book.call('person.list-traces', { personId })
  expect(total).toBe(traces.length)
  const told = traces.map(({ where, text }) => `${where}: ${text}`)
  expect(told).toContain('accession HL26-0002: story: A gift by Aunt Molly.')
  expect(told.filter((line) => line.includes('variety'))).toEqual(['variety: name: Aunt Molly’s Green'])
  const gift = traces.filter(({ text }) => text === 'A gift by Aunt Molly.')
  await book.call('person.erase', { personId, mask: gift.map(({ traceId }) => traceId) })
  const stories = book.collection.sqlite.prepare('SELECT story FROM accession ORDER BY id').pluck().all()
  expect(stories).toEqual(['Aunt Molly’s Green, as Former person 0001 said', 'A gift by Former person 0001.'])
  expect((await book.call('variety.search', { text: 'aunt molly' })).varieties).toHaveLength(1)
})

it('deletes the backups that still hold somebody once a new one is whole, where the keeper asks for it', async () => {
  const personId = await emile()
  const before = await book.call('backup.create', {})
  await book.call('person.erase', { personId })
  book.goTo('2026-03-15')
  const after = await book.call('backup.create', { deleteOlder: true })
  expect(after.deleted).toBe(1)
  expect([existsSync(before.file), existsSync(after.file)]).toEqual([false, true])
})
