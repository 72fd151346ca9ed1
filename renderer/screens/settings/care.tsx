import { useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { Link } from 'wouter'
import type { CallInput, ReadName, Value } from '../../../db/contract/contract.ts'
import { call } from '../../shared/client/call.ts'
import { ProblemError } from '../../shared/client/problem-error.ts'
import { say } from '../../shared/foot-line/said.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'

/** The care of the book: whether it is right, and a copy of it. */
export function Care({ about }: { readonly about: Value<'collection.get'> }) {
  const format = useFormat()
  const check = useAsking('collection.check')
  const backUp = useAsking('backup.create')
  const queries = useQueryClient()
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
        <ActionButton className="quiet-button" off={check.busy} onClick={() => check.ask()}>
          {check.busy ? 'Checking…' : 'Check the book'}
        </ActionButton>
        <ActionButton
          className="quiet-button"
          off={backUp.busy}
          onClick={() => {
            const lookAgain = () => void queries.invalidateQueries({ queryKey: ['backup.list'] })
            void backUp.ask(({ file }) => {
              say({ said: `Backed up to ${file}` })
              lookAgain()
            })
            lookAgain()
          }}
        >
          {backUp.busy ? 'Copying…' : 'Back up now'}
        </ActionButton>
      </p>
      {check.problem !== null && <ProblemText problem={check.problem.problem} />}
      {backUp.problem !== null && <ProblemText problem={backUp.problem.problem} />}
      <div role="status">
        {check.answer !== null && <Findings found={check.answer} />}
        {backUp.answer !== null && (
          <p>
            The copy was read back and is whole: {backUp.answer.file}, {format.number(backUp.answer.bytes)}{' '}
            bytes. {backUp.answer.second !== null && `A second copy lies at ${backUp.answer.second}.`}
            {backUp.answer.secondTrouble}
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

/** Asks once, when the keeper wants it, and keeps the answer. */
function useAsking<N extends Extract<ReadName, 'collection.check' | 'backup.create'>>(name: N) {
  const [state, setState] = useState<{
    busy: boolean
    answer: Value<N> | null
    problem: ProblemError | null
  }>({ busy: false, answer: null, problem: null })
  const ask = async (then?: (answer: Value<N>) => void) => {
    setState({ busy: true, answer: null, problem: null })
    try {
      const answer = await call(name, {} as CallInput<N>)
      setState({ busy: false, answer, problem: null })
      then?.(answer)
    } catch (thrown) {
      if (!(thrown instanceof ProblemError)) throw thrown
      setState({ busy: false, answer: null, problem: thrown })
    }
  }
  return { ...state, ask }
}
