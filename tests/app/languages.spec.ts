import { counted } from '../support/counted.ts'
import { CARDS } from './support/cards.ts'
import { LanguageWalk } from './support/language-walk.ts'
import { SCREEN_PATHS } from './support/screens.ts'
import { expect, test } from './support/test.ts'

const SIZES = [
  { width: 1024, height: 700 },
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
]
/** Parts of screens that have an address of their own. */
const PARTS = ['/storage/new', '/storage/compare', '/storage/round']

/** From right to left is both: other words, and every place the other way. */
const LANGUAGES = [
  { language: 'ar-XB', run: [] },
  { language: 'en-XA', run: ['@long'] },
] as const

for (const { language, run } of LANGUAGES) {
  test.describe(`the language ${language}`, () => {
    test.use({ language })

    test('has room on every screen and is all that is written', { tag: [...run] }, async ({ app, page }) => {
      const walk = new LanguageWalk(page, app, language)
      expect(SCREEN_PATHS.length).toBeGreaterThan(15)
      for (const path of SCREEN_PATHS) await walk.to(path)
      expect(walk.wrong).toEqual([])
    })

    for (const size of SIZES) {
      test(`has room on every card and form at ${size.width} by ${size.height}`, { tag: '@long' }, async ({
        app,
        page,
      }) => {
        test.setTimeout(600_000)
        await page.setViewportSize(size)
        const walk = new LanguageWalk(page, app, language)
        const cards = await Promise.all(Object.values(CARDS).map((path) => path(app)))
        for (const path of [...SCREEN_PATHS, ...PARTS, ...cards]) {
          await walk.to(path)
          await walk.openAll(path)
        }
        counted('screens, cards and forms looked over in made-up languages', walk.looked)
        expect(walk.wrong).toEqual([])
      })
    }
  })
}
