import { second } from './circle-two.ts'

export const first = () => second
