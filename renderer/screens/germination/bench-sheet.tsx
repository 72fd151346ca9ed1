import { useRead } from '../../shared/client/use-read.ts'
import { PaperPages } from '../../shared/labels/paper-pages.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'

/** The sheet for the bench: one test, or every test under way, with room for its counts. */
export function BenchSheet({ testId }: { readonly testId: number | null }) {
  const sheet = useRead('germination.print', testId === null ? {} : { testIds: [testId] })
  return (
    <div className="stack-3">
      <h2 tabIndex={-1}>Bench sheet</h2>
      <p>To write counts on beside the dishes, and type them in afterwards.</p>
      {sheet.error !== null && <ProblemText problem={sheet.error.problem} />}
      {sheet.isPending && (
        <p className="soft" role="status">
          Making the pages…
        </p>
      )}
      {sheet.data !== undefined && <PaperPages name="The bench sheet" made={sheet.data} />}
    </div>
  )
}
