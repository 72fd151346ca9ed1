import { crop, variety } from '../schema/reference-tables.ts'

/** What seed is called: its variety and its crop. */
export const SEED_NAMES = { variety: variety.name, crop: crop.commonName }

/** Joins a lot with its accession, its variety and its crop. */
export const JOIN_SEED = `JOIN accession ON accession.id = lot.accession_id
  JOIN variety ON variety.id = accession.variety_id JOIN crop ON crop.id = variety.crop_id`
