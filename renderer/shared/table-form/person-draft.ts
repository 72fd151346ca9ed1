import type { CallInput } from '../../../db/contract/contract.ts'

/**
 * The person of a visit while it is being entered. What was typed of a new person stays, whoever is picked meanwhile.
 */
export interface PersonDraft {
  /** The name as typed or picked. */
  readonly text: string
  readonly is: 'open' | 'known' | 'new' | 'nobody'
  readonly personId: number | null
  /** What tells a known person apart from others of the name. */
  readonly tellApart: string
  readonly town: string
  readonly creditAs: string
  readonly mayWrite: boolean
  readonly email: string
}

export const NO_PERSON_YET: PersonDraft = {
  text: '',
  is: 'open',
  personId: null,
  tellApart: '',
  town: '',
  creditAs: '',
  mayWrite: false,
  email: '',
}

type Who = CallInput<'withdrawal.record'>['person']

/** The person as an operation takes it; undefined while nobody was picked. */
export function whoIsIt(person: PersonDraft): Who | undefined {
  if (person.is === 'nobody') return null
  if (person.is === 'known') return person.personId === null ? undefined : { personId: person.personId }
  if (person.is === 'open' || person.text.trim() === '') return undefined
  return {
    newPerson: {
      name: person.text,
      town: person.town,
      creditAs: person.creditAs,
      mayWrite: person.mayWrite,
      // An address is kept only with leave to use it.
      email: person.mayWrite ? person.email : '',
    },
  }
}

/** Whether nothing was said of the person yet. */
export function isNobodyYet(person: PersonDraft): boolean {
  return person.is === 'open' && person.text.trim() === ''
}

/** What is asked of a new person, beside the name. */
export const NEW_PERSON_STEPS = ['town', 'creditAs', 'email'] as const
/** The steps at which a person is asked about. */
export type PersonStep = (typeof NEW_PERSON_STEPS)[number] | 'person'

/** The step of a person that a problem's path names ('donor.newPerson.email'), or null for a path elsewhere. */
export function personStepOf(input: 'donor' | 'person', path: string | null): PersonStep | null {
  if (path !== input && !path?.startsWith(`${input}.`)) return null
  return NEW_PERSON_STEPS.find((step) => path === `${input}.newPerson.${step}`) ?? 'person'
}

/** The person's name, or what is said where it is not known yet. */
export function personNamed({ text }: PersonDraft, unknown: string): string {
  return text.trim() === '' ? unknown : text
}
