import type { ParsedInput, Result } from '../../contract/contract.ts'
import { sampstatOf } from '../../domain/keeping/keeping.ts'
import {
  agreementTold,
  communityLabelTold,
  type GiftLimits,
  limitsInShort,
  NO_LIMITS,
} from '../../domain/terms/gift-limits.ts'
import { type CsvColumn, exactCsvOf } from '../../exchange/csv.ts'
import { checkPassport, gatherFindings, type Passport } from '../../exchange/mcpd-check.ts'
import { DESCRIPTORS, MCPD_CODES } from '../../exchange/mcpd-table.ts'
import { english } from '../../messages/english.ts'
import { limitsOfAccessions } from '../../queries/gift-limits.ts'
import { type PassportRow, passportRows, passportValues } from '../../queries/passport-rows.ts'
import type { Reading } from '../book/context.ts'
import { settingsOf } from '../book/settings.ts'
import { withheldOf, withholdingOf } from '../people/withhold.ts'

type Asked = ParsedInput<'passport.export'>

const MOST_FINDINGS = 200
/** STORAGE codes by what places are meant for; 13, long term, only where the keeper said so. */
const STORAGE = { 'short-term': '11', 'medium-term': '12', 'long-term': '13', none: '10' } as const

/** Names in these are those of plants, though some remember a person. */
const OF_PLANTS = new Set([
  'GENUS',
  'SPECIES',
  'SPAUTHOR',
  'SUBTAXA',
  'SUBTAUTHOR',
  'CROPNAME',
  'ACCENAME',
  'ANCEST',
])

/** Who gave it, as a person or an institution. */
const OF_DONORS = new Set(['DONORCODE', 'DONORNAME', 'DONORNUMB'])

interface Known {
  readonly row: PassportRow
  /** What the terms of the gift allow, in a line; empty: no limits. */
  readonly rights: string
  readonly passport: Passport
}

/**
 * Writes all standing accessions as Multi-Crop Passport Descriptors V.2.1 (FAO/Bioversity 2015).
 *
 * The list has no descriptor for the terms of a gift, so that they stand in REMARKS, which takes what no other field does
 * (descriptor 28, from memory).
 */
export function makePassports(reading: Reading, input: Asked): Result<'passport.export'> {
  const known = knownPassports(reading, input)
  const columns = MCPD_CODES.map(
    (code): CsvColumn<Known> => [code, ({ passport }) => passport.get(code) ?? ''],
  )
  const findings = gatherFindings(
    known.map(({ row, passport }) => ({ at: row.number, findings: checkPassport(passport) })),
  )
  return {
    fileName: `mcpd-${reading.today}.csv`,
    csv: exactCsvOf(columns, known),
    rows: known.length,
    findings: findings.slice(0, MOST_FINDINGS),
    found: findings.length,
    withheld: withheldOf(reading, input),
  }
}

/**
 * Writes all standing accessions as simple Darwin Core, one row each.
 *
 * The terms of a gift stand in accessRights, a record-level term that Darwin Core has from Dublin Core: who can access the
 * resource, or an indication of its security status (Darwin Core quick reference, record level; the term seen as others use
 * it, its place from memory).
 */
export function makeOccurrences(reading: Reading, input: Asked): Result<'occurrence.export'> {
  const { uuid, libraryName } = settingsOf(reading)
  const withheld = withheldOf(reading, input)
  const leftOut = withheld.filter(({ id }) => id !== 'people.withheld-none')
  const text = (code: string) => (of: Known) => of.passport.get(code) ?? ''
  const columns: CsvColumn<Known>[] = [
    ['occurrenceID', ({ row, passport }) => passport.get('PUID') ?? `urn:uuid:${uuid}#${row.number}`],
    ['institutionCode', text('INSTCODE')],
    ['collectionCode', () => 'seed'],
    ['datasetName', () => libraryName],
    // A packet of dry seed: the standard's terms allow a material sample as well.
    ['basisOfRecord', () => 'LivingSpecimen'],
    ['catalogNumber', ({ row }) => row.number],
    ['otherCatalogNumbers', (of) => text('OTHERNUMB')(of).replaceAll(';', ' | ')],
    ['recordNumber', text('COLLNUMB')],
    ['recordedBy', text('COLLNAME')],
    ['scientificName', ({ row }) => row.species],
    ['genus', text('GENUS')],
    ['specificEpithet', text('SPECIES')],
    ['vernacularName', text('CROPNAME')],
    ['eventDate', (of) => eventDate(text('COLLDATE')(of))],
    ['verbatimEventDate', text('COLLDATE')],
    ['locality', text('COLLSITE')],
    ['decimalLatitude', text('DECLATITUDE')],
    ['decimalLongitude', text('DECLONGITUDE')],
    ['geodeticDatum', text('COORDDATUM')],
    ['coordinateUncertaintyInMeters', text('COORDUNCERT')],
    ['minimumElevationInMeters', text('ELEVATION')],
    ['organismQuantity', ({ row }) => row.seeds],
    ['organismQuantityType', () => 'seeds'],
    ['preparations', () => 'dry seed'],
    ['disposition', ({ row }) => (row.seeds > 0 ? 'in collection' : 'used up')],
    ['dynamicProperties', (of) => leftovers(of)],
    ['accessRights', ({ rights }) => rights],
    ['informationWithheld', () => leftOut.map(english.say).join(' ')],
    ['modified', () => reading.today],
  ]
  const known = knownPassports(reading, input)
  return {
    fileName: `occurrences-${reading.today}.csv`,
    csv: exactCsvOf(columns, known),
    rows: known.length,
    withheld,
  }
}

