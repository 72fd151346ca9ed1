import { type Message, message } from '../../messages/message.ts'

/** What a giver or the keeper has to be careful about with a gift. */
export type CautionKind = 'treated' | 'pests-seen' | 'regulated' | 'toxic' | 'protected-variety'

/** A caution in a word or two, as it stands beside a box to tick or a reason. */
export const CAUTION_WORDS: Readonly<Record<CautionKind, string>> = {
  treated: 'treated seed',
  'pests-seen': 'pests seen',
  regulated: 'regulated plant',
  toxic: 'toxic',
  'protected-variety': 'protected variety',
}

/** Cautions about the seed itself, which what is grown from it does not inherit; the others are about the plant. */
export const OF_THE_SEED: readonly CautionKind[] = ['treated', 'pests-seen']

/**
 * The plain words of a caution, for the label and the record. `note` names the substance of a treatment.
 *
 * Treated seed: a US federal rule asks to name the substance and warn against use as food (7 CFR 201.31a, seen).
 * Poisonous seed and the rest: usual caution, from memory. Local rules decide.
 */
export function cautionText(caution: CautionKind, note: string): string {
  const named = note.trim()
  switch (caution) {
    case 'treated':
      return `TREATED${named === '' ? '' : ` with ${named}`}. Do not use for food, feed or oil.`
    case 'toxic':
      return 'POISONOUS IF EATEN. Keep from children and animals.'
    case 'pests-seen':
      return 'Pests were seen in this seed. Do not pass on until checked.'
    case 'regulated':
      return 'May be a listed or noxious plant. Ask your local seed authority before passing it on.'
    case 'protected-variety':
      return 'May be a protected variety. Pass on only with the right holder’s leave.'
  }
}

/** A caution in a word or two. */
export function cautionName(caution: CautionKind): Message {
  return message(`caution.${caution}`)
}

/** {@link cautionText}, to be told in any language. */
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
export function harvestCaution(caution: CautionKind, note: string): string {
  const named = note.trim()
  switch (caution) {
    case 'treated':
      return `Grown from seed treated${named === '' ? '' : ` with ${named}`}. Check that it is the harvest, not what was left of that seed.`
    case 'pests-seen':
      return 'Pests were seen in the seed it was grown from. Check this harvest for them.'
    default:
      return cautionText(caution, note)
  }
}
