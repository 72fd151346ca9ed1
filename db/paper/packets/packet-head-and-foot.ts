import { type Item, moved } from '../drawing/items.ts'
import { lineWidth, piecesOf, wholePiece } from '../drawing/text-fitting.ts'
import { carriesFacts } from './label-sheets.ts'
import {
  type Block,
  type Job,
  type LabelText,
  narrowedAt,
  type Paragraph,
  paragraph,
  SEPARATOR,
} from './packet-blocks.ts'
import type { Plan } from './packet-plans.ts'
import { sizeAt } from './packet-styles.ts'

const NOTHING: Block = { items: [], cut: [], bottom: 0 }
const RULE = 0.5

/** Crop and harvest on one line, the variety in large type, and a rule where facts follow; ends above `until`. */
export function headOf(job: Job, plan: Plan, place: number, until: number): Block | null {
  const crop = plan.crop ? cropLine(job, plan, place) : NOTHING
  if (!crop) return null
  const variety = plan.variety
    ? varietyLines(job, plan, place, crop.bottom, until)
    : { ...NOTHING, bottom: crop.bottom }
  if (!variety) return null
  const items = [...crop.items, ...variety.items]
  const cut = [...crop.cut, ...variety.cut]
  if (!carriesFacts(job.carries)) return { items, cut, bottom: variety.bottom }
  const y = variety.bottom + 1
  items.push({ kind: 'bar', x: 0, y, width: narrowedAt(job, y + RULE), height: RULE })
  return { items, cut, bottom: y + RULE + 2 }
}

/** Crop and harvest, their own type shrinking before they are cut. */
function cropLine(job: Job, plan: Plan, place: number): Block | null {
  const { crop } = job.styles
  for (const size of sizesDown(sizeAt(crop, place), crop.smallest)) {
    const line = cropLineAt(job, plan, size, plan.mayCut && size === crop.smallest)
    if (line) return line
  }
  return null
}

function cropLineAt(job: Job, plan: Plan, size: number, mayCut: boolean): Block | null {
  const { label } = job
  const width = narrowedAt(job, size)
  const oneLine = { size, y: 0, maxLines: 1, mayCut }
  const words =
    carriesFacts(job.carries) && label.harvest
      ? job.texts.text('paper.packet-harvest', { year: label.harvest })
      : label.harvest
  const harvest = paragraph(job, {
    ...oneLine,
    face: 'semibold',
    text: words,
    width: width * 0.6,
    what: 'harvest',
  })
  if (!harvest) return null
  const harvestAt = width - (harvest.widths[0] ?? 0)
  const left = harvestAt - size * 0.8
  const crop = paragraph(job, {
    ...oneLine,
    face: 'regular',
    text: label.crop,
    width: left,
    what: 'crop',
  })
  if (!crop) return null
  const species = plan.species && label.species ? speciesAfter(job, crop, label.species, size, left) : []
  if (!species) return null
  const highest = species.length > 0 ? job.faces.italic.shape(label.species ?? '').top * size : 0
  const baseline = Math.max(crop.baselines[0] ?? 0, harvest.baselines[0] ?? 0, highest)
  const items = [...crop.items, ...species, ...harvest.items.map((item) => moved(item, harvestAt, 0))].map(
    (item) => (item.kind === 'text' ? { ...item, baseline } : item),
  )
  return { items, cut: [...crop.cut, ...harvest.cut], bottom: Math.max(crop.bottom, harvest.bottom) }
}

function speciesAfter(job: Job, crop: Paragraph, species: string, size: number, left: number): Item[] | null {
  const line = piecesOf(species)
  const x = (crop.widths[0] ?? 0) + size * 0.5
  if (x + lineWidth(job.faces.italic, line) * size > left) return null
  return [{ kind: 'text', face: 'italic', size, x, baseline: 0, line }]
}

/** How a name of a full label is tried: on so many lines, from and down to a part of its largest size. */
const FULL_TRIES = [
  { maxLines: 1, from: 1, to: 0.8 },
  { maxLines: 2, from: 1, to: 0.6 },
  { maxLines: 3, from: 0.8, to: 0.6 },
  { maxLines: 2, from: 0.6, to: 0 },
  { maxLines: 3, from: 0.6, to: 0 },
]
/** A tiny label's name shrinks by a quarter before its number shrinks too. */
const TINY_TRIES = [{ maxLines: 2, from: 1, to: 0.75 }]

