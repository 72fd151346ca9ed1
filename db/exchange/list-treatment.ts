import { fold } from '../domain/shared/fold.ts'

const TREATMENT =
  '(?:treat(?:ed|ments?)?|dress(?:ed|ings?)|coat(?:ed|ings?)|chemicals?|chemically|fungicides?|pesticides?|insecticides?|behandelt\\w*|behandlung|gebeizt\\w*|beizen?|beizung|beizmittel|traite(?:e|s|es)?|traitements?|tratad[oa]s?|tratar|tratamientos?|curad[oa]s?|desinfectad[oa]s?|recubiert[oa]s?|fungicidas?|insecticidas?|pesticidas?|quimicos?|quimicamente)'
const NO =
  '(?:not?|non|never|without|nicht|nie|ohne|kein(?:e[rn]?)?|sans|pas(?: ete)?|jamais|aucun|sin|ningun|nunca)'
/** What may stand between a no and what it denies, and around both: 'has not been chemically treated', 'seed: no'. */
const FILLER =
  '(?:seeds?|this|is|was|were|are|has|have|been|any|a|de|chemical|chemically|chemisch\\w*|fungicide|seed|saatgut|samen|graines?|semences?|semillas?|wurde|worden|ist|est|la|las|ha|han|sido|esta|estan|fue|fueron|lleva|llevan|tipo|ningun[oa]?|n)'
const DENIED = `(?:un(?:treated|dressed|coated|behandelt\\w*|gebeizt\\w*)|${NO}(?: ${FILLER})* ${TREATMENT}(?: ${TREATMENT})*)`

/** A cell that is only a no, or says that nobody knows. */
const ONLY_NO =
  /^(?:no|none|not|nil|nein|kein(?:e|er)?|ohne|non|aucune?|sans|ningun[oa]?|n|0|false|never|n a|not known|unknown|unbekannt|inconnu|nada|falso|desconocid[oa]|no se sabe)?$/
const WHOLLY_DENIED = new RegExp(`^(?:${FILLER} )*${DENIED}(?: ${FILLER})*$`)
const DENIALS = new RegExp(`\\b${DENIED}\\b`, 'g')
const SAYS_TREATED =
  /\b(?:treated|fungicide|captan|thiram|tiram|gebeizt|tratad[oa]s?|fungicidas?|curasemillas?)\b/
const ONLY_YES = /^(?:yes|y|ja|oui|si|x|true|verdadero|1|treated|behandelt|gebeizt|traitee?s?|tratad[oa]s?)$/
const LONGEST = 500

/**
 * What a row says its seed was treated with: null for not treated or not known, empty where only a yes is said.
 *
 * Whatever is under the heading and no plain no is taken for a treatment: seed that waits in quarantine does less harm
 * than treated seed that is eaten. Words of English, German, French and Spanish; common practice, no source.
 */
export function treatmentSaid(cell: string, note: string): string | null {
  const said = fold(cell)
  if (ONLY_YES.test(said)) return ''
  if (!ONLY_NO.test(said) && !WHOLLY_DENIED.test(said)) return cell.slice(0, LONGEST)
  const told = fold(note).replace(DENIALS, ' ')
  return SAYS_TREATED.test(told) ? note.slice(0, LONGEST) : null
}
