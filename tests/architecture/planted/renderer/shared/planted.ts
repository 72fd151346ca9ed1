import { shell } from '../app/planted.ts'

export const shared = shell
