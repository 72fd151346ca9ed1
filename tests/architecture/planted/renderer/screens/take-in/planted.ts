import type { table } from '../../../db/schema/planted.ts'
import { shell } from '../../app/planted.ts'
import { shelf } from '../shelf/planted.ts'

export const takeIn: typeof table = [shell, shelf]
