import { createServer } from 'node:http'
import { asked } from '../contract/planted.ts'

export const paper = [createServer, asked]
