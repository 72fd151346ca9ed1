import { useMutation, useQueryClient } from '@tanstack/react-query'
import { Link } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import { call } from '../../shared/client/call.ts'
import { say } from '../../shared/foot-line/said.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'

/** The care of the book: whether it is right, and a copy of it. */
export function Care({ about }: { readonly about: Value<'collection.get'> }) {
  const format = useFormat()
  const queries = useQueryClient()
  const check = useMutation({ mutationFn: () => call('collection.check', {}) })
  const backUp = useMutation({
    mutationFn: () => call('backup.create', {}),
    onMutate: () => lookAgain(),
    onSuccess: ({ file }) => {
      say({ said: `Backed up to ${file}` })
      lookAgain()
    },
  })
  const lookAgain = () => void queries.invalidateQueries({ queryKey: ['backup.list'] })
  return (
    <section className="page-part stack-2">
      <h2>The book</h2>
      <p>
        {format.many(about.accessions, 'accession')}, {format.many(about.lots, 'lot')},{' '}
        {format.many(about.people, 'person', 'people')}, {format.many(about.movements, 'line')} written.
      </p>
      <p className="soft">It is kept in {about.file}</p>
      <p>
        <Link href="/written">What was written</Link>, day by day: each entry, and taking it back.
      </p>
      <p>
        <Link href="/in-and-out">In and out</Link>: the whole collection, and lists for others, as files.
      </p>
      <p className="buttons">
        <ActionButton className="quiet-button" off={check.isPending} onClick={() => check.mutate()}>
          {check.isPending ? 'Checking…' : 'Check the book'}
        </ActionButton>
        <ActionButton className="quiet-button" off={backUp.isPending} onClick={() => backUp.mutate()}>
          {backUp.isPending ? 'Copying…' : 'Back up now'}
        </ActionButton>
      </p>
      {check.error !== null && <ProblemText problem={check.error.problem} />}
      {backUp.error !== null && <ProblemText problem={backUp.error.problem} />}
      <div role="status">
        {check.data !== undefined && <Findings found={check.data} />}
        {backUp.data !== undefined && (
          <p>
            The copy was read back and is whole: {backUp.data.file}, {format.many(backUp.data.bytes, 'byte')}.{' '}
            {backUp.data.second !== null && `A second copy lies at ${backUp.data.second}.`}
            {backUp.data.secondTrouble}
          </p>
        )}
      </div>
    </section>
  )
}

function Findings({ found }: { readonly found: Value<'collection.check'> }) {
  const format = useFormat()
  const { lots, movements } = found.checked
  if (found.clean) {
    return (
      <p>
        The book is right: {format.many(lots, 'lot')} and {format.many(movements, 'line')} were looked
        through.
      </p>
    )
  }
  return (
    <>
      <p>
        Something does not agree. Nothing was changed: write nothing more, back up, and ask for help with
        these lines.
      </p>
      <ul className="bullets">
        {found.findings.map(({ check, sentence }) => (
          <li key={`${check} ${sentence}`}>{sentence}</li>
        ))}
      </ul>
    </>
  )
}
