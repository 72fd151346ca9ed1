import table from '../reference/mcpd.json' with { type: 'json' }

/** One descriptor of the FAO/Bioversity Multi-Crop Passport Descriptors V.2.1 (2015), as copied into db/reference. */
export interface Descriptor {
  readonly code: string
  readonly name: string
  readonly format: string
  readonly cardinality: string
  readonly pattern?: string
  readonly item_pattern?: string
  readonly codes?: readonly { readonly code: string; readonly label: string; readonly parent?: string }[]
  readonly only_if_empty?: string
  readonly personal_data?: boolean
  readonly sensitive?: boolean
}

/** The descriptors in the order of the standard. */
export const DESCRIPTORS: readonly Descriptor[] = table

export const MCPD_CODES: readonly string[] = DESCRIPTORS.map(({ code }) => code)

const BY_CODE = new Map(DESCRIPTORS.map((descriptor) => [descriptor.code, descriptor]))

/** The descriptor of a code; undefined where it is none. */
export function descriptorOf(code: string): Descriptor | undefined {
  return BY_CODE.get(code)
}

/** The code that a heading spells, whatever its case and spaces; null where it is none. */
export function codeOfHeading(heading: string): string | null {
  const bare = heading.replace(/[\s\uFEFF]/g, '').toUpperCase()
  return BY_CODE.has(bare) ? bare : null
}
