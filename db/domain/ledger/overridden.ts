import { CAUTION_WORDS } from '../cautions/caution-text.ts'

const PASSED_BY: Readonly<Record<string, string>> = {
  'reference-sample': 'from the reference sample',
  reserve: 'from the reserve',
  'too-few-left': 'though too few were left',
  'over-limit': 'over the limit of a visit',
  ...CAUTION_WORDS,
}

/** What a hand-out passed by and why, in words: 'from the reserve: the grower asked for it'; '' where nothing was. */
export function overriddenInWords(kept: string | null): string {
  if (kept === null) return ''
  const colon = kept.indexOf(': ')
  if (colon < 0) return kept
  const cautions = kept.slice(0, colon).split(', ')
  return `${cautions.map((caution) => PASSED_BY[caution] ?? caution).join(', ')}: ${kept.slice(colon + 2)}`
}
