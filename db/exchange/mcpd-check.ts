import { isIsoDate } from '../domain/dates/iso-date.ts'
import { DESCRIPTORS, type Descriptor } from './mcpd-table.ts'

/** The descriptors of one accession by code; what is not there is not known. */
export type Passport = ReadonlyMap<string, string>

/** What is wrong with a descriptor of one accession. */
export interface PassportFinding {
  readonly code: string
  readonly level: 'error' | 'warning'
  readonly sentence: string
}

const DATES = new Set(['ACQDATE', 'COLLDATE'])
/** Apply to collected samples only. */
const OF_COLLECTED = ['COLLSITE', 'DECLATITUDE', 'DECLONGITUDE', 'LATITUDE', 'LONGITUDE', 'ELEVATION']
const COLLECTED = ['COLLCODE', 'COLLNAME', 'COLLNUMB', 'COLLDATE', 'COLLMISSID']

/** What was found of several accessions, told once with where it is first. */
export interface GatheredFinding<T> {
  readonly level: PassportFinding['level']
  readonly sentence: string
  readonly times: number
  readonly first: T
}

/** Findings that say the same of several accessions told once, errors first. */
export function gatherFindings<T>(
  all: readonly { readonly at: T; readonly findings: readonly PassportFinding[] }[],
): GatheredFinding<T>[] {
  const gathered = new Map<string, GatheredFinding<T>>()
  for (const { at, findings } of all) {
    for (const { level, sentence } of findings) {
      const kept = gathered.get(sentence)
      gathered.set(sentence, { level, sentence, times: (kept?.times ?? 0) + 1, first: kept?.first ?? at })
    }
  }
  const told = [...gathered.values()]
  return [
    ...told.filter(({ level }) => level === 'error'),
    ...told.filter(({ level }) => level === 'warning'),
  ]
}

/** Holds every descriptor of an accession against the list of V.2.1: its form, its codes, and what it says beside others. */
export function checkPassport(passport: Passport): PassportFinding[] {
  const findings = DESCRIPTORS.flatMap((descriptor) => checkOne(descriptor, passport))
  const text = (code: string) => passport.get(code) ?? ''
  const add = (level: PassportFinding['level'], code: string, sentence: string) =>
    findings.push({ code, level, sentence: `${code} ${sentence}` })
  if (text('ACCENUMB') === '') add('error', 'ACCENUMB', 'is missing')
  if (text('INSTCODE') === '')
    add('warning', 'INSTCODE', 'is missing: an institute gets its code from its country’s focal point')
  if (text('GENUS') === '') add('warning', 'GENUS', 'is missing')
  if (/^[A-Z]/.test(text('SPECIES'))) add('warning', 'SPECIES', 'begins with a capital')
  if (text('SUBTAXA') !== '' && !/^(subsp\.|convar\.|var\.|f\.|Group)/.test(text('SUBTAXA')))
    add('warning', 'SUBTAXA', 'does not begin with a rank such as subsp. or var.')
  for (const [one, other] of [
    ['DECLATITUDE', 'DECLONGITUDE'],
    ['LATITUDE', 'LONGITUDE'],
  ] as const)
    if ((text(one) === '') !== (text(other) === ''))
      add('error', one, `and ${other} belong together, and one is missing`)
  for (const [code, most] of [
    ['DECLATITUDE', 90],
    ['DECLONGITUDE', 180],
  ] as const)
    if (Math.abs(Number(text(code))) > most) add('error', code, `is beyond ${most} degrees`)
  const [collected, acquired] = [text('COLLDATE'), text('ACQDATE')].map((date) =>
    date.replace(/(--|00)+$/, ''),
  )
  if (collected && acquired && collected.slice(0, acquired.length) > acquired.slice(0, collected.length))
    add('warning', 'COLLDATE', 'comes after ACQDATE')
  if (OF_COLLECTED.some((code) => text(code) !== '') && COLLECTED.every((code) => text(code) === ''))
    add(
      'warning',
      'COLLSITE',
      'and coordinates are for collected samples, and nothing says that this one was collected',
    )
  return findings
}

function checkOne(descriptor: Descriptor, passport: Passport): PassportFinding[] {
  const { code } = descriptor
  const value = passport.get(code) ?? ''
  if (value === '') return []
  const found: PassportFinding[] = []
  const add = (level: PassportFinding['level'], sentence: string) =>
    found.push({ code, level, sentence: `${code} ${sentence}` })
  const several = descriptor.cardinality.endsWith('*')
  if (several && /\s;|;\s/.test(value)) add('error', 'has a space beside a semicolon')
  const items = several ? value.split(';').map((item) => item.trim()) : [value]
  const pattern = descriptor.pattern ?? descriptor.item_pattern
  for (const item of items) {
    if (descriptor.codes !== undefined) {
      if (!descriptor.codes.some((known) => known.code === item))
        add('error', `${item} is not in its list of codes`)
      if (/^9?99$/.test(item) && !(passport.get('REMARKS') ?? '').includes(`${code}:`))
        add('warning', `${item} means other, and REMARKS does not explain it by ${code}:`)
    } else if (pattern !== undefined && !new RegExp(pattern, 'u').test(item))
      add('error', `‘${item}’ is not of the form: ${descriptor.format}`)
  }
  if (DATES.has(code) && !isDate(value)) add('error', `${value} is no date`)
  const first = descriptor.only_if_empty
  if (first !== undefined && (passport.get(first) ?? '') !== '')
    add('warning', `is given although ${first} is`)
  return found
}

/** A date of which the day, or month and day, may be unknown: 19750600, 1975----. A known day needs a known month. */
function isDate(value: string): boolean {
  const [, year = '', month = '', day = ''] = /^(\d{4})(\d{2}|--)(\d{2}|--)$/.exec(value) ?? []
  const known = (part: string) => part !== '00' && part !== '--'
  if (year === '' || (known(day) && !known(month))) return false
  return isIsoDate(`${year}-${known(month) ? month : '01'}-${known(day) ? day : '01'}`)
}
