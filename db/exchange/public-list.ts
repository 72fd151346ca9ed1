import { encode } from 'html-entities'

/** One thing on a public list, in words. */
export interface PublicEntry {
  readonly name: string
  readonly facts: readonly string[]
  readonly cautions: readonly string[]
  readonly story: string
}

interface PublicList {
  readonly language: string
  readonly title: string
  readonly about: string
  readonly crops: readonly { readonly name: string; readonly entries: readonly PublicEntry[] }[]
  readonly rulesHeading: string
  readonly rules: string
}

const STYLE =
  'body{font:1rem/1.5 sans-serif;max-width:42rem;margin:2rem auto;padding:0 1rem;color:#1f2a26;background:#fffdf8}' +
  'h2{border-top:1px solid #d9d2c3;padding-top:1rem}h3{margin:1rem 0 0}p{margin:.2rem 0;overflow-wrap:anywhere}'

/** A list for everybody as one HTML page that fetches nothing and runs nothing; every text in it is only text. */
export function publicPage({ language, title, about, crops, rulesHeading, rules }: PublicList): string {
  const paragraph = (text: string) => `<p>${encode(text)}</p>`
  const entry = ({ name, facts, cautions, story }: PublicEntry) =>
    [
      `<h3>${encode(name)}</h3>`,
      paragraph(facts.join(' · ')),
      ...cautions.map((caution) => `<p><strong>${encode(caution)}</strong></p>`),
      ...(story === '' ? [] : [paragraph(story)]),
    ].join('\n')
  return [
    `<!doctype html>\n<html lang="${encode(language)}">\n<head>\n<meta charset="utf-8">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
    `<title>${encode(title)}</title>\n<style>${STYLE}</style>\n</head>\n<body>\n<main>`,
    `<h1>${encode(title)}</h1>`,
    paragraph(about),
    ...crops.map(({ name, entries }) => [`<h2>${encode(name)}</h2>`, ...entries.map(entry)].join('\n')),
    `<h2>${encode(rulesHeading)}</h2>\n${paragraph(rules)}\n</main>\n</body>\n</html>\n`,
  ].join('\n')
}
