import { createTold } from './told.ts'

/** Whether the last call was answered at all. */
export const { tell: noteConnection, useTold: useConnection } = createTold<'there' | 'away'>('there')
