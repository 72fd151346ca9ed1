import { nothing } from './not-there.ts'

export const lost = nothing
