import { helper } from '../../tests/planted.ts'

export const host = helper
