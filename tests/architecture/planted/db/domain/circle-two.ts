import { first } from './circle-one.ts'

export const second = () => first
