import { type FocusEvent, type ReactNode, useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import { fold } from '../../../db/domain/shared/fold.ts'
import { call } from '../client/call.ts'
import { CheckField, TextField } from './fields.tsx'
import { isNobodyYet, NEW_PERSON_STEPS, type PersonDraft, type PersonStep } from './person-draft.ts'
import { fieldsOf, type StepProblems } from './refusals.ts'
import { SuggestField } from './suggest-field.tsx'
import type { SuggestionSource } from './use-suggestions.ts'

type PersonFound = Value<'person.search'>['people'][number]

/** People by a few letters of their name. */
export const PEOPLE: SuggestionSource<PersonFound> = {
  name: 'people',
  find: async (text) => {
    const { people } = await call('person.search', { text, limit: 8 })
    return people.map((person) => ({
      key: String(person.personId),
      name: person.name,
      detail: person.tellApart,
      item: person,
    }))
  },
}

/** People of the book, and those who are new in the visit itself, so that somebody named once is found again by letters. */
function peopleAnd(newHere: readonly PersonDraft[]): SuggestionSource<Partial<PersonDraft>> {
  return {
    name: ['people of a visit', ...newHere.map(({ text }) => text)].join('\n'),
    find: async (text) => {
      const here = newHere.filter((person) => ` ${fold(person.text)}`.includes(` ${fold(text)}`))
      const known = await PEOPLE.find(text)
      return [
        ...here.map((person) => ({ key: person.text, name: person.text, detail: NEW_HERE, item: person })),
        ...known.map(({ item: { personId, name, tellApart }, ...suggestion }) => ({
          ...suggestion,
          item: { is: 'known', text: name, personId, tellApart } as const,
        })),
      ]
    },
  }
}

const NEW_HERE = 'new, named before on this sheet'
const NOBODY_NEW: readonly PersonDraft[] = []

interface PersonFieldsProps {
  readonly label: string
  /** Said where nobody is to be named, such as 'Nobody knows'; left out where somebody must be. */
  readonly nobody?: string
  readonly nobodyMeans?: string
  readonly person: PersonDraft
  readonly onChange: (change: Partial<PersonDraft>) => void
  readonly problems: StepProblems<PersonStep>
  /** Those who are new in this visit and were named before. */
  readonly newHere?: readonly PersonDraft[]
}

/** Who it is: found by a few letters, made in line, or nobody. */
export function PersonFields(props: PersonFieldsProps) {
  const { label, nobody = '', nobodyMeans = '', person, onChange, problems, newHere = NOBODY_NEW } = props
  const [open, setOpen] = useState(false)
  const asked = open || NEW_PERSON_STEPS.some((step) => problems[step] !== undefined)
  const leave = (event: FocusEvent<HTMLElement>) => {
    const to = event.relatedTarget
    if (to !== null && !event.currentTarget.contains(to)) setOpen(false)
  }
  return (
    <fieldset
      className="person-fields stack-3"
      aria-label={label}
      onFocus={() => setOpen(true)}
      onBlur={leave}
    >
      <SuggestField
        label={label}
        step="person"
        size="table"
        text={person.text}
        chosen={person.is !== 'open'}
        onText={(text) =>
          onChange(person.is === 'new' ? { text } : { text, is: 'open', personId: null, tellApart: '' })
        }
        source={peopleAnd(newHere)}
        onPick={(picked) => {
          setOpen(false)
          onChange(picked)
        }}
        addNew={{
          label: (text) => `${text} is new here`,
          onAdd: (text) => {
            setOpen(true)
            onChange({ is: 'new', text, personId: null, tellApart: '' })
          },
        }}
        standing={
          nobody === ''
            ? []
            : [
                {
                  key: 'nobody',
                  label: nobody,
                  onPick: () => onChange({ is: 'nobody', text: nobody, personId: null, tellApart: '' }),
                },
              ]
        }
        nothingFound={(text) => `Nobody called ${text} is known yet.`}
        placeholder="a few letters of the name"
        problem={problems.person}
        words={
          <PersonWords person={person} nobody={nobody} nobodyMeans={nobodyMeans}>
            {person.is === 'new' && !asked && (
              <button type="button" className="word-button" onClick={() => setOpen(true)}>
                say more about them
              </button>
            )}
          </PersonWords>
        }
        spoken={personInWords(person, nobodyMeans)}
      />
      {person.is === 'new' && asked && <NewPerson person={person} onChange={onChange} problems={problems} />}
    </fieldset>
  )
}

interface PersonWordsProps {
  readonly person: PersonDraft
  readonly nobody: string
  readonly nobodyMeans: string
  readonly children: ReactNode
}

function PersonWords({ person, nobody, nobodyMeans, children }: PersonWordsProps) {
  const offer = nobody === '' ? '' : `Enter alone offers ‘${nobody}’.`
  const words = isNobodyYet(person) ? offer : personInWords(person, nobodyMeans)
  if (words === '') return null
  return (
    <p className="soft">
      {words} {children}
    </p>
  )
}

function personInWords(person: PersonDraft, nobodyMeans: string): string {
  if (person.is === 'known') return person.tellApart
  if (person.is === 'nobody') return nobodyMeans
  if (person.is === 'open') return ''
  const named = person.creditAs === '' ? '' : `named as ${person.creditAs}`
  const told = ['New here', person.town, named, person.mayWrite ? 'we may write' : 'not to be written to']
  return told.filter((part) => part !== '').join(' · ')
}

function NewPerson({
  person,
  onChange,
  problems,
}: Pick<PersonFieldsProps, 'person' | 'onChange' | 'problems'>) {
  const field = fieldsOf(person, onChange, problems)
  return (
    <fieldset className="new-person stack-3">
      <legend className="only-aloud">About {person.text}</legend>
      <TextField label="Town" {...field('town')} />
      <TextField
        label="To be named as"
        {...field('creditAs')}
        hint="On packets, in their own words. Empty: not named."
      />
      <CheckField label="We may write to them" {...field('mayWrite')} checked={person.mayWrite} />
      {person.mayWrite && <TextField label="E-mail" type="email" {...field('email')} />}
    </fieldset>
  )
}
