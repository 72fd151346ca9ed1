import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import type { PlanLine } from '../../contract/regeneration-operations.ts'
import type { Untold } from '../../contract/told.ts'
import { breedingOf } from '../../domain/needs/population-goal.ts'
import { growingAdvice } from '../../domain/season-plan/growing-words.ts'
import { usualExtraction } from '../../domain/season-plan/seed-extraction.ts'
import type { Texts } from '../../messages/texts.ts'
import { textsOf } from '../../messages/texts-of.ts'
import { flowingDocument } from '../../paper/drawing/flowing-document.ts'
import { type GrowerVariety, growerSheetParts } from '../../paper/grower-sheets.ts'
import { lotsOfAccessions } from '../../queries/lot-rows.ts'
import { rescueCrop } from '../../queries/need-rows.ts'
import type { Reading } from '../book/context.ts'
import { cautionsOf } from '../book/seed-words.ts'
import { settingsOf } from '../book/settings.ts'
import { latestPlan } from '../regrow/season-plan.ts'
import { documentFacts, made } from './document.ts'

/** A sheet for each garden of the saved plan: what, how many, how far apart, how to select, harvest and bring back. */
export async function printGrowerSheets(
  reading: Reading,
  input: ParsedInput<'season-plan.print'>,
): Promise<Result<'season-plan.print'>> {
  const { plan } = latestPlan(reading)
  if (plan === null) {
    refuse('not-found', 'No plan is saved yet.', { todo: 'Make a plan, save it, then print its sheets.' })
  }
  const lines = plan.lines.filter(({ siteId }) => input.siteId === null || siteId === input.siteId)
  if (lines.length === 0) {
    refuse('nothing-to-print', 'Nothing of the saved plan grows in that garden.', { field: 'siteId' })
  }
  const texts = await textsOf(settingsOf(reading))
  const facts = await documentFacts(reading, `Grower sheets ${plan.season}`)
  const sheets = [...Map.groupBy(lines, ({ siteId }) => siteId).values()].flatMap((here) =>
    here.slice(0, 1).map((first) => ({
      to: first.grower,
      garden: first.site,
      season: plan.season,
      bringBackBy: `the end of ${here.some(({ biennial }) => biennial) ? `${plan.season}, or of ${plan.season + 1} what takes two seasons` : plan.season}`,
      varieties: here.map((line) => varietyOf(reading, line, texts)),
      libraryName: facts.libraryName,
    })),
  )
  const printed = await flowingDocument({ parts: growerSheetParts(sheets), ...facts })
  return made(printed, `grower-sheets-${plan.season}.pdf`)
}

function varietyOf(reading: Reading, line: Untold<PlanLine>, texts: Texts): GrowerVariety {
  const ofCrop = rescueCrop(reading.sqlite, line.accessionId)
  const lots = lotsOfAccessions(reading.sqlite, [line.accessionId])
  const given = line.sow?.lots.map(({ lotId }) => lotId) ?? lots.map(({ lotId }) => lotId)
  return {
    name: `${line.crop} ‘${line.variety}’`,
    numbers:
      line.sow === null
        ? line.accessionNumber
        : `${line.accessionNumber} · seed of ${line.sow.lots.map(({ lotNumber }) => lotNumber).join(' and ')}`,
    advice: growingAdvice({
      plants: line.plants,
      seeds: line.sow?.seeds ?? null,
      chance: line.sow?.chance ?? 0,
      noSeed: line.noSeed,
      ofTheLast: line.sow === null || line.sow.enough ? null : Math.round(line.sow.expected),
      care: line.rescue.forGrower,
      unit: lots[0]?.countedUnit ?? 'seed',
      areaM2: line.areaM2,
      isolationM: line.isolationM,
      unknown: line.unknown,
      shortSeason: line.shortSeason,
      group: line.group,
      way: line.way,
      apartInTime: line.apartInTime,
      pollination: line.pollination,
      breeding: breedingOf(ofCrop.matingSystem),
      biennial: line.biennial,
      extraction: ofCrop.seedExtraction ?? usualExtraction(ofCrop.family),
    }).map(({ heading, sentences }) => ({
      heading: texts.say(heading),
      text: sentences.map((said) => (typeof said === 'string' ? said : texts.say(said))).join(' '),
    })),
    cautions: cautionsOf(reading, given).map(({ text }) => text),
  }
}
