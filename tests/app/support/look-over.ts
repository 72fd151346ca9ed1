import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import Database from 'better-sqlite3'
import { PROJECT_FOLDER } from '../../support/command-line.ts'

/**
 * What stands on the page, looked over as a keeper sees it: what scrolled away or is only read aloud is left out.
 *
 * A text is cut where what holds it hides more than it shows, spills where it is wider than what holds it, and stands on
 * another where the two share more than their edges.
 */
const LOOK_OVER = `(() => {
  const EDGE = 3
  const locales = new Intl.DisplayNames(document.documentElement.lang, { type: 'language', languageDisplay: 'standard' })
  const isLocale = (tag, text) => /^[a-z]{2}-[A-Z]{2}$/.test(tag) && locales.of(tag) === text
  const ARROW = 14
  const pen = document.createElement('canvas').getContext('2d')
  const aloud = new Set([...document.querySelectorAll('body *')]
    .filter((each) => getComputedStyle(each).clipPath !== 'none' || each.matches('option, title')))
  const seen = (each) => {
    if (!each.checkVisibility({ opacityProperty: true, visibilityProperty: true })) return false
    for (let at = each; at !== null; at = at.parentElement) if (aloud.has(at)) return false
    return true
  }
  const name = (each) => {
    const word = each.className?.baseVal ?? each.className ?? ''
    return each.tagName.toLowerCase() + (word === '' ? '' : '.' + word.trim().replaceAll(' ', '.'))
  }
  const short = (text) => text.trim().replace(/\\s+/g, ' ').slice(0, 60)
  const room = []
  const within = (each) => {
    const box = { left: 0, top: 0, right: innerWidth, bottom: innerHeight }
    for (let at = each; at !== null && at !== document.documentElement; at = at.parentElement) {
      const { overflowX, overflowY } = getComputedStyle(at)
      if (overflowX === 'visible' && overflowY === 'visible') continue
      const own = at.getBoundingClientRect()
      box.left = Math.max(box.left, own.left)
      box.right = Math.min(box.right, own.right)
      box.top = Math.max(box.top, own.top)
      box.bottom = Math.min(box.bottom, own.bottom)
    }
    return box
  }
  const clip = (rect, box) => ({
    left: Math.max(rect.left, box.left), right: Math.min(rect.right, box.right),
    top: Math.max(rect.top, box.top), bottom: Math.min(rect.bottom, box.bottom),
  })
  const wide = ({ left, right, top, bottom }) => right - left > 1 && bottom - top > 1

  if (document.documentElement.scrollWidth > innerWidth + 1) room.push('the page scrolls sideways')
  for (const each of document.querySelectorAll('body *')) {
    if (!seen(each) || each.closest('svg') !== null) continue
    const style = getComputedStyle(each)
    if (each.matches('input:not([type=checkbox], [type=radio], [type=file], [type=range])')) {
      const written = each.value || each.placeholder
      if (each.scrollWidth > each.clientWidth + 1) room.push('cut in its field: ' + short(written) + ' (' + name(each) + ')')
      continue
    }
    if (each.matches('select')) {
      pen.font = [style.fontStyle, style.fontWeight, style.fontSize, style.fontFamily].join(' ')
      const wanted = pen.measureText(each.selectedOptions[0]?.text ?? '').width
      const free = each.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight) - ARROW
      if (wanted > free + 1) room.push('cut in its choice: ' + short(each.selectedOptions[0].text) + ' (' + name(each) + ')')
    }
    if (style.display === 'inline' || style.display === 'contents' || each.textContent.trim() === '') continue
    const scrolls = /auto|scroll/.test(style.overflowX)
    if (each.scrollWidth > each.clientWidth + 1 && each.clientWidth > 0 && !(scrolls && each.matches('[tabindex="0"], .scrolls')))
      room.push('wider than its room: ' + short(each.textContent) + ' (' + name(each) + ' ' + each.scrollWidth + ' > ' + each.clientWidth + ')')
    if (/hidden|clip/.test(style.overflowY) && each.scrollHeight > each.clientHeight + 2)
      room.push('higher than its room: ' + short(each.textContent) + ' (' + name(each) + ')')
  }

  const outside = []
  const things = []
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
  const range = document.createRange()
  const blocks = new Map()
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const holder = node.parentElement
    if (node.data.trim() === '' || holder.closest('script, style') !== null) continue
    if (holder.checkVisibility() || holder.closest('option, title') !== null) {
      let block = holder
      while (!block.matches('body, option') && (getComputedStyle(block).display.startsWith('inline') || aloud.has(block)))
        block = block.parentElement
      if (block.matches('option') && isLocale(block.value, node.data)) continue
      blocks.set(block, (blocks.get(block) ?? '') + ' ' + node.data)
    }
    if (!seen(holder)) continue
    const inDrawing = holder.closest('svg')
    const box = within(holder)
    if (inDrawing !== null) {
      const rect = holder.getBoundingClientRect()
      const own = inDrawing.getBoundingClientRect()
      if (rect.left < own.left - 1 || rect.right > own.right + 1)
        room.push('cut in its drawing: ' + short(node.data) + ' (' + name(inDrawing) + ')')
      things.push({ holder, text: node.data, rect: clip(rect, box) })
      continue
    }
    range.selectNodeContents(node)
    for (const { index, 0: word } of node.data.matchAll(/\\p{L}{7,}/gu)) {
      range.setStart(node, index)
      range.setEnd(node, index + word.length)
      const lines = new Set([...range.getClientRects()].map(({ bottom }) => Math.round(bottom)))
      if (lines.size > 1) room.push('a word broken: ' + word + ' in ' + short(node.data) + ' (' + name(holder) + ')')
    }
    range.selectNodeContents(node)
    for (const rect of range.getClientRects()) things.push({ holder, text: node.data, rect: clip(rect, box) })
  }
  for (const each of document.querySelectorAll('input:not([type=hidden]), select, textarea, button')) {
    if (!seen(each)) continue
    things.push({ holder: each, text: each.value || each.textContent, rect: clip(each.getBoundingClientRect(), within(each)), control: true })
  }
  const drawn = things.filter(({ rect }) => wide(rect)).toSorted((a, b) => a.rect.top - b.rect.top)
  const over = (each) => {
    for (let at = each; at !== null; at = at.parentElement)
      if (['sticky', 'fixed', 'absolute'].includes(getComputedStyle(at).position) && !at.matches('.frame-screen')) return at
    return null
  }
  for (const [index, one] of drawn.entries()) {
    for (let at = index + 1; at < drawn.length; at++) {
      const other = drawn[at]
      if (other.rect.top > one.rect.bottom - EDGE) break
      if (one.holder === other.holder || one.holder.contains(other.holder) || other.holder.contains(one.holder)) continue
      const shared = clip(one.rect, other.rect)
      if (shared.right - shared.left <= EDGE || shared.bottom - shared.top <= EDGE) continue
      if (over(one.holder) !== over(other.holder)) continue
      room.push('one on the other: ' + short(one.text) + ' (' + name(one.holder) + ') and ' + short(other.text) + ' (' + name(other.holder) + ')')
    }
  }

  const attributes = ['aria-label', 'title', 'placeholder', 'aria-description']
  const told = [...blocks].map(([block, text]) => ({ at: block, text }))
  for (const each of document.querySelectorAll(attributes.map((one) => '[' + one + ']').join(', ')))
    for (const one of attributes) if (each.hasAttribute(one)) told.push({ at: each, text: each.getAttribute(one) })
  for (const { at, text } of told) {
    let depth = 0
    let left = ''
    for (const letter of text) {
      if (letter === '⟦') depth += 1
      else if (letter === '⟧') depth -= 1
      else if (depth === 0) left += letter
    }
    if (/\\p{L}{2}/u.test(left)) outside.push({ left: left.trim(), at: name(at), within: name(at.closest('section, form, li, tr, nav, main, header, footer') ?? at) })
  }
  return { room: [...new Set(room)], outside }
})()`

