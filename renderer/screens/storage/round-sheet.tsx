import { useRead } from '../../shared/client/use-read.ts'
import { PaperPages } from '../../shared/labels/paper-pages.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'

/** The sheet for a round: every place with what to look at, to be ticked on paper. */
export function RoundSheet() {
  const sheet = useRead('round.print', {})
  return (
    <div className="stack-3">
      <h2 tabIndex={-1}>Round sheet</h2>
      <p>To tick while you walk, and type in afterwards.</p>
      {sheet.error !== null && <ProblemText problem={sheet.error.problem} />}
      {sheet.isPending && (
        <p className="soft" role="status">
          Making the pages…
        </p>
      )}
      {sheet.data !== undefined && <PaperPages name="The round sheet" made={sheet.data} />}
    </div>
  )
}
