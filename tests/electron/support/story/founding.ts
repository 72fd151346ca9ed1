import { key, type Step, step } from './step.ts'

/** A library begins: its collection, its crops and its places. */
export function founding(): readonly Step[] {
  return [
    step('collection.open-demo', () => key()),
    step('collection.start', () => ({
      ...key(),
      libraryName: 'Hollow Lane Library',
      accessionPattern: 'HL{yy}-{####}',
    })),
    step(
      'package.make',
      () => ({ people: true, places: true }),
      (facts, value) => {
        facts.packed = value.content
      },
    ),
    step('package.read-back', (facts) => ({ content: facts.packed })),
    step('collection.about', () => ({})),
    step('forecast.left', () => ({})),
    step('forecast.refresh', () => ({ limit: 10 })),
    step('forecast.hold', () => ({ held: false })),
    step('collection.change-settings', () => ({
      ...key(),
      settings: { locale: 'en-GB', regrowingsKept: 2 },
    })),
    step('crop.list', () => ({})),
    step('crop.get', () => ({ cropId: 'bean' })),
    step('crop.override', () => ({ ...key(), cropId: 'bean', plantsToKeep: 40, reason: 'Small garden' })),
    step(
      'crop.create',
      () => ({ ...key(), name: 'Lantern vine' }),
      (facts, value) => {
        facts.cropId = value.cropId
      },
    ),
    step('crop.correct', (facts) => ({
      ...key(),
      cropId: facts.cropId,
      correction: { species: 'Lychnitis errans', hundredSeedWeightG: 0.04 },
    })),
    step(
      'place.create',
      () => ({ ...key(), name: 'Back room', kind: 'room' }),
      (facts, value) => {
        facts.placeId = value.placeId
      },
    ),
    step('place.list', () => ({})),
    step('place.foresee-kind', (facts) => ({ placeId: facts.placeId, kind: 'cupboard' })),
    step('place.foresee-moves', (facts) => ({ placeId: facts.placeId })),
    step('place.spell-cost', (facts) => ({
      placeId: facts.placeId,
      from: '2026-02-01',
      until: '2026-02-07',
    })),
    step('place.change-kind', (facts) => ({ ...key(), placeId: facts.placeId, kind: 'cupboard' })),
    step('storage.list', () => ({})),
    step('place.set-terms', (facts) => ({ ...key(), placeId: facts.placeId, aim: 'short-term' })),
  ]
}
