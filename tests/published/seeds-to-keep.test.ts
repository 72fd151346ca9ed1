import { expect, test } from 'vitest'
import { CAUTIOUS_VIABILITY } from '../../db/domain/germination/assumed-viability.ts'
import { seedsForOneRegrowing, seedsToKeep } from '../../db/domain/needs/what-to-keep.ts'

/**
 * Three regeneration cycles: IBPGR handbook of 1985 (Hanson, Procedures for Handling Seeds in Genebanks), chapter 10:
 * regrow when seed is too little for three regeneration cycles (seen); FAO Genebank Standards 2014, standard 4.4.1
 * (from memory). Sixty plants and 0.8 emergence are an example, not published figures.
 */
test('three regrowings of 60 plants at 0.8 emergence need 3 x 60 / 0.8 = 225 living seeds', () => {
  expect(seedsToKeep({ regrowings: 3, plants: 60, emergence: 0.8 })).toBe(225)
  expect(seedsForOneRegrowing({ regrowings: 3, plants: 60, emergence: 0.8 })).toBe(75)
})

/** Seen: a popular article after Cornell. 75 % germination and three plants wanted: sow four seeds. */
test('three plants at 0.75 take four seeds', () => {
  expect(seedsForOneRegrowing({ regrowings: 1, plants: 3, emergence: 0.75 })).toBe(4)
})

/** Common practice, no source: half of untested seed is taken to be alive where no law names a minimum. */
test('the cautious figure for crops without a legal minimum is one half', () => {
  expect(CAUTIOUS_VIABILITY).toBe(0.5)
})
