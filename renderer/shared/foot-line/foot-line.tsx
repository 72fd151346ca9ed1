import { useMutation, useQueryClient } from '@tanstack/react-query'
import type { ReactNode } from 'react'
import { Link } from 'wouter'
import { call } from '../client/call.ts'
import type { ProblemError } from '../client/problem-error.ts'
import { useForecastsLeft } from '../client/use-others-writes.ts'
import { useRead } from '../client/use-read.ts'
import { useWrite } from '../client/use-write.ts'
import { useFormat } from '../format/use-format.ts'
import { useTexts } from '../format/use-texts.ts'
import { ActionButton } from '../parts/action-button.tsx'
import './foot-line.css'
import { useSaid } from './said.ts'

/** The last thing that happened, said aloud, with its undo; `children` stand beside what was written. */
export function FootLine({ children }: { readonly children: ReactNode }) {
  const { t } = useTexts()
  const format = useFormat()
  const said = useSaid()
  const takeBack = useWrite('entry.undo')
  const about = useRead('collection.get', {}).data
  const entryId = said?.undoable ? said.entryId : undefined
  return (
    <footer className="foot-line">
      <p className="foot-line-said" role="status">
        {takeBack.error ? takeBack.error.problem.sentence : format.sentence(said?.said ?? '')}
      </p>
      {entryId !== undefined && (
        <ActionButton
          className="word-button"
          off={takeBack.isPending}
          onClick={() => takeBack.mutate({ entryId })}
        >
          {t('foot.undo')}
        </ActionButton>
      )}
      {about !== undefined && (
        <p className="foot-line-end soft">
          <Forecasts />
          <Link href="/written">{t('foot.written-today')}</Link>
          {children}
          <span className="foot-line-library">{about.settings.libraryName}</span>
        </p>
      )}
    </footer>
  )
}

/** How far the forecasts are, with the way to stop working them out and to go on. */
function Forecasts() {
  const { t } = useTexts()
  const queries = useQueryClient()
  const hold = useMutation<unknown, ProblemError, boolean>({
    mutationFn: (held) => call('forecast.pause', { held }),
    onSettled: () => queries.invalidateQueries({ queryKey: ['collection.get-revision'] }),
  })
  const forecasts = useForecastsLeft()
  if (forecasts === undefined || (forecasts.left === 0 && !forecasts.held)) return null
  const { left, lots, held } = forecasts
  return (
    <span>
      {hold.error === null
        ? t('foot.forecasts', { done: lots - left, lots, held: held ? 'yes' : 'no' })
        : hold.error.problem.sentence}{' '}
      <ActionButton className="word-button" off={hold.isPending} onClick={() => hold.mutate(!held)}>
        {t(held ? 'foot.go-on' : 'foot.stop')}
      </ActionButton>
    </span>
  )
}