interface Outside {
  readonly left: string
  readonly at: string
  readonly within: string
}

/** Looks the open page over; `names` are what stands in the collection itself, which no language changes. */
export async function lookOver(page: Page, names: Names): Promise<readonly string[]> {
  const { room, outside } = await page.evaluate<{ room: string[]; outside: Outside[] }>(LOOK_OVER)
  const plain = outside.flatMap(({ left, at, within }) => {
    const words =
      without(left, names)
        .match(/\p{L}[\p{L}\p{M}]+/gu)
        ?.join(' ') ?? ''
    return words === '' ? [] : [`not told: ${words.slice(0, 90)} (${at} in ${within})`]
  })
  return [...room, ...new Set(plain)]
}

/** Texts that the collection itself holds, longest first, as they are and in small letters. */
export type Names = readonly { readonly small: string; readonly name: RegExp }[]

function without(text: string, names: Names): string {
  const small = text.toLowerCase()
  return names
    .filter((one) => small.includes(one.small))
    .reduce((bare, { name }) => bare.replace(name, ' '), text)
}

/** Columns of the book that hold what somebody typed, and the names of crops. */
const TYPED =
  /name|town|note|reason|story|species|family|credit_as|keeper|^grown_at|^number$|variety$|words|medium|contents|address|walked_by|_by$|^email|^phone|looked_for|terms|accession_pattern|^locale|before|after|^value|masked_names|method|promised|agreement|conditions|contact|intended_use|plant_health|odd|advice|community_label/
