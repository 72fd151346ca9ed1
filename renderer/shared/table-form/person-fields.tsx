import { type FocusEvent, type ReactNode, useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import { fold } from '../../../db/domain/shared/fold.ts'
import { type Message, message } from '../../../db/messages/message.ts'
import { call } from '../client/call.ts'
import { useTexts } from '../format/use-texts.ts'
import { CheckField, TextField } from './fields.tsx'
import { isNobodyYet, NEW_PERSON_STEPS, type PersonDraft, type PersonStep } from './person-draft.ts'
import { fieldsOf, type StepProblems } from './refusals.ts'
import { saidBy } from './said.ts'
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
    name: ['people-of-a-visit', ...newHere.map(({ text }) => text)].join('\n'),
    find: async (text) => {
      const here = newHere.filter((person) => ` ${fold(person.text)}`.includes(` ${fold(text)}`))
      const known = await PEOPLE.find(text)
      return [
        ...here.map((person) => ({
          key: person.text,
          name: person.text,
          detail: <NewOnSheet />,
          item: person,
        })),
        ...known.map(({ item: { personId, name, tellApart }, ...suggestion }) => ({
          ...suggestion,
          item: { is: 'known', text: name, personId, tellApart } as const,
        })),
      ]
    },
  }
}

function NewOnSheet() {
  return useTexts().t('table.new-on-sheet')
}

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
  const { t, say } = useTexts()
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
          label: (name) => t('table.is-new', { name }),
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
        nothingFound={(name) => message('table.nobody-found', { name })}
        placeholder={t('table.person-like')}
        problem={problems.person}
        words={
          <PersonWords person={person} nobody={nobody} nobodyMeans={nobodyMeans}>
            {person.is === 'new' && !asked && (
              <button type="button" className="word-button" onClick={() => setOpen(true)}>
                {t('table.say-more')}
              </button>
            )}
          </PersonWords>
        }
        spoken={personInWords(person, nobodyMeans)
          .map((part) => saidBy({ say }, part))
          .join(' · ')}
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
  const texts = useTexts()
  const offer = nobody === '' ? [] : [message('table.enter-offers', { choice: nobody })]
  const words = isNobodyYet(person) ? offer : personInWords(person, nobodyMeans)
  if (words.length === 0) return null
  return (
    <p className="soft">
      {words.map((part) => saidBy(texts, part)).join(' · ')} {children}
    </p>
  )
}

/** What is known of a person, part by part. */
function personInWords(person: PersonDraft, nobodyMeans: string): (Message | string)[] {
  const told = {
    known: [person.tellApart],
    nobody: [nobodyMeans],
    open: [],
    new: [
      message('table.new-here'),
      person.town,
      person.creditAs === '' ? '' : message('table.named-as', { name: person.creditAs }),
      message(person.mayWrite ? 'table.may-write' : 'table.not-to-write'),
    ],
  }[person.is]
  return told.filter((part) => part !== '')
}

function NewPerson({
  person,
  onChange,
  problems,
}: Pick<PersonFieldsProps, 'person' | 'onChange' | 'problems'>) {
  const field = fieldsOf(person, onChange, problems)
  const { t } = useTexts()
  return (
    <fieldset className="new-person stack-3">
      <legend className="only-aloud">{t('table.about-person', { name: person.text })}</legend>
      <TextField label={t('table.town')} {...field('town')} />
      <TextField
        label={t('table.name-on-packets')}
        {...field('creditAs')}
        hint={t('table.name-on-packets-hint')}
      />
      <CheckField label={t('table.we-may-write')} {...field('mayWrite')} checked={person.mayWrite} />
      {person.mayWrite && <TextField label={t('table.e-mail')} type="email" {...field('email')} />}
    </fieldset>
  )
}
