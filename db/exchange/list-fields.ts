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

/**
 * Words of headings by field, folded, in the languages whose lists come with a decimal comma as well as in English.
 *
 * Common practice, no source. The first field whose words fit a heading wins, so the more special stand first.
 */
const WORDS: readonly (readonly [ListField, readonly string[]])[] = [
  [
    'sample',
    words(
      'sample, weighed sample, probe, counted and weighed sample, muestra, muestra pesada, ' +
        'muestra contada y pesada',
    ),
  ],
  [
    'hundredWeight',
    words(
      'hundred seed weight, 100 seed weight, weight of 100, weight of 100 seeds, 100sw, hsw, ' +
        'thousand seed weight, 1000 seed weight, tsw, tkw, tkg, tausendkorngewicht, pmg, ' +
        'hundertkorngewicht, thousand kernel weight, seed weight 100, hundred seed weight g, ' +
        'peso de cien semillas, peso de 100 semillas, peso de 100, peso de cien, ' +
        'peso 100 semillas, peso de mil semillas, peso de 1000 semillas, peso de mil',
    ),
  ],
  [
    'otherNames',
    words(
      'other names, other name, synonym, synonyms, synonyme, aka, also known as, local name, ' +
        'other names of the variety, otros nombres, otro nombre, otros nombres de la variedad, ' +
        'sinonimo, sinonimos, tambien llamada, tambien llamado, nombre local, nombres locales, ' +
        'alias',
    ),
  ],
  [
    'ownNumber',
    words(
      'number, no, nr, nummer, numero, id, accession, accession no, accession number, acc no, ' +
        'code, ref, reference, our number, old number, lot, lot no, lot number, ' +
        'number it had before, num, n o, numero que tenia antes, numero anterior, numero antiguo, ' +
        'nuestro numero, accesion, numero de accesion, n de accesion, codigo, referencia, lote, ' +
        'numero de lote, entrada',
    ),
  ],
  [
    'donorTown',
    words(
      'town, donor town, from town, city, village, ort, ville, commune, donor city, wohnort, ' +
        'town of the donor, pueblo, ciudad, localidad, municipio, poblacion, pueblo del donante, ' +
        'ciudad del donante, localidad del donante',
    ),
  ],
  [
    'donor',
    words(
      'donor, donor name, donated by, given by, from, from whom, source, giver, brought by, ' +
        'spender, spenderin, von, herkunft, donateur, donante, received from, name of donor, ' +
        'donantes, donador, donadora, donado por, donada por, de quien, de parte de, traido por, ' +
        'traida por, procedencia, origen, nombre del donante, recibido de, recibida de, ' +
        'entregado por, entregada por',
    ),
  ],
  [
    'received',
    words(
      'received, received on, date received, date, date in, date donated, donated on, acquired, ' +
        'acquired on, datum, erhalten, erhalten am, eingang, date de reception, fecha, recu le, ' +
        'recibido, recibida, recibido el, recibida el, fecha de recepcion, fecha de entrada, ' +
        'fecha de donacion, fecha de ingreso, entro el',
    ),
  ],
  [
    'harvest',
    words(
      'harvest, harvest year, year, year harvested, year of harvest, harvested, crop year, yr, ' +
        'jahr, ernte, erntejahr, annee, recolte, annee de recolte, ano, cosecha, year grown, ' +
        'ano de cosecha, ano de la cosecha, cosechado, cosechada, cosechado en, cosechada en, ' +
        'recolectado, recolectada, recoleccion, temporada, ano de recoleccion, campana',
    ),
  ],
  [
    'amount',
    words(
      'amount, quantity, qty, stock, how much, weight, mass, grams, seeds, count, packets, ' +
        'menge, gewicht, bestand, anzahl, quantite, poids, stock g, cantidad, peso, seed count, ' +
        'no of seeds, number of seeds, packs, amount left, left, balance, how many, ' +
        'cantidad de semillas, cuanto, cuanta, cuanto hay, cuanta hay, cuantas, cuantas hay, ' +
        'existencias, gramos, semillas, numero de semillas, sobres, peso g, recuento, quedan, ' +
        'saldo, total de semillas',
    ),
  ],
  [
    'place',
    words(
      'place, storage, storage place, location, box, shelf, jar, stored, stored in, drawer, ' +
        'lager, lagerort, ort im lager, kiste, emplacement, lieu de stockage, ubicacion, where, ' +
        'where is it, where kept, kept in, cupboard, lugar, lugar de almacenamiento, sitio, ' +
        'almacenado en, almacenada en, guardado en, guardada en, almacen, caja, estante, ' +
        'estanteria, tarro, frasco, cajon, armario, donde, donde esta, nevera',
    ),
  ],
  [
    'grownAt',
    words(
      'grown, grown at, grown by, grown in, grower, garden, angebaut, cultive a, where grown, ' +
        'cultivado, cultivada, cultivado en, cultivada en, cultivado por, cultivada por, ' +
        'donde se cultivo, huerto, huerta, quien cultiva, lugar de cultivo',
    ),
  ],
  [
    'treated',
    words(
      'treated, treatment, seed treatment, dressing, gebeizt, beize, traite, tratado, tratada, ' +
        'tratamiento, tratamiento de la semilla, tratamiento de semillas',
    ),
  ],
  [
    'terms',
    words(
      'terms, conditions, terms of gift, terms of the gift, donor wishes, bedingungen, condiciones, ' +
        'condiciones de la donacion, deseos del donante, terminos',
    ),
  ],
  [
    'crop',
    words(
      'crop, kind, species, plant, type, common name, vegetable, what, kultur, art, culture, ' +
        'pflanze, espece, espece cultivee, cultivo, especie, gemuse, legume, crop name, cultivos, ' +
        'tipo, planta, hortaliza, verdura, nombre comun, nombre del cultivo, clase',
    ),
  ],
  [
    'variety',
    words(
      'variety, variety name, cultivar, name, sorte, sortenname, variete, variedad, var, strain, ' +
        'landrace, named, variety cultivar, variedades, nombre, nombre de la variedad, ' +
        'cultivar variedad, variedad cultivar, variedad local, raza local, ecotipo',
    ),
  ],
  [
    'note',
    words(
      'note, notes, comment, comments, remarks, remark, story, description, bemerkung, ' +
        'bemerkungen, notiz, notizen, remarques, notas, observations, history, info, details, ' +
        'nota, comentario, comentarios, observacion, observaciones, descripcion, historia, apunte, ' +
        'apuntes, detalle',
    ),
  ],
]

