import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { templatesFolder } from '../../support/templates.ts'
import type { RunningApp } from './running-app.ts'

export interface SmallShelf {
  readonly today: string
  /** A week ago, when the lots were there already. */
  readonly lately: string
  readonly shelfId: number
  /** Tall climbing bean: 300 seeds, plenty. */
  readonly bean: Lot
  /** A tomato of which 12 seeds are left. */
  readonly tomato: Lot
  /** Treated maize, in quarantine, with a very long name. */
  readonly maize: Lot
}

export interface Lot {
  readonly lotId: number
  readonly lotNumber: string
  readonly scanCode: string
}

export const LONG_NAME =
  'Harrow Lane Giant of the Lower Meadow, the late strain that the Penhallow sisters kept through the long winter'

const factsFile = () => join(templatesFolder(), 'shelf.json')

/** What lies on the shelf of the pattern 'shelf'. */
export function smallShelf(): SmallShelf {
  return JSON.parse(readFileSync(factsFile(), 'utf8')) as SmallShelf
}

/** Fills the shelf of the pattern 'shelf' and writes down what lies on it. */
export async function makeSmallShelf(app: RunningApp): Promise<void> {
  writeFileSync(factsFile(), JSON.stringify(await fillSmallShelf(app)))
}

/** Puts three lots on an empty shelf: plenty, nearly none, and one kept back. */
export async function fillSmallShelf(app: RunningApp): Promise<SmallShelf> {
  const { today } = await app.call('collection.get', {})
  const { crops } = await app.call('crop.list', {})
  const crop = (name: string) => {
    const found = crops.find(({ commonName }) => commonName.toLowerCase().includes(name))
    if (found === undefined) throw new Error(`The crop table has no ${name}`)
    return found.cropId
  }
  const { placeId: roomId } = await app.call('place.create', { name: 'Seed room', kind: 'room' })
  const { placeId: shelfId } = await app.call('place.create', {
    parentId: roomId,
    name: 'Window shelf',
    kind: 'shelf',
  })
  const gift = (cropId: string, name: string, amount: string, more: object = {}) => ({
    variety: { newVariety: { cropId, name } },
    amount,
    ...more,
  })
  const { taken } = await app.call('intake.record', {
    donor: { newPerson: { name: 'Zoë Brontë', town: 'Quillhaven' } },
    receivedOn: '2026-01-02',
    gifts: [
      gift(crop('common bean'), 'Hrášek’s Climber', '300 seeds', {
        harvest: '2024',
        placeId: shelfId,
        story: 'Carried over the pass in a tobacco tin.',
      }),
      gift(crop('tomato'), 'Widow Tarn', '12 seeds', { harvest: 'about 2019' }),
      gift(crop('maize'), LONG_NAME, '85 g', { cautions: ['treated'], cautionNote: 'red dust' }),
    ],
  })
  const [bean, tomato, maize] = taken
  if (bean === undefined || tomato === undefined || maize === undefined)
    throw new Error('Three gifts were given')
  const lately = new Date(Date.parse(today) - 7 * 86_400_000).toISOString().slice(0, 10)
  return { today, lately, shelfId, bean, tomato, maize }
}
