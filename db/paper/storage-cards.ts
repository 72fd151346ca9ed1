import { message } from '../messages/message.ts'
import type { Texts } from '../messages/texts.ts'
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
  readonly places: readonly KeepingPlace[]
  /** Why no years can be told; empty: they can. */
  readonly notTold: string
  /** Whole sentences on how sure it is. */
  readonly howSure: readonly string[]
  readonly cautions: readonly string[]
  /** What is planted as a clove, a bulb or a tuber: it is not dried. */
  readonly pieces: boolean
  readonly libraryName: string
  /** Tells it in the language of whoever reads it. */
  readonly texts: Texts
}

/**
 * Drying and packing at home. Common practice, no source, but for the gel: indicator with cobalt is harmful, and seed
 * above about 8 % water is hurt by frost (db/domain/moisture/fit-for-freezing.ts names the source).
 */
const ADVICE = ['dry', 'container', 'frost', 'gel'] as const

/** A page for each lot. */
export function storageCardParts(cards: readonly StorageCard[]): FlowingPart[] {
  return cards.map((card) => ({
    name: message('paper.the-card', { lot: card.lotNumber }),
    texts: card.texts,
    blocks: blocksOf(card),
  }))
}

const text = paragraphsIn(11)

function blocksOf(card: StorageCard): Paragraph[] {
  const told = card.texts.text
  return [
    text(card.libraryName, 0, { size: 9 }),
    text(told('paper.card-title'), 2, { face: 'semibold', size: 18, unbrokenWithNext: true }),
    text(`${card.name} · ${card.lotNumber}`, 2, { face: 'semibold' }),
    ...card.cautions.map((caution) => text(caution, 3, { face: 'bold' })),
    text(card.notTold, 10, { ruled: true }),
    text(card.places.length === 0 ? '' : told('paper.card-years'), 10, {
      ruled: true,
      unbrokenWithNext: true,
    }),
    ...card.places.flatMap(({ place, how, years }) => [
      text(`${place}: ${years}`, 6, { face: 'semibold', unbrokenWithNext: true }),
      text(how, 0),
    ]),
    ...card.howSure.map((sentence, index) => text(sentence, index === 0 ? 8 : 1, { size: 9 })),
    text(card.pieces ? told('pieces.care') : '', 10, { ruled: true }),
    ...(card.pieces ? [] : ADVICE).flatMap((about, index) => [
      text(told(`paper.card-${about}`), index === 0 ? 10 : 6, {
        face: 'semibold',
        unbrokenWithNext: true,
        ruled: index === 0,
      }),
      text(told(`paper.card-${about}-how`), 0),
    ]),
    text(told('paper.for-sowing'), 10, { size: 9, face: 'bold', ruled: true }),
  ].filter(isSaid)
}
