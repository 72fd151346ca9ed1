import type { WaitingGift } from '../../../db/contract/intake-operations.ts'

/** What every form of a gift's card gets. */
export interface GiftFormProps {
  readonly gift: WaitingGift
  /** The name by which what is typed is kept. */
  readonly draftName: string
  readonly onClose: () => void
}
