import { useMutation } from '@tanstack/react-query'
import { type ReactNode, type RefObject, useEffect, useRef, useState } from 'react'
import { Link } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import { message } from '../../../db/messages/message.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { call } from '../../shared/client/call.ts'
import type { ProblemError } from '../../shared/client/problem-error.ts'
import { saveFile } from '../../shared/client/save-file.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { FileField } from '../../shared/parts/file-field.tsx'
import { PassportFindings } from '../../shared/parts/passport-findings.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { CheckField } from '../../shared/table-form/fields.tsx'
import { FileWays, ListColumns } from './file-ways.tsx'
import { ListFates, ListQuestions } from './list-questions.tsx'
import { inputOf, type ReadList, useList } from './use-list.ts'
import './spreadsheet-import.css'

/** Takes somebody's list in: how it is understood is shown first, and nothing is written until the keeper says so. */
export function SpreadsheetImportScreen() {
  const { t } = useTexts()
  const { list, seen, pick, choose, answer, discard } = useList()
  const [leaveOut, setLeaveOut] = useState(false)
  const takeIn = useWrite('import.record')
  const file = useRef<HTMLInputElement>(null)
  useEffect(() => file.current?.focus(), [])
  const read = seen.data?.kind === 'read' ? seen.data : null
  if (takeIn.data !== undefined)
    return (
      <ListTakenIn
        taken={takeIn.data}
        onNext={() => {
          discard()
          setLeaveOut(false)
          takeIn.reset()
        }}
      />
    )
  return (
    <div className="page from-list stack-5">
      <div className="head-row">
        <h1>{t('list.title')}</h1>
        <Link href="/take-in">{t('list.back')}</Link>
      </div>
      <FileField
        ref={file}
        label={t('list.file')}
        accept=".xlsx,.csv,.txt,.tsv,text/csv,text/plain"
        onPick={(picked) => {
          takeIn.reset()
          setLeaveOut(false)
          void pick(picked)
        }}
      />
      <div role="status">
        {list !== null && seen.isFetching && (
          <p className="soft">{t('list.looking', { file: list.fileName })}</p>
        )}
        {takeIn.isPending && <p>{t('list.taking', { gifts: read?.counts.new ?? 0 })}</p>}
        {seen.data?.kind === 'unreadable' && <p className="caution">{seen.data.because}</p>}
      </div>
      {seen.error !== null && <ProblemText problem={seen.error.problem} />}
      {list !== null && read !== null && (
        <>
          <FileWays read={read} onChoose={choose} />
          <ListColumns read={read} onChoose={(columns) => choose({ columns })} />
          {read.findings.length > 0 && (
            <section aria-labelledby="list-findings">
              <h2 id="list-findings">{t('list.findings')}</h2>
              <p className="soft">{t('list.findings-about')}</p>
              <PassportFindings
                findings={read.findings}
                where={({ times, first }) =>
                  times === 1
                    ? t('list.row', { row: String(first) })
                    : t('list.rows-from', { rows: times, first: String(first) })
                }
              />
            </section>
          )}
          <ListQuestions read={read} onAnswer={answer} />
          <ListFates read={read} />
          <ListEnd
            read={read}
            leaveOut={leaveOut}
            onLeaveOut={setLeaveOut}
            busy={takeIn.isPending || seen.isFetching}
            error={takeIn.error}
            onSave={() => call('import.list-refused', inputOf(list))}
            onSend={() => takeIn.mutate({ ...inputOf(list), leaveOut })}
          />
        </>
      )}
    </div>
  )
}

interface ListEndProps {
  readonly read: ReadList
  readonly leaveOut: boolean
  readonly onLeaveOut: (leaveOut: boolean) => void
  readonly busy: boolean
  readonly error: ProblemError | null
  readonly onSave: () => Promise<Value<'import.list-refused'>>
  readonly onSend: () => void
}

function ListEnd({ read, leaveOut, onLeaveOut, busy, error, onSave, onSend }: ListEndProps) {
  const { t } = useTexts()
  const { counts } = read
  const save = useMutation({
    mutationFn: onSave,
    onSuccess: ({ fileName, csv }) => saveFile(fileName, 'text/csv', csv),
  })
  const left = counts.refused + counts.there + counts['left-out'] + counts.doubtful
  const ready = counts.new > 0 && counts.doubtful === 0 && (counts.refused === 0 || leaveOut)
  const failed = error ?? save.error
  return (
    <section aria-label={t('list.take-in')}>
      {counts.refused > 0 && (
        <CheckField
          label={t('list.leave-out', { rows: counts.refused })}
          step="leave-out"
          checked={leaveOut}
          onChange={onLeaveOut}
        />
      )}
      {failed !== null && <ProblemText problem={failed.problem} />}
      <p className="buttons">
        <ActionButton className="button" off={busy || !ready} onClick={onSend}>
          {t('list.send', { gifts: counts.new })}
        </ActionButton>
        {left > 0 && (
          <ActionButton className="quiet-button" off={save.isPending} onClick={() => save.mutate()}>
            {t('list.save-others')}
          </ActionButton>
        )}
      </p>
    </section>
  )
}

function ListTakenIn({
  taken,
  onNext,
}: {
  readonly taken: Value<'import.record'>
  readonly onNext: () => void
}) {
  const { t, pieces } = useTexts()
  const { taken: gifts, firstNumber: first, lastNumber: last } = taken
  const heading: RefObject<HTMLHeadingElement | null> = useRef(null)
  useEffect(() => heading.current?.focus(), [])
  return (
    <div className="page from-list stack-5">
      <h1 ref={heading} tabIndex={-1}>
        {t('list.came-in', { gifts })}
      </h1>
      <p>
        {t('list.numbers', { gifts, first, last })}{' '}
        {pieces<ReactNode>(message('list.undo'), {
          link: (children) => (
            <Link key="link" href="/written">
              {children}
            </Link>
          ),
        })}
      </p>
      <p>{t('list.labels')}</p>
      <p className="buttons">
        <Link href={lotAddress(taken.firstLotId)}>{t('list.look-first')}</Link>
        <button type="button" className="quiet-button" onClick={onNext}>
          {t('list.another')}
        </button>
      </p>
    </div>
  )
}
