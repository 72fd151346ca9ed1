import {
  type Block,
  type Item,
  type Job,
  moved,
  narrowedAt,
  type Paragraph,
  paragraph,
} from './packet-blocks.ts'
import type { Plan } from './packet-plans.ts'
import { SMALLEST_TYPE_PT, sizeAt } from './packet-styles.ts'
import { SOWING_ONLY } from './packet-text.ts'
import { lineWidth, piecesOf, wholePiece } from './text-fitting.ts'

const NOTHING: Block = { items: [], cut: [], bottom: 0 }
const RULE = 0.5
/** How far the variety of a tiny label shrinks before its number does too. */
const TINY_SHRINK = 0.75

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
  if (job.carries === 'name-and-number') return { items, cut, bottom: variety.bottom }
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
  const words = job.carries === 'everything' ? `harvest ${label.harvest}` : label.harvest
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
    what: 'plant kind',
  })
  if (!crop) return null
  const species = plan.species && label.species ? speciesAfter(job, crop, label.species, size, left) : []
  if (!species) return null
  const baseline = Math.max(crop.baselines[0] ?? 0, harvest.baselines[0] ?? 0)
  const items = [...crop.items, ...species, ...moved(harvest.items, harvestAt, 0)].map((item) =>
    item.kind === 'text' ? { ...item, baseline } : item,
  )
  return { items, cut: [...crop.cut, ...harvest.cut], bottom: Math.max(crop.bottom, harvest.bottom) }
}

function speciesAfter(job: Job, crop: Paragraph, species: string, size: number, left: number): Item[] | null {
  const line = piecesOf(species)
  const x = (crop.widths[0] ?? 0) + size * 0.5
  if (x + lineWidth(job.faces.italic, line) * size > left) return null
  return [{ kind: 'text', face: 'italic', size, x, baseline: 0, line }]
}

/**
 * The variety: its own type shrinks before that of other texts does. First whole words on two lines, then broken ones
 * or a third line, then cut.
 */
function varietyLines(job: Job, plan: Plan, place: number, y: number, until: number): Block | null {
  const { variety } = job.styles
  const full = job.carries === 'everything'
  const largest = sizeAt(variety, place)
  const floor = full ? variety.smallest : Math.max(variety.smallest, largest * TINY_SHRINK)
  const sizes = sizesDown(largest, floor)
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
  const whole = firstOf(sizes, (size) => set(size, 2, false, false))
  if (whole || !(plan.mayCut || full)) return whole
  const broken = firstOf(sizes, (size) => set(size, full ? 3 : 2, plan.mayCut, false))
  if (broken || !plan.mayCut) return broken
  return firstOf(full ? [3, 2, 1] : [2, 1], (maxLines) => set(floor, maxLines, true, true))
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
  readonly cut: readonly string[]
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
  const size = Math.min(sizeAt(job.styles.lot, place), width / shape.width)
  const baseline = small.top - shape.bottom * size
  return {
    items: [...small.items, { kind: 'text', face: 'number', size, x: 0, baseline, line }],
    cut: size < SMALLEST_TYPE_PT ? [...small.cut, 'number, printed very small'] : small.cut,
    top: baseline - shape.top * size - 2,
  }
}

/** The library and 'for sowing only', on one line where they fit, with their ink on the bottom of the room. */
function smallPrint(job: Job, plan: Plan, size: number, width: number, mayCut: boolean): Foot | null {
  const library = plan.library ? job.label.libraryName : ''
  const sowing = plan.sowing ? SOWING_ONLY : ''
  const both = [library, sowing].filter((text) => text !== '')
  const together = both.join(' · ')
  const fits = lineWidth(job.faces.regular, piecesOf(together)) * size <= width
  const items: Item[] = []
  const cut: string[] = []
  let top = job.room.height
  for (const text of fits ? both.slice(0, 1).map(() => together) : both.toReversed()) {
    const wanted = { face: 'regular', size, text, y: 0, width, maxLines: 1, mayCut } as const
    const block = paragraph(job, { ...wanted, what: 'name of the library' })
    if (!block) return null
    items.push(...moved(block.items, 0, top - block.inkBottom))
    cut.push(...block.cut)
    top -= block.inkBottom + size * 0.3
  }
  return { items, cut, top }
}
