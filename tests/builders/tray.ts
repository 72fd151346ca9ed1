import type { CallInput, Value } from '../../db/contract/contract.ts'
import { readPdf } from './read-pdf.ts'
import { aGift, type TemporaryCollection, TODAY } from './temporary-collection.ts'

/** How somebody is reached who agreed to be written to. */
export const CONTACT = {
  email: 'ilka@example.org',
  phone: '01632 960 777',
  address: '3 Hollow Lane\nQuillhaven',
  mayWrite: true,
}
export const WRITTEN_TO = { name: 'Ilka Brandt', ...CONTACT }

export type NewPerson = Extract<
  NonNullable<CallInput<'intake.record'>['donor']>,
  { newPerson: unknown }
>['newPerson']

/** Gifts that bring something into the print tray, and what waits there, of the collection that a test is in. */
export function trayOf(test: () => TemporaryCollection) {
  return {
    give: (donor: NewPerson | null = WRITTEN_TO, gifts = [aGift(), aGift({ amount: '50 seeds' })]) =>
      test().call('intake.record', {
        donor: donor === null ? null : { newPerson: donor },
        receivedOn: TODAY,
        gifts,
      }),
    waiting: async (kind: 'label' | 'letter' | 'slip') =>
      (await test().call('tray.list', {})).groups.find((group) => group.kind === kind)?.items ?? [],
  }
}

export const ids = (items: readonly { readonly itemId: number }[]) => items.map(({ itemId }) => itemId)

/** The text of every page, as it is read from the PDF. */
export async function textOf({ pdf }: Pick<Value<'tray.render'>, 'pdf'>): Promise<string> {
  const read = await readPdf(new Uint8Array(Buffer.from(pdf, 'base64')))
  const text = read.pages.flatMap((page) => page.characters.map(({ character }) => character)).join('')
  read.close()
  return text.replace(/\s+/g, ' ')
}
