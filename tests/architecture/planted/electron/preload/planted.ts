import { readFileSync } from 'node:fs'
import { asked } from '../../db/contract/planted.ts'

export const preload = [readFileSync, asked]
