import { Parser } from 'saxen'

/** An element's attributes, read only where they are asked for. */
type Attributes = () => Readonly<Record<string, string>>

/** What one element of a part says when it opens or closes, by its name without prefix. */
export interface PartReader {
  readonly open?: (name: string, attributes: Attributes) => void
  readonly close?: (name: string) => void
  readonly text?: (text: string) => void
}

/** Reads one XML part of a workbook, if it is there, from start to end. Entities of a document type are never followed. */
export function readPart(xml: string, reader: PartReader): void {
  if (xml === '') return
  const parser = new Parser()
  const bare = (name: string) => name.slice(name.indexOf(':') + 1)
  parser.on('openTag', (name, attributes) => reader.open?.(bare(name), attributes))
  parser.on('closeTag', (name) => reader.close?.(bare(name)))
  parser.on('text', (text, decode) => reader.text?.(decode(text)))
  parser.on('cdata', (text) => reader.text?.(text))
  parser.on('error', (problem) => {
    throw problem
  })
  parser.parse(xml)
}

export interface SheetPart {
  readonly name: string
  readonly path: string
  readonly hidden: boolean
}

/** The sheets of a workbook in their order, and whether its days count from 1904. */
export function sheetsOf(workbook: string, relations: string): { sheets: SheetPart[]; from1904: boolean } {
  const targets = new Map<string, string>()
  readPart(relations, {
    open(name, attributes) {
      if (name !== 'Relationship') return
      const { Id = '', Target = '' } = attributes()
      targets.set(Id, Target)
    },
  })
  const sheets: SheetPart[] = []
  let from1904 = false
  readPart(workbook, {
    open(name, attributes) {
      if (name === 'workbookPr') from1904 = /^(1|true)$/.test(attributes()['date1904'] ?? '')
      if (name !== 'sheet') return
      const { name: title = '', 'r:id': id = '', state = 'visible' } = attributes()
      const target = targets.get(id) ?? ''
      const path = target.startsWith('/') ? target.slice(1) : `xl/${target}`
      sheets.push({ name: title, path, hidden: state !== 'visible' })
    },
  })
  return { sheets, from1904 }
}

/** The texts that cells share, in order. How they are to be pronounced is left out. */
export function sharedTexts(xml: string): string[] {
  const texts: string[] = []
  let current = ''
  let within = false
  let aside = 0
  readPart(xml, {
    open(name) {
      if (name === 'si') current = ''
      if (name === 'rPh') aside += 1
      within = name === 't' && aside === 0
    },
    close(name) {
      if (name === 'si') texts.push(current)
      if (name === 'rPh') aside -= 1
      if (name === 't') within = false
    },
    text(text) {
      if (within) current += text
    },
  })
  return texts
}

/** Formats of days that every workbook has without saying so (ECMA-376 part 1, 18.8.30, from memory). */
const BUILT_IN_DAYS = new Set([14, 15, 16, 17, 22])

/** Which cell styles show a number as a day. */
export function dayStyles(xml: string): Set<number> {
  const days = new Set(BUILT_IN_DAYS)
  const styles = new Set<number>()
  let within = false
  let style = 0
  readPart(xml, {
    open(name, attributes) {
      if (name === 'numFmt') {
        const { formatCode = '', numFmtId } = attributes()
        if (showsDay(formatCode)) days.add(Number(numFmtId))
      }
      if (name === 'cellXfs') within = true
      if (name !== 'xf' || !within) return
      if (days.has(Number(attributes()['numFmtId']))) styles.add(style)
      style += 1
    },
    close(name) {
      if (name === 'cellXfs') within = false
    },
  })
  return styles
}

function showsDay(format: string): boolean {
  const bare = format.replace(/"[^"]*"|\\.|\[[^\]]*\]/g, '')
  return /[dy]/i.test(bare)
}
