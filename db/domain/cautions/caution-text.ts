import { type Message, message } from '../../messages/message.ts'
import type { CautionKind } from '../shared/closed-sets.ts'

/** A caution in a word or two, as it stands beside a box to tick or a reason. */
export function cautionName(caution: CautionKind): Message {
  return message(`caution.${caution}`)
}

/**
 * The plain words of a caution, for the label and the record. `note` names the substance of a treatment.
 *
 * Treated seed: a US federal rule asks to name the substance and warn against use as food (7 CFR 201.31a, seen).
 * Poisonous seed and the rest: usual caution, from memory. Local rules decide.
 */
export function cautionTold(caution: CautionKind, note: string): Message {
  const substance = note.trim()
  return caution === 'treated' && substance !== ''
    ? message('caution-text.treated-with', { substance })
    : message(`caution-text.${caution}`)
}

/**
 * Why a harvest waits to be checked that was grown from seed with this caution.
 *
 * A harvest carries no dressing, but what is brought back may be what was left of the dressed seed. Common practice, no source.
 */
export function harvestCaution(caution: CautionKind, note: string): Message {
  const substance = note.trim()
  switch (caution) {
    case 'treated':
      return substance === ''
        ? message('harvest-caution.treated')
        : message('harvest-caution.treated-with', { substance })
    case 'pests-seen':
      return message('harvest-caution.pests-seen')
    default:
      return cautionTold(caution, note)
  }
}