/**
 * The variety: its own type shrinks before that of other texts does. First in whole words, then with words broken where
 * they are too long for a line, then cut.
 */
function varietyLines(job: Job, plan: Plan, place: number, y: number, until: number): Block | null {
  const { smallest } = job.styles.variety
  const largest = sizeAt(job.styles.variety, place)
  const tries = (carriesFacts(job.carries) ? FULL_TRIES : TINY_TRIES).flatMap(({ maxLines, from, to }) =>
    sizesDown(Math.max(smallest, largest * from), Math.max(smallest, largest * to)).map((size) => ({
      maxLines,
      size,
    })),
  )
  const set = (size: number, maxLines: number, mayBreak: boolean, mayCut: boolean) => {
    const text = job.label.variety
    const wanted = {
      face: 'semibold',
      size,
      text,
      y,
      maxLines,
      mayBreak,
      mayCut,
      balanced: true,
      what: 'variety',
    } as const
    const block = paragraph(job, wanted)
    return block && block.bottom <= until ? block : null
  }
  const whole = firstOf(tries, ({ size, maxLines }) => set(size, maxLines, false, false))
  if (whole || !plan.mayCut) return whole
  const broken = firstOf(tries, ({ size, maxLines }) => set(size, maxLines, true, false))
  const smallestTried = tries.at(-1)?.size ?? smallest
  return broken ?? firstOf([3, 2, 1], (maxLines) => set(smallestTried, maxLines, true, true))
}

function firstOf<T, R>(choices: readonly T[], attempt: (choice: T) => R | null): R | null {
  for (const choice of choices) {
    const done = attempt(choice)
    if (done) return done
  }
  return null
}

/** Type sizes from the largest to the smallest by half points. */
function sizesDown(largest: number, smallest: number): number[] {
  const sizes: number[] = []
  for (let size = largest; size > smallest; size -= 0.5) sizes.push(size)
  return [...sizes, smallest]
}

interface Foot {
  readonly items: readonly Item[]
  readonly cut: readonly LabelText[]
  /** Where the ink of the foot begins, with the white above it. */
  readonly top: number
}

/** The lot number at the bottom in large type, and the name of the library under it. */
export function footOf(job: Job, plan: Plan, place: number): Foot | null {
  const width = job.room.width - job.codeSide - job.quiet
  const mayCut = plan.mayCut && place === plan.smallest
  const small = smallPrint(job, plan, sizeAt(job.styles.foot, place), width, mayCut)
  if (!small) return null
  const { number } = job.faces
  const line = wholePiece(job.label.lotNumber)
  const shape = number.shape(job.label.lotNumber)
  const size = Math.min(sizeAt(job.styles.lot, place), width / lineWidth(number, line))
  const baseline = small.top - shape.bottom * size
  return {
    items: [...small.items, { kind: 'text', face: 'number', size, x: shape.left * size, baseline, line }],
    cut: small.cut,
    top: baseline - shape.top * size - 2,
  }
}

/** The library and 'for sowing only', on one line where they fit, with their ink on the bottom of the room. */
function smallPrint(job: Job, plan: Plan, size: number, width: number, mayCut: boolean): Foot | null {
  const library = plan.library ? job.label.libraryName : ''
  const sowing = plan.sowing ? job.texts.text('paper.sowing-only') : ''
  const both = [library, sowing].filter((text) => text !== '')
  const together = both.join(` ${SEPARATOR} `)
  const fits = lineWidth(job.faces.regular, piecesOf(together)) * size <= width
  const items: Item[] = []
  const cut: LabelText[] = []
  let top = job.room.height
  for (const text of fits ? both.slice(0, 1).map(() => together) : both.toReversed()) {
    const wanted = { face: 'regular', size, text, y: 0, width, maxLines: 1, mayCut } as const
    const block = paragraph(job, { ...wanted, what: 'library' })
    if (!block) return null
    items.push(...block.items.map((item) => moved(item, 0, top - block.inkBottom)))
    cut.push(...block.cut)
    top -= block.inkBottom + size * 0.4
  }
  return { items, cut, top }
}
