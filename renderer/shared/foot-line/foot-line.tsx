import { Link } from 'wouter'
import { useForecastsLeft } from '../client/use-others-writes.ts'
import { useRead } from '../client/use-read.ts'
import { useWrite } from '../client/use-write.ts'
import './foot-line.css'
import { useSaid } from './said.ts'

/** The last thing that happened, said aloud, with its undo. */
export function FootLine() {
  const said = useSaid()
  const takeBack = useWrite('entry.take-back')
  const about = useRead('collection.about', {}).data
  const left = useForecastsLeft()
  const entryId = said?.undoable ? said.entryId : undefined
  return (
    <footer className="foot-line">
      <p className="foot-line-said" role="status">
        {takeBack.error ? takeBack.error.problem.sentence : (said?.said ?? '')}
      </p>
      {entryId !== undefined && (
        <button
          type="button"
          className="word-button"
          disabled={takeBack.isPending}
          onClick={() => takeBack.mutate({ entryId })}
        >
          undo
        </button>
      )}
      {about !== undefined && (
        <p className="foot-line-end soft">
          {left > 0 && <span>working out {left} forecasts</span>}
          <Link href="/written">what was written today</Link>
          <span>{about.settings.libraryName}</span>
        </p>
      )}
    </footer>
  )
}
