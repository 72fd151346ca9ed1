import { useMutation } from '@tanstack/react-query'
import { type RefObject, useEffect, useRef, useState } from 'react'
import { Link } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { call } from '../../shared/client/call.ts'
import type { ProblemError } from '../../shared/client/problem-error.ts'
import { saveFile } from '../../shared/client/save-file.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useFormat } from '../../shared/format/use-format.ts'
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
  const format = useFormat()
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
        <h1>From a list</h1>
        <Link href="/take-in">Back to Take in</Link>
      </div>
      <FileField
        ref={file}
        label="The list: a workbook (.xlsx) or a CSV file, one gift in each row"
        accept=".xlsx,.csv,.txt,.tsv,text/csv,text/plain"
        onPick={(picked) => {
          takeIn.reset()
          setLeaveOut(false)
          void pick(picked)
        }}
      />
      <div role="status">
        {list !== null && seen.isFetching && <p className="soft">Looking at {list.fileName}…</p>}
        {takeIn.isPending && <p>Taking {read?.counts.new} gifts in. Thousands take some seconds.</p>}
        {seen.data?.kind === 'unreadable' && <p className="caution">{seen.data.because}</p>}
      </div>
      {seen.error !== null && <ProblemText problem={seen.error.problem} />}
      {list !== null && read !== null && (
        <>
          <FileWays read={read} onChoose={choose} />
          <ListColumns read={read} onChoose={(columns) => choose({ columns })} />
          {read.findings.length > 0 && (
            <section aria-labelledby="list-findings">
              <h2 id="list-findings">What does not fit the descriptors</h2>
              <p className="soft">
                It comes in as it stands, is kept, and goes out again unchanged. Put it right in the file if
                it is yours.
              </p>
              <PassportFindings
                findings={read.findings}
                where={({ times, first }) =>
                  times === 1 ? `row ${first}` : `${format.number(times)} rows, the first is ${first}`
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
  const format = useFormat()
  const { counts } = read
  const save = useMutation({
    mutationFn: onSave,
    onSuccess: ({ fileName, csv }) => saveFile(fileName, 'text/csv', csv),
  })
  const left = counts.refused + counts.there + counts['left-out'] + counts.doubtful
  const ready = counts.new > 0 && counts.doubtful === 0 && (counts.refused === 0 || leaveOut)
  const failed = error ?? save.error
  return (
    <section aria-label="Take it in">
      {counts.refused > 0 && (
        <CheckField
          label={`leave out the ${format.number(counts.refused)} ${counts.refused === 1 ? 'row' : 'rows'} that cannot come in`}
          step="leave-out"
          checked={leaveOut}
          onChange={onLeaveOut}
        />
      )}
      {failed !== null && <ProblemText problem={failed.problem} />}
      <p className="buttons">
        <ActionButton className="button" off={busy || !ready} onClick={onSend}>
          Take {format.number(counts.new)} {counts.new === 1 ? 'gift' : 'gifts'} in
        </ActionButton>
        {left > 0 && (
          <ActionButton className="quiet-button" off={save.isPending} onClick={() => save.mutate()}>
            Save the other rows as a file, with why
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
  const format = useFormat()
  const heading: RefObject<HTMLHeadingElement | null> = useRef(null)
  useEffect(() => heading.current?.focus(), [])
  return (
    <div className="page from-list stack-5">
      <h1 ref={heading} tabIndex={-1}>
        {taken.taken === 1 ? 'One gift came in' : `${format.number(taken.taken)} gifts came in`}
      </h1>
      <p>
        {taken.taken === 1
          ? `Its number is ${taken.firstNumber}.`
          : `Numbers ${taken.firstNumber} to ${taken.lastNumber}.`}{' '}
        It can be taken back as one under <Link href="/written">What was written</Link>.
      </p>
      <p>
        Labels are printed from the shelf: narrow it to one place, tick all, and put their labels into the
        tray.
      </p>
      <p className="buttons">
        <Link href={lotAddress(taken.firstLotId)}>Look at the first</Link>
        <button type="button" className="quiet-button" onClick={onNext}>
          Take another list in
        </button>
      </p>
    </div>
  )
}
