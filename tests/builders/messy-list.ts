/** A list as a volunteer kept it for years, of our own making: titles above, gaps, slips of the pen, every way to write an amount. */
export interface MessyList {
  readonly text: string
  /** How many lines hold a gift at all. */
  readonly lines: number
}

const CROPS = [
  'Tomato',
  'tomatoes',
  'Common bean',
  'Beans',
  'Garden pea',
  'Lettuce',
  'Pumpkn',
  'Runner bean',
  'Solanum lycopersicum',
]
const NAMES = [
  'Millpond',
  'Quill Hollow',
  'Widow Tarn',
  'Ferry Red',
  'Saltmarsh Giant',
  'Lantern',
  'Old Tithe',
  'Grey Heron',
]
const AMOUNTS = [
  '12,5 g',
  '1.250 g',
  'about 200',
  '3 packets of 25',
  '3 packets',
  '1/2 oz',
  '40',
  '60 seeds',
  'some',
  '',
  '0',
  '2,75',
]
const YEARS = ['2019', '2021.0', 'summer 2020', 'ca. 2018', '2017-2019', '?', '', '12.08.2022', '19']
const DONORS = [
  'Ada Fennimore',
  'ada fennimore',
  'Tobias Wren',
  'Tobias Wrenn',
  'unknown',
  '',
  'Ilse Brückner',
]
/** Names that Windows-1252 cannot hold: Cyrillic, Greek, and two scripts that are written from right to left. */
const OF_OTHER_SCRIPTS = ['Оксана Верболіз', 'Ελένη Κήπου', 'דנה זרעוני', 'ليلى البستاني']

const PLACES = ['Cold box 1', 'cold box 1', 'Cold box 2', 'Fridge door', '']
const DAYS = ['14.03.2023', '2.4.2023', '2022', 'Jun 2021', '', '31.12.2022', '14.03.2031']
const NOTES = [
  '',
  '=SUM(A1)',
  'sown in "the long bed"; good',
  'seed was treated by the shop',
  'line\nbreak',
  'Keeps well, says Ada',
]

/** So many lines of it, by semicolons and decimal commas; in Windows-1252 unless names of other scripts are wanted. */
export function messyList(lines: number, scripts: 'one' | 'several' = 'one'): MessyList {
  const donors = scripts === 'one' ? DONORS : [...DONORS, ...OF_OTHER_SCRIPTS]
  const pick = (values: readonly string[], index: number) => values[index % values.length] ?? ''
  const rows = Array.from({ length: lines }, (_, index) => {
    const name = `${pick(NAMES, index * 5)} ${pick(['', 'Early', 'No. 4', 'Blue'], index >> 3)} ${index % 7 === 0 ? '' : `of row ${index >> 2}`}`
    return [
      String(index + 1),
      pick(CROPS, index),
      name.replace(/ +/g, ' ').trim(),
      pick(YEARS, index >> 1),
      pick(AMOUNTS, index * 7),
      pick(donors, index >> 2),
      pick(DAYS, index * 3),
      pick(PLACES, index >> 4),
      pick(NOTES, index * 11),
    ]
  })
  const all = [
    ['Our seeds, as of spring', '', '', '', '', '', '', '', ''],
    ['', '', '', '', '', '', '', '', ''],
    ['#', 'Art', 'Sorte', 'Erntejahr', 'Menge', 'Spender', 'Erhalten am', 'Lagerort', 'Bemerkung'],
    ...rows.flatMap((row, index) =>
      index % 50 === 49 ? [row, ['', '', '', '', '', '', '', '', '']] : [row],
    ),
    ['Total', '', '', '', '5.000 g', '', '', '', ''],
  ]
  const quoted = (cell: string) => (/[";\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell)
  return { text: all.map((row) => row.map(quoted).join(';')).join('\r\n'), lines }
}

/** Text in Windows-1252, as a spreadsheet of that system saves it. */
export function inWindows1252(text: string): Buffer {
  return Buffer.from(text, 'latin1')
}
