import { freshCollection, timed } from './fresh-collection.ts'

// npm run bench:list: a list of 60,000 gifts of 8,000 varieties and 3,000 donors, first looked at and then taken in;
// and a list of one row afterwards, which must not pay for the one before.

const ROWS = 60_000
const { call, remove } = await freshCollection()

const crops = ['Tomato', 'Common bean', 'Garden pea', 'Lettuce', 'Runner bean']
const rows = Array.from({ length: ROWS }, (_, index) =>
  [
    `Q-${index}`,
    crops[index % crops.length],
    `Variety ${index % 8_000}`,
    2_000 + (index % 25),
    `${((index % 400) + 1) / 4} g`.replace('.', ','),
    `Donor ${index % 3_000}`,
    `${(index % 28) + 1}.${(index % 12) + 1}.2025`,
    'sown every year in the long bed',
  ].join(';'),
)
const text = ['Number;Crop;Variety;Year;Amount;Donor;Received;Notes', ...rows].join('\n')
const list = { fileName: 'list.csv', content: Buffer.from(text).toString('base64') }
await timed(`${ROWS} rows looked at`, () => call('import.preview', list))
await timed(`${ROWS} rows taken in`, () => call('import.record', { key: 'bench-list', ...list }))
const one = {
  fileName: 'one.csv',
  content: Buffer.from('Crop,Variety,Amount\nTomato,Quay,5 g\n').toString('base64'),
}
await timed('one row looked at afterwards', () => call('import.preview', one))
await timed('one row taken in', () => call('import.record', { key: 'bench-one-row', ...one }))
remove()
