import { LabelPrint } from '../../../shared/labels/label-print.tsx'
import type { ActionFormProps } from './action-form-props.ts'

/** Packet labels of the lot. */
export function PrintForm({ lot, onClose }: ActionFormProps) {
  const { packetSeeds, unit } = lot
  const packet = packetSeeds === null ? '' : `${packetSeeds} ${packetSeeds === 1 ? unit.one : unit.many}`
  return <LabelPrint title="Print label" lotIds={[lot.lotId]} contents={packet} onClose={onClose} />
}
