import { SCREENS } from '../../renderer/app/screen-list.ts'
import { LanguageWalk } from './support/language-walk.ts'
import { expect, test } from './support/test.ts'

for (const language of ['en-XA', 'ar-XB']) {
  test.describe(`the language ${language}`, () => {
    test.use({ language })

    test('has room on every screen and stands on all of them alone', async ({ app, page }) => {
      const walk = new LanguageWalk(page, app, language)
      for (const { path } of SCREENS) await walk.to(path)
      expect(walk.wrong).toEqual([])
    })
  })
}
