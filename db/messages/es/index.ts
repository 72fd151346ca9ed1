import amounts from './amounts.json' with { type: 'json' }
import app from './app.json' with { type: 'json' }
import cautions from './cautions.json' with { type: 'json' }
import collection from './collection.json' with { type: 'json' }
import elsewhere from './elsewhere.json' with { type: 'json' }
import exchange from './exchange.json' with { type: 'json' }
import fireSheet from './fire-sheet.json' with { type: 'json' }
import forecast from './forecast.json' with { type: 'json' }
import germination from './germination.json' with { type: 'json' }
import gifts from './gifts.json' with { type: 'json' }
import glossary from './glossary.json' with { type: 'json' }
import handOut from './hand-out.json' with { type: 'json' }
import imported from './import.json' with { type: 'json' }
import intake from './intake.json' with { type: 'json' }
import keeping from './keeping.json' with { type: 'json' }
import labels from './labels.json' with { type: 'json' }
import letters from './letters.json' with { type: 'json' }
import needs from './needs.json' with { type: 'json' }
import paper from './paper.json' with { type: 'json' }
import paperSheet from './paper-sheet.json' with { type: 'json' }
import people from './people.json' with { type: 'json' }
import print from './print.json' with { type: 'json' }
import problems from './problems.json' with { type: 'json' }
import recall from './recall.json' with { type: 'json' }
import returns from './returns.json' with { type: 'json' }
import season from './season.json' with { type: 'json' }
import settings from './settings.json' with { type: 'json' }
import shelf from './shelf.json' with { type: 'json' }
import stock from './stock.json' with { type: 'json' }
import stocktake from './stocktake.json' with { type: 'json' }
import storage from './storage.json' with { type: 'json' }
import table from './table.json' with { type: 'json' }
import takeIn from './take-in.json' with { type: 'json' }
import terms from './terms.json' with { type: 'json' }
import withdrawal from './withdrawal.json' with { type: 'json' }

export const es = {
  ...amounts,
  ...app,
  ...cautions,
  ...collection,
  ...elsewhere,
  ...exchange,
  ...fireSheet,
  ...forecast,
  ...germination,
  ...gifts,
  ...glossary,
  ...handOut,
  ...imported,
  ...intake,
  ...keeping,
  ...labels,
  ...letters,
  ...needs,
  ...paper,
  ...paperSheet,
  ...people,
  ...print,
  ...problems,
  ...recall,
  ...returns,
  ...season,
  ...settings,
  ...shelf,
  ...stock,
  ...stocktake,
  ...storage,
  ...table,
  ...takeIn,
  ...terms,
  ...withdrawal,
}
