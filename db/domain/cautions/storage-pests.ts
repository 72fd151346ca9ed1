/** Families whose seed weevils and moths like to eat in store. Common practice, no source. */
const EATEN_IN_STORE: readonly string[] = ['Fabaceae', 'Poaceae']

/** What to mind of seed of a family that lies where insects can get in; '' where they can not, or leave such seed alone. */
export function storagePestCaution(family: string, pestProof: boolean): string {
  return pestProof || !EATEN_IN_STORE.includes(family)
    ? ''
    : 'Weevils and moths like this seed, and what it is kept in does not keep them out.'
}
