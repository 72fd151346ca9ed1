import { execFile } from 'node:child_process'
import { existsSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const here = dirname(fileURLToPath(import.meta.url))
const projectFolder = join(here, '..', '..')
const plantedFolder = join(here, 'planted')
const rulesFile = join(here, 'layers.cjs')
const FOLDERS = ['db', 'electron', 'renderer', 'demo-data', 'tests']

export interface Violation {
  readonly rule: string
  readonly from: string
  readonly to: string
}

interface CruiseSummary {
  readonly totalCruised: number
  readonly violations: readonly { rule: { name: string }; from: string; to: string }[]
}

/** The names of all rules, as the rule file lists them. */
export function ruleNames(): readonly string[] {
  const rules = createRequire(import.meta.url)(rulesFile) as { forbidden: readonly { name: string }[] }
  return rules.forbidden.map((rule) => rule.name)
}

async function cruise(folder: string): Promise<{ files: number; violations: readonly Violation[] }> {
  const program = join(projectFolder, 'node_modules', 'dependency-cruiser', 'bin', 'dependency-cruiser.mjs')
  const folders = FOLDERS.filter((name) => existsSync(join(folder, name)))
  const text = await new Promise<string>((resolve, reject) => {
    const args = [program, '--config', rulesFile, '--output-type', 'json', ...folders]
    execFile(
      process.execPath,
      args,
      { cwd: folder, maxBuffer: 256 * 1024 * 1024 },
      (_failure, stdout, stderr) =>
        stdout === '' ? reject(new Error(`dependency-cruiser said nothing: ${stderr}`)) : resolve(stdout),
    )
  })
  const { summary } = JSON.parse(text) as { summary: CruiseSummary }
  const violations = summary.violations.map(({ rule, from, to }) => ({ rule: rule.name, from, to }))
  return { files: summary.totalCruised, violations }
}

/** Every import of the project that a rule refuses, and how many files were read. */
function cruiseProject() {
  return cruise(projectFolder)
}

/** What the rules say of the planted violations: each rule must appear. */
export function cruisePlanted() {
  return cruise(plantedFolder)
}

async function main(): Promise<number> {
  const [project, planted] = await Promise.all([cruiseProject(), cruisePlanted()])
  for (const { rule, from, to } of project.violations) console.error(`${rule}: ${from} -> ${to}`)
  const blind = ruleNames().filter((name) => !planted.violations.some((found) => found.rule === name))
  for (const name of blind) console.error(`${name}: did not catch the violation planted for it`)
  console.log(
    `Imports of ${project.files} files read: ${project.violations.length} refused. ` +
      `${ruleNames().length - blind.length} of ${ruleNames().length} rules caught their planted violation.`,
  )
  return project.violations.length + blind.length === 0 && project.files > 0 ? 0 : 1
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = await main()