/** ISO 8601 of a date of which month or day may be unknown. */
function eventDate(packed: string): string {
  const [, year, month, day] = /^(\d{4})(\d{2}|--)(\d{2}|--)$/.exec(packed) ?? []
  if (year === undefined || month === undefined) return ''
  if (/^(--|00)$/.test(month)) return year
  return day === undefined || /^(--|00)$/.test(day) ? `${year}-${month}` : `${year}-${month}-${day}`
}

function leftovers({ row, passport }: Known): string {
  const [country, status] = [passport.get('ORIGCTY'), passport.get('SAMPSTAT')]
  return JSON.stringify({
    variety: row.variety,
    ...(country && { ORIGCTY: country }),
    ...(status && { SAMPSTAT: status }),
  })
}

function knownPassports(reading: Reading, asked: Asked): Known[] {
  const { people, places } = asked
  const withholding = withholdingOf(reading, asked)
  const values = passportValues(reading.sqlite)
  const limitsOf = limitsOfAccessions(reading.sqlite, 'all')
  const hidden = new Set(
    DESCRIPTORS.filter((one) => (!people && one.personal_data) || (!places && one.sensitive)).map(
      ({ code }) => code,
    ),
  )
  return passportRows(reading.sqlite).map((row) => {
    const kept = values.get(row.id) ?? new Map<string, string>()
    const limits = limitsOf.get(row.id) ?? NO_LIMITS
    const rights = withholding.text(rightsOf(limits, reading.today))
    // What came in as a passport goes out as it came; what did not is made from the book.
    const whole = withStatus(kept.has('ACCENUMB') ? kept : madeFromBook(row, kept), row)
    const shown = [...whole].filter(
      ([code]) =>
        !hidden.has(code) &&
        (limits.publishStory || code !== 'REMARKS') &&
        (limits.publishName || !OF_DONORS.has(code)),
    )
    const said = withTerms(new Map(shown), rights).map(
      ([code, text]) => [code, OF_PLANTS.has(code) ? text : withholding.text(text)] as const,
    )
    return { row, rights, passport: new Map(said) }
  })
}

/** What others are to know of the terms, in English, as all of these files are. */
function rightsOf(limits: GiftLimits, today: string): string {
  return [...limitsInShort(limits), ...agreementTold(limits, today), ...communityLabelTold(limits)]
    .map(english.say)
    .join(' ')
}

/** A passport with the terms of the gift, after what else is remarked. */
function withTerms(shown: Passport, rights: string): [string, string][] {
  if (rights === '') return [...shown]
  const terms = `ACCENUMB:${withoutSemicolon(rights)}`
  const remarks = shown.get('REMARKS')
  return [...new Map(shown).set('REMARKS', remarks === undefined ? terms : `${remarks};${terms}`)]
}

/** A passport with how the accession was bred, where the keeper says so. */
function withStatus(passport: Passport, { breeding }: PassportRow): Passport {
  const status = sampstatOf(breeding, passport.get('SAMPSTAT') ?? '')
  return status === '' ? passport : new Map([...passport, ['SAMPSTAT', status]])
}

function madeFromBook(row: PassportRow, kept: Passport): Passport {
  const [genus = '', species = '', ...rest] = row.species.split(' ')
  const former = kept.get('OTHERNUMB')
  const aims = (row.aims ?? '').split(',').filter((aim) => aim in STORAGE) as (keyof typeof STORAGE)[]
  const storage = [...new Set(aims.map((aim) => STORAGE[aim]))].toSorted()
  const made = {
    ACCENUMB: row.number,
    GENUS: genus,
    SPECIES: species,
    SUBTAXA: /^(subsp\.|convar\.|var\.|f\.|Group)/.test(rest[0] ?? '') ? rest.join(' ') : '',
    CROPNAME: row.crop,
    ACCENAME: [row.variety, ...(row.synonyms?.split(';') ?? [])].map(withoutSemicolon).join(';'),
    ACQDATE: row.receivedOn.replaceAll('-', ''),
    DONORNAME: withoutSemicolon(row.donor ?? ''),
    STORAGE: storage.length === 0 ? '10' : storage.join(';'),
    OTHERNUMB: former === undefined || former.includes(':') ? (former ?? '') : `:${withoutSemicolon(former)}`,
    REMARKS: row.story === '' ? '' : `ACCENAME:${withoutSemicolon(row.story.replace(/\s+/g, ' '))}`,
  }
  return new Map(
    Object.entries({ ...made, ...Object.fromEntries(kept), OTHERNUMB: made.OTHERNUMB }).filter(
      ([, text]) => text !== '',
    ),
  )
}

/** There is no way to write a semicolon within a value: it parts values. */
function withoutSemicolon(text: string): string {
  return text.replaceAll(';', ',')
}
