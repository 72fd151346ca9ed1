import { TODAY } from '../../../builders/temporary-collection.ts'
import { key, type Step, step } from './step.ts'

/** A list of one gift, as a spreadsheet saves it. */
const LIST = {
  fileName: 'list.csv',
  content: Buffer.from('Crop;Variety;Year;Amount\nPea;Weir Marrowfat;2024;80 g\n').toString('base64'),
}

/** Places are read, lists come in, people and varieties are noted. */
export function keeping(): readonly Step[] {
  return [
    step('reading.note', (facts) => ({
      ...key(),
      placeId: facts.placeId,
      on: TODAY,
      time: '08:30',
      temperature: 18.5,
      humidity: 42,
    })),
    step('readings.foresee-file', (facts) => ({
      placeId: facts.placeId,
      fileName: 'back-room.csv',
      text: 'Time,Temperature C,Humidity\n2026-03-01 08:00,18.5,42\n',
    })),
    step('name.list', () => ({})),
    step('passport.make', () => ({})),
    step('occurrence.make', () => ({})),
    step('stock.make', () => ({})),
    step('list.foresee', () => LIST),
    step('list.refused', () => LIST),
    step('list.take-in', () => ({ ...key(), ...LIST })),
    step('readings.import-file', (facts) => ({
      ...key(),
      placeId: facts.placeId,
      fileName: 'back-room.csv',
      text: 'Time,Temperature C,Humidity\n2026-03-01 08:00,18.5,42\n',
    })),
    step('storage.get', (facts) => ({ placeId: facts.placeId })),
    step('round.list', () => ({})),
    step('storage.compare', (facts) => ({ placeIds: [facts.placeId, facts.placeId] })),
    step(
      'person.create',
      () => ({ ...key(), name: 'Ilka Brandt', town: 'Quillhaven', roles: ['donor'] }),
      (facts, value) => {
        facts.personId = value.personId
      },
    ),
    step('person.search', () => ({ text: 'ilka' })),
    step(
      'variety.create',
      () => ({ ...key(), cropId: 'pea', name: 'Hollow Lane Tall' }),
      (facts, value) => {
        facts.varietyId = value.varietyId
      },
    ),
    step('variety.add-synonym', (facts) => ({ ...key(), varietyId: facts.varietyId, name: 'Lane Pea' })),
    step('variety.search', () => ({ text: 'lane' })),
    step('amount.read', () => ({ text: '12,5 g', cropId: 'bean' })),
  ]
}
