import { printableText } from '../drawing/printable-text.ts'
import type { Typeface } from '../drawing/typeface.ts'

/** What one packet's label says, in words ready to print. An empty text is left off. */
export interface PacketLabel {
  /** The plant kind in everyday words. */
  readonly crop: string
  readonly variety: string
  /** The botanical name, printed in italics where there is room. */
  readonly species?: string
  /** '2024', 'about 2019', 'year unknown'. */
  readonly harvest: string
  readonly lotNumber: string
  /** What the QR code carries: capitals and digits. */
  readonly scanCode: string
  /** How the donor wishes to be named. */
  readonly source: string
  /** '85 % sprouted, Mar 2026'. */
  readonly germination: string
  /** '25 seeds', 'about 30 seeds, 7.5 g'. */
  readonly contents: string
  /** Whole sentences, such as 'TREATED with thiram. Not for food, feed or oil.' */
  readonly cautions: readonly string[]
  readonly libraryName: string
  /** What is planted as a clove, a bulb or a tuber, and kept otherwise than seed. */
  readonly pieces?: boolean
  /** What else is known of the lot, a fact each, for large labels and the backs of packets. */
  readonly known?: readonly string[]
}

/** The label with every text made printable, and the letters that the typeface lacks. */
export function printableLabel(
  label: PacketLabel,
  typeface: Typeface,
): { readonly label: PacketLabel; readonly missing: readonly string[] } {
  const missing = new Set<string>()
  const clean = (raw: string): string => {
    const printable = printableText(raw, typeface)
    for (const letter of printable.missing) missing.add(letter)
    return printable.text
  }
  return {
    label: {
      crop: clean(label.crop),
      variety: clean(label.variety),
      species: clean(label.species ?? ''),
      harvest: clean(label.harvest),
      lotNumber: clean(label.lotNumber),
      scanCode: label.scanCode,
      source: clean(label.source),
      germination: clean(label.germination),
      contents: clean(label.contents),
      cautions: label.cautions.map(clean).filter((caution) => caution !== ''),
      libraryName: clean(label.libraryName),
      pieces: label.pieces ?? false,
      known: (label.known ?? []).map(clean).filter((fact) => fact !== ''),
    },
    missing: [...missing],
  }
}

/** The first sentence of a caution: 'POISONOUS IF EATEN.' */
export function firstSentence(caution: string): string {
  return /^.*?[.!?](?=\s|$)/u.exec(caution)?.[0] ?? caution
}
