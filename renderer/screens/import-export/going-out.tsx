import { type ReactNode, useState } from 'react'
import type { ParsedInput, Value } from '../../../db/contract/contract.ts'
import { call } from '../../shared/client/call.ts'
import { bytesOf } from '../../shared/client/file-bytes.ts'
import { saveFile } from '../../shared/client/save-file.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { PassportFindings } from '../../shared/parts/passport-findings.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { CheckField } from '../../shared/table-form/check-field.tsx'
import { NamesGoingOut } from './names-going-out.tsx'
import { useMaking } from './use-making.ts'

type Asked = ParsedInput<'passport.export'>

/** Files for others: the whole book, and lists in the forms that others read. */
export function GoingOut() {
  const [asked, setAsked] = useState<Asked>({ people: false, places: false })
  // What was made with other ticks is not what would be saved now.
  const ticks = `${asked.people} ${asked.places}`
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
        <NamesInTexts />
        <WholeCollection asked={asked} />
        <Passports asked={asked} />
        <PublicList />
        <Table
          title="Darwin Core"
          about="A row for each accession, in the terms of the standard for records of living things."
          word="Save as Darwin Core"
          make={() => call('occurrence.export', asked)}
        />
        <Table
          title="Every lot"
          about="An exact CSV file for programs, with seeds, living seeds and where each lot lies. For a spreadsheet, tick lots on the shelf instead: there nothing in a cell can be taken for a formula."
          word="Save every lot"
          make={() => call('stock.export', { people: asked.people })}
        />
      </ul>
    </section>
  )
}

function NamesInTexts() {
  const format = useFormat()
  const making = useMaking(() => call('person.list-names-in-texts', {}))
  return (
    <Way
      title="Names in texts"
      about="Whole names of people in the book are left out of texts by themselves. A first name or surname alone may be a variety’s as well: look where each stands, and tick what is to go. Names of varieties stay."
      making={making}
      word="Look for names"
      said={({ total }) =>
        total === 0
          ? 'No first name or surname of the book stands alone in a text.'
          : `${format.many(total, 'name')} to look at before anything leaves the house.`
      }
    >
      {making.data !== undefined && <NamesGoingOut found={making.data} onDecided={() => making.mutate()} />}
    </Way>
  )
}

function WholeCollection({ asked }: { readonly asked: Asked }) {
  const format = useFormat()
  const making = useMaking(
    () => call('package.export', asked),
    ({ fileName, content }) => saveFile(fileName, 'application/zip', bytesOf(content)),
  )
  return (
    <Way
      title="The whole collection"
      about="A data package (Frictionless Data): every table as CSV, with what each column means and its unit. An empty collection reads it back to the same one if people and places are in it."
      making={making}
      word="Save the whole collection"
      said={(made) =>
        [
          `Saved ${made.fileName}: ${format.many(made.rows, 'row')} in ${format.many(made.tables, 'table')}.`,
          ...made.withheld,
        ].join(' ')
      }
    />
  )
}

function PublicList() {
  const format = useFormat()
  const making = useMaking(
    () => call('catalogue.export', {}),
    ({ fileName, html }) => saveFile(fileName, 'text/html', html),
  )
  return (
    <Way
      title="A list for everybody"
      about="What seed can be had now, as one web page that stands by itself. Nobody is named, but donors as they wish to be named; no tick above changes that."
      making={making}
      word="Save the public list"
      said={({ fileName, listed }) => `Saved ${fileName}: ${format.number(listed)} on the list.`}
    />
  )
}

function Passports({ asked }: { readonly asked: Asked }) {
  const format = useFormat()
  const making = useMaking(() => call('passport.export', asked))
  const made = making.data
  return (
    <Way
      title="Passports of accessions"
      about="Multi-Crop Passport Descriptors (MCPD V.2.1), as gene banks exchange them. Look first at what does not fit; nothing is saved by that."
      making={making}
      word="Look at the passports"
      said={({ rows, found, withheld }) =>
        [`${format.many(rows, 'accession')};`, inWords(found, format.number), ...withheld].join(' ')
      }
    >
      {made !== undefined && (
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
          <button
            type="button"
            className="button"
            onClick={() => saveFile(made.fileName, 'text/csv', made.csv)}
          >
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

interface TableProps {
  readonly title: string
  readonly about: string
  readonly word: string
  readonly make: () => Promise<Value<'occurrence.export'>>
}

function Table({ title, about, word, make }: TableProps) {
  const format = useFormat()
  const making = useMaking(make, ({ fileName, csv }) => saveFile(fileName, 'text/csv', csv))
  return (
    <Way
      title={title}
      about={about}
      making={making}
      word={word}
      said={({ fileName, rows, withheld }) =>
        [`Saved ${fileName}: ${format.many(rows, 'row')}.`, ...withheld].join(' ')
      }
    />
  )
}

interface WayProps<T> {
  readonly title: string
  readonly about: string
  readonly making: ReturnType<typeof useMaking<T>>
  readonly word: string
  readonly said: (made: T) => string
  readonly children?: ReactNode
}

function Way<T>({ title, about, making, word, said, children }: WayProps<T>) {
  return (
    <li className="stack-2">
      <h3>{title}</h3>
      <p className="soft">{about}</p>
      <ActionButton className="quiet-button" off={making.isPending} onClick={() => making.mutate()}>
        {making.isPending ? 'Writing it…' : word}
      </ActionButton>
      {making.error !== null && <ProblemText problem={making.error.problem} />}
      <div role="status">{making.data !== undefined && <p>{said(making.data)}</p>}</div>
      {children}
    </li>
  )
}
