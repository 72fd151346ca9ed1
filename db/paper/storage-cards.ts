import { FOR_SOWING } from './care-words.ts'
import type { FlowingPart } from './drawing/flowing-document.ts'
import { isSaid, type Paragraph, paragraphsIn } from './drawing/text-flow.ts'

/** How long seed is expected to keep in one place. */
export interface KeepingPlace {
  /** 'In a cupboard, about 20 °C'. */
  readonly place: string
  /** How it must be packed there. */
  readonly how: string
  /** 'about 4 years, between 2 and 9'. */
  readonly years: string
}

/** How to keep one lot's seed at home. */
export interface StorageCard {
  /** 'Runner bean ‘Painted Quill’'. */
  readonly name: string
  readonly lotNumber: string
  /** Until what the years count: 'until fewer than 75 of 100 seeds would be alive'. */
  readonly until: string
  readonly places: readonly KeepingPlace[]
  /** Why no years can be told; empty: they can. */
  readonly notTold: string
  /** Whole sentences on how sure it is. */
  readonly howSure: readonly string[]
  readonly cautions: readonly string[]
  readonly libraryName: string
}

/**
 * Drying and packing at home. Common practice, no source, but for the gel: indicator with cobalt is harmful, and seed
 * above about 8 % water is hurt by frost (db/domain/moisture/fit-for-freezing.ts names the source).
 */
const ADVICE: readonly (readonly [heading: string, text: string])[] = [
  [
    'Dry it first',
    'Spread it thinly in an airy, shaded room for one to three weeks, never in sun or an oven. It is dry when a long seed snaps and a round one shatters under a hammer instead of bending or flattening.',
  ],
  [
    'The container',
    'In a cupboard a paper packet will do. For a fridge or a freezer use a glass jar with a good seal, and let it come to the temperature of the room before you open it, or water settles on the seed. Write name and year on it.',
  ],
  [
    'The freezer',
    'Only for seed that is thoroughly dry: frost kills moist seed. If you are not sure that it is dry, use the fridge.',
  ],
  [
    'Drying gel',
    'If you use any, take one without cobalt, keep it away from children and animals, and wear no dust of it. Do not eat seed that lay beside coloured gel.',
  ],
]

/** A page for each lot. */
export function storageCardParts(cards: readonly StorageCard[]): FlowingPart[] {
  return cards.map((card) => ({ name: `The card for ${card.lotNumber}`, blocks: blocksOf(card) }))
}

const text = paragraphsIn(11)

function blocksOf(card: StorageCard): Paragraph[] {
  return [
    text(card.libraryName, 0, { size: 9 }),
    text('How to keep this seed', 2, { face: 'semibold', size: 18, unbrokenWithNext: true }),
    text(`${card.name} · ${card.lotNumber}`, 2, { face: 'semibold' }),
    ...card.cautions.map((caution) => text(caution, 3, { face: 'bold' })),
    text(card.notTold, 10, { ruled: true }),
    text(card.places.length === 0 ? '' : `How long it should keep, ${card.until}`, 10, {
      ruled: true,
      unbrokenWithNext: true,
    }),
    ...card.places.flatMap(({ place, how, years }) => [
      text(`${place}: ${years}`, 6, { face: 'semibold', unbrokenWithNext: true }),
      text(how, 0),
    ]),
    ...card.howSure.map((sentence, index) => text(sentence, index === 0 ? 8 : 1, { size: 9 })),
    ...ADVICE.flatMap(([heading, words], index) => [
      text(heading, index === 0 ? 10 : 6, { face: 'semibold', unbrokenWithNext: true, ruled: index === 0 }),
      text(words, 0),
    ]),
    text(FOR_SOWING, 10, { size: 9, face: 'bold', ruled: true }),
  ].filter(isSaid)
}
