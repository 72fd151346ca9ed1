/** In the languages that the app speaks. */
const ABOUT =
  /^(?:about|approximately|approx\.?|circa|ca?\.?|roughly|around|un[oa]s|hacia|aproximadamente|aprox\.?|alrededor de|cerca de|mas o menos|cosa de|~|≈)\s*(?=[\d.,])/

/** Splits a leading word for a guess off what was typed: 'about 200', 'unas 200', 'hacia 2019', '~200'. Lower case without accents in. */
export function splitAbout(text: string): { readonly about: boolean; readonly rest: string } {
  const word = ABOUT.exec(text)
  return word ? { about: true, rest: text.slice(word[0].length) } : { about: false, rest: text }
}
