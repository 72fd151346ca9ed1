import { useQueryClient } from '@tanstack/react-query'
import { type SubmitEvent, useId, useState } from 'react'
import { useLocation } from 'wouter'
import { useWrite } from '../shared/client/use-write.ts'
import { openForm } from '../shared/focus/lost-focus.ts'
import { useTexts } from '../shared/format/use-texts.ts'
import { ActionButton } from '../shared/parts/action-button.tsx'
import { ProblemText } from '../shared/parts/problem-text.tsx'

/** Asks the library's name and starts an empty collection under it. */
export function StartCollection({ onClose }: { readonly onClose?: () => void }) {
  const { t } = useTexts()
  const [libraryName, setLibraryName] = useState('')
  const start = useWrite('collection.create')
  const queries = useQueryClient()
  const [, go] = useLocation()
  const id = useId()
  const onSubmit = (event: SubmitEvent) => {
    event.preventDefault()
    if (start.isPending) return
    start.mutate(
      { libraryName },
      {
        onSuccess: () => {
          void queries.resetQueries()
          onClose?.()
          go('/take-in')
        },
      },
    )
  }
  return (
    <form
      className="start-collection buttons"
      ref={onClose === undefined ? null : openForm}
      onSubmit={onSubmit}
      onKeyDown={(event) => event.key === 'Escape' && onClose?.()}
    >
      <label htmlFor={id}>{t('app.name-of-library')}</label>
      <input
        id={id}
        className="table-input"
        autoComplete="off"
        value={libraryName}
        onChange={(event) => setLibraryName(event.target.value)}
      />
      <ActionButton type="submit" className="button" off={start.isPending}>
        {t('app.start')}
      </ActionButton>
      {onClose !== undefined && (
        <button type="button" className="quiet-button" onClick={onClose}>
          {t('app.stay-with-demo')}
        </button>
      )}
      {start.error !== null && <ProblemText problem={start.error.problem} />}
    </form>
  )
}
