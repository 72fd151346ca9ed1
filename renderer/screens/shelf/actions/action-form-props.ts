import type { LotRecord } from '../../../../db/contract/stock-operations.ts'

/** What every form of a card gets. */
export interface ActionFormProps {
  readonly lot: LotRecord
  /** The name by which what is typed is kept. */
  readonly draftName: string
  readonly onClose: () => void
}
