import type { RunningApp } from '../app/support/running-app.ts'

/** Saves a plan of what is most urgent, where none is saved yet. */
export async function savePlanOnce(app: RunningApp): Promise<void> {
  if ((await app.call('season-plan.get', {})).plan !== null) return
  const { needs } = await app.call('regeneration.list', { limit: 20 })
  const accessionIds = needs.map(({ accessionId }) => accessionId)
  const { lines } = await app.call('season-plan.preview', { accessionIds, seconds: 0 })
  const choices = lines.map(({ accessionId, siteId, way }) => ({ accessionId, siteId, way }))
  await app.call('season-plan.create', { choices })
}
