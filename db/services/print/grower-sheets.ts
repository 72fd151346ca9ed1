import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import type { PlanLine } from '../../contract/regeneration-operations.ts'
import type { Untold } from '../../contract/told.ts'
import { breedingOf } from '../../domain/needs/population-goal.ts'
import { growingAdvice } from '../../domain/season-plan/growing-words.ts'
import { usualExtraction } from '../../domain/season-plan/seed-extraction.ts'
import { message } from '../../messages/message.ts'
import type { Texts } from '../../messages/texts.ts'
import { flowingDocument } from '../../paper/drawing/flowing-document.ts'
import { type GrowerSheet, type GrowerVariety, growerSheetParts } from '../../paper/grower-sheets.ts'
import { lotsOfAccessions } from '../../queries/lot-rows.ts'
import { rescueCrop } from '../../queries/need-rows.ts'
import type { Reading } from '../book/context.ts'
import { mustBeRead } from '../book/seed-words.ts'
import { settingsOf } from '../book/settings.ts'
import { latestPlan } from '../regrow/season-plan.ts'
import { documentFacts, made, textsFor } from './document.ts'
import { seedOnPaper } from './seed-facts.ts'

/**
 * A sheet for each garden of the saved plan: what, how many, how far apart, how to select, harvest and bring back; in the
 * language of its grower.
 */
export async function printGrowerSheets(
  reading: Reading,
  input: ParsedInput<'season-plan.print'>,
): Promise<Result<'season-plan.print'>> {
  const { plan } = latestPlan(reading)
  if (plan === null) {
    refuse('not-found', message('print.no-plan'), { todo: message('print.no-plan-todo') })
  }
  const lines = plan.lines.filter(({ siteId }) => input.siteId === null || siteId === input.siteId)
  if (lines.length === 0) {
    refuse('nothing-to-print', message('print.nothing-in-garden'), { field: 'siteId' })
  }
  const sheets = await Promise.all(
    [...Map.groupBy(lines, ({ siteId }) => siteId).values()].flatMap((here) =>
      here.slice(0, 1).map((first) => sheetOf(reading, plan.season, first, here)),
    ),
  )
  const about = message('paper.title-growers', { season: `${plan.season}` })
  const facts = await documentFacts(
    reading,
    about,
    sheets.map(({ texts }) => texts),
  )
  const printed = await flowingDocument({ parts: growerSheetParts(sheets), ...facts })
  return made(printed, `grower-sheets-${plan.season}.pdf`)
}

async function sheetOf(
  reading: Reading,
  year: number,
  first: Untold<PlanLine>,
  here: readonly Untold<PlanLine>[],
): Promise<GrowerSheet> {
  const texts = await textsFor(reading, first.growerId)
  const [season, next] = [`${year}`, `${year + 1}`]
  const { libraryName, dueDates } = settingsOf(reading)
  const endOfSeason = here.some(({ biennial }) => biennial)
    ? texts.text('paper.grower-by-two', { season, next })
    : texts.text('paper.grower-by', { season })
  return {
    to: first.grower,
    garden: first.site,
    season: year,
    bringBackBy: dueDates ? endOfSeason : '',
    varieties: here.map((line) => varietyOf(reading, line, texts)),
    libraryName,
    texts,
  }
}

function varietyOf(reading: Reading, line: Untold<PlanLine>, texts: Texts): GrowerVariety {
  const ofCrop = rescueCrop(reading.sqlite, line.accessionId)
  const lots = lotsOfAccessions(reading.sqlite, [line.accessionId])
  const given = line.sow?.lots.map(({ lotId }) => lotId) ?? lots.map(({ lotId }) => lotId)
  return {
    name: seedOnPaper(line, texts),
    numbers:
      line.sow === null
        ? line.accessionNumber
        : texts.text('paper.grower-seed-of', {
            accession: line.accessionNumber,
            lots: { list: line.sow.lots.map(({ lotNumber }) => lotNumber) },
          }),
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
    cautions: mustBeRead(reading, given).map(texts.say),
  }
}
