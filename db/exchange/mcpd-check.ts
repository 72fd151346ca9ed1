import { isIsoDate } from '../domain/dates/iso-date.ts'
import { type Message, message } from '../messages/message.ts'
import { DESCRIPTORS, type Descriptor } from './mcpd-table.ts'

/** The descriptors of one accession by code; what is not there is not known. */
export type Passport = ReadonlyMap<string, string>

/** What is wrong with a descriptor of one accession. */
export interface PassportFinding {
  readonly code: string
  readonly level: 'error' | 'warning'
  readonly sentence: Message
}

const DATES = new Set(['ACQDATE', 'COLLDATE'])
/** Apply to collected samples only. */
const OF_COLLECTED = ['COLLSITE', 'DECLATITUDE', 'DECLONGITUDE', 'LATITUDE', 'LONGITUDE', 'ELEVATION']
const COLLECTED = ['COLLCODE', 'COLLNAME', 'COLLNUMB', 'COLLDATE', 'COLLMISSID']

/** What was found of several accessions, told once with where it is first. */
export interface GatheredFinding<T> {
  readonly level: PassportFinding['level']
  readonly sentence: Message
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
      const same = JSON.stringify(sentence)
      const kept = gathered.get(same)
      gathered.set(same, { level, sentence, times: (kept?.times ?? 0) + 1, first: kept?.first ?? at })
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
  const add = (level: PassportFinding['level'], code: string, sentence: Message) =>
    findings.push({ code, level, sentence })
  const missing = (code: string) => message('mcpd.missing', { code })
  if (text('ACCENUMB') === '') add('error', 'ACCENUMB', missing('ACCENUMB'))
  if (text('INSTCODE') === '') add('warning', 'INSTCODE', message('mcpd.no-institute', { code: 'INSTCODE' }))
  if (text('GENUS') === '') add('warning', 'GENUS', missing('GENUS'))
  if (/^[A-Z]/.test(text('SPECIES'))) add('warning', 'SPECIES', message('mcpd.capital', { code: 'SPECIES' }))
  if (text('SUBTAXA') !== '' && !/^(subsp\.|convar\.|var\.|f\.|Group)/.test(text('SUBTAXA')))
    add('warning', 'SUBTAXA', message('mcpd.no-rank', { code: 'SUBTAXA' }))
  for (const [one, other] of [
    ['DECLATITUDE', 'DECLONGITUDE'],
    ['LATITUDE', 'LONGITUDE'],
  ] as const)
    if ((text(one) === '') !== (text(other) === ''))
      add('error', one, message('mcpd.one-of-two', { code: one, other }))
  for (const [code, most] of [
    ['DECLATITUDE', 90],
    ['DECLONGITUDE', 180],
  ] as const)
    if (Math.abs(Number(text(code))) > most) add('error', code, message('mcpd.beyond', { code, most }))
  const [collected, acquired] = [text('COLLDATE'), text('ACQDATE')].map((date) =>
    date.replace(/(--|00)+$/, ''),
  )
  if (collected && acquired && collected.slice(0, acquired.length) > acquired.slice(0, collected.length))
    add('warning', 'COLLDATE', message('mcpd.comes-after', { code: 'COLLDATE', other: 'ACQDATE' }))
  if (OF_COLLECTED.some((code) => text(code) !== '') && COLLECTED.every((code) => text(code) === ''))
    add('warning', 'COLLSITE', message('mcpd.not-collected', { code: 'COLLSITE' }))
  return findings
}

function checkOne(descriptor: Descriptor, passport: Passport): PassportFinding[] {
  const { code } = descriptor
  const value = passport.get(code) ?? ''
  if (value === '') return []
  const found: PassportFinding[] = []
  const add = (level: PassportFinding['level'], sentence: Message) => found.push({ code, level, sentence })
  const several = descriptor.cardinality.endsWith('*')
  if (several && /\s;|;\s/.test(value)) add('error', message('mcpd.space', { code }))
  const items = several ? value.split(';').map((item) => item.trim()) : [value]
  const pattern = descriptor.pattern ?? descriptor.item_pattern
  for (const item of items) {
    if (descriptor.codes !== undefined) {
      if (!descriptor.codes.some((known) => known.code === item))
        add('error', message('mcpd.no-code', { code, item }))
      if (/^9?99$/.test(item) && !(passport.get('REMARKS') ?? '').includes(`${code}:`))
        add('warning', message('mcpd.unexplained', { code, item }))
    } else if (pattern !== undefined && !new RegExp(pattern, 'u').test(item))
      add('error', message('mcpd.no-form', { code, item, format: String(descriptor.format) }))
  }
  if (DATES.has(code) && !isDate(value)) add('error', message('mcpd.no-date', { code, item: value }))
  const first = descriptor.only_if_empty
  if (first !== undefined && (passport.get(first) ?? '') !== '')
    add('warning', message('mcpd.given-although', { code, other: first }))
  return found
}

/** A date of which the day, or month and day, may be unknown: 19750600, 1975----. A known day needs a known month. */
function isDate(value: string): boolean {
  const [, year = '', month = '', day = ''] = /^(\d{4})(\d{2}|--)(\d{2}|--)$/.exec(value) ?? []
  const known = (part: string) => part !== '00' && part !== '--'
  if (year === '' || (known(day) && !known(month))) return false
  return isIsoDate(`${year}-${known(month) ? month : '01'}-${known(day) ? day : '01'}`)
}