/** The headings that the file of refused rows has before those of the list, folded, in the languages the app speaks. */
const ADDED = [
  new Set(words('row in the list, fila de la lista')),
  new Set(words('why it did not come in, por que no entro')),
]

/** How many columns at the beginning this app put before those of the list, when it gave refused rows back. */
export function addedColumns(headings: readonly string[]): number {
  return ADDED.every((known, index) => known.has(fold(headings[index] ?? ''))) ? ADDED.length : 0
}

/** Words of headings of columns that say how somebody is reached, folded. Common practice, no source. */
const OF_CONTACT = new Set(
  words(
    'email, e mail, mail, email address, e mail address, phone, phone number, telephone, tel, ' +
      'mobile, mobile number, cell, fax, contact, contact details, street, address, ' +
      'home address, postal address, donor address, postcode, post code, zip, zip code, ' +
      'house number, whatsapp, telefon, telefonnummer, handy, handynummer, mobil, strasse, ' +
      'hausnummer, anschrift, adresse, plz, postleitzahl, kontakt, courriel, telephone fixe, ' +
      'portable, rue, code postal, mel, correo, correo electronico, telefono, movil, direccion, ' +
      'calle, codigo postal, tel fijo, telefono fijo, telefono movil, celular, domicilio, ' +
      'direccion postal, e mail del donante, numero de telefono, contacto, datos de contacto, ' +
      'correo e, apartado de correos',
  ),
)

/** Whether a heading, or each of the words that a donor or grower stands beside, is of how somebody is reached. */
export function isContactHeading(heading: string): boolean {
  const whole = fold(heading.replace(/[([].*?[)\]]/g, ' '))
  return (
    OF_CONTACT.has(whole) ||
    OF_CONTACT.has(
      whole.replace(
        /^(?:donor|grower|spender|donateur|donante) s? ?| (?:donor|grower|of donor|of grower|(?:del? )?donante)$/g,
        '',
      ),
    )
  )
}

const BY_WORD = new Map([...WORDS.flatMap(([field, words]) => words.map((word) => [word, field] as const))])

/** A unit that a heading names: 'Weight (g)', 'Amount in oz', 'Seeds'. */
const UNIT_IN_HEADING =
  /(?:^|[\s([/,])(mg|g|gr|grams?|gramm|grammes|gramos?|kg|oz|onzas?|lbs?|seeds?|korner|graines|semillas?|packets?|packs?|pkts?|sobres?)(?:$|[\s)\]/.,])/

/** The field that a heading names, and its unit where it says one; null where it says nothing known here. */
export function fieldOfHeading(heading: string): ListField | null {
  const whole = fold(heading)
  if (whole === '') return null
  const without = fold(heading.replace(/[([].*?[)\]]/g, ' '))
  return (
    BY_WORD.get(whole) ??
    BY_WORD.get(without) ??
    BY_WORD.get(without.replace(/\s(?:in |en )?(?:mg|g|kg|oz|lb|grams|grammes|gramm|gramos)$/, '')) ??
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
  if (unit === undefined)
    return /anzahl|count|number of seeds|how many|cuantas|recuento/i.test(heading) ? 'seeds' : null
  if (/^(seeds?|korner|graines|semillas?)$/.test(unit)) return 'seeds'
  if (/^(pa?c?k|sobre)/.test(unit)) return 'packets'
  if (/^onza/.test(unit)) return 'oz'
  if (/^gram|^gr?$/.test(unit)) return 'g'
  return unit.replace(/^lbs$/, 'lb')
}

/** Whether a heading speaks of a thousand seeds rather than a hundred. */
export function isOfThousand(heading: string): boolean {
  return /thousand|1\s?000|tausend|mille|\bmil\b|\bt[sk]w\b|\btkg\b|\bpmg\b/i.test(heading)
}

function words(listed: string): string[] {
  return listed.split(', ').map(fold)
}
