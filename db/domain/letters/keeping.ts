/** What is done with a gift: handed out in part, set apart in quarantine, or kept without handing out. */
export type Keeping = 'shared' | 'apart' | 'kept'

const OF_ALL: Record<Keeping, string> = {
  shared:
    'We keep it cool and dry, share a part of it with gardeners nearby, and grow it again before it grows too old.',
  apart: 'It is set apart for now: it has to be checked, and nobody is given any of it before.',
  kept: 'We keep it cool and dry as a reserve, and grow it again before it grows too old.',
}

const OF_ONE: Record<Keeping, string> = {
  shared: '',
  apart: 'Set apart until it has been checked; nobody is given any of it before.',
  kept: 'Kept as a reserve; it is not handed out.',
}

/** What is done with the gifts of a letter, in sentences that are true of each of them. */
export function keepingInWords(gifts: readonly Keeping[]): string {
  const [first = 'kept', ...others] = [...new Set(gifts)]
  if (others.length === 0) return OF_ALL[first]
  return gifts.includes('shared')
    ? 'What is not set apart above we keep cool and dry, share in part with gardeners nearby, and grow again before it grows too old.'
    : 'None of it is handed out for now, as it says above.'
}

/** What is done with one gift, where it is not shared; else empty. */
export function oneKeptInWords(keeping: Keeping): string {
  return OF_ONE[keeping]
}
