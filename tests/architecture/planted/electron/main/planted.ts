import { use } from '../../db/services/planted.ts'

export const main = use
