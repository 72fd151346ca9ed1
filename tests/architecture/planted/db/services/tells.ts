import { told } from '../messages/texts.ts'

export const said = told
