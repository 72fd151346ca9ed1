import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { en } from '../../db/messages/en/index.ts'

const TAGS = /<\/?[a-z-]+\d?>/g
const plain = (text: string) => text.replaceAll(TAGS, '').replaceAll('’', "'").toLowerCase()
const onScreen = Object.values(en).map(({ text }) => plain(text))

/** What a page quotes from the screen, in italics; an ellipsis stands for what differs. */
function quotedIn(page: string): string[] {
  const text = readFileSync(join(import.meta.dirname, '../..', page), 'utf8').replaceAll(/```.*?```/gs, '')
  return [...text.matchAll(/(?<!\*)\*([^*\n]+)\*(?!\*)/g)].map(([, quoted = '']) => quoted)
}

function isOnScreen(quoted: string): boolean {
  const parts = plain(quoted).split('…')
  return onScreen.some((text) => parts.every((part) => text.includes(part)))
}

it.each(['docs/guide.md', 'README.md'])('%s quotes words that stand on the screen now', (page) => {
  const quoted = quotedIn(page)
  expect(quoted.length).toBeGreaterThan(0)
  expect(quoted.filter((words) => !isOnScreen(words))).toEqual([])
})
