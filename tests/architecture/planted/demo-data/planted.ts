import { query } from '../db/queries/planted.ts'

export const demo = query
