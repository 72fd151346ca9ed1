import { useMutation } from '@tanstack/react-query'
import type { Value } from '../../../db/contract/contract.ts'
import { call } from '../client/call.ts'
import type { ProblemError } from '../client/problem-error.ts'
import { ActionButton } from './action-button.tsx'

/** Saves the whole book from what is open, where its file was moved or deleted. */
export function SaveOpenBook() {
  const save = useMutation<Value<'backup.create'>, ProblemError, void>({
    mutationFn: () => call('backup.create', {}),
  })
  return (
    <div role="status">
      <ActionButton className="quiet-button" off={save.isPending} onClick={() => save.mutate()}>
        {save.isPending ? 'Saving…' : 'Save the book now'}
      </ActionButton>
      {save.data !== undefined && (
        <p>Saved, read back and whole: {save.data.file}. Restore it in the settings to go on in it.</p>
      )}
      {save.error !== null && (
        <p>
          {save.error.problem.sentence} {save.error.problem.todo}
        </p>
      )}
    </div>
  )
}
