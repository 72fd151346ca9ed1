import { readFileSync } from 'node:fs'

export const table = readFileSync
