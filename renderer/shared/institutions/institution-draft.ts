/** What belongs to a hand-out to an institution while it is typed; a day that is not said is ''. */
export interface TypedInstitution {
  readonly askedOn: string
  readonly intendedUse: string
  readonly agreement: string
  readonly plantHealth: string
  readonly sentOn: string
}

export const NO_INSTITUTION: TypedInstitution = {
  askedOn: '',
  intendedUse: '',
  agreement: '',
  plantHealth: '',
  sentOn: '',
}

/** The same as the collection takes it. */
export function institutionOf({ askedOn, sentOn, ...texts }: TypedInstitution) {
  return { ...texts, askedOn: askedOn || null, sentOn: sentOn || null }
}
