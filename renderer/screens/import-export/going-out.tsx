import { useMutation } from '@tanstack/react-query'
import { type ReactNode, useState } from 'react'
import type { ParsedInput, Value } from '../../../db/contract/contract.ts'
import { call } from '../../shared/client/call.ts'
import { bytesOf } from '../../shared/client/file-bytes.ts'
import { saveFile } from '../../shared/client/save-file.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { capital } from '../../shared/format/words.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { PassportFindings } from '../../shared/parts/passport-findings.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { CheckField } from '../../shared/table-form/fields.tsx'

type Asked = ParsedInput<'passport.export'>

/** Files for others: the whole book, and lists in the forms that others read. */
export function GoingOut() {
  const [asked, setAsked] = useState<Asked>({ people: false, places: false })
  // What was made with other ticks is not what would be saved now.
  const ticks = `${asked.people} ${asked.places}`
  const format = useFormat()
  const savedTable = ({ fileName, rows, withheld }: Value<'occurrence.export'>) =>
    [`Saved ${fileName}: ${format.many(rows, 'row')}.`, ...withheld].join(' ')
  return (
    <section className="page-part stack-4" aria-labelledby="going-out">
      <h2 id="going-out">Going out</h2>
      <p className="soft">
        People and exact places stay here unless you tick them. Ask people before their names leave the house.
      </p>
      <CheckField
        label="with names and contacts of people"
        step="people"
        checked={asked.people}
        onChange={(people) => setAsked({ ...asked, people })}
      />
      <CheckField
        label="with exact places of growing"
        step="places"
        checked={asked.places}
        onChange={(places) => setAsked({ ...asked, places })}
      />
      <ul className="stack-4" key={ticks}>
        <Way
          title="Names in texts"
          about="Whole names of people in the book are left out of texts by themselves. A first name or surname alone may be a variety’s as well: look where each stands, and tick what is to go. Names of varieties stay."
          word="Look for names"
          make={() => call('person.list-names-in-texts', {})}
          said={({ total }) =>
            total === 0
              ? 'No first name or surname of the book stands alone in a text.'
              : `${format.many(total, 'name')} to look at before anything leaves the house.`
          }
        >
          {(found, again) => <NamesGoingOut found={found} onDecided={again} />}
        </Way>
        <Way
          title="The whole collection"
          about="A data package (Frictionless Data): every table as CSV, with what each column means and its unit. An empty collection reads it back to the same one if people and places are in it."
          word="Save the whole collection"
          make={() => call('package.export', asked)}
          save={({ fileName, content }) => saveFile(fileName, 'application/zip', bytesOf(content))}
          said={({ fileName, rows, tables, withheld }) =>
            [
              `Saved ${fileName}: ${format.many(rows, 'row')} in ${format.many(tables, 'table')}.`,
              ...withheld,
            ].join(' ')
          }
        />
        <Passports asked={asked} />
        <Way
          title="A list for everybody"
          about="What seed can be had now, as one web page that stands by itself. Nobody is named, but donors as they wish to be named; no tick above changes that."
          word="Save the public list"
          make={() => call('catalogue.export', {})}
          save={({ fileName, html }) => saveFile(fileName, 'text/html', html)}
          said={({ fileName, listed }) => `Saved ${fileName}: ${format.number(listed)} on the list.`}
        />
        <Way
          title="Darwin Core"
          about="A row for each accession, in the terms of the standard for records of living things."
          word="Save as Darwin Core"
          make={() => call('occurrence.export', asked)}
          save={saveTable}
          said={savedTable}
        />
        <Way
          title="Every lot"
          about="An exact CSV file for programs, with seeds, living seeds and where each lot lies. For a spreadsheet, tick lots on the shelf instead: there nothing in a cell can be taken for a formula."
          word="Save every lot"
          make={() => call('stock.export', { people: asked.people })}
          save={saveTable}
          said={savedTable}
        />
      </ul>
    </section>
  )
}

