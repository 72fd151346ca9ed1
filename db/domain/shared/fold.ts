/**
 * The form of a text that two spellings of one name share: no accents, one case, single spaces.
 *
 * 'Hrášek  ranný' and 'hrasek ranny' fold to the same text. Greek and Cyrillic letters stay what they are.
 */
export function fold(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{Diacritic}/gu, '')
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Number}]+/gu, ' ')
    .trim()
}
