const E_MAIL = /[\p{L}\p{N}._%+-]+@[\p{L}\p{N}-]+(?:\.[\p{L}\p{N}-]+)+/u
/** After a word that says so, any grouping; else abroad with a plus, with a trunk zero, or by 3, 3 and 4. Never a date. */
const TELEPHONE = [
  /(?<=(?:tel|phone|telephone|telefon|telefono|téléphone|tél|mobile|mobil|handy|fon|ph|call|ring)[.:]?\s{0,2})\d[\d\s()./-]{3,}\d/iu,
  /\+\d{1,3}[\s(/-]+\d[\d\s()./-]{4,}\d|\+\d{9,15}/,
  /(?!\d{1,2}[./-]\d{1,2}[./-]\d{2})(?:\(0\d{1,4}\)|0\d{1,4})[\s/.-]+\d[\d\s./-]{3,}\d/,
  /(?:\(\d{3}\)|\d{3})[\s.-]\d{3}[\s.-]\d{4}/,
].map(({ source }) => `(?<![\\p{L}\\p{N}_:.,-])(?:${source})(?![\\p{L}\\p{N}_-])`)
/** A house number beside a word for a street, in four languages: '3 Ferry Lane', 'Lindenweg 12', '4 bis, rue du Port'. */
const STREET = [
  /\d{1,5}[a-z]?,? (?:\p{Lu}[\p{L}'’-]* ){1,3}(?:Street|Lane|Road|Avenue|Drive|Close|Court|Crescent|Terrace|Gardens|Square|Rd|Ave)(?![\p{L}])/u,
  /\p{Lu}[\p{L}-]*(?:stra(?:ß|ss)e|str\.|weg|gasse|allee) \d{1,4} ?[a-z]?(?![\p{L}\p{N}])/u,
  /\d{1,5}(?: bis| ter)?,? (?:rue|avenue|chemin|impasse|boulevard|place|allée) (?:(?:du|des|de|de la) |de l['’]|d['’])?\p{Lu}[\p{L}-]*(?: \p{Lu}[\p{L}-]*){0,2}/u,
  /(?:[Cc]alle|[Aa]venida|[Pp]laza|[Cc]amino) (?:(?:de|del|de la|de los) )?\p{Lu}\p{L}*(?: \p{Lu}\p{L}*){0,2},? (?:n\.?º ?)?\d{1,4}(?![\p{L}\p{N}])/u,
].map(({ source }) => `(?<![\\p{L}\\p{N}])(?:${source})`)
const STREETS = new RegExp(STREET.join('|'), 'gu')
const CONTACT = new RegExp([E_MAIL.source, ...TELEPHONE].join('|'), 'giu')

/** Whether a text is nothing but how somebody is reached: an e-mail address or a telephone number. */
export function isContact(text: string): boolean {
  return text.trim() !== '' && text.replace(CONTACT, '').trim() === ''
}

/** A text with `instead` for e-mail addresses, telephone numbers and streets with a house number, by their shapes. Common practice, no source. */
export function withoutContact(text: string, instead: string): string {
  return text.replace(STREETS, () => instead).replace(CONTACT, () => instead)
}
