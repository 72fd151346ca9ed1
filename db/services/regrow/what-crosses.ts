import type { PopulationGoal } from '../../domain/needs/population-goal.ts'
import { crossingGroup } from '../../domain/season-plan/crossing.ts'
import { isolationKind } from '../../domain/season-plan/isolation-distance.ts'
import { type Message, message } from '../../messages/message.ts'
import { sourceInWords } from '../../migrations/crop-table.ts'
import { everyCrop, type PlanCropRow } from '../../queries/plan-rows.ts'
import type { Reading } from '../book/context.ts'

/** What the crop table names as the source of a distance; null where it has none. */
export function isolationSource(ofCrop: PlanCropRow, grade: PopulationGoal): Message | string | null {
  if (ofCrop.own === 1) return ofCrop[isolationKind(grade)] === null ? null : message('season.own-distance')
  const kind = isolationKind(grade)
  const source = kind === 'home' ? ofCrop.homeSource : ofCrop.strictSource
  return ofCrop[kind] === null || source === null ? null : sourceInWords(source)
}

/** The everyday names of the crops that cross with one another, by their group. */
export function cropsByGroup(reading: Reading): ReadonlyMap<string, string[]> {
  const crops = Map.groupBy(everyCrop(reading.sqlite), crossingGroup)
  return new Map([...crops].map(([group, rows]) => [group, rows.map(({ crop }) => crop)]))
}
