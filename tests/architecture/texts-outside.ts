import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import ts from 'typescript'

const project = join(import.meta.dirname, '..', '..')

/** Folders in which no text for people may stand: they tell by messages of the catalogue. */
export const TOLD_BY_MESSAGES: readonly string[] = [
  'db/domain',
  'db/exchange',
  'db/migrations',
  'db/paper',
  'db/queries',
  'db/schema',
  'db/services',
  'db/solver',
  'electron/host',
  'renderer',
]

/** Texts that no person reads as a sentence of the app, by file, with why: all that are in it, or those named. */
const FOR_PROGRAMS: Readonly<Record<string, { readonly why: string; readonly texts?: readonly string[] }>> = {
  'db/domain/dates/harvest-year.ts': {
    why: 'words by which a typed year is known',
    texts: [
      '|?|-|unknown|year unknown|not known|no idea|n/a|',
      'desconocido|desconocida|ano desconocido|no se sabe|no lo se|ni idea|sin ano|sin fecha|s/f',
    ],
  },
  'db/domain/intake/waiting.ts': {
    why: 'what a programmer is told who adds a step',
    texts: ['A gift event has no meaning yet', 'A step has no caution yet'],
  },
  'db/exchange/list-fields.ts': { why: 'words by which the headings of a list are known' },
  'db/exchange/list-treatment.ts': { why: 'words by which a treatment is known' },
  'db/exchange/list-values.ts': { why: 'words by which years, months and guesses are known' },
  'db/exchange/public-list.ts': { why: 'the tags and the style of a page' },
  'db/migrations/backup-files.ts': {
    why: 'names of files, by which backups are known again',
    texts: ['at start', 'before import'],
  },
  'db/migrations/crop-table.ts': { why: 'a code of the crop table', texts: ['from memory'] },
  'db/migrations/held-files.ts': { why: 'thrown, and known by its code', texts: ['Another program holds 0'] },
  'db/migrations/migrate-file.ts': { why: 'the name of a backup', texts: ['before version 0'] },
  'db/queries/germination-tests.ts': {
    why: 'SQL',
    texts: ['result.id IS NOT NULL', 'given_up.id IS NOT NULL'],
  },
  'db/queries/lot-rows.ts': {
    why: 'SQL',
    texts: ['crop.common_name %, variety.name_folded, lot.number', 'lot.quarantine_reason IS 0NULL'],
  },
  'db/services/book/entry-chain.ts': { why: 'columns of tables' },
  'db/services/collection/backups.ts': { why: 'names of backups', texts: ['at start', 'before import'] },
  'db/services/collection/own-crops.ts': { why: 'a code of the crop table', texts: ['from memory'] },
  'db/services/exchange/data-package.ts': {
    why: 'what columns of a data package hold, for whoever writes programs',
    texts: [
      'whole milligrams',
      'whole micrograms',
      'hundredths of a degree Celsius',
      'relative humidity, per mille',
      'per cent',
      'square metres',
      'a calendar date, YYYY-MM-DD',
      'a moment, ISO 8601',
      'the name without case and accents, as it is searched',
      'decimal degrees',
      'A whole seed collection: gifts, lots and the ledger of every seed in and out.',
      'the id of a row of 0',
    ],
  },
  'db/services/exchange/lot-export.ts': {
    why: 'headings of columns, by which programs know them',
    texts: ['seeds are', 'mass g', 'living seeds, about', 'in quarantine because'],
  },
  'db/services/exchange/recall-export.ts': {
    why: 'a heading of a column',
    texts: ['handed out'],
  },
  'db/services/exchange/passports.ts': {
    why: 'values of Darwin Core',
    texts: ['dry seed', 'in collection', 'used up'],
  },
  'db/services/people/withhold.ts': {
    why: 'stands in data packages, for programs',
    texts: ['(contact left out)'],
  },
  'db/services/run-operation.ts': { why: 'the name of a backup', texts: ['before import'] },
  'electron/host/built-files.ts': { why: 'headers of answers to a browser' },
  'electron/host/collection-holder.ts': { why: 'names of backups', texts: ['at start', 'before import'] },
  'electron/host/collections-folder.ts': {
    why: 'names of files and folders, by which they are found again in whatever language',
    texts: ['Common Drawer', 'Demo collection.drawer', 'My collection'],
  },
  'electron/host/log.ts': { why: 'a line for the log', texts: ['The log could not be written (0): 0'] },
  'electron/host/problem-of.ts': { why: 'a line for the log', texts: ['because of 0'] },
  'electron/host/served-collection.ts': { why: 'a line for the log', texts: ['reading ahead'] },
  'electron/host/start-host.ts': {
    why: 'thrown or logged, for a programmer',
    texts: [
      'The thread that keeps the collection ended before it answered',
      "The collection's thread broke: 0",
    ],
  },
  'renderer/shared/focus/lost-focus.ts': { why: 'selectors of elements' },
}

