import { app } from 'electron'

export const outside = app
