import { table } from '../schema/planted.ts'

export const asked = table
