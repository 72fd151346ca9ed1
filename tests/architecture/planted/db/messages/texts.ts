import { readFileSync } from 'node:fs'

export const told = readFileSync
