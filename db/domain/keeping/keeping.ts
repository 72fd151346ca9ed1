import { type Message, message } from '../../messages/message.ts'
import type { AccessionPolicy, BreedingStatus } from '../shared/closed-sets.ts'

/** How an accession was bred and whether the library keeps it. */
export interface Keeping {
  readonly breeding: BreedingStatus
  readonly policy: AccessionPolicy
}

/** What holds until somebody says otherwise. */
export const NOTHING_SAID: Keeping = { breeding: 'unknown', policy: 'keep' }

/**
 * What is proposed for seed of a breeding status; the keeper decides.
 *
 * A first-generation hybrid is passed on: what is saved from it parts into many kinds, so growing it again does not keep it.
 * That it segregates is Mendel; to pass it on rather than keep it is common practice, no source.
 */
export function usualPolicy(breeding: BreedingStatus): AccessionPolicy {
  return breeding === 'first-generation-hybrid' ? 'pass-on' : 'keep'
}

/** Whether an accession is kept and regrown: what is passed on or closed has no need of its own. */
export function isKept(policy: AccessionPolicy): boolean {
  return policy === 'keep'
}

/** Whether its seed is offered at the table, in the catalogue and for tests: what is closed is history. */
export function isOffered(policy: AccessionPolicy): boolean {
  return policy !== 'closed'
}

const BRED = {
  unknown: 'no',
  'open-pollinated': 'open',
  landrace: 'landrace',
  'breeders-population': 'population',
  'first-generation-hybrid': 'hybrid',
} as const satisfies Readonly<Record<BreedingStatus, string>>

/** The same in the short words by which messages choose. */
export function keepingValues({ breeding, policy }: Keeping) {
  return { bred: BRED[breeding], policy: policy === 'pass-on' ? 'pass' : policy } as const
}

/** What was decided, in a line: 'landrace; kept and regrown'. '' where nothing was said. */
export function keepingTold(keeping: Keeping): Message | '' {
  if (keeping.breeding === 'unknown' && keeping.policy === 'keep') return ''
  return message('keeping.in-a-line', keepingValues(keeping))
}

/**
 * The biological status (SAMPSTAT) that a breeding status comes to; null: it does not say.
 *
 * MCPD V.2.1 (FAO/Bioversity 2015), descriptor 19: 300 traditional cultivar/landrace, 400 breeding/research material, 412
 * hybrid, under breeder's lines (the list was seen; that a bought hybrid is 412 and not 500, improved cultivar, is our
 * reading, as 412 alone says that it does not come true). Open-pollinated seed may be 300 or 500.
 */
const SAMPSTAT_OF: Readonly<Record<BreedingStatus, string | null>> = {
  unknown: null,
  'open-pollinated': null,
  landrace: '300',
  'breeders-population': '400',
  'first-generation-hybrid': '412',
}

/**
 * The SAMPSTAT of an accession: as it came, unless the keeper said what contradicts it.
 *
 * What came and says the same more closely stays: 415, a segregating population, under 400.
 */
export function sampstatOf(breeding: BreedingStatus, came: string): string {
  const said = SAMPSTAT_OF[breeding]
  if (said === null) return came
  return came !== said && came.startsWith(said.replace(/0+$/, '')) ? came : said
}
