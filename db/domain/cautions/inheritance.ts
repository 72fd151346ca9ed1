import type { CautionKind } from '../shared/closed-sets.ts'

/** What happens to a lot that has a caution. */
export type CautionEvent = 'split' | 'merge' | 'return' | 'harvest' | 'test' | 'discard'

/** Of the seed that comes of it: it has the caution too; until it was checked; somebody is asked; it has not. */
type Inherited = 'has-it' | 'until-checked' | 'asked' | 'has-not'
/** Of what is done with the seed: with care, or as with any. */
type Handled = 'with-care' | 'as-any'

type CautionRule = Readonly<
  Record<'split' | 'merge' | 'return' | 'harvest', Inherited> & Record<'test' | 'discard', Handled>
>

/**
 * What a caution means for what comes of a lot and for what is done with it.
 *
 * Seed grown from dressed seed carries no dressing; pests live in the store, not in the plant; poison, regulation and a right on
 * a variety belong to the plant; a cross shows in the next generation only. Common practice, no source.
 */
export const CAUTION_RULES: Readonly<Record<CautionKind, CautionRule>> = {
  treated: rule('has-not', 'with-care', 'with-care'),
  'pests-seen': rule('asked', 'with-care', 'with-care'),
  regulated: rule('has-it', 'as-any', 'with-care'),
  toxic: rule('has-it', 'with-care', 'with-care'),
  'protected-variety': rule('has-it', 'as-any', 'as-any'),
  'possible-cross': rule('until-checked', 'as-any', 'as-any'),
}

function rule(grown: Inherited, test: Handled, discard: Handled): CautionRule {
  return { split: 'has-it', merge: 'has-it', return: grown, harvest: grown, test, discard }
}

/** That a lot has seed of another or was grown from it, by an entry. */
export interface Descent {
  readonly lotId: number
  readonly parentLotId: number
  readonly by: 'split' | 'merge' | 'return' | 'harvest'
  readonly entryId: number
}

/** That a caution was said of a lot. Entry 0: before who said it was kept. */
export interface CautionSet {
  readonly lotId: number
  readonly caution: CautionKind
  readonly note: string
  readonly onDate: string
  readonly entryId: number
}

/** That a caution holds for a lot no more. */
export interface CautionEnd {
  readonly lotId: number
  readonly caution: CautionKind
  readonly entryId: number
}

/** What was said of lots and of all that they came from. Entries are numbered in the order in which they were written. */
export interface CautionHistory {
  readonly descent: readonly Descent[]
  readonly sets: readonly CautionSet[]
  readonly ends: readonly CautionEnd[]
}

/** The cautions that hold for a lot, as they were said, of itself or of what it came from. */
export function cautionsInForce(history: CautionHistory, lotId: number): CautionSet[] {
  const kinds = new Set(history.sets.map(({ caution }) => caution))
  return [...kinds].flatMap((kind) => {
    const marks = marksOf(history, kind, lotId, Number.POSITIVE_INFINITY)
    return [...new Map(marks.map(({ set }) => [set, set])).values()]
  })
}

/** A caution as it came to a lot: said of it, or by the entry that brought the seed. */
interface Mark {
  readonly set: CautionSet
  readonly cameBy: number
}

/**
 * What of the seed itself (dressing, pests) goes along where it held when the seed parted, or holds now: an end is about the
 * one jar that was treated or looked at. What is of the plant holds for descendants as long as it holds for where they came from.
 * A part that was split off and poured back again comes round to where it began: `seen` has what is on the way already.
 */
function marksOf(
  history: CautionHistory,
  kind: CautionKind,
  lotId: number,
  until: number,
  seen: ReadonlySet<string> = new Set(),
): Mark[] {
  const here = `${lotId} ${until}`
  if (seen.has(here)) return []
  const way = new Set(seen).add(here)
  const { descent, sets, ends } = history
  const grownHasIt = CAUTION_RULES[kind].harvest
  const ofThePlant = grownHasIt === 'has-it' || grownHasIt === 'until-checked'
  const own = sets
    .filter((set) => set.lotId === lotId && set.caution === kind && set.entryId <= until)
    .map((set) => ({ set, cameBy: set.entryId }))
  const inherited = descent
    .filter((step) => step.lotId === lotId && step.entryId <= until)
    .filter(({ by }) => ['has-it', 'until-checked'].includes(CAUTION_RULES[kind][by]))
    .flatMap(({ parentLotId, entryId }) => {
      const now = marksOf(history, kind, parentLotId, until, way)
      const then = ofThePlant ? [] : marksOf(history, kind, parentLotId, entryId, way)
      return [...now, ...then].map(({ set, cameBy }) => ({ set, cameBy: Math.max(cameBy, entryId) }))
    })
  const ended = Math.max(
    -1,
    ...ends
      .filter((end) => end.lotId === lotId && end.caution === kind && end.entryId <= until)
      .map(({ entryId }) => entryId),
  )
  return [...own, ...inherited].filter(({ cameBy }) => cameBy > ended)
}
