import { fold } from '../domain/shared/fold.ts'

/** What a column of somebody's list can hold. */
export const LIST_FIELDS = [
  'crop',
  'variety',
  'otherNames',
  'ownNumber',
  'harvest',
  'amount',
  'hundredWeight',
  'sample',
  'donor',
  'donorTown',
  'received',
  'place',
  'grownAt',
  'treated',
  'terms',
  'note',
] as const
export type ListField = (typeof LIST_FIELDS)[number]

/** How fields are named to the keeper. */
export const FIELD_NAMES: Readonly<Record<ListField, string>> = {
  crop: 'crop',
  variety: 'variety',
  otherNames: 'other names of the variety',
  ownNumber: 'number it had before',
  harvest: 'harvest year',
  amount: 'amount',
  hundredWeight: 'hundred-seed weight',
  sample: 'counted and weighed sample',
  donor: 'donor',
  donorTown: 'town of the donor',
  received: 'received on',
  place: 'storage place',
  grownAt: 'grown at',
  treated: 'seed treatment',
  terms: 'terms of the gift',
  note: 'note',
}

/**
 * Words of headings by field, folded, in the languages whose lists come with a decimal comma as well as in English.
 *
 * Common practice, no source. The first field whose words fit a heading wins, so the more special stand first.
 */
const WORDS: readonly (readonly [ListField, readonly string[]])[] = [
  ['sample', ['sample', 'weighed sample', 'probe']],
  [
    'hundredWeight',
    [
      ...['hundred seed weight', '100 seed weight', 'weight of 100', 'weight of 100 seeds', '100sw', 'hsw'],
      ...['thousand seed weight', '1000 seed weight', 'tsw', 'tkw', 'tkg', 'tausendkorngewicht', 'pmg'],
      ...['hundertkorngewicht', 'thousand kernel weight', 'seed weight 100', 'hundred seed weight g'],
    ],
  ],
  [
    'otherNames',
    ['other names', 'other name', 'synonym', 'synonyms', 'synonyme', 'aka', 'also known as', 'local name'],
  ],
  [
    'ownNumber',
    [
      ...['number', 'no', 'nr', 'nummer', 'numero', 'id', 'accession', 'accession no', 'accession number'],
      ...['acc no', 'code', 'ref', 'reference', 'our number', 'old number', 'lot', 'lot no', 'lot number'],
    ],
  ],
  [
    'donorTown',
    [
      'town',
      'donor town',
      'from town',
      'city',
      'village',
      'ort',
      'ville',
      'commune',
      'donor city',
      'wohnort',
    ],
  ],
  [
    'donor',
    [
      ...[
        'donor',
        'donor name',
        'donated by',
        'given by',
        'from',
        'from whom',
        'source',
        'giver',
        'brought by',
      ],
      ...['spender', 'spenderin', 'von', 'herkunft', 'donateur', 'donante', 'received from', 'name of donor'],
    ],
  ],
  [
    'received',
    [
      ...[
        'received',
        'received on',
        'date received',
        'date',
        'date in',
        'date donated',
        'donated on',
        'acquired',
      ],
      ...[
        'acquired on',
        'datum',
        'erhalten',
        'erhalten am',
        'eingang',
        'date de reception',
        'fecha',
        'recu le',
      ],
    ],
  ],
  [
    'harvest',
    [
      ...[
        'harvest',
        'harvest year',
        'year',
        'year harvested',
        'year of harvest',
        'harvested',
        'crop year',
        'yr',
      ],
      ...[
        'jahr',
        'ernte',
        'erntejahr',
        'annee',
        'recolte',
        'annee de recolte',
        'ano',
        'cosecha',
        'year grown',
      ],
    ],
  ],
  [
    'amount',
    [
      ...[
        'amount',
        'quantity',
        'qty',
        'stock',
        'how much',
        'weight',
        'mass',
        'grams',
        'seeds',
        'count',
        'packets',
      ],
      ...[
        'menge',
        'gewicht',
        'bestand',
        'anzahl',
        'quantite',
        'poids',
        'stock g',
        'cantidad',
        'peso',
        'seed count',
      ],
      ...['no of seeds', 'number of seeds', 'packs', 'amount left', 'left', 'balance', 'how many'],
    ],
  ],
  [
    'place',
    [
      ...[
        'place',
        'storage',
        'storage place',
        'location',
        'box',
        'shelf',
        'jar',
        'stored',
        'stored in',
        'drawer',
      ],
      ...[
        'lager',
        'lagerort',
        'ort im lager',
        'kiste',
        'emplacement',
        'lieu de stockage',
        'ubicacion',
        'where',
      ],
      ...['where is it', 'where kept', 'kept in', 'cupboard'],
    ],
  ],
  [
    'grownAt',
    ['grown', 'grown at', 'grown by', 'grown in', 'grower', 'garden', 'angebaut', 'cultive a', 'where grown'],
  ],
  ['treated', ['treated', 'treatment', 'seed treatment', 'dressing', 'gebeizt', 'beize', 'traite']],
  ['terms', ['terms', 'conditions', 'terms of gift', 'donor wishes', 'bedingungen']],
  [
    'crop',
    [
      ...[
        'crop',
        'kind',
        'species',
        'plant',
        'type',
        'common name',
        'vegetable',
        'what',
        'kultur',
        'art',
        'culture',
      ],
      ...['pflanze', 'espece', 'espece cultivee', 'cultivo', 'especie', 'gemuse', 'legume', 'crop name'],
    ],
  ],
  [
    'variety',
    [
      ...['variety', 'variety name', 'cultivar', 'name', 'sorte', 'sortenname', 'variete', 'variedad', 'var'],
      ...['strain', 'landrace', 'named', 'variety cultivar'],
    ],
  ],
  [
    'note',
    [
      ...['note', 'notes', 'comment', 'comments', 'remarks', 'remark', 'story', 'description', 'bemerkung'],
      ...[
        'bemerkungen',
        'notiz',
        'notizen',
        'remarques',
        'notas',
        'observations',
        'history',
        'info',
        'details',
      ],
    ],
  ],
]