/** What is written alike in every language: units, sizes of paper, names of formats. */
const ALIKE = ['mg', 'kg', 'mm', 'cm', 'ml', 'English', 'Español', 'Quillhaven']

/** What the crop table quotes of the rules of testing, in the words of its source. */
const REFERENCE: readonly string[] = [
  ...fromReference<{ germ_notes?: string | null }>('crops.json').flatMap(
    ({ germ_notes }) => germ_notes ?? [],
  ),
  ...fromReference<{ source: string; confidence: string }>('sources.json').flatMap((one) => [
    one.source,
    one.confidence,
  ]),
]

function fromReference<T>(file: string): T[] {
  const read: unknown = JSON.parse(readFileSync(join(PROJECT_FOLDER, 'db', 'reference', file), 'utf8'))
  return Object.values(read as Record<string, T>)
}

/** What stands in the collection of a folder itself: names, notes, what somebody typed. Longest first. */
export function namesIn(file: string, language: string): Names {
  const locale = new Intl.Locale(language, { region: 'GB' })
  const book = new Database(file, { readonly: true })
  const tables = book.prepare("SELECT name FROM sqlite_schema WHERE type = 'table'").pluck().all() as string[]
  const texts = tables.flatMap((table) =>
    (
      book
        .prepare(`SELECT name FROM pragma_table_info('${table}') WHERE type = 'TEXT'`)
        .pluck()
        .all() as string[]
    )
      .filter((column) => TYPED.test(column))
      .flatMap(
        (column) => book.prepare(`SELECT DISTINCT "${column}" FROM "${table}"`).pluck().all() as string[],
      ),
  )
  book.close()
  const days = Array.from({ length: 30 }, (_, at) => Date.UTC(2026, 0, 1 + 13 * at))
  const calendar = days.flatMap((day) =>
    (['full', 'long', 'medium'] as const).flatMap((dateStyle) =>
      new Intl.DateTimeFormat(locale, { dateStyle }).formatToParts(day).map(({ value }) => value),
    ),
  )
  const typed = [...texts, ...REFERENCE]
    .map((text) => text?.trim() ?? '')
    .filter((text) => !/^[a-z]+(-[a-z]+)*$/.test(text))
  const wanted = new Set([...typed, ...calendar, ...ALIKE].filter((text) => /\p{L}{2}/u.test(text)))
  return [...wanted]
    .toSorted((a, b) => b.length - a.length)
    .map((text) => ({
      small: text.toLowerCase(),
      name: new RegExp(`(?<!\\p{L})${escaped(text)}(?!\\p{L})`, 'giu'),
    }))
}

/** A text as a pattern that fits it alone. */
export function escaped(text: string): string {
  return text.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&')
}
