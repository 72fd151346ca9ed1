import { cellar } from '../cellar/planted.ts'

export const too = cellar
