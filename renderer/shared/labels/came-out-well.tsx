import type { LabelSheet } from '../../../db/contract/paper-operations.ts'
import { useRead } from '../client/use-read.ts'
import { useWrite } from '../client/use-write.ts'
import { ActionButton } from '../parts/action-button.tsx'
import { ProblemText } from '../parts/problem-text.tsx'

interface CameOutWellProps {
  readonly lotIds: readonly number[]
  readonly sheet: LabelSheet
  readonly startAt: number
}

/** Takes the labels of some lots out of the print tray, where they wait, so that they are not printed once more. */
export function CameOutWell({ lotIds, sheet, startAt }: CameOutWellProps) {
  const tray = useRead('tray.list', {}).data
  const mark = useWrite('tray.mark-printed')
  const labels = tray?.groups.find(({ kind }) => kind === 'label')?.items ?? []
  const waiting = labels.filter(({ lotId }) => lotId !== null && lotIds.includes(lotId))
  if (waiting.length === 0) return null
  const itemIds = waiting.map(({ itemId }) => itemId)
  return (
    <>
      {mark.error !== null && <ProblemText problem={mark.error.problem} />}
      <p className="buttons">
        <ActionButton
          className="button"
          off={mark.isPending}
          onClick={() => mark.mutate({ kind: 'label', itemIds, sheet, startAt })}
        >
          They came out well
        </ActionButton>
        <span className="soft">Then they no longer wait under Print.</span>
      </p>
    </>
  )
}
