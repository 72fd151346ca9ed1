import { useMutation } from '@tanstack/react-query'
import { type ReactNode, useState } from 'react'
import type { ParsedInput, Value } from '../../../db/contract/contract.ts'
import { call } from '../../shared/client/call.ts'
import { bytesOf } from '../../shared/client/file-bytes.ts'
import { saveFile } from '../../shared/client/save-file.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
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
  const { t } = useTexts()
  const savedTable = ({ fileName: file, rows, withheld }: Value<'occurrence.export'>) => [
    t('files.table-saved', { file, rows }),
    ...withheld,
  ]
  return (
    <section className="page-part stack-4" aria-labelledby="going-out">
      <h2 id="going-out">{t('files.out')}</h2>
      <p className="soft">{t('files.people-stay')}</p>
      <CheckField
        label={t('files.with-people')}
        step="people"
        checked={asked.people}
        onChange={(people) => setAsked({ ...asked, people })}
      />
      <CheckField
        label={t('files.with-places')}
        step="places"
        checked={asked.places}
        onChange={(places) => setAsked({ ...asked, places })}
      />
      <ul className="stack-4" key={ticks}>
        <Way
          title={t('files.names')}
          about={t('files.names-about')}
          word={t('files.names-look')}
          make={() => call('person.list-names-in-texts', {})}
          said={({ total: names }) => [
            names === 0 ? t('files.names-none') : t('files.names-found', { names }),
          ]}
        >
          {(found, again) => <NamesGoingOut found={found} onDecided={again} />}
        </Way>
        <Way
          title={t('files.package')}
          about={t('files.package-about')}
          word={t('files.package-save')}
          make={() => call('package.export', asked)}
          save={({ fileName, content }) => saveFile(fileName, 'application/zip', bytesOf(content))}
          said={({ fileName: file, rows, tables, withheld }) => [
            t('files.package-saved', { file, rows, tables }),
            ...withheld,
          ]}
        />
        <Passports asked={asked} />
        <Way
          title={t('files.public')}
          about={t('files.public-about')}
          word={t('files.public-save')}
          make={() => call('catalogue.export', {})}
          save={({ fileName, html }) => saveFile(fileName, 'text/html', html)}
          said={({ fileName: file, listed }) => [t('files.public-saved', { file, listed })]}
        />
        <Way
          title={t('files.darwin-core')}
          about={t('files.darwin-core-about')}
          word={t('files.darwin-core-save')}
          make={() => call('occurrence.export', asked)}
          save={saveTable}
          said={savedTable}
        />
        <Way
          title={t('files.lots')}
          about={t('files.lots-about')}
          word={t('files.lots-save')}
          make={() => call('stock.export', { people: asked.people })}
          save={saveTable}
          said={savedTable}
        />
      </ul>
    </section>
  )
}

function Passports({ asked }: { readonly asked: Asked }) {
  const { t } = useTexts()
  return (
    <Way
      title={t('files.passports')}
      about={t('files.passports-about')}
      make={() => call('passport.export', asked)}
      word={t('files.passports-look')}
      said={({ rows, found, withheld }) => [t('files.passports-found', { rows, found }), ...withheld]}
    >
      {(made) => (
        <>
          <PassportFindings
            findings={made.findings}
            where={({ times, first }) => (times === 1 ? first : t('files.passports-where', { times, first }))}
          />
          {made.found > made.findings.length && (
            <p className="soft">{t('files.more', { more: made.found - made.findings.length })}</p>
          )}
          <button type="button" className="button" onClick={() => saveTable(made)}>
            {t('files.passports-save')}
          </button>
        </>
      )}
    </Way>
  )
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
  /** What is said of it, sentence by sentence. */
  readonly said: (made: T) => readonly string[]
  /** What is to be looked at of what was made, with the way to make it again. */
  readonly children?: (made: T, again: () => void) => ReactNode
}

/** One way out: what it is, the button that makes it, and what was made. */
function Way<T>({ title, about, word, make, save, said, children }: WayProps<T>) {
  const { t } = useTexts()
  const making = useMutation({ mutationFn: make, onSuccess: (made) => save?.(made) })
  const made = making.data
  return (
    <li className="stack-2">
      <h3>{title}</h3>
      <p className="soft">{about}</p>
      <ActionButton className="quiet-button" off={making.isPending} onClick={() => making.mutate()}>
        {making.isPending ? t('files.writing') : word}
      </ActionButton>
      {making.error !== null && <ProblemText problem={making.error.problem} />}
      <div role="status">{made !== undefined && <p>{said(made).join(' ')}</p>}</div>
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
  const { t } = useTexts()
  const write = useWrite('settings.change')
  const decide = (name: string, masked: boolean) => {
    const others = found.names.filter((one) => one.masked && one.name !== name).map((one) => one.name)
    const maskedNames = masked ? [...others, name] : others
    write.mutate({ settings: { maskedNames } }, { onSuccess: onDecided })
  }
  return (
    <>
      {write.error !== null && <ProblemText problem={write.error.problem} />}
      <ul className="stack-2" aria-label={t('files.names')}>
        {found.names.map(({ name, masked, total, places }) => (
          <li key={name}>
            <CheckField
              label={t('files.names-mask', { name: capital(name) })}
              checked={masked}
              onChange={(on) => decide(name, on)}
            />
            <details>
              <summary>
                {t('files.names-places', { texts: total })}
                <span className="only-aloud">: {capital(name)}</span>
              </summary>
              {places.map(({ where, text }) => (
                <p key={`${where} ${text}`}>
                  {capital(where)}: <q>{text}</q>
                </p>
              ))}
              {total > places.length && <p>{t('files.more', { more: total - places.length })}</p>}
            </details>
          </li>
        ))}
      </ul>
    </>
  )
}
