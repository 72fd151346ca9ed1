import type { RunningApp } from '../app/support/running-app.ts'
import type { Paper } from './papers.ts'

/** A donor and what they gave, in one script. */
interface InScript {
  readonly donor: string
  readonly variety: string
  readonly cropId: string
  readonly story: string
}

/** Invented people and varieties in five scripts, and emoji. */
const GIVEN: readonly InScript[] = [
  {
    donor: 'מרים נחל',
    variety: 'שעועית הנחל 12',
    cropId: 'bean',
    story: 'זרעים מסבתא, משנת 1984 (כפר קטן).',
  },
  { donor: 'سلمى الوادي', variety: 'فول الوادي', cropId: 'fava-bean', story: 'من حديقة جدتي منذ 1990.' },
  { donor: 'मीरा तलवार', variety: 'पीली सेम', cropId: 'bean', story: 'नानी के बगीचे से, 1978 के बाद से।' },
  { donor: '林青谷', variety: '青谷豌豆', cropId: 'pea', story: '祖母园中所种，已有四十年。' },
  { donor: '윤달빛', variety: '달빛콩 🌱', cropId: 'bean', story: '할머니 텃밭에서 1982년부터.' },
]

/** Takes the gifts in, each from a donor who may be written to; answers their lots and a visit that took some of each. */
export async function giveInScripts(app: RunningApp): Promise<{ lotIds: number[]; withdrawalId: number }> {
  const lotIds: number[] = []
  for (const { donor, variety, cropId, story } of GIVEN) {
    const { taken } = await app.call('intake.record', {
      donor: { newPerson: { name: donor, address: '3 Hollow Lane\nQuillhaven', mayWrite: true } },
      receivedOn: '2026-03-14',
      gifts: [
        {
          variety: { newVariety: { cropId, name: variety } },
          amount: '300 seeds',
          harvest: '2025',
          donorWords: story,
          story,
        },
      ],
    })
    lotIds.push(...taken.map(({ lotId }) => lotId))
  }
  const { withdrawalId } = await app.call('withdrawal.record', {
    person: { newPerson: { name: 'さくら 朝霧' } },
    on: '2026-03-15',
    lines: lotIds.map((lotId) => ({ lotId, amount: '20 seeds' })),
    promisedBy: '2027-11-01',
  })
  return { lotIds, withdrawalId }
}

/** What is printed of them: labels, slip, and the letters, as one file each. */
export function papersInScripts({
  lotIds,
  withdrawalId,
}: {
  lotIds: number[]
  withdrawalId: number
}): Paper[] {
  const waiting = async (app: RunningApp, kind: 'letter' | 'slip') => {
    const { groups } = await app.call('tray.list', {})
    const items = groups.flatMap((group) => (group.kind === kind ? group.items : []))
    return app.call('tray.render', { kind, itemIds: items.slice(-GIVEN.length).map(({ itemId }) => itemId) })
  }
  return [
    {
      name: 'scripts-labels',
      make: (app) => app.call('label.print', { labels: lotIds.map((lotId) => ({ lotId })), sheet: 'a4-8' }),
    },
    {
      name: 'scripts-slip',
      make: async (app) => {
        const { itemIds } = await app.call('tray.add', { items: [{ kind: 'slip', withdrawalId }] })
        return app.call('tray.render', { kind: 'slip', itemIds })
      },
    },
    { name: 'scripts-letter', make: (app) => waiting(app, 'letter') },
  ]
}
