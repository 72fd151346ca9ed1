import { use } from '../services/planted.ts'
import { asked } from '../contract/planted.ts'

export const query = [use, asked]