/** Words of headings of columns that say how somebody is reached, folded. Common practice, no source. */
const OF_CONTACT = new Set(
  [
    ...[
      'email',
      'e mail',
      'mail',
      'email address',
      'e mail address',
      'phone',
      'phone number',
      'telephone',
      'tel',
    ],
    ...[
      'mobile',
      'mobile number',
      'cell',
      'fax',
      'contact',
      'contact details',
      'street',
      'address',
      'home address',
    ],
    ...[
      'postal address',
      'donor address',
      'postcode',
      'post code',
      'zip',
      'zip code',
      'house number',
      'whatsapp',
    ],
    ...[
      'telefon',
      'telefonnummer',
      'handy',
      'handynummer',
      'mobil',
      'strasse',
      'hausnummer',
      'anschrift',
      'adresse',
    ],
    ...[
      'plz',
      'postleitzahl',
      'kontakt',
      'courriel',
      'telephone fixe',
      'portable',
      'rue',
      'code postal',
      'mel',
    ],
    ...['correo', 'correo electronico', 'telefono', 'movil', 'direccion', 'calle', 'codigo postal'],
  ].map(fold),
)

/** Whether a heading, or each of the words that a donor or grower stands beside, is of how somebody is reached. */
export function isContactHeading(heading: string): boolean {
  const whole = fold(heading.replace(/[([].*?[)\]]/g, ' '))
  return (
    OF_CONTACT.has(whole) ||
    OF_CONTACT.has(
      whole.replace(
        /^(?:donor|grower|spender|donateur|donante) s? ?| (?:donor|grower|of donor|of grower)$/g,
        '',
      ),
    )
  )
}

const BY_WORD = new Map([
  ...LIST_FIELDS.map((field) => [fold(FIELD_NAMES[field]), field] as const),
  ...WORDS.flatMap(([field, words]) => words.map((word) => [word, field] as const)),
])

/** A unit that a heading names: 'Weight (g)', 'Amount in oz', 'Seeds'. */
const UNIT_IN_HEADING =
  /(?:^|[\s([/,])(mg|g|gr|grams?|gramm|grammes|kg|oz|lbs?|seeds?|korner|graines|packets?|packs?|pkts?)(?:$|[\s)\]/.,])/

/** The field that a heading names, and its unit where it says one; null where it says nothing known here. */
export function fieldOfHeading(heading: string): ListField | null {
  const whole = fold(heading)
  if (whole === '') return null
  const without = fold(heading.replace(/[([].*?[)\]]/g, ' '))
  return (
    BY_WORD.get(whole) ??
    BY_WORD.get(without) ??
    BY_WORD.get(without.replace(/\s(?:in )?(?:mg|g|kg|oz|lb|grams|grammes|gramm)$/, '')) ??
    null
  )
}

/** The unit that a heading gives all the numbers under it, as an amount is typed; null where it says none. */
export function unitOfHeading(heading: string): string | null {
  const unit = UNIT_IN_HEADING.exec(
    heading
      .toLowerCase()
      .normalize('NFKD')
      .replace(/\p{Diacritic}/gu, ''),
  )?.[1]
  if (unit === undefined) return /anzahl|count|number of seeds|how many/i.test(heading) ? 'seeds' : null
  if (/^(seeds?|korner|graines)$/.test(unit)) return 'seeds'
  if (/^pa?c?k/.test(unit)) return 'packets'
  if (/^gram|^gr?$/.test(unit)) return 'g'
  return unit.replace(/^lbs$/, 'lb')
}

/** Whether a heading speaks of a thousand seeds rather than a hundred. */
export function isOfThousand(heading: string): boolean {
  return /thousand|1\s?000|tausend|mille|\bt[sk]w\b|\btkg\b|\bpmg\b/i.test(heading)
}
