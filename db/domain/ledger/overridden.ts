import { type Message, type MessageId, message } from '../../messages/message.ts'

/** What is kept where a hand-out was signed on paper. */
export const ON_PAPER = 'on-paper'
/** The same in books from before it was a code. */
const ON_PAPER_BEFORE = /^signed\b.*\bpaper$/

const PASSED_BY = {
  'reference-sample': 'overridden.reference-sample',
  reserve: 'overridden.reserve',
  'too-few-left': 'overridden.too-few-left',
  'over-limit': 'overridden.over-limit',
  'community-only': 'overridden.community-only',
  'ask-first': 'overridden.ask-first',
  'kept-by-us': 'overridden.kept-by-us',
  'agreement-ended': 'overridden.agreement-ended',
  closed: 'keeping.overridden-closed',
  treated: 'caution.treated',
  'pests-seen': 'caution.pests-seen',
  regulated: 'caution.regulated',
  toxic: 'caution.toxic',
  'protected-variety': 'caution.protected-variety',
} as const satisfies Readonly<Record<string, MessageId>>

/** What a hand-out passed by and why: 'from the reserve; reason: the grower asked for it'; '' where nothing was. */
export function overriddenTold(kept: string | null): Message | string {
  if (kept === ON_PAPER || ON_PAPER_BEFORE.test(kept ?? '')) return message('overridden.on-paper')
  const colon = kept?.indexOf(': ') ?? -1
  if (kept === null || colon < 0) return kept ?? ''
  const cautions = kept.slice(0, colon).split(', ')
  return message('overridden.because', {
    cautions: {
      list: cautions.map((caution) => (isPassedBy(caution) ? message(PASSED_BY[caution]) : caution)),
    },
    reason: kept.slice(colon + 2),
  })
}

function isPassedBy(code: string): code is keyof typeof PASSED_BY {
  return Object.hasOwn(PASSED_BY, code)
}
