import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'

// npm run rules: docs/rules.md, every rule of the trade with what it says, its source and its test, read from the code.

const project = join(import.meta.dirname, '..', '..')
const domain = join(project, 'db', 'domain')
export const PAGE = join(project, 'docs', 'rules.md')

/** A function of the domain that others may use, as its file documents it. */
export interface Rule {
  readonly name: string
  readonly file: string
  /** The first sentence of its docstring; '' where it has none. */
  readonly says: string
  /** The sentences of its docstring that name where it comes from. */
  readonly source: string
}

const NAMES_A_SOURCE =
  /common practice|no source|from memory|judgement|published|standard|rules|ISTA|FAO|ISO|Ellis|Roberts|Wilson|handbook|\(\d{4}\)|\b(19|20)\d\d\b/i

function sentencesOf(docstring: string): string[] {
  const text = docstring
    .replace(/^\s*\/\*\*|\*\/\s*$/g, '')
    .split('\n')
    .map((line) => line.replace(/^\s*\*? ?/, ''))
    .join(' ')
    .replace(/\s+/g, ' ')
    .trim()
  return text === '' ? [] : text.split(/(?<=\.)\s+(?=[A-Z‘'])/)
}

function filesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => join(folder, name))
    .toSorted()
}

/** Every exported function of the domain, by file. */
export function rules(): Rule[] {
  return filesIn(domain)
    .filter((file) => !relative(domain, file).startsWith('shared'))
    .flatMap((file) => {
      const text = readFileSync(file, 'utf8')
      return [...text.matchAll(/(\/\*\*(?:(?!\*\/)[\s\S])*\*\/\n)?export (?:async )?function (\w+)/g)].map(
        ([, docstring = '', name = '']) => {
          const sentences = sentencesOf(docstring)
          return {
            name,
            file: relative(project, file),
            says: sentences[0] ?? '',
            source: sentences.filter((sentence) => NAMES_A_SOURCE.test(sentence)).join(' '),
          }
        },
      )
    })
}

/** The tests that use a function of the domain, by the file it stands in: those of its own room first. */
export function testsByFunction(): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>()
  for (const file of filesIn(join(project, 'tests')).filter((name) => name.endsWith('.test.ts'))) {
    const text = readFileSync(file, 'utf8')
    for (const [, names = '', from = ''] of text.matchAll(
      /import \{([^}]*)\} from '([^']*db\/domain\/[^']+)'/g,
    )) {
      const module = from.slice(from.indexOf('db/domain/'))
      for (const name of names.split(',').map((part) => part.replace(/^\s*type /, '').trim()))
        found.set(`${module} ${name}`, [
          ...(found.get(`${module} ${name}`) ?? []),
          relative(join(project, 'tests'), file),
        ])
    }
  }
  return found
}

const cell = (text: string) => text.replaceAll('|', '\\|')

/** The page as the code stands. */
export function rulesPage(): string {
  const tests = testsByFunction()
  const rooms = Map.groupBy(rules(), ({ file }) => file.split('/')[2] ?? '')
  const parts = [...rooms].map(([room, of]) =>
    [
      `## ${room}`,
      '',
      '| Rule | What it says | Source | Tried by |',
      '|---|---|---|---|',
      ...of.map(({ name, file, says, source }) => {
        const tried = tests.get(`${file} ${name}`)?.slice(0, 2).join(', ') ?? 'what uses it'
        return `| [\`${name}\`](../${file}) | ${cell(says)} | ${cell(source)} | ${tried} |`
      }),
      '',
    ].join('\n'),
  )
  return [
    '# The rules of the trade',
    '',
    'Written by `npm run rules` from `db/domain`, and checked with every run of the tests: each rule, the function that holds it, its source as its docstring names it, and the test that uses it by name. Values stand in the crop table (`db/reference/crops.json`) with a source for each cell; how sure each published source is stands in [sources.md](sources.md).',
    '',
    ...parts,
  ].join('\n')
}

if (process.argv[1] === fileURLToPath(import.meta.url) && existsSync(domain)) writeFileSync(PAGE, rulesPage())
