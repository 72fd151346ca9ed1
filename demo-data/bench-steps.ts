import type { DemoStep } from './demo-book.ts'
import type { RowOf } from './demo-tables.ts'

export function benchTestStep({ where, cells }: RowOf<'bench-tests'>): DemoStep {
  const { test, lot, on, replicates, medium, temperature, first_day, final_day, note } = cells
  return {
    on,
    where,
    async write(book) {
      const { testId } = await book.write('germination.start', `bench-${test}`, {
        lotId: book.idOf('lot', lot),
        on,
        replicates,
        medium,
        temperature,
        firstDay: first_day,
        finalDay: final_day,
        note,
      })
      book.remember('test', test, testId)
    },
  }
}

export function benchCountStep({ where, cells }: RowOf<'bench-counts'>): DemoStep {
  const { test, on, normal, abnormal, hard, fresh, dead } = cells
  const replicates = normal.map((count, index) => ({
    normal: count,
    abnormal: abnormal[index] ?? 0,
    hard: hard[index] ?? 0,
    fresh: fresh[index] ?? 0,
    dead: dead[index] ?? 0,
  }))
  return {
    on,
    where,
    write: (book) =>
      book.write('germination.record-count', `count-${test}-${on}`, {
        testId: book.idOf('test', test),
        on,
        replicates,
      }),
  }
}

export function benchEndStep({ where, cells }: RowOf<'bench-ends'>): DemoStep {
  const { test, on, how, hard, fresh, seeds_back: seedsBack, note } = cells
  const key = `end-${test}`
  return {
    on,
    where,
    write(book) {
      const testId = book.idOf('test', test)
      if (how === 'cancelled')
        return book.write('germination.cancel', key, { testId, on, reason: note, seedsBack })
      return book.write('germination.finish', key, { testId, on, choice: { hard, fresh }, note })
    },
  }
}