function Passports({ asked }: { readonly asked: Asked }) {
  const format = useFormat()
  return (
    <Way
      title="Passports of accessions"
      about="Multi-Crop Passport Descriptors (MCPD V.2.1), as gene banks exchange them. Look first at what does not fit; nothing is saved by that."
      make={() => call('passport.export', asked)}
      word="Look at the passports"
      said={({ rows, found, withheld }) =>
        [`${format.many(rows, 'accession')};`, inWords(found, format.number), ...withheld].join(' ')
      }
    >
      {(made) => (
        <>
          <PassportFindings
            findings={made.findings}
            where={({ times, first }) =>
              times === 1 ? first : `${format.number(times)} accessions, the first is ${first}`
            }
          />
          {made.found > made.findings.length && (
            <p className="soft">and {format.number(made.found - made.findings.length)} more.</p>
          )}
          <button type="button" className="button" onClick={() => saveTable(made)}>
            Save the passports
          </button>
        </>
      )}
    </Way>
  )
}

function inWords(found: number, number: (value: number) => string): string {
  if (found === 0) return 'every descriptor fits.'
  return found === 1 ? 'one thing to look at.' : `${number(found)} things to look at.`
}

function saveTable({ fileName, csv }: { readonly fileName: string; readonly csv: string }): void {
  saveFile(fileName, 'text/csv', csv)
}

interface WayProps<T> {
  readonly title: string
  readonly about: string
  readonly word: string
  readonly make: () => Promise<T>
  readonly save?: (made: T) => void
  readonly said: (made: T) => string
  /** What is to be looked at of what was made, with the way to make it again. */
  readonly children?: (made: T, again: () => void) => ReactNode
}

/** One way out: what it is, the button that makes it, and what was made. */
function Way<T>({ title, about, word, make, save, said, children }: WayProps<T>) {
  const making = useMutation({ mutationFn: make, onSuccess: (made) => save?.(made) })
  const made = making.data
  return (
    <li className="stack-2">
      <h3>{title}</h3>
      <p className="soft">{about}</p>
      <ActionButton className="quiet-button" off={making.isPending} onClick={() => making.mutate()}>
        {making.isPending ? 'Writing it…' : word}
      </ActionButton>
      {making.error !== null && <ProblemText problem={making.error.problem} />}
      <div role="status">{made !== undefined && <p>{said(made)}</p>}</div>
      {made !== undefined && children?.(made, () => making.mutate())}
    </li>
  )
}

interface NamesGoingOutProps {
  readonly found: Value<'person.list-names-in-texts'>
  /** Looks again after something was decided. */
  readonly onDecided: () => void
}

/** First names and surnames that stand by themselves in texts, each with where and whether it is left out. */
function NamesGoingOut({ found, onDecided }: NamesGoingOutProps) {
  const format = useFormat()
  const write = useWrite('settings.change')
  const decide = (name: string, masked: boolean) => {
    const others = found.names.filter((one) => one.masked && one.name !== name).map((one) => one.name)
    const maskedNames = masked ? [...others, name] : others
    write.mutate({ settings: { maskedNames } }, { onSuccess: onDecided })
  }
  return (
    <>
      {write.error !== null && <ProblemText problem={write.error.problem} />}
      <ul className="stack-2" aria-label="Names in texts">
        {found.names.map(({ name, masked, total, places }) => (
          <li key={name}>
            <CheckField
              label={`say somebody for ${capital(name)}`}
              checked={masked}
              onChange={(on) => decide(name, on)}
            />
            <details>
              <summary>
                in {format.many(total, 'text')}
                <span className="only-aloud">: {capital(name)}</span>
              </summary>
              {places.map(({ where, text }) => (
                <p key={`${where} ${text}`}>
                  {capital(where)}: <q>{text}</q>
                </p>
              ))}
              {total > places.length && <p>and {format.number(total - places.length)} more.</p>}
            </details>
          </li>
        ))}
      </ul>
    </>
  )
}
