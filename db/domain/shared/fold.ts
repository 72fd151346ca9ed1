/** Letters that Unicode does not take apart, as people type them without the key: łan, øl, straße, ærter. */
const TYPED_AS: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  ł: 'l',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  ħ: 'h',
  ŧ: 't',
  ı: 'i',
  ς: 'σ',
}

/** A text with its letters as they are typed without accents: 'año' is 'ano'. Signs and spaces stay. */
export function withoutAccents(text: string): string {
  return text
    .normalize('NFD')
    .replace(/\p{Mn}/gu, '')
    .normalize('NFC')
}

/**
 * The form of a text that two spellings of one name share: no accents, one case, no apostrophes, single spaces.
 *
 * 'Hrášek  ranný' and 'hrasek ranny' fold to the same text. Greek, Cyrillic and other scripts keep their own letters;
 * ä folds to a, not ae.
 */
export function fold(text: string): string {
  // Most names are plain, and lists of tens of thousands of them are folded.
  if (/^[ -~]*$/.test(text))
    return text
      .toLowerCase()
      .replace(/['^`]/g, '')
      .replace(/[^a-z0-9]+/g, ' ')
      .trim()
  return text
    .normalize('NFKD')
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[\p{Diacritic}'’‘]/gu, '')
    .replace(/[ßæœøłđðþħŧıς]/g, (letter) => TYPED_AS[letter] ?? letter)
    .replace(/[^\p{Letter}\p{Mark}\p{Number}]+/gu, ' ')
    .trim()
}