/** A text for people that stands in code. */
export interface TextOutside {
  readonly file: string
  readonly line: number
  readonly text: string
}

/** Attributes that people read or hear. */
const READ_ATTRIBUTES = new Set([
  'label',
  'title',
  'placeholder',
  'alt',
  'aria-label',
  'aria-description',
  'hint',
])
/** Attributes that tell the browser how to draw. */
const DRAWN = /^(className|preserveAspectRatio)$/
/** Calls whose texts are read by a program, or by a programmer. */
const NOT_FOR_PEOPLE =
  /^(prepared|select|expression|exec|pragma|prepare|describe|querySelector(All)?|closest|matches|Error|RangeError|TypeError|require|log|columns|notUndone|setCreator|test|it)$/
const SQL =
  /\b(SELECT|FROM|WHERE|JOIN|EXISTS|ORDER BY|UPDATE|DELETE|INSERT|VALUES|CASE|coalesce|WITH|AND|OR|DESC|ASC|IS NULL|IN)\b/
const WORDS = /\p{L}{2,}[^\s]*\s+[^\s]*\p{L}/u
const LETTERS = /\p{L}{2,}/u

/** Texts for people in one file: text between tags, what is read of an attribute, and words one after the other. */
export function textsIn(file: string, source: string): TextOutside[] {
  const kind = file.endsWith('.tsx') ? ts.ScriptKind.TSX : ts.ScriptKind.TS
  const tree = ts.createSourceFile(file, source, ts.ScriptTarget.Latest, true, kind)
  const found: TextOutside[] = []
  const add = (node: ts.Node, text: string) => {
    const { line } = tree.getLineAndCharacterOfPosition(node.getStart())
    found.push({ file, line: line + 1, text: text.replace(/\s+/g, ' ').trim() })
  }
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isTypeNode(node)) return
    if (
      (ts.isCallExpression(node) || ts.isNewExpression(node)) &&
      NOT_FOR_PEOPLE.test(nameOf(node.expression))
    )
      return
    if (ts.isJsxAttribute(node)) {
      const name = node.name.getText()
      const text =
        node.initializer !== undefined && ts.isStringLiteral(node.initializer) ? node.initializer.text : null
      if (text !== null) {
        if (READ_ATTRIBUTES.has(name) ? LETTERS.test(text) : !DRAWN.test(name) && WORDS.test(text))
          add(node, text)
        return
      }
      if (name === 'className' || name.startsWith('data-')) return
    }
    if (ts.isJsxText(node) && LETTERS.test(node.text)) add(node, node.text)
    const text = literalText(node)
    if (text !== null && WORDS.test(text) && !SQL.test(text)) add(node, text)
    ts.forEachChild(node, visit)
  }
  visit(tree)
  return found
}

function nameOf(called: ts.Expression): string {
  return ts.isPropertyAccessExpression(called) ? called.name.text : called.getText()
}

function literalText(node: ts.Node): string | null {
  if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) return node.text
  if (!ts.isTemplateExpression(node)) return null
  return [node.head.text, ...node.templateSpans.map(({ literal }) => literal.text)].join('0')
}

/** Every text for people in the folders that tell by messages. */
export function textsOutside(
  folders: readonly string[] = TOLD_BY_MESSAGES,
  read: (file: string) => string = sourceOf,
): TextOutside[] {
  return folders.flatMap((folder) =>
    readdirSync(join(project, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.tsx?$/.test(name))
      .map((name) => join(folder, name).replaceAll('\\', '/'))
      .flatMap((file) => textsIn(file, read(file)))
      .filter(({ file, text }) => !isForPrograms(file, text)),
  )
}

/** A file of the project, by its path in it. */
export function sourceOf(file: string): string {
  return readFileSync(join(project, file), 'utf8')
}

/** What is excused in vain: files that hold no such text any more. */
export function excusedInVain(): string[] {
  return Object.entries(FOR_PROGRAMS).flatMap(([file, { texts }]) => {
    const found = textsIn(file, sourceOf(file)).map(({ text }) => text)
    const gone = texts?.filter((text) => !found.includes(text)) ?? []
    return found.length === 0 ? [file] : gone.map((text) => `${file}: ${text}`)
  })
}

function isForPrograms(file: string, text: string): boolean {
  const excused = FOR_PROGRAMS[file]
  return excused !== undefined && (excused.texts === undefined || excused.texts.includes(text))
}
