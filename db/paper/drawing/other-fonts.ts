import { readFileSync } from 'node:fs'
import { type FontFile, openFontFile } from './font-file.ts'

/** The weights that fonts of other scripts are printed in. */
export type Weight = 'regular' | 'semibold' | 'bold'

const WEIGHTS: Readonly<Record<Weight, string>> = {
  regular: '400Regular',
  semibold: '600SemiBold',
  bold: '700Bold',
}
/** Where only a regular and a bold are drawn. */
const TWO_WEIGHTS = { ...WEIGHTS, semibold: WEIGHTS.bold }

/** Addresses of the three weights of a font inside its package. */
function weighted(folder: string, name: string, weights: Readonly<Record<Weight, string>> = WEIGHTS) {
  const file = (weight: string) => `@expo-google-fonts/${folder}/${weight}/${name}_${weight}.ttf`
  return { regular: file(weights.regular), semibold: file(weights.semibold), bold: file(weights.bold) }
}

const DEJAVU_BOLD = 'dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf'

/** Whole TrueType fonts beside Source Sans 3; their licences are in docs/decisions/0002-libraries.md. */
const FONTS = {
  hebrew: weighted('noto-sans-hebrew', 'NotoSansHebrew'),
  arabic: weighted('noto-sans-arabic', 'NotoSansArabic'),
  devanagari: weighted('noto-sans-devanagari', 'NotoSansDevanagari'),
  chinese: weighted('noto-sans-sc', 'NotoSansSC'),
  japanese: weighted('biz-udpgothic', 'BIZUDPGothic', TWO_WEIGHTS),
  korean: weighted('nanum-gothic', 'NanumGothic', TWO_WEIGHTS),
  emoji: weighted('noto-emoji', 'NotoEmoji'),
  others: { regular: 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf', semibold: DEJAVU_BOLD, bold: DEJAVU_BOLD },
} as const

type FontName = keyof typeof FONTS

/** Which fonts a letter is looked for in, by what stands in it; the first that has all of it prints it. */
const BY_SCRIPT: readonly (readonly [letter: RegExp, fonts: readonly FontName[]])[] = [
  [/\p{scx=Hebrew}/u, ['hebrew']],
  [/\p{scx=Arabic}/u, ['arabic']],
  [/\p{scx=Devanagari}/u, ['devanagari']],
  [/\p{Script=Hangul}/u, ['korean']],
  [/\p{scx=Han}|\p{scx=Bopomofo}|[\u3000-\u303f\uff00-\uffef]/u, ['chinese', 'japanese']],
  [/\p{scx=Hiragana}|\p{scx=Katakana}/u, ['japanese', 'chinese']],
  [/\p{Extended_Pictographic}|\p{Regional_Indicator}|\u20e3/u, ['emoji']],
]

/** Fonts for what Source Sans 3 lacks, each read when the first letter needs it. */
export interface OtherFonts {
  /**
   * The font of a weight that has a letter; undefined where none has.
   *
   * The same ideograph is drawn differently in China and Japan: `japanese` asks for the latter.
   */
  find(letter: string, weight: Weight, japanese: boolean): FontFile | undefined
}

/** Fonts whose file is where `locate` says; it may throw where there is none, whose letters then have no font. */
export function otherFonts(locate: (file: string) => string): OtherFonts {
  const open = new Map<string, FontFile | undefined>()
  const read = (file: string): FontFile | undefined => {
    if (!open.has(file)) open.set(file, readFont(file, locate))
    return open.get(file)
  }
  return {
    find(letter, weight, japanese) {
      const names = BY_SCRIPT.find(([pattern]) => pattern.test(letter))?.[1] ?? []
      const ordered = japanese && names[0] === 'chinese' ? names.toReversed() : names
      for (const name of [...ordered, 'others' as const]) {
        const font = read(FONTS[name][weight])
        if (font?.hasAll(letter)) return font
      }
      return undefined
    },
  }
}

function readFont(file: string, locate: (file: string) => string): FontFile | undefined {
  try {
    return openFontFile(readFileSync(locate(file)), {})
  } catch (thrown) {
    if (thrown instanceof Error && 'code' in thrown && ABSENT.has(String(thrown.code))) return undefined
    throw thrown
  }
}

const ABSENT = new Set(['ENOENT', 'MODULE_NOT_FOUND'])
