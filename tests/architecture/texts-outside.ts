import { readdirSync, readFileSync } from 'node:fs'
import { join, relative } from 'node:path'
import ts from 'typescript'

const project = join(import.meta.dirname, '..', '..')

/** Folders and files in which no text for people may stand: they tell by messages of the catalogue. */
export const TOLD_BY_MESSAGES: readonly string[] = [
  'db/domain/amounts',
  'db/domain/backups',
  'db/domain/cautions',
  'db/domain/climate',
  'db/domain/crops',
  'db/domain/germination',
  'db/domain/ledger',
  'db/domain/letters',
  'db/domain/moisture',
  'db/domain/needs',
  'db/domain/numbers',
  'db/domain/promises',
  'db/domain/rounds',
  'db/domain/season-plan',
  'db/domain/viability',
  'db/domain/weights',
  'db/domain/withdrawal',
  'db/paper',
  'db/services/entry-log',
  'db/services/forecast',
  'db/services/germination',
  'db/services/print',
  'db/services/regrow',
  'db/services/storage',
  'renderer/app',
  'renderer/screens/entry-log',
  'renderer/screens/germination',
  'renderer/screens/gifts-waiting',
  'renderer/screens/hand-out',
  'renderer/screens/import-export',
  'renderer/screens/paper-sheet',
  'renderer/screens/people',
  'renderer/screens/print',
  'renderer/screens/regrow',
  'renderer/screens/returns',
  'renderer/screens/season-plan',
  'renderer/screens/settings',
  'renderer/screens/shelf/actions',
  'renderer/screens/shelf/outlook',
  'renderer/screens/spreadsheet-import',
  'renderer/screens/stocktake',
  'renderer/screens/storage',
  'renderer/screens/take-in',
  'renderer/shared/card-form',
  'renderer/shared/chart',
  'renderer/shared/client',
  'renderer/shared/foot-line',
  'renderer/shared/germination-form',
  'renderer/shared/labels',
  'renderer/shared/panes',
  'renderer/shared/parts',
  'renderer/shared/promise-mark',
  'renderer/shared/season-draft',
  'renderer/shared/seed-bar',
  'renderer/shared/state-mark',
  'renderer/shared/table-form',
]

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
export function textsOutside(folders: readonly string[] = TOLD_BY_MESSAGES): TextOutside[] {
  return folders.flatMap((folder) =>
    readdirSync(join(project, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.tsx?$/.test(name))
      .flatMap((name) => {
        const file = join(project, folder, name)
        return textsIn(relative(project, file), readFileSync(file, 'utf8'))
      }),
  )
}
