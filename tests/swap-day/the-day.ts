/** What happens at the tables on the swap day that is played: invented people, invented seed. */

export interface GiftOfDay {
  readonly variety: string
  /** The crop's first letters; left out where the variety is known by now. */
  readonly crop?: string
  readonly harvest: string
  readonly amount: string
  readonly sample?: string
  readonly becomes?: 'declined' | 'later' | 'treated'
}

export interface DonorOfDay {
  readonly name: string
  /** The town of somebody new; left out for somebody nobody knows. */
  readonly town?: string
  readonly mayWrite?: boolean
  readonly gifts: readonly GiftOfDay[]
}

/** Eight donors with twenty gifts: one declined, one treated, one that nobody can name. */
export const DONORS: readonly DonorOfDay[] = [
  {
    name: 'Ilka Brandt',
    town: 'Sallow End',
    mayWrite: true,
    gifts: [
      { variety: 'Ferry Blue', crop: 'pea', harvest: '2025', amount: '180 seeds' },
      { variety: 'Lantern Row', crop: 'tom', harvest: 'about 2022', amount: '1.5 g' },
      { variety: 'Old Millpond', crop: 'lett', harvest: '2025', amount: '4 g' },
    ],
  },
  {
    name: 'Teodor Ash',
    town: 'Quillhaven',
    mayWrite: true,
    gifts: [
      {
        variety: 'Harrow Speckle',
        crop: 'common b',
        harvest: '2025',
        amount: '160 g',
        sample: '25 weigh 9.80 g',
      },
      { variety: 'Harrow Red', crop: 'beet', harvest: '2024', amount: '30 g' },
    ],
  },
  {
    name: 'Zoë Brontë',
    town: 'Upper Fenwick',
    mayWrite: true,
    gifts: [
      { variety: 'Hrášek’s Climber', crop: 'common b', harvest: '2024', amount: '300 seeds' },
      { variety: 'Widow Tarn', crop: 'tom', harvest: '2023', amount: '120 seeds' },
      { variety: 'Tarn Edge Leek', crop: 'leek', harvest: '2025', amount: '5 g' },
    ],
  },
  {
    name: 'Maren Holt',
    town: 'Quillhaven',
    gifts: [
      {
        variety: 'Feed Sack Dent',
        crop: 'maiz',
        harvest: '',
        amount: '85 g',
        becomes: 'treated',
      },
      { variety: 'Ferry Blue', harvest: '2024', amount: '90 seeds' },
    ],
  },
  {
    name: 'Per Lindqvist',
    town: 'Lower Meadow',
    mayWrite: true,
    gifts: [
      { variety: 'Penhallow Kale', crop: 'kale', harvest: '2025', amount: '6 g' },
      { variety: 'Mouldy Runner', crop: 'runner', harvest: '2025', amount: '40 seeds', becomes: 'declined' },
      { variety: 'Long Winter', crop: 'runner', harvest: '2025', amount: '80 seeds' },
    ],
  },
  {
    name: 'nobody',
    gifts: [{ variety: 'Unnamed bean', crop: 'common b', harvest: '', amount: '45 seeds', becomes: 'later' }],
  },
  {
    name: 'Aoife Carrick',
    town: 'Sallow End',
    mayWrite: true,
    gifts: [
      { variety: 'Carrick Parsnip', crop: 'parsn', harvest: '2025', amount: '2 g' },
      { variety: 'Evening Barley', crop: 'barley', harvest: '2025', amount: '250 g' },
      { variety: 'Lantern Row', harvest: '2025', amount: '2.2 g' },
    ],
  },
  {
    name: 'Bram Ostrander',
    town: 'Hollow Lane',
    gifts: [
      { variety: 'Ostrander’s Keeper', crop: 'onion', harvest: '2025', amount: '6 g' },
      { variety: 'Gate Squash', crop: 'squash', harvest: '2025', amount: '60 seeds' },
      { variety: 'Old Millpond', harvest: '2024', amount: '3 g' },
    ],
  },
]

export interface MemberOfDay {
  readonly name: string
  /** Whether somebody of the name is in the book by now. */
  readonly known: boolean
  readonly takes: readonly { readonly lot: string; readonly amount?: string }[]
  readonly promises?: string
}

/** Ten members at the other table. */
export const MEMBERS: readonly MemberOfDay[] = [
  { name: 'Ilka', known: true, takes: [{ lot: 'clim' }, { lot: 'old mill' }, { lot: 'penh' }] },
  {
    name: 'Tove Lindqvist',
    known: false,
    takes: [{ lot: 'ferry' }, { lot: 'lantern' }],
    promises: 'a handful',
  },
  { name: 'Rasmus Vale', known: false, takes: [{ lot: 'harrow sp', amount: '30 seeds' }] },
  { name: 'Maren', known: true, takes: [{ lot: 'gate' }, { lot: 'leek' }] },
  {
    name: 'Nils Penhallow',
    known: false,
    takes: [{ lot: 'clim', amount: '25 seeds' }],
    promises: 'twice as many',
  },
  { name: 'Oda Fenwick', known: false, takes: [{ lot: 'widow' }, { lot: 'harrow red', amount: '2 g' }] },
  { name: 'Teo', known: true, takes: [{ lot: 'long w' }] },
  { name: 'Sunniva Reed', known: false, takes: [{ lot: 'evening', amount: '20 g' }, { lot: 'penh' }] },
  { name: 'Aoife', known: true, takes: [{ lot: 'ferry' }, { lot: 'clim' }], promises: 'what can be spared' },
  { name: 'Jory Tamblyn', known: false, takes: [{ lot: 'lantern' }] },
]

/** Three who bring seed back the same afternoon, of what they took earlier in the day. */
export const RETURNS: readonly { readonly who: string; readonly amount: string; readonly plants: string }[] =
  [
    { who: 'tove', amount: '60 seeds', plants: '12' },
    { who: 'nils', amount: '120 seeds', plants: '15' },
    { who: 'rasm', amount: '90 seeds', plants: '8' },
  ]

/** The sheet of paper that lay at the second table: twelve lines, some by people met before. */
export const PAPER_SHEET: readonly {
  readonly who: string
  readonly known: boolean
  readonly lot: string
  readonly amount: string
}[] = [
  { who: 'ilka', known: true, lot: 'ferry', amount: '10 seeds' },
  { who: 'Wenna Trask', known: false, lot: 'clim', amount: '12 seeds' },
  { who: 'Hob Marlow', known: false, lot: 'gate', amount: '6 seeds' },
  { who: 'wenna', known: true, lot: 'leek', amount: '0.2 g' },
  { who: 'per', known: true, lot: 'long w', amount: '8 seeds' },
  { who: 'zoe', known: true, lot: 'old mill', amount: '0.2 g' },
  { who: 'Dilys Crane', known: false, lot: 'penh', amount: '0.3 g' },
  { who: 'hob', known: true, lot: 'harrow sp', amount: '20 seeds' },
  { who: 'dilys', known: true, lot: 'widow', amount: '10 seeds' },
  { who: 'bram', known: true, lot: 'clim', amount: '10 seeds' },
  { who: 'Ewart Moss', known: false, lot: 'keeper', amount: '0.5 g' },
  { who: 'ewart', known: true, lot: 'evening', amount: '15 g' },
]
