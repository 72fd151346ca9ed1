import { formatMass } from '../domain/planted.ts'

export const solverThatKnowsSeed = formatMass
