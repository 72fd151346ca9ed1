import { drizzle } from 'drizzle-orm/better-sqlite3'
import { table } from '../schema/planted.ts'

export const use = [drizzle, table]
