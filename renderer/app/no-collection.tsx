import { useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import type { ProblemError } from '../shared/client/problem-error.ts'
import { useWrite } from '../shared/client/use-write.ts'
import { ActionButton } from '../shared/parts/action-button.tsx'
import { ProblemText } from '../shared/parts/problem-text.tsx'
import { LastGoodBackup } from './last-good-backup.tsx'
import { StartCollection } from './start-collection.tsx'

/** A keeper without a mouse begins at what is wrong, and again where trying found something else; a ref callback. */
function focusHeading(heading: HTMLElement | null): void {
  heading?.focus()
}

/** Has the host open the file once more: it may be back, or its other window closed. */
function TryAgain() {
  const queries = useQueryClient()
  const [isTrying, setTrying] = useState(false)
  const tryAgain = async () => {
    setTrying(true)
    await queries.refetchQueries({ queryKey: ['collection.get'] })
    setTrying(false)
    await queries.invalidateQueries()
  }
  return (
    <button
      type="button"
      className="button"
      aria-disabled={isTrying}
      onClick={isTrying ? undefined : tryAgain}
    >
      {isTrying ? 'Opening it…' : 'Try again'}
    </button>
  )
}

/** Stands in place of every screen while no collection is open: why, and the two ways on. */
export function NoCollection({ why }: { readonly why: ProblemError }) {
  const isDamaged = why.problem.code === 'file-damaged'
  const demo = useWrite('collection.open-demo')
  const queries = useQueryClient()
  const openDemo = () => demo.mutate({}, { onSuccess: () => void queries.resetQueries() })
  return (
    <section className="no-collection stack-4">
      <h1 key={why.problem.code} tabIndex={-1} ref={focusHeading}>
        No collection is open
      </h1>
      <ProblemText problem={why.problem} />
      {!isDamaged && <TryAgain />}
      <LastGoodBackup isDamaged={isDamaged} />
      <h2>Start a collection of your own</h2>
      <StartCollection />
      <h2>Or look round first</h2>
      <p>
        The demo is the collection of an invented town. Nothing in it is real, and nothing of yours gets into
        it.
      </p>
      <ActionButton className="quiet-button" off={demo.isPending} onClick={openDemo}>
        {demo.isPending ? 'Opening the demo…' : 'Open the demo'}
      </ActionButton>
      {demo.error !== null && <ProblemText problem={demo.error.problem} />}
    </section>
  )
}
