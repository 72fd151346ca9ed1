/** The ways in which a person's name is written: as it is, and with the family name first, as lists have it. */
export function waysToWrite(name: string): string[] {
  const at = name.lastIndexOf(' ')
  if (at < 0) return [name]
  const [given, family] = [name.slice(0, at), name.slice(at + 1)]
  return [name, `${family}, ${given}`, `${family} ${given}`]
}

/** Finds any of some names in a text, whole and whatever its capitals, the longest first; null where there is none. */
export function anyOf(names: readonly string[]): RegExp | null {
  const listed = names
    .filter((name) => name !== '')
    .toSorted((one, other) => other.length - one.length)
    .map((name) => name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'))
  return listed.length === 0 ? null : new RegExp(`(?<!\\p{L})(?:${listed.join('|')})(?!\\p{L})`, 'giu')
}
