import fc from 'fast-check'
import { strFromU8, unzipSync } from 'fflate'
import papaparse from 'papaparse'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type OpenCollection, openCollection } from '../../db/migrations/open-file.ts'
import { demoCopy } from '../builders/demo-copy.ts'
import { everyRecord, packed, readInto } from '../builders/packed-collection.ts'
import { aCollection, aGift, NOW, TODAY } from '../builders/temporary-collection.ts'

let copy: Awaited<ReturnType<typeof demoCopy>>
let demo: OpenCollection
beforeAll(async () => {
  copy = await demoCopy()
  demo = await openCollection(copy.file, { access: 'read', now: () => NOW })
}, 120_000)
afterAll(() => {
  demo.close()
  copy.remove()
})

describe('the data package', () => {
  it(
    'of the demonstration reads back to the same collection, record by record, and is found in again',
    () =>
      readInto(packed(demo), async (copy) => {
        expect(everyRecord(copy.collection)).toEqual(everyRecord(demo))
        expect((await copy.call('collection.search', { text: 'ferry lane' })).lots.length).toBeGreaterThan(0)
      }),
    180_000,
  )

  it('has no row that is none: a table without rows is its head and nothing more', () => {
    const files = Object.entries(unzipSync(Buffer.from(packed(demo), 'base64')))
    const tables = files.filter(([name]) => name.endsWith('.csv')).map(([, bytes]) => strFromU8(bytes))
    expect(tables.filter((text) => papaparse.parse(text).data.length === 2).length).toBeGreaterThan(3)
    expect(tables.filter((text) => /\r\n\r\n/.test(text.replace(/"(?:[^"]|"")*"/g, '')))).toEqual([])
  })

  it('names nobody, reaches nobody and tells no garden unless asked, and still reads back', async () => {
    const content = packed(demo, { people: false, places: false })
    const files = unzipSync(Buffer.from(content, 'base64'))
    const text = Object.entries(files)
      .filter(([name]) => !/^(variety|variety_synonym|crop)\.csv$/.test(name))
      .map(([, bytes]) => strFromU8(bytes))
      .join('\n')
      .toLowerCase()
    const people = demo.sqlite.prepare('SELECT name FROM person').pluck().all() as string[]
    expect(people.length).toBeGreaterThan(20)
    expect(
      people.filter((name) => new RegExp(`(?<!\\p{L})${name.toLowerCase()}(?!\\p{L})`, 'u').test(text)),
    ).toEqual([])
    const emails = demo.sqlite
      .prepare("SELECT email FROM person_contact WHERE email <> ''")
      .pluck()
      .all() as string[]
    expect(emails.filter((email) => text.includes(email.toLowerCase()))).toEqual([])
    expect(strFromU8(files['growing_site.csv'] as Uint8Array)).toContain('Garden 1')
    await readInto(content, async (copy) => {
      const count = (collection: OpenCollection) =>
        collection.sqlite.prepare('SELECT count(*), sum(balance_mass_mg) FROM lot').raw().get()
      expect(count(copy.collection)).toEqual(count(demo))
    })
  }, 180_000)

  it('says of every column what it is, and keeps keys that fit (Data Package v2, Table Schema)', async () => {
    const files = unzipSync(Buffer.from(packed(demo), 'base64'))
    const { resources } = JSON.parse(strFromU8(files['datapackage.json'] as Uint8Array))
    const rowsOf = new Map<string, Record<string, string>[]>()
    for (const { name, path, bytes, schema } of resources) {
      const file = files[path] as Uint8Array
      expect(file.length).toBe(bytes)
      const read = papaparse.parse<Record<string, string>>(strFromU8(file), {
        header: true,
        skipEmptyLines: true,
      })
      expect(read.meta.fields).toEqual(schema.fields.map((field: { name: string }) => field.name))
      rowsOf.set(name, read.data)
    }
    for (const { name, schema } of resources) {
      const key = (row: Record<string, string>) =>
        schema.primaryKey.map((field: string) => row[field]).join('\u001f')
      const rows = rowsOf.get(name) ?? []
      expect(new Set(rows.map(key)).size, name).toBe(rows.length)
      for (const { fields, reference } of schema.foreignKeys) {
        const [field] = fields as [string]
        const there = new Set((rowsOf.get(reference.resource || name) ?? []).map((row) => row['id']))
        expect(
          rows.filter((row) => row[field] !== schema.missingValues[0] && !there.has(row[field])),
        ).toEqual([])
      }
    }
  }, 180_000)

  it('of any collection reads back to the same one, whatever its texts hold', {
    tags: 'long',
    timeout: 180_000,
  }, async () => {
    const text = fc.string({ unit: 'grapheme', maxLength: 40 }).map((typed) => typed.replaceAll('\0', ''))
    const nasty = fc.oneof(
      text,
      fc.constantFrom('\\N', '"', ',', '=1+1', 'line\nbreak', '\r\n', "'=A1", ' ', '\uFEFF'),
    )
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.record({ name: text, story: nasty, terms: nasty, out: fc.nat(90), back: fc.boolean() }), {
          minLength: 1,
          maxLength: 6,
        }),
        async (gifts) => {
          const test = await aCollection()
          try {
            for (const { name, story, terms, out, back } of gifts) {
              const variety = { newVariety: { cropId: 'bean', name: `V${name}`.slice(0, 50) } }
              const { taken } = await test.call('intake.record', {
                donor: { newPerson: { name: `P${name}`, note: story } },
                receivedOn: TODAY,
                gifts: [aGift({ variety, story, terms, sample: '25 weigh 6.10 g' })],
              })
              if (out === 0) continue
              const lines = [{ lotId: taken[0]?.lotId ?? 0, amount: `${out} seeds` }]
              const { entryId } = await test.call('withdrawal.record', {
                person: null,
                on: TODAY,
                lines,
              })
              if (back) await test.call('entry.undo', { entryId })
            }
            await readInto(packed(test.collection), async (copy) => {
              expect(everyRecord(copy.collection)).toEqual(everyRecord(test.collection))
            })
          } finally {
            test.remove()
          }
        },
      ),
      { numRuns: 12 },
    )
  })

  it('is read only into a collection in which nothing was written, and leaves one untouched that it does not fit', async () => {
    const test = await aCollection()
    try {
      await test.call('intake.record', { donor: null, receivedOn: TODAY, gifts: [aGift()] })
      const content = packed(test.collection)
      expect(await test.refused('package.import', { content })).toMatchObject({ field: 'content' })
      const copy = await aCollection()
      const before = everyRecord(copy.collection)
      const bytes = Buffer.from(content, 'base64')
      for (const spoilt of [bytes.subarray(0, bytes.length >> 1), Buffer.from('no archive')]) {
        const problem = await copy.refused('package.import', { content: spoilt.toString('base64') })
        expect(problem.sentence).toMatch(/damaged|cannot be unpacked/)
      }
      expect(everyRecord(copy.collection)).toEqual(before)
      copy.remove()
    } finally {
      test.remove()
    }
  })
})
