import type { Item } from '../drawing/items.ts'
import {
  type Block,
  type Job,
  type LabelText,
  type Paragraph,
  paragraph,
  SEPARATOR,
  type Wanted,
} from './packet-blocks.ts'
import type { Fact, Plan } from './packet-plans.ts'
import { CAUTION_TYPE_PT, SMALLEST_TYPE_PT, sizeAt } from './packet-styles.ts'
import { firstSentence } from './packet-text.ts'

export interface Body extends Block {
  /** The type size of the cautions, points; null where none is printed. */
  readonly cautionSize: number | null
}

/** A bar beside a caution, and how far its text stands off, points. */
const BAR = 1.6
const BAR_INDENT = 4.6
const UNBOUNDED = 99
const NO_BREAK_SPACE = '\u00a0'

/** Cautions, then facts, between two heights; null where they do not fit. */
export function bodyOf(job: Job, plan: Plan, place: number, top: number, bottom: number): Body | null {
  const cautions = cautionsOf(job, plan, place, top, bottom)
  if (!cautions || cautions.bottom > bottom) return null
  const facts = factsOf(job, plan, place, cautions.bottom, bottom)
  return (
    facts && {
      items: [...cautions.items, ...facts.items],
      cut: [...cautions.cut, ...facts.cut],
      bottom: facts.bottom,
      cautionSize: cautions.cautionSize,
    }
  )
}

function cautionsOf(job: Job, plan: Plan, place: number, top: number, bottom: number): Body | null {
  const none: Body = { items: [], cut: [], bottom: top, cautionSize: null }
  if (plan.cautions === 'left-out' || job.label.cautions.length === 0) return none
  const small = plan.cautions !== 'eight-point'
  const size = small
    ? SMALLEST_TYPE_PT + place * (CAUTION_TYPE_PT - SMALLEST_TYPE_PT)
    : sizeAt(job.styles.caution, place)
  const first = plan.cautions === 'first-sentences'
  const mayCut = first && plan.smallest === place
  const texts = first ? job.label.cautions.map(firstSentence) : job.label.cautions
  const lines = Math.floor((bottom - top) / (size * 1.16) / texts.length)
  if (lines < 1) return null
  const items: Item[] = []
  const cut: LabelText[] = []
  let y = top
  for (const text of texts) {
    const maxLines = first ? lines : UNBOUNDED
    const block = setCaution(job, {
      face: 'bold',
      size,
      text,
      y,
      indent: BAR_INDENT,
      maxLines,
      mayCut,
      what: 'caution',
    })
    if (!block) return null
    items.push(...block.items, {
      kind: 'bar',
      x: 0,
      y: y + size * 0.08,
      width: BAR,
      height: block.bottom - y - size * 0.08,
    })
    cut.push(...block.cut)
    y = block.bottom + size * 0.15
  }
  return { items, cut, bottom: y, cautionSize: size }
}

/** A caution with a sentence to a line, where that takes no more lines than running on. */
function setCaution(job: Job, wanted: Wanted): Paragraph | null {
  const runOn = paragraph(job, { ...wanted, balanced: true })
  const apart = paragraph(job, { ...wanted, text: wanted.text.replace(/(?<=[.!?]) /gu, '\n'), mayCut: false })
  return apart && apart.baselines.length <= (runOn?.baselines.length ?? 0) ? apart : runOn
}

type Arrangement = { readonly runIn: boolean; readonly maxLines: number; readonly mayCut: boolean }

const WHOLE: readonly Arrangement[] = [
  { runIn: false, maxLines: UNBOUNDED, mayCut: false },
  { runIn: true, maxLines: UNBOUNDED, mayCut: false },
]
const SHORTENED: readonly Arrangement[] = [
  ...WHOLE,
  { runIn: false, maxLines: 2, mayCut: true },
  { runIn: false, maxLines: 1, mayCut: true },
]

/** The facts, each on its own line; or run together where that saves room. */
function factsOf(job: Job, plan: Plan, place: number, top: number, bottom: number): Block | null {
  const facts = plan.facts
    .flatMap((fact) => inWords(job, fact).map((text) => [fact, text] as const))
    .filter(([, text]) => text !== '')
  for (const arrangement of plan.mayCut && place === plan.smallest ? SHORTENED : WHOLE) {
    const texts = arrangement.runIn
      ? [['facts', facts.map(([name, text]) => runInWords(name, text)).join(` ${SEPARATOR} `)] as const]
      : facts
    const block = setFacts(job, place, texts, top, arrangement)
    if (block && block.bottom <= bottom) return block
  }
  return facts.length === 0 ? { items: [], cut: [], bottom: top } : null
}

function setFacts(
  job: Job,
  place: number,
  texts: readonly (readonly [LabelText, string])[],
  top: number,
  { maxLines, mayCut, runIn }: Arrangement,
): Block | null {
  const size = sizeAt(job.styles.fact, place)
  const items: Item[] = []
  const cut: LabelText[] = []
  let y = top
  for (const [what, text] of texts) {
    const block = paragraph(job, { face: 'regular', size, text, y, maxLines, mayCut, runsOn: runIn, what })
    if (!block) return null
    items.push(...block.items)
    cut.push(...block.cut)
    y = block.bottom
  }
  return { items, cut, bottom: y }
}

/** Counts and dates stay whole when facts run on; a name may be long and is broken as it comes. */
function runInWords(fact: Fact, text: string): string {
  return fact === 'source' || fact === 'known' ? text : text.replaceAll(' ', NO_BREAK_SPACE)
}

function inWords(job: Job, fact: Fact): readonly string[] {
  if (fact === 'known') return job.label.known ?? []
  const text = job.label[fact]
  return [fact === 'source' && text !== '' ? job.texts.text('paper.packet-from', { donor: text }) : text]
}
