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
    step('reading.record', (facts) => ({
      ...key(),
      placeId: facts.placeId,
      on: TODAY,
      time: '08:30',
      temperature: 18.5,
      humidity: 42,
    })),
    step('reading.preview-file', (facts) => ({
      placeId: facts.placeId,
      fileName: 'back-room.csv',
      text: 'Time,Temperature C,Humidity\n2026-03-01 08:00,18.5,42\n',
    })),
    step('person.list-names-in-texts', () => ({})),
    step('passport.export', () => ({})),
    step('occurrence.export', () => ({})),
    step('stock.export', () => ({})),
    step('import.preview', () => LIST),
    step('import.list-refused', () => LIST),
    step('import.record', () => ({ ...key(), ...LIST })),
    step('reading.import-file', (facts) => ({
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
    step('variety.add-name', (facts) => ({ ...key(), varietyId: facts.varietyId, name: 'Lane Pea' })),
    step('variety.search', () => ({ text: 'lane' })),
    step('amount.preview', () => ({ text: '12,5 g', cropId: 'bean' })),
  ]
}
