import { makeTemplatesFolder } from './templates.ts'

/** Called by the runner once, before it starts its workers: they find the folder in their environment. */
export function setup(): () => void {
  return makeTemplatesFolder()
}
