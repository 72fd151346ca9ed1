import { describe, expect, it } from 'vitest'
import { type LoggerChoices, readLoggerFile } from '../../db/exchange/logger-file.ts'
import { saidInEnglish } from '../builders/in-english.ts'

function read(text: string, choices: LoggerChoices = {}) {
  const file = readLoggerFile(text, choices)
  if (file.kind !== 'read') throw new Error(JSON.stringify(file))
  return file
}
const HALF_PAST = { at: '2026-03-14T08:30', temperatureCc: 1_850, humidityPm: 420 }

describe('a logger file', () => {
  it.each([
    ['year first, commas', 'Time,Temperature (°C),Humidity (%)\n2026-03-14 08:30:00,18.5,42\n'],
    ['semicolons, decimal comma, day first', 'Zeit;Temperatur °C;Feuchte %\n14.03.2026 08:30;18,5;42,0'],
    ['tabs and a letter between day and time', 'at\ttemp C\trh\n2026-03-14T08:30:00+02:00\t18.5\t42'],
    ['quoted decimal commas between commas', 'at,temp °C,rh\n14/03/2026 08:30,"18,5","42,0"'],
    ['month first with halves of the day, degrees F', 'Date,Temp °F,RH\n3/14/2026 8:30 AM,65.3,42'],
    ['day and time apart, numbered rows', 'No,Date,Time,Temperature C,Humidity\n1,2026-03-14,08:30,18.5,42'],
    ['a month in words', 'When,Temp C,RH\n"Mar 14, 2026 8:30 am",18.5,42'],
    ['lines above the headings', 'Logger 12\nCellar\n\nTime,Temperature °C,RH %\n2026-03-14 08:30,18.5,42'],
    ['no headings, units in the cells', '14-Mar-2026 08:30,18.5 °C,42 %RH'],
    ['dew point before humidity', 'Time,Temp °C,Dew point °C,RH %\n2026-03-14 08:30,18.5,5.3,42'],
    [
      'a byte order mark and lines that end as elsewhere',
      '\uFEFFTime,Temp °C,RH\r\n2026-03-14 08:30,18.5,42\r\n',
    ],
  ])('is understood: %s', (_form, text) => {
    expect(read(text)).toMatchObject({ readings: [HALF_PAST], refused: [] })
  })

  it.each([
    '14-03-2026 08.30',
    '20260314T083000',
    '202603140830',
    'Sat Mar 14 2026 08:30:00 GMT+0100',
    '14 mars 2026 08:30',
    '14. März 2026 um 08:30 Uhr',
    '14/Mar/2026 08:30',
    '14 de marzo de 2026 08:30',
    '14/03/2026 08:30:00 a. m.',
    '14 maart 2026 08:30',
  ])('has its moments in any usual form: %s', (at) => {
    expect(read(`t;temp C\n${at};18.5`).readings).toEqual([{ ...HALF_PAST, humidityPm: null }])
  })

  it('does not take a number for a time, nor a day that is none for one that is', () => {
    expect(readLoggerFile('t;temp C\n18.50;18.5').kind).toBe('unreadable')
    expect(readLoggerFile('t;temp C\n20260314T253000;18.5').kind).toBe('unreadable')
    expect(read('t;temp C\n20260314T0830;18.5\n20261314T0830;18.5').refused).toHaveLength(1)
  })

  it('tells day from month by a number above 12, else by how steadily the rows go on', () => {
    const at = (text: string) => read(`t,temp C\n${text}`).readings.map((reading) => reading.at.slice(0, 10))
    expect(at('01/02/2026 08:00,18\n02/02/2026 08:00,18\n03/02/2026 08:00,18')).toEqual([
      '2026-02-01',
      '2026-02-02',
      '2026-02-03',
    ])
    expect(at('02/01/2026 08:00,18\n02/02/2026 08:00,18\n02/13/2026 08:00,18')[0]).toBe('2026-02-01')
  })

  it('asks where a file does not tell, and takes the answer', () => {
    const day = 'at,temp C\n01/02/2026 08:00,18\n01/02/2026 09:00,18'
    expect(readLoggerFile(day)).toMatchObject({ kind: 'ask', about: 'order' })
    expect(read(day, { order: 'month-first' }).readings[0]?.at).toBe('2026-01-02T08:00')
    const warm = 'at,value\n2026-02-01 08:00,39\n2026-02-01 09:00,38'
    expect(readLoggerFile(warm)).toMatchObject({ kind: 'ask', about: 'unit' })
    expect(read(warm, { unit: 'F' }).readings[0]?.temperatureCc).toBe(389)
  })

  it('asks which column holds the temperature where none can be told, and takes any that is named', () => {
    const odd = 'at,dew,battery\n2026-03-14 08:30,18.5,42\n2026-03-14 09:30,18.6,42'
    expect(readLoggerFile(odd)).toMatchObject({ kind: 'ask', about: 'columns', numeric: [1, 2] })
    expect(read(odd, { temperature: 1 }).readings[0]).toMatchObject({
      temperatureCc: 1_850,
      humidityPm: null,
    })
    const both = read(odd, { temperature: 1, humidity: 2 }).readings[0]
    expect(both).toMatchObject({ temperatureCc: 1_850, humidityPm: 420 })
  })

  it('says that a unit was guessed', () => {
    expect(read('at,value\n2026-02-01 08:00,68').columns).toMatchObject({ unit: 'F', unitFrom: 'guess' })
    expect(read('at,value\n2026-02-01 08:00,-18.5').columns).toMatchObject({ unit: 'C', unitFrom: 'guess' })
  })

  it('refuses each row that cannot be read with its number and why, and reads the rest', () => {
    const { readings, refused } = read(
      [
        'Time,Temperature °C,Humidity',
        '2026-03-14 08:30,18.5,42',
        'battery changed,,',
        '2026-02-30 09:00,18.5,42',
        '2026-03-14 10:00,err,42',
        '2026-03-14 10:30,18.5,142',
        '2026-03-14 08:30,18.6,42',
        '2026-03-14 11:00,812,42',
        '2026-03-14 11:30,18.5,',
      ].join('\n'),
    )
    expect(readings).toEqual([HALF_PAST, { at: '2026-03-14T11:30', temperatureCc: 1_850, humidityPm: null }])
    expect(refused.map(({ row, because }) => [row, saidInEnglish(because)])).toEqual([
      [3, 'no date and time can be read from ‘battery changed’'],
      [4, 'no date and time can be read from ‘2026-02-30 09:00’'],
      [5, 'no temperature can be read from ‘err’'],
      [6, '142 % is no relative humidity'],
      [7, 'the same minute as row 2'],
      [8, '812 degrees C cannot be in a store'],
    ])
  })

  it('is unreadable where nothing in it is a date beside a number', () => {
    expect(readLoggerFile('name,colour\nbean,white').kind).toBe('unreadable')
    expect(readLoggerFile('').kind).toBe('unreadable')
  })
})
