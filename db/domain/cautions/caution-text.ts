/** What a giver or the keeper has to be careful about with a gift. */
export type CautionKind = 'treated' | 'pests-seen' | 'regulated' | 'toxic' | 'protected-variety'

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
