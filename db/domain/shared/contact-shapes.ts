const E_MAIL = /[\p{L}\p{N}._%+-]+@[\p{L}\p{N}-]+(?:\.[\p{L}\p{N}-]+)+/u
/** After a word that says so, any grouping; else abroad with a plus, with a trunk zero, or by 3, 3 and 4. Never a date. */
const TELEPHONE = [
  /(?<=(?:tel|phone|telephone|telefon|telefono|téléphone|tél|mobile|mobil|handy|fon|ph|call|ring)[.:]?\s{0,2})\d[\d\s()./-]{3,}\d/iu,
  /\+\d{1,3}[\s(/-]+\d[\d\s()./-]{4,}\d|\+\d{9,15}/,
  /(?!\d{1,2}[./-]\d{1,2}[./-]\d{2})(?:\(0\d{1,4}\)|0\d{1,4})[\s/.-]+\d[\d\s./-]{3,}\d/,
  /(?:\(\d{3}\)|\d{3})[\s.-]\d{3}[\s.-]\d{4}/,
].map(({ source }) => `(?<![\\p{L}\\p{N}_:.,-])(?:${source})(?![\\p{L}\\p{N}_-])`)
const CONTACT = new RegExp([E_MAIL.source, ...TELEPHONE].join('|'), 'giu')

/** Whether a text is nothing but how somebody is reached: an e-mail address or a telephone number. */
export function isContact(text: string): boolean {
  return text.trim() !== '' && text.replace(CONTACT, '').trim() === ''
}

/** A text without e-mail addresses and telephone numbers, by their shapes. Common practice, no source. */
export function withoutContact(text: string): string {
  return text.replace(CONTACT, '(contact left out)')
}
