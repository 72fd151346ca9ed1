import { useMutation } from '@tanstack/react-query'
import type { Value } from '../../../db/contract/contract.ts'
import { call } from '../client/call.ts'
import type { ProblemError } from '../client/problem-error.ts'
import { useTexts } from '../format/use-texts.ts'
import { ActionButton } from './action-button.tsx'

/** Saves the whole book from what is open, where its file was moved or deleted. */
export function SaveOpenBook() {
  const { t } = useTexts()
  const save = useMutation<Value<'backup.create'>, ProblemError, void>({
    mutationFn: () => call('backup.create', {}),
  })
  return (
    <div role="status">
      <ActionButton className="quiet-button" off={save.isPending} onClick={() => save.mutate()}>
        {t(save.isPending ? 'app.saving' : 'app.save-book')}
      </ActionButton>
      {save.data !== undefined && <p>{t('app.book-saved', { file: save.data.file })}</p>}
      {save.error !== null && (
        <p>
          {save.error.problem.sentence} {save.error.problem.todo}
        </p>
      )}
    </div>
  )
}
