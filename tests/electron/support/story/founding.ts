import { key, type Step, step } from './step.ts'

/** A library begins: its collection, its crops and its places. */
export function founding(): readonly Step[] {
  return [
    step('collection.open-demo', () => key()),
    step('collection.create', () => ({
      ...key(),
      libraryName: 'Hollow Lane Library',
      accessionPattern: 'HL{yy}-{####}',
    })),
    step(
      'package.export',
      () => ({ people: true, places: true }),
      (facts, value) => {
        facts.packed = value.content
      },
    ),
    step('package.import', (facts) => ({ content: facts.packed })),
    step('collection.get', () => ({})),
    step('forecast.get-progress', () => ({})),
    step('forecast.refresh', () => ({ limit: 10 })),
    step('forecast.pause', () => ({ held: false })),
    step('settings.change', () => ({
      ...key(),
      settings: { locale: 'en-GB', regrowingsKept: 2, dueDates: true },
    })),
    step('crop.list', () => ({})),
    step('crop.get', () => ({ cropId: 'bean' })),
    step('crop.change-policy', () => ({
      ...key(),
      cropId: 'bean',
      plantsToKeep: 40,
      reason: 'Small garden',
    })),
    step(
      'crop.create',
      () => ({ ...key(), name: 'Lantern vine' }),
      (facts, value) => {
        facts.cropId = value.cropId
      },
    ),
    step('crop.change', (facts) => ({
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
    step('place.preview-kind', (facts) => ({ placeId: facts.placeId, kind: 'cupboard' })),
    step('place.preview-moves', (facts) => ({ placeId: facts.placeId })),
    step('place.get-excursion-cost', (facts) => ({
      placeId: facts.placeId,
      from: '2026-02-01',
      until: '2026-02-07',
    })),
    step('place.change-kind', (facts) => ({ ...key(), placeId: facts.placeId, kind: 'cupboard' })),
    step('storage.list', () => ({})),
    step('place.change-terms', (facts) => ({ ...key(), placeId: facts.placeId, aim: 'short-term' })),
  ]
}
