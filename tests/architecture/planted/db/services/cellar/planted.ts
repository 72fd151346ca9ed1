import { attic } from '../attic/planted.ts'

export const cellar = 'below'
export const both = [attic, cellar]
