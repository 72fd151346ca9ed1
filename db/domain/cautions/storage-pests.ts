import { type Message, message } from '../../messages/message.ts'

/** Families whose seed weevils and moths like to eat in store. Common practice, no source. */
const EATEN_IN_STORE: readonly string[] = ['Fabaceae', 'Poaceae']

/** What to mind of seed of a family that lies where insects can get in; null where they can not, or leave such seed alone. */
export function storagePestCaution(family: string, pestProof: boolean): Message | null {
  return pestProof || !EATEN_IN_STORE.includes(family) ? null : message('storage-pests.eaten')
}
