import { POINTS_PER_MM } from '../drawing/page-sizes.ts'
import { type Carries, carriesFacts } from './label-sheets.ts'
import type { Layout } from './packet-layout.ts'
import type { Fact } from './packet-plans.ts'
import { CAUTION_TYPE_PT, SMALLEST_TYPE_PT } from './packet-styles.ts'
import { firstSentence, type PacketLabel } from './packet-text.ts'

const FACT_NAMES: Readonly<Record<Fact, string>> = {
  source: 'who it is from',
  germination: 'the germination',
  contents: 'how much is in it',
  known: 'all else that is known',
}
/** Finer modules are hard to read for a phone (0.33 mm is four dots of a 300 dpi printer). */
const FINEST_MODULE_MM = 0.33

/** What a label does not say as asked, and what to do about it. */
export function labelWarnings(label: PacketLabel, layout: Layout, carries: Carries): string[] {
  const lot = label.lotNumber
  const warnings = cautionWarnings(label, layout)
  for (const what of layout.cut) {
    if (what !== 'caution') warnings.push(`${lot}: the ${what} is too long for this label and was cut short.`)
  }
  const lost = lostTexts(label, layout, carries)
  if (lost.length > 0)
    warnings.push(`${lot}: this label has no room for ${lost.join(', ')}. A larger label has.`)
  const number = layout.items.find((item) => item.kind === 'text' && item.face === 'number')
  if (number?.kind === 'text' && number.size < SMALLEST_TYPE_PT) {
    warnings.push(
      `${lot}: so long a number is printed in ${number.size.toFixed(1)} point. Use a larger label.`,
    )
  }
  if (layout.module < FINEST_MODULE_MM * POINTS_PER_MM) {
    warnings.push(`${lot}: its QR code is finer than 0.33 mm and may not scan. Use a larger label.`)
  }
  return warnings
}

function lostTexts(label: PacketLabel, { plan }: Layout, carries: Carries): string[] {
  const lost: string[] = []
  if (carries === 'number-only') return lost
  if (!plan.crop) lost.push('the plant kind and harvest')
  if (!plan.variety) lost.push('the variety')
  if (!carriesFacts(carries)) return lost
  for (const fact of ['source', 'germination', 'contents'] as const) {
    if (label[fact] !== '' && !plan.facts.includes(fact)) lost.push(FACT_NAMES[fact])
  }
  if (carries === 'all-known' && (label.known ?? []).length > 0 && !plan.facts.includes('known'))
    lost.push(FACT_NAMES.known)
  if (label.libraryName !== '' && !plan.library) lost.push("the library's name")
  return lost
}

function cautionWarnings(label: PacketLabel, { plan, cautionSize, cut }: Layout): string[] {
  const lot = label.lotNumber
  if (label.cautions.length === 0) return []
  const all = label.cautions.map((caution) => `'${caution}'`).join(' and ')
  if (plan.cautions === 'left-out') {
    return [`${lot}: THE CAUTION IS NOT ON THE LABEL. Write it on the packet, or use a larger label: ${all}`]
  }
  const shortened = label.cautions.some((caution) => firstSentence(caution) !== caution)
  const warnings: string[] = []
  if (plan.cautions === 'first-sentences' && (shortened || cut.includes('caution'))) {
    warnings.push(
      `${lot}: only the beginning of the caution fits. Write the rest on the packet, or use a larger label: ${all}`,
    )
  }
  if (cautionSize !== null && cautionSize < CAUTION_TYPE_PT) {
    warnings.push(
      `${lot}: the caution is printed in ${cautionSize.toFixed(1)} point. Some laws ask for 8 point on treated seed; ` +
        'use a larger label where yours does.',
    )
  }
  return warnings
}

/** Says which letters are not in the typeface. */
export function missingLetters(label: PacketLabel, missing: readonly string[]): string[] {
  if (missing.length === 0) return []
  const shown = missing.slice(0, 6).join(' ')
  const more = missing.length > 6 ? ` and ${missing.length - 6} more` : ''
  return [
    `${label.lotNumber}: the labels' typeface has no ${shown}${more}. A box is printed in its place: write it by hand.`,
  ]
}
