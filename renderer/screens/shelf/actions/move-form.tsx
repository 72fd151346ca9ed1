import type { ActionFormProps } from './action-form-props.ts'
import { MoveLots } from './move-lots.tsx'

/** Moves the lot to another place. */
export function MoveForm({ lot, draftName, onClose }: ActionFormProps) {
  return <MoveLots lotIds={[lot.lotId]} from={lot.placeId} draftName={draftName} onClose={onClose} />
}
