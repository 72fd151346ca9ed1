/** Splits a leading word for a guess off what was typed: 'about 200', 'ca. 200', '~200', 'c. 2019'. Lower case in. */
export function splitAbout(text: string): { readonly about: boolean; readonly rest: string } {
  const word = /^(?:about|approximately|approx\.?|circa|ca?\.?|roughly|around|un[oa]s|~|≈)\s*(?=[\d.,])/.exec(
    text,
  )
  return word ? { about: true, rest: text.slice(word[0].length) } : { about: false, rest: text }
}
