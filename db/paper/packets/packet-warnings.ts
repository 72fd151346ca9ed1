import { type Message, message } from '../../messages/message.ts'
import { POINTS_PER_MM } from '../drawing/page-sizes.ts'
import { type Carries, carriesFacts } from './label-sheets.ts'
import type { Layout } from './packet-layout.ts'
import type { Fact } from './packet-plans.ts'
import { CAUTION_TYPE_PT, SMALLEST_TYPE_PT } from './packet-styles.ts'
import { firstSentence, type PacketLabel } from './packet-text.ts'

/** Finer modules are hard to read for a phone (0.33 mm is four dots of a 300 dpi printer). */
const FINEST_MODULE_MM = 0.33

/** What a label does not say as asked, and what to do about it. */
export function labelWarnings(label: PacketLabel, layout: Layout, carries: Carries): Message[] {
  const lot = label.lotNumber
  const warnings = cautionWarnings(label, layout)
  for (const what of layout.cut) {
    if (what !== 'caution') warnings.push(message('paper.label-cut', { lot, what }))
  }
  const lost = lostTexts(label, layout, carries)
  if (lost.length > 0) {
    const what = { list: lost.map((text) => message(`paper.fact-${text}`)) }
    warnings.push(message('paper.label-no-room', { lot, what }))
  }
  const number = layout.items.find((item) => item.kind === 'text' && item.face === 'number')
  if (number?.kind === 'text' && number.size < SMALLEST_TYPE_PT)
    warnings.push(message('paper.label-small-number', { lot, points: toTenths(number.size) }))
  if (layout.module < FINEST_MODULE_MM * POINTS_PER_MM)
    warnings.push(message('paper.label-fine-code', { lot }))
  return warnings
}

function lostTexts(label: PacketLabel, { plan }: Layout, carries: Carries) {
  const lost: (Fact | 'crop' | 'variety' | 'library')[] = []
  if (carries === 'number-only') return lost
  if (!plan.crop) lost.push('crop')
  if (!plan.variety) lost.push('variety')
  if (!carriesFacts(carries)) return lost
  for (const fact of ['source', 'germination', 'contents'] as const) {
    if (label[fact] !== '' && !plan.facts.includes(fact)) lost.push(fact)
  }
  if (carries === 'all-known' && (label.known ?? []).length > 0 && !plan.facts.includes('known'))
    lost.push('known')
  if (label.libraryName !== '' && !plan.library) lost.push('library')
  return lost
}

function cautionWarnings(label: PacketLabel, { plan, cautionSize, cut }: Layout): Message[] {
  const lot = label.lotNumber
  if (label.cautions.length === 0) return []
  const cautions = { list: label.cautions }
  if (plan.cautions === 'left-out') return [message('paper.caution-left-out', { lot, cautions })]
  const shortened = label.cautions.some((caution) => firstSentence(caution) !== caution)
  const warnings: Message[] = []
  if (plan.cautions === 'first-sentences' && (shortened || cut.includes('caution')))
    warnings.push(message('paper.caution-begins', { lot, cautions }))
  if (cautionSize !== null && cautionSize < CAUTION_TYPE_PT)
    warnings.push(message('paper.caution-small', { lot, points: toTenths(cautionSize) }))
  return warnings
}

function toTenths(points: number): number {
  return Math.round(10 * points) / 10
}
