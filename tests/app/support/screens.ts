import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { PROJECT_FOLDER } from '../../support/command-line.ts'

/** The paths of all screens, as their list has them: it is part of the window, which is checked by itself. */
export const SCREEN_PATHS = [
  ...readFileSync(join(PROJECT_FOLDER, 'renderer', 'app', 'screen-list.ts'), 'utf8').matchAll(
    /^ {4}path: '(.+)',$/gm,
  ),
].map(([, path = '']) => path)
