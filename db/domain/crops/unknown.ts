/** What of a crop may be unknown; null where it is. */
export interface CropFigures {
  readonly commonName: string
  readonly species: string
  readonly hundredSeedWeightUg: number | null
  readonly packetSeeds: number | null
  readonly matingSystem: string | null
  readonly storageYears: number | null
  /** Of the seed viability equation, as the file keeps them. */
  readonly viabilityConstants: string | null
  readonly federalMinimumPercent: number | null
  readonly stateMinimumPercent: number | null
}

/** Said wherever a number of seeds rests on no known weight. */
export function weightUnknown(crop: string): string {
  return `Nobody has said how much ${crop} seed weighs: a number of seeds taken from a mass is a guess, and may be many times off. Count a few and weigh them.`
}

/**
 * What is not known of a crop, a sentence each, with what the app does without it. Nothing is taken from another crop: what
 * stands in is what is usual for any plant, and is called so.
 */
export function unknownInWords(crop: CropFigures): readonly string[] {
  const { commonName, federalMinimumPercent, stateMinimumPercent } = crop
  return [
    ...(crop.species === ''
      ? ['Its botanical name is not known: the season plan keeps it apart only from others of its own name.']
      : []),
    ...(crop.hundredSeedWeightUg === null ? [weightUnknown(commonName)] : []),
    ...(crop.packetSeeds === null
      ? ['A usual packet is not known: say how many seeds or how much for each one.']
      : []),
    ...(crop.matingSystem === null
      ? [
          'How it is pollinated is not known: plants to keep and distances are those usual for a plant that does both, by itself and by others.',
        ]
      : []),
    ...(crop.storageYears === null
      ? [
          crop.viabilityConstants === null
            ? 'How long its seed keeps is not known: nothing is forecast, what waiting costs goes by three years, a guess, and only a test tells how alive a lot is.'
            : 'For how many years its seed keeps is not known: what waiting costs goes by three, a guess, where nothing is forecast.',
        ]
      : []),
    ...(federalMinimumPercent === null && stateMinimumPercent === null
      ? ['No law of sale names it: untested seed counts as half alive, a cautious rule of thumb.']
      : []),
  ]
}
