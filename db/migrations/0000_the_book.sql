CREATE TABLE collection (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  uuid TEXT NOT NULL CHECK (length(uuid) = 36),
  kind TEXT NOT NULL CHECK (kind IN ('demo', 'own')),
  library_name TEXT NOT NULL CHECK (library_name <> ''),
  accession_pattern TEXT NOT NULL CHECK (accession_pattern LIKE '%{#%}'),
  regrowings_kept INTEGER NOT NULL CHECK (regrowings_kept BETWEEN 1 AND 20),
  emergence REAL NOT NULL CHECK (emergence BETWEEN 0.05 AND 1),
  viability_threshold REAL NOT NULL CHECK (viability_threshold BETWEEN 0.05 AND 1),
  viability_threshold_of TEXT NOT NULL CHECK (viability_threshold_of IN ('all-seeds', 'the-start')),
  grade TEXT NOT NULL CHECK (grade IN ('quality', 'maintenance', 'conservation')),
  sowing_day TEXT NOT NULL CHECK (sowing_day LIKE '__-__'),
  locale TEXT NOT NULL,
  mass_units TEXT NOT NULL CHECK (mass_units IN ('metric', 'ounces')),
  paper TEXT NOT NULL CHECK (paper IN ('a4', 'letter')),
  appearance TEXT NOT NULL CHECK (appearance IN ('system', 'light', 'dark')),
  visit_limit INTEGER CHECK (visit_limit BETWEEN 1 AND 100),
  keeper TEXT NOT NULL,
  letter_words TEXT NOT NULL,
  backup_folder TEXT NOT NULL,
  backup_limit_mb INTEGER NOT NULL CHECK (backup_limit_mb BETWEEN 10 AND 1000000),
  created_at TEXT NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE number_series (
  series TEXT PRIMARY KEY,
  next INTEGER NOT NULL CHECK (next >= 1)
) STRICT;
--> statement-breakpoint
CREATE TABLE entry (
  id INTEGER PRIMARY KEY,
  key TEXT NOT NULL UNIQUE,
  operation TEXT NOT NULL,
  input_digest TEXT NOT NULL,
  answer TEXT NOT NULL,
  said TEXT NOT NULL,
  recorded_at TEXT NOT NULL,
  takes_back_id INTEGER UNIQUE REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE TABLE draft (
  id TEXT PRIMARY KEY,
  kind TEXT NOT NULL CHECK (kind IN ('take-in', 'hand-out', 'take-back', 'stocktake', 'paper-sheet', 'round', 'bench', 'season')),
  text TEXT NOT NULL CHECK (text <> ''),
  kept_at TEXT NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE person (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL CHECK (name <> ''),
  name_folded TEXT NOT NULL,
  town TEXT NOT NULL,
  credit_as TEXT NOT NULL,
  note TEXT NOT NULL,
  created_on TEXT NOT NULL,
  joined_into_id INTEGER REFERENCES person (id) CHECK (joined_into_id <> id)
) STRICT;
--> statement-breakpoint
CREATE INDEX person_by_name ON person (name_folded);
--> statement-breakpoint
CREATE INDEX person_by_joined ON person (joined_into_id) WHERE joined_into_id IS NOT NULL;
--> statement-breakpoint
CREATE TABLE person_contact (
  person_id INTEGER PRIMARY KEY REFERENCES person (id),
  email TEXT NOT NULL,
  phone TEXT NOT NULL,
  address TEXT NOT NULL,
  may_write INTEGER NOT NULL CHECK (may_write IN (0, 1)),
  consent_on TEXT,
  CHECK (may_write = 0 OR consent_on IS NOT NULL)
) STRICT;
--> statement-breakpoint
CREATE TABLE person_role (
  person_id INTEGER NOT NULL REFERENCES person (id),
  role TEXT NOT NULL CHECK (role IN ('donor', 'member', 'grower')),
  PRIMARY KEY (person_id, role)
) STRICT, WITHOUT ROWID;
--> statement-breakpoint
CREATE TABLE person_change (
  id INTEGER PRIMARY KEY,
  person_id INTEGER NOT NULL REFERENCES person (id),
  field TEXT NOT NULL,
  before TEXT NOT NULL CHECK (json_valid(before)),
  after TEXT NOT NULL CHECK (json_valid(after)),
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX person_change_by_person ON person_change (person_id);
--> statement-breakpoint
CREATE INDEX person_change_by_entry ON person_change (entry_id);
--> statement-breakpoint
CREATE TABLE crop (
  id TEXT PRIMARY KEY,
  common_name TEXT NOT NULL,
  name_folded TEXT NOT NULL,
  species TEXT NOT NULL,
  family TEXT NOT NULL,
  hundred_seed_weight_ug INTEGER CHECK (hundred_seed_weight_ug > 0),
  plausible_low_g REAL,
  plausible_high_g REAL CHECK (plausible_high_g >= plausible_low_g),
  packet_seeds INTEGER CHECK (packet_seeds > 0),
  mating_system TEXT,
  plants_for_seed INTEGER CHECK (plants_for_seed > 0),
  plants_to_maintain INTEGER CHECK (plants_to_maintain > 0),
  plants_to_conserve INTEGER CHECK (plants_to_conserve > 0),
  federal_minimum_percent INTEGER CHECK (federal_minimum_percent BETWEEN 1 AND 100),
  state_minimum_percent INTEGER CHECK (state_minimum_percent BETWEEN 1 AND 100),
  storage_class TEXT,
  storage_years INTEGER CHECK (storage_years > 0),
  reference TEXT NOT NULL CHECK (json_valid(reference)),
  own_plants INTEGER CHECK (own_plants > 0),
  own_threshold REAL CHECK (own_threshold BETWEEN 0.05 AND 1),
  own_days_to_seed INTEGER CHECK (own_days_to_seed BETWEEN 20 AND 366),
  own_reason TEXT NOT NULL,
  added_entry_id INTEGER REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE TABLE crop_change (
  id INTEGER PRIMARY KEY,
  crop_id TEXT NOT NULL REFERENCES crop (id),
  field TEXT NOT NULL,
  before TEXT NOT NULL CHECK (json_valid(before)),
  after TEXT NOT NULL CHECK (json_valid(after)),
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX crop_change_by_crop ON crop_change (crop_id);
--> statement-breakpoint
CREATE INDEX crop_change_by_entry ON crop_change (entry_id);
--> statement-breakpoint
CREATE TABLE variety (
  id INTEGER PRIMARY KEY,
  crop_id TEXT NOT NULL REFERENCES crop (id),
  name TEXT NOT NULL CHECK (name <> ''),
  name_folded TEXT NOT NULL,
  story TEXT NOT NULL,
  joined_into_id INTEGER REFERENCES variety (id) CHECK (joined_into_id <> id),
  UNIQUE (crop_id, name_folded, name)
) STRICT;
--> statement-breakpoint
CREATE TABLE variety_synonym (
  id INTEGER PRIMARY KEY,
  variety_id INTEGER NOT NULL REFERENCES variety (id),
  name TEXT NOT NULL CHECK (name <> ''),
  name_folded TEXT NOT NULL,
  UNIQUE (variety_id, name)
) STRICT;
--> statement-breakpoint
CREATE TABLE variety_join (
  id INTEGER PRIMARY KEY,
  kept_id INTEGER NOT NULL REFERENCES variety (id),
  joined_id INTEGER NOT NULL REFERENCES variety (id) CHECK (joined_id <> kept_id),
  accessions TEXT NOT NULL CHECK (json_valid(accessions)),
  names TEXT NOT NULL CHECK (json_valid(names)),
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE TABLE storage_place (
  id INTEGER PRIMARY KEY,
  parent_id INTEGER REFERENCES storage_place (id) CHECK (parent_id <> id),
  name TEXT NOT NULL CHECK (name <> ''),
  kind TEXT NOT NULL CHECK (kind IN ('room', 'cupboard', 'fridge', 'freezer', 'shelf', 'box', 'jar')),
  path TEXT NOT NULL UNIQUE
) STRICT;
--> statement-breakpoint
CREATE TABLE place_change (
  id INTEGER PRIMARY KEY,
  place_id INTEGER NOT NULL REFERENCES storage_place (id),
  before TEXT NOT NULL CHECK (before IN ('room', 'cupboard', 'fridge', 'freezer', 'shelf', 'box', 'jar')),
  after TEXT NOT NULL CHECK (after IN ('room', 'cupboard', 'fridge', 'freezer', 'shelf', 'box', 'jar')),
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX place_change_by_place ON place_change (place_id);
--> statement-breakpoint
CREATE INDEX place_change_by_entry ON place_change (entry_id);
--> statement-breakpoint
CREATE TABLE accession (
  id INTEGER PRIMARY KEY,
  number TEXT NOT NULL UNIQUE,
  bare TEXT NOT NULL UNIQUE,
  series TEXT NOT NULL,
  running INTEGER NOT NULL CHECK (running >= 1),
  variety_id INTEGER NOT NULL REFERENCES variety (id),
  donor_id INTEGER REFERENCES person (id),
  received_on TEXT NOT NULL,
  grown_at TEXT NOT NULL,
  story TEXT NOT NULL,
  terms TEXT NOT NULL,
  own_plants INTEGER CHECK (own_plants > 0),
  own_regrowings INTEGER CHECK (own_regrowings BETWEEN 1 AND 20),
  own_threshold REAL CHECK (own_threshold BETWEEN 0.05 AND 1),
  own_grade TEXT CHECK (own_grade IN ('quality', 'maintenance', 'conservation')),
  entry_id INTEGER NOT NULL REFERENCES entry (id),
  UNIQUE (series, running)
) STRICT;
--> statement-breakpoint
CREATE INDEX accession_by_variety ON accession (variety_id);
--> statement-breakpoint
CREATE INDEX accession_by_donor ON accession (donor_id);
--> statement-breakpoint
CREATE TABLE accession_caution (
  accession_id INTEGER NOT NULL REFERENCES accession (id),
  caution TEXT NOT NULL CHECK (caution IN ('treated', 'pests-seen', 'regulated', 'toxic', 'protected-variety')),
  note TEXT NOT NULL,
  PRIMARY KEY (accession_id, caution)
) STRICT, WITHOUT ROWID;
--> statement-breakpoint
CREATE TABLE accession_passport (
  accession_id INTEGER NOT NULL REFERENCES accession (id),
  code TEXT NOT NULL CHECK (code <> ''),
  value TEXT NOT NULL CHECK (value <> ''),
  entry_id INTEGER NOT NULL REFERENCES entry (id),
  PRIMARY KEY (accession_id, code)
) STRICT, WITHOUT ROWID;
--> statement-breakpoint
CREATE INDEX accession_passport_by_code ON accession_passport (code, value);
--> statement-breakpoint
CREATE TABLE list_batch (
  id INTEGER PRIMARY KEY,
  file_name TEXT NOT NULL CHECK (file_name <> ''),
  digest TEXT NOT NULL CHECK (length(digest) = 64),
  taken INTEGER NOT NULL CHECK (taken >= 1),
  left_out INTEGER NOT NULL CHECK (left_out >= 0),
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX list_batch_by_digest ON list_batch (digest);
--> statement-breakpoint
CREATE TABLE list_columns (
  headings TEXT PRIMARY KEY,
  columns TEXT NOT NULL CHECK (json_valid(columns)),
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE TABLE lot (
  id INTEGER PRIMARY KEY,
  accession_id INTEGER NOT NULL REFERENCES accession (id),
  ordinal INTEGER NOT NULL CHECK (ordinal >= 1),
  number TEXT NOT NULL UNIQUE,
  bare TEXT NOT NULL UNIQUE,
  role TEXT NOT NULL CHECK (role IN ('working', 'reserve', 'reference', 'duplicate-elsewhere')),
  basis TEXT NOT NULL CHECK (basis IN ('weighed', 'counted')),
  harvest_from INTEGER CHECK (harvest_from BETWEEN 1800 AND 9999),
  harvest_to INTEGER CHECK (harvest_to >= harvest_from),
  harvest_about INTEGER NOT NULL CHECK (harvest_about IN (0, 1)),
  generation INTEGER NOT NULL CHECK (generation >= 0),
  grower_id INTEGER REFERENCES person (id),
  grown_at TEXT NOT NULL,
  plants_grown INTEGER CHECK (plants_grown > 0),
  place_id INTEGER REFERENCES storage_place (id),
  held_by TEXT NOT NULL,
  held_since TEXT,
  quarantine_reason TEXT CHECK (quarantine_reason <> ''),
  estimated INTEGER NOT NULL CHECK (estimated IN (0, 1)),
  weight_id INTEGER REFERENCES seed_weight (id),
  germination_id INTEGER REFERENCES germination_result (id),
  balance_count INTEGER NOT NULL DEFAULT 0 CHECK (balance_count >= 0),
  balance_mass_mg INTEGER NOT NULL DEFAULT 0 CHECK (balance_mass_mg >= 0),
  holds_seed INTEGER NOT NULL GENERATED ALWAYS AS (balance_count > 0 OR balance_mass_mg > 0) STORED,
  entry_id INTEGER NOT NULL REFERENCES entry (id),
  UNIQUE (accession_id, ordinal),
  CHECK ((harvest_from IS NULL) = (harvest_to IS NULL)),
  CHECK ((role = 'duplicate-elsewhere') = (held_since IS NOT NULL))
) STRICT;
--> statement-breakpoint
CREATE INDEX lot_by_place ON lot (place_id);
--> statement-breakpoint
CREATE INDEX lot_by_seed ON lot (holds_seed, number);
--> statement-breakpoint
CREATE INDEX lot_of_accession ON lot (accession_id, holds_seed, number);
--> statement-breakpoint
CREATE TABLE lot_parent (
  lot_id INTEGER NOT NULL REFERENCES lot (id),
  parent_lot_id INTEGER NOT NULL REFERENCES lot (id) CHECK (parent_lot_id <> lot_id),
  relation TEXT NOT NULL CHECK (relation IN ('grown', 'split', 'joined')),
  PRIMARY KEY (lot_id, parent_lot_id, relation)
) STRICT, WITHOUT ROWID;
--> statement-breakpoint
CREATE TABLE lot_place (
  id INTEGER PRIMARY KEY,
  lot_id INTEGER NOT NULL REFERENCES lot (id),
  place_id INTEGER NOT NULL REFERENCES storage_place (id),
  since TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX lot_place_by_lot ON lot_place (lot_id);
--> statement-breakpoint
CREATE INDEX lot_place_by_entry ON lot_place (entry_id);
--> statement-breakpoint
CREATE TABLE lot_change (
  id INTEGER PRIMARY KEY,
  lot_id INTEGER NOT NULL REFERENCES lot (id),
  field TEXT NOT NULL,
  before TEXT NOT NULL CHECK (json_valid(before)),
  after TEXT NOT NULL CHECK (json_valid(after)),
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX lot_change_by_lot ON lot_change (lot_id);
--> statement-breakpoint
CREATE INDEX lot_change_by_entry ON lot_change (entry_id);
--> statement-breakpoint
CREATE TABLE seed_weight (
  id INTEGER PRIMARY KEY,
  lot_id INTEGER NOT NULL REFERENCES lot (id),
  measured_on TEXT NOT NULL,
  hundred_seed_weight_ug INTEGER NOT NULL CHECK (hundred_seed_weight_ug > 0),
  replicates INTEGER NOT NULL CHECK (replicates >= 1),
  seeds_counted INTEGER NOT NULL CHECK (seeds_counted >= 1),
  coefficient_of_variation REAL CHECK (coefficient_of_variation >= 0),
  chaffy INTEGER NOT NULL CHECK (chaffy IN (0, 1)),
  note TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX seed_weight_by_lot ON seed_weight (lot_id);
--> statement-breakpoint
CREATE INDEX seed_weight_by_entry ON seed_weight (entry_id);
--> statement-breakpoint
CREATE TABLE seed_weight_replicate (
  weight_id INTEGER NOT NULL REFERENCES seed_weight (id),
  ordinal INTEGER NOT NULL CHECK (ordinal >= 1),
  seeds INTEGER NOT NULL CHECK (seeds >= 1),
  mass_mg INTEGER NOT NULL CHECK (mass_mg >= 1),
  PRIMARY KEY (weight_id, ordinal)
) STRICT, WITHOUT ROWID;
--> statement-breakpoint
CREATE TABLE withdrawal (
  id INTEGER PRIMARY KEY,
  person_id INTEGER REFERENCES person (id),
  on_date TEXT NOT NULL,
  purpose TEXT NOT NULL CHECK (purpose IN ('to-grow', 'to-return', 'grow-out', 'safety-duplicate', 'other')),
  promised TEXT NOT NULL,
  promised_by TEXT,
  note TEXT NOT NULL,
  overridden TEXT NOT NULL,
  grow_out_id INTEGER REFERENCES grow_out (id),
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX withdrawal_by_person ON withdrawal (person_id);
--> statement-breakpoint
CREATE INDEX withdrawal_with_promise ON withdrawal (promised_by)
WHERE promised <> '' OR promised_by IS NOT NULL OR purpose = 'to-return';
--> statement-breakpoint
CREATE TABLE promise_let_go (
  id INTEGER PRIMARY KEY,
  withdrawal_id INTEGER NOT NULL REFERENCES withdrawal (id),
  on_date TEXT NOT NULL,
  reason TEXT NOT NULL CHECK (reason <> ''),
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX promise_let_go_by_withdrawal ON promise_let_go (withdrawal_id);
--> statement-breakpoint
CREATE TABLE movement (
  id INTEGER PRIMARY KEY,
  lot_id INTEGER NOT NULL REFERENCES lot (id),
  entry_id INTEGER NOT NULL REFERENCES entry (id),
  kind TEXT NOT NULL CHECK (kind IN ('intake', 'return', 'withdrawal', 'test', 'discard', 'stocktake', 'split', 'join', 'recount', 'reversal')),
  on_date TEXT NOT NULL,
  count INTEGER NOT NULL,
  mass_mg INTEGER NOT NULL,
  measured TEXT NOT NULL CHECK (measured IN ('mass', 'count', 'estimate', 'carried')),
  weight_ug INTEGER CHECK (weight_ug > 0),
  person_id INTEGER REFERENCES person (id),
  withdrawal_id INTEGER REFERENCES withdrawal (id),
  reverses_id INTEGER UNIQUE REFERENCES movement (id),
  note TEXT NOT NULL,
  CHECK ((kind = 'reversal') = (reverses_id IS NOT NULL)),
  CHECK (kind NOT IN ('intake', 'return') OR (count >= 0 AND mass_mg >= 0)),
  CHECK (kind NOT IN ('withdrawal', 'test', 'discard') OR (count <= 0 AND mass_mg <= 0)),
  CHECK (measured = 'carried' OR weight_ug IS NOT NULL)
) STRICT;
--> statement-breakpoint
CREATE INDEX movement_by_lot ON movement (lot_id);
--> statement-breakpoint
CREATE INDEX movement_by_entry ON movement (entry_id);
--> statement-breakpoint
CREATE INDEX movement_by_withdrawal ON movement (withdrawal_id) WHERE withdrawal_id IS NOT NULL;
--> statement-breakpoint
CREATE INDEX movement_out ON movement (lot_id, on_date, count, withdrawal_id) WHERE kind = 'withdrawal';
--> statement-breakpoint
CREATE TRIGGER movement_keeps_the_balance AFTER INSERT ON movement BEGIN
  UPDATE lot SET balance_count = balance_count + NEW.count, balance_mass_mg = balance_mass_mg + NEW.mass_mg
  WHERE id = NEW.lot_id;
END;
--> statement-breakpoint
CREATE TRIGGER movement_is_never_edited BEFORE UPDATE OF id, lot_id, entry_id, kind, on_date, count, mass_mg, measured, weight_ug, person_id, withdrawal_id, reverses_id ON movement BEGIN
  SELECT RAISE(ABORT, 'the ledger is append-only: reverse the movement instead');
END;
--> statement-breakpoint
CREATE TRIGGER movement_is_never_deleted BEFORE DELETE ON movement BEGIN
  SELECT RAISE(ABORT, 'the ledger is append-only: reverse the movement instead');
END;
--> statement-breakpoint
CREATE TRIGGER accession_number_is_never_changed BEFORE UPDATE OF number, bare, series, running ON accession BEGIN
  SELECT RAISE(ABORT, 'a printed number is never changed');
END;
--> statement-breakpoint
CREATE TRIGGER lot_number_is_never_changed BEFORE UPDATE OF number, bare, ordinal, accession_id ON lot BEGIN
  SELECT RAISE(ABORT, 'a printed number is never changed');
END;
--> statement-breakpoint
CREATE TABLE gift (
  id INTEGER PRIMARY KEY,
  donor_id INTEGER REFERENCES person (id),
  offered_on TEXT NOT NULL,
  variety TEXT NOT NULL CHECK (variety <> ''),
  crop TEXT NOT NULL,
  facts TEXT NOT NULL CHECK (json_valid(facts)),
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX gift_by_donor ON gift (donor_id);
--> statement-breakpoint
CREATE TABLE gift_event (
  id INTEGER PRIMARY KEY,
  gift_id INTEGER NOT NULL REFERENCES gift (id),
  kind TEXT NOT NULL CHECK (kind IN ('waits-for', 'step-done', 'declined', 'accepted')),
  step TEXT CHECK (step IN ('identity', 'drying', 'freezing', 'test', 'legal', 'other')),
  on_date TEXT NOT NULL,
  due TEXT,
  note TEXT NOT NULL,
  lot_id INTEGER REFERENCES lot (id),
  entry_id INTEGER NOT NULL REFERENCES entry (id),
  CHECK ((kind IN ('waits-for', 'step-done')) = (step IS NOT NULL)),
  CHECK ((kind = 'accepted') = (lot_id IS NOT NULL))
) STRICT;
--> statement-breakpoint
CREATE INDEX gift_event_by_gift ON gift_event (gift_id);
--> statement-breakpoint
CREATE TABLE seed_return (
  id INTEGER PRIMARY KEY,
  lot_id INTEGER NOT NULL UNIQUE REFERENCES lot (id),
  withdrawal_id INTEGER REFERENCES withdrawal (id),
  person_id INTEGER NOT NULL REFERENCES person (id),
  on_date TEXT NOT NULL,
  note TEXT NOT NULL,
  grow_out_id INTEGER REFERENCES grow_out (id),
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX seed_return_by_person ON seed_return (person_id);
--> statement-breakpoint
CREATE INDEX seed_return_by_withdrawal ON seed_return (withdrawal_id) WHERE withdrawal_id IS NOT NULL;
--> statement-breakpoint
CREATE TABLE germination_test (
  id INTEGER PRIMARY KEY,
  lot_id INTEGER NOT NULL REFERENCES lot (id),
  started_on TEXT,
  medium TEXT NOT NULL,
  temperature TEXT NOT NULL,
  first_day INTEGER CHECK (first_day >= 1),
  final_day INTEGER CHECK (final_day BETWEEN 1 AND 400),
  movement_id INTEGER UNIQUE REFERENCES movement (id),
  follows_id INTEGER REFERENCES germination_test (id) CHECK (follows_id < id),
  note TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES entry (id),
  CHECK (final_day IS NULL OR started_on IS NOT NULL),
  CHECK (first_day IS NULL OR first_day < final_day)
) STRICT;
--> statement-breakpoint
CREATE INDEX germination_test_by_lot ON germination_test (lot_id);
--> statement-breakpoint
CREATE INDEX germination_test_by_follows ON germination_test (follows_id) WHERE follows_id IS NOT NULL;
--> statement-breakpoint
CREATE INDEX germination_test_by_entry ON germination_test (entry_id);
--> statement-breakpoint
CREATE TABLE germination_replicate (
  test_id INTEGER NOT NULL REFERENCES germination_test (id),
  ordinal INTEGER NOT NULL CHECK (ordinal >= 1),
  sown INTEGER NOT NULL CHECK (sown >= 1),
  PRIMARY KEY (test_id, ordinal)
) STRICT, WITHOUT ROWID;
--> statement-breakpoint
CREATE TABLE germination_count (
  test_id INTEGER NOT NULL REFERENCES germination_test (id),
  on_date TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES entry (id),
  ordinal INTEGER NOT NULL,
  normal INTEGER NOT NULL CHECK (normal >= 0),
  abnormal INTEGER NOT NULL CHECK (abnormal >= 0),
  hard INTEGER NOT NULL CHECK (hard >= 0),
  fresh INTEGER NOT NULL CHECK (fresh >= 0),
  dead INTEGER NOT NULL CHECK (dead >= 0),
  PRIMARY KEY (test_id, on_date, entry_id, ordinal),
  FOREIGN KEY (test_id, ordinal) REFERENCES germination_replicate (test_id, ordinal)
) STRICT, WITHOUT ROWID;
--> statement-breakpoint
CREATE INDEX germination_count_by_entry ON germination_count (entry_id);
--> statement-breakpoint
CREATE TABLE germination_cancel (
  id INTEGER PRIMARY KEY,
  test_id INTEGER NOT NULL REFERENCES germination_test (id),
  on_date TEXT NOT NULL,
  reason TEXT NOT NULL CHECK (reason <> ''),
  seeds_back INTEGER NOT NULL CHECK (seeds_back IN (0, 1)),
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX germination_cancel_by_test ON germination_cancel (test_id);
--> statement-breakpoint
CREATE TABLE germination_result (
  id INTEGER PRIMARY KEY,
  lot_id INTEGER NOT NULL REFERENCES lot (id),
  test_id INTEGER NOT NULL REFERENCES germination_test (id),
  tested_on TEXT NOT NULL,
  tested INTEGER NOT NULL CHECK (tested >= 1),
  sprouted INTEGER NOT NULL CHECK (sprouted BETWEEN 0 AND tested),
  hard_alive INTEGER NOT NULL CHECK (hard_alive IN (0, 1)),
  fresh_alive INTEGER NOT NULL CHECK (fresh_alive IN (0, 1)),
  note TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX germination_by_lot ON germination_result (lot_id, tested_on);
--> statement-breakpoint
CREATE INDEX germination_by_test ON germination_result (test_id);
--> statement-breakpoint
CREATE INDEX germination_by_entry ON germination_result (entry_id);
--> statement-breakpoint
CREATE TABLE season_list (
  id INTEGER PRIMARY KEY,
  season INTEGER NOT NULL CHECK (season BETWEEN 1900 AND 9999),
  on_date TEXT NOT NULL,
  grade TEXT NOT NULL CHECK (grade IN ('quality', 'maintenance', 'conservation')),
  note TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE TABLE season_list_line (
  list_id INTEGER NOT NULL REFERENCES season_list (id),
  ordinal INTEGER NOT NULL CHECK (ordinal >= 1),
  accession_id INTEGER NOT NULL REFERENCES accession (id),
  chosen INTEGER NOT NULL CHECK (chosen IN (0, 1)),
  state TEXT NOT NULL CHECK (state IN ('rescue', 'regrow', 'watch', 'well-stocked')),
  living INTEGER NOT NULL CHECK (living >= 0),
  keep INTEGER NOT NULL CHECK (keep >= 1),
  cost REAL NOT NULL CHECK (cost BETWEEN 0 AND 1),
  reason TEXT NOT NULL,
  PRIMARY KEY (list_id, ordinal),
  UNIQUE (list_id, accession_id)
) STRICT, WITHOUT ROWID;
--> statement-breakpoint
CREATE TABLE growing_site (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL CHECK (name <> ''),
  grower_id INTEGER REFERENCES person (id),
  bed_area REAL NOT NULL CHECK (bed_area > 0),
  most_varieties INTEGER NOT NULL CHECK (most_varieties BETWEEN 1 AND 500),
  season_days INTEGER CHECK (season_days BETWEEN 1 AND 366),
  takes TEXT NOT NULL CHECK (json_valid(takes)),
  latitude REAL CHECK (latitude BETWEEN -90 AND 90),
  longitude REAL CHECK (longitude BETWEEN -180 AND 180),
  east_m REAL,
  north_m REAL,
  note TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES entry (id),
  CHECK ((latitude IS NULL) = (longitude IS NULL)),
  CHECK ((east_m IS NULL) = (north_m IS NULL)),
  CHECK (latitude IS NULL OR east_m IS NULL)
) STRICT;
--> statement-breakpoint
CREATE TABLE site_neighbour (
  site_id INTEGER NOT NULL REFERENCES growing_site (id),
  crop_id TEXT NOT NULL REFERENCES crop (id),
  metres REAL NOT NULL CHECK (metres >= 0),
  PRIMARY KEY (site_id, crop_id)
) STRICT, WITHOUT ROWID;
--> statement-breakpoint
CREATE TABLE season_plan (
  id INTEGER PRIMARY KEY,
  season INTEGER NOT NULL CHECK (season BETWEEN 1900 AND 9999),
  on_date TEXT NOT NULL,
  note TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE TABLE season_plan_line (
  plan_id INTEGER NOT NULL REFERENCES season_plan (id),
  accession_id INTEGER NOT NULL REFERENCES accession (id),
  site_id INTEGER NOT NULL REFERENCES growing_site (id),
  way TEXT NOT NULL CHECK (way IN ('open', 'covered', 'later')),
  PRIMARY KEY (plan_id, accession_id)
) STRICT, WITHOUT ROWID;
--> statement-breakpoint
CREATE TABLE grow_out (
  id INTEGER PRIMARY KEY,
  season INTEGER NOT NULL CHECK (season BETWEEN 1900 AND 9999),
  accession_id INTEGER NOT NULL REFERENCES accession (id),
  site_id INTEGER NOT NULL REFERENCES growing_site (id),
  entry_id INTEGER NOT NULL REFERENCES entry (id),
  UNIQUE (season, accession_id, site_id)
) STRICT;
--> statement-breakpoint
CREATE TABLE grow_out_note (
  id INTEGER PRIMARY KEY,
  grow_out_id INTEGER NOT NULL REFERENCES grow_out (id),
  kind TEXT NOT NULL CHECK (kind IN ('sown', 'emerged', 'roots-stored', 'planted-out', 'flowered', 'saved-from', 'failed')),
  on_date TEXT NOT NULL,
  plants INTEGER CHECK (plants > 0),
  note TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES entry (id),
  CHECK (kind <> 'failed' OR note <> ''),
  CHECK (kind <> 'saved-from' OR plants IS NOT NULL)
) STRICT;
--> statement-breakpoint
CREATE INDEX grow_out_note_by_grow_out ON grow_out_note (grow_out_id);
--> statement-breakpoint
CREATE INDEX withdrawal_by_grow_out ON withdrawal (grow_out_id) WHERE grow_out_id IS NOT NULL;
--> statement-breakpoint
CREATE INDEX seed_return_by_grow_out ON seed_return (grow_out_id) WHERE grow_out_id IS NOT NULL;
--> statement-breakpoint
CREATE TABLE print_batch (
  id INTEGER PRIMARY KEY,
  kind TEXT NOT NULL CHECK (kind IN ('label', 'letter', 'slip')),
  sheet TEXT,
  start_at INTEGER CHECK (start_at >= 1),
  right_mm REAL CHECK (right_mm BETWEEN -10 AND 10),
  down_mm REAL CHECK (down_mm BETWEEN -10 AND 10),
  printer TEXT NOT NULL,
  printed_at TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES entry (id),
  CHECK ((kind = 'label') = (sheet IS NOT NULL AND start_at IS NOT NULL AND right_mm IS NOT NULL AND down_mm IS NOT NULL))
) STRICT;
--> statement-breakpoint
CREATE INDEX print_batch_by_sheet ON print_batch (sheet);
--> statement-breakpoint
CREATE TABLE label_sheet (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL CHECK (name <> ''),
  page_width_mm REAL NOT NULL CHECK (page_width_mm > 0),
  page_height_mm REAL NOT NULL CHECK (page_height_mm > 0),
  columns INTEGER NOT NULL CHECK (columns BETWEEN 1 AND 20),
  rows INTEGER NOT NULL CHECK (rows BETWEEN 1 AND 40),
  width_mm REAL NOT NULL CHECK (width_mm > 0),
  height_mm REAL NOT NULL CHECK (height_mm > 0),
  left_mm REAL NOT NULL CHECK (left_mm >= 0),
  top_mm REAL NOT NULL CHECK (top_mm >= 0),
  pitch_x_mm REAL NOT NULL CHECK (pitch_x_mm >= width_mm),
  pitch_y_mm REAL NOT NULL CHECK (pitch_y_mm >= height_mm),
  retired INTEGER NOT NULL CHECK (retired IN (0, 1)),
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE TABLE print_item (
  id INTEGER PRIMARY KEY,
  kind TEXT NOT NULL CHECK (kind IN ('label', 'letter', 'slip')),
  lot_id INTEGER REFERENCES lot (id),
  accession_id INTEGER REFERENCES accession (id),
  withdrawal_id INTEGER REFERENCES withdrawal (id),
  copies INTEGER NOT NULL CHECK (copies BETWEEN 1 AND 200),
  contents TEXT NOT NULL,
  added_at TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES entry (id),
  removed_entry_id INTEGER REFERENCES entry (id),
  batch_id INTEGER REFERENCES print_batch (id),
  CHECK ((kind = 'label') = (lot_id IS NOT NULL)),
  CHECK ((kind = 'letter') = (accession_id IS NOT NULL)),
  CHECK ((kind = 'slip') = (withdrawal_id IS NOT NULL))
) STRICT;
--> statement-breakpoint
CREATE INDEX print_item_by_batch ON print_item (batch_id);
--> statement-breakpoint
CREATE INDEX print_item_by_entry ON print_item (entry_id);
--> statement-breakpoint
CREATE TABLE place_terms (
  id INTEGER PRIMARY KEY,
  place_id INTEGER NOT NULL REFERENCES storage_place (id),
  aim TEXT NOT NULL CHECK (aim IN ('short-term', 'medium-term', 'long-term', 'none')),
  highest_cc INTEGER CHECK (highest_cc BETWEEN -10000 AND 10000),
  highest_pm INTEGER CHECK (highest_pm BETWEEN 0 AND 1000),
  round_days INTEGER CHECK (round_days BETWEEN 1 AND 1100),
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX place_terms_by_place ON place_terms (place_id);
--> statement-breakpoint
CREATE TABLE climate_batch (
  id INTEGER PRIMARY KEY,
  place_id INTEGER NOT NULL REFERENCES storage_place (id),
  file_name TEXT CHECK (file_name <> ''),
  digest TEXT CHECK (length(digest) = 64),
  readings INTEGER NOT NULL CHECK (readings >= 1),
  left_out INTEGER NOT NULL CHECK (left_out >= 0),
  note TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES entry (id),
  CHECK ((file_name IS NULL) = (digest IS NULL))
) STRICT;
--> statement-breakpoint
CREATE INDEX climate_batch_by_place ON climate_batch (place_id);
--> statement-breakpoint
CREATE INDEX climate_batch_by_digest ON climate_batch (digest) WHERE digest IS NOT NULL;
--> statement-breakpoint
CREATE TABLE climate_reading (
  place_id INTEGER NOT NULL REFERENCES storage_place (id),
  at TEXT NOT NULL CHECK (length(at) = 16),
  batch_id INTEGER NOT NULL REFERENCES climate_batch (id),
  temperature_cc INTEGER NOT NULL CHECK (temperature_cc BETWEEN -10000 AND 10000),
  humidity_pm INTEGER CHECK (humidity_pm BETWEEN 0 AND 1000),
  PRIMARY KEY (place_id, at, batch_id)
) STRICT, WITHOUT ROWID;
--> statement-breakpoint
CREATE TABLE lot_container (
  id INTEGER PRIMARY KEY,
  lot_id INTEGER NOT NULL REFERENCES lot (id),
  kind TEXT NOT NULL CHECK (kind IN ('envelope', 'bag', 'jar', 'can', 'other')),
  airtight INTEGER NOT NULL CHECK (airtight IN (0, 1)),
  pest_proof INTEGER NOT NULL CHECK (pest_proof IN (0, 1)),
  since TEXT NOT NULL,
  note TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX lot_container_by_lot ON lot_container (lot_id);
--> statement-breakpoint
CREATE TABLE seed_moisture (
  id INTEGER PRIMARY KEY,
  lot_id INTEGER NOT NULL REFERENCES lot (id),
  measured_on TEXT NOT NULL,
  method TEXT NOT NULL CHECK (method IN ('oven', 'sealed-jar', 'break-check', 'meter')),
  percent REAL NOT NULL CHECK (percent > 0 AND percent < 100),
  low_percent REAL NOT NULL CHECK (low_percent >= 0 AND low_percent <= percent),
  high_percent REAL NOT NULL CHECK (high_percent >= percent AND high_percent <= 100),
  observed TEXT NOT NULL CHECK (json_valid(observed)),
  note TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX seed_moisture_by_lot ON seed_moisture (lot_id);
--> statement-breakpoint
CREATE TABLE storage_round (
  id INTEGER PRIMARY KEY,
  on_date TEXT NOT NULL,
  walked_by TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE TABLE round_check (
  id INTEGER PRIMARY KEY,
  round_id INTEGER NOT NULL REFERENCES storage_round (id),
  place_id INTEGER NOT NULL REFERENCES storage_place (id),
  looked_for TEXT NOT NULL CHECK (looked_for IN ('pests', 'seals', 'gel', 'dampness', 'reading')),
  outcome TEXT NOT NULL CHECK (outcome IN ('fine', 'found')),
  note TEXT NOT NULL,
  UNIQUE (round_id, place_id, looked_for)
) STRICT;
--> statement-breakpoint
CREATE INDEX round_check_by_place ON round_check (place_id);
--> statement-breakpoint
CREATE TABLE round_check_lot (
  check_id INTEGER NOT NULL REFERENCES round_check (id),
  lot_id INTEGER NOT NULL REFERENCES lot (id),
  PRIMARY KEY (check_id, lot_id)
) STRICT, WITHOUT ROWID;
--> statement-breakpoint
CREATE INDEX round_check_lot_by_lot ON round_check_lot (lot_id);
--> statement-breakpoint
CREATE INDEX lot_container_by_entry ON lot_container (entry_id);
--> statement-breakpoint
CREATE INDEX seed_moisture_by_entry ON seed_moisture (entry_id);
--> statement-breakpoint
CREATE TABLE lot_forecast (
  lot_id INTEGER PRIMARY KEY REFERENCES lot (id),
  stale_since INTEGER,
  reckoned_on TEXT,
  basis TEXT CHECK (basis IN ('constants-seen', 'constants-from-memory', 'rule-of-thumb', 'refused')),
  viability REAL CHECK (viability BETWEEN 0 AND 1),
  viability_low REAL CHECK (viability_low <= viability),
  viability_high REAL CHECK (viability_high >= viability),
  viability_start REAL CHECK (viability_start BETWEEN 0 AND 1),
  chance_below REAL CHECK (chance_below BETWEEN 0 AND 1),
  deviates_a_year REAL CHECK (deviates_a_year >= 0),
  crosses_early TEXT,
  crosses_on TEXT,
  crosses_late TEXT,
  CHECK ((reckoned_on IS NULL) = (basis IS NULL)),
  CHECK ((viability IS NULL) = (basis IS NULL OR basis = 'refused')),
  CHECK ((viability IS NULL) = (viability_low IS NULL)),
  CHECK ((viability IS NULL) = (viability_high IS NULL)),
  CHECK ((viability IS NULL) = (viability_start IS NULL)),
  CHECK ((viability IS NULL) = (chance_below IS NULL)),
  CHECK ((viability IS NULL) = (deviates_a_year IS NULL))
) STRICT;
--> statement-breakpoint
CREATE INDEX lot_forecast_stale ON lot_forecast (stale_since) WHERE stale_since IS NOT NULL;
--> statement-breakpoint
CREATE INDEX lot_forecast_by_day ON lot_forecast (reckoned_on);
--> statement-breakpoint
CREATE TRIGGER lot_has_a_forecast AFTER INSERT ON lot BEGIN
  INSERT INTO lot_forecast (lot_id, stale_since) VALUES (NEW.id, NEW.entry_id);
END;
--> statement-breakpoint
CREATE TRIGGER forecast_goes_stale_by_test AFTER INSERT ON germination_result BEGIN
  UPDATE lot_forecast SET stale_since = (SELECT max(id) FROM entry)
  WHERE lot_id = NEW.lot_id;
END;
--> statement-breakpoint
CREATE TRIGGER forecast_goes_stale_by_move AFTER INSERT ON lot_place BEGIN
  UPDATE lot_forecast SET stale_since = (SELECT max(id) FROM entry)
  WHERE lot_id = NEW.lot_id;
END;
--> statement-breakpoint
CREATE TRIGGER forecast_goes_stale_by_container AFTER INSERT ON lot_container BEGIN
  UPDATE lot_forecast SET stale_since = (SELECT max(id) FROM entry)
  WHERE lot_id = NEW.lot_id;
END;
--> statement-breakpoint
CREATE TRIGGER forecast_goes_stale_by_moisture AFTER INSERT ON seed_moisture BEGIN
  UPDATE lot_forecast SET stale_since = (SELECT max(id) FROM entry)
  WHERE lot_id = NEW.lot_id;
END;
--> statement-breakpoint
CREATE TRIGGER forecast_goes_stale_by_readings AFTER INSERT ON climate_batch BEGIN
  UPDATE lot_forecast SET stale_since = (SELECT max(id) FROM entry)
  WHERE lot_id IN (
    SELECT lot_place.lot_id FROM lot_place
      JOIN storage_place ON storage_place.id = lot_place.place_id
      JOIN storage_place AS around ON around.id = NEW.place_id
    WHERE storage_place.id = around.id
      OR substr(storage_place.path, 1, length(around.path) + 3) = around.path || ' / ');
END;
--> statement-breakpoint
CREATE TRIGGER forecast_goes_stale_by_kind_of_place AFTER UPDATE OF kind ON storage_place BEGIN
  UPDATE lot_forecast SET stale_since = (SELECT max(id) FROM entry)
  WHERE lot_id IN (
    SELECT lot_place.lot_id FROM lot_place
      JOIN storage_place ON storage_place.id = lot_place.place_id
    WHERE storage_place.id = NEW.id
      OR substr(storage_place.path, 1, length(NEW.path) + 3) = NEW.path || ' / ');
END;
--> statement-breakpoint
CREATE TRIGGER forecast_goes_stale_by_harvest AFTER UPDATE OF harvest_from, harvest_to ON lot BEGIN
  UPDATE lot_forecast SET stale_since = (SELECT max(id) FROM entry)
  WHERE lot_id = NEW.id;
END;
--> statement-breakpoint
CREATE TRIGGER forecast_goes_stale_by_joining AFTER INSERT ON movement WHEN NEW.kind = 'join' BEGIN
  UPDATE lot_forecast SET stale_since = (SELECT max(id) FROM entry)
  WHERE lot_id = NEW.lot_id;
END;
--> statement-breakpoint
CREATE TRIGGER forecast_goes_stale_by_own_threshold AFTER UPDATE OF own_threshold ON accession BEGIN
  UPDATE lot_forecast SET stale_since = (SELECT max(id) FROM entry)
  WHERE lot_id IN (SELECT id FROM lot WHERE accession_id = NEW.id);
END;
--> statement-breakpoint
CREATE TRIGGER forecast_goes_stale_by_crop_threshold AFTER UPDATE OF own_threshold ON crop BEGIN
  UPDATE lot_forecast SET stale_since = (SELECT max(id) FROM entry)
  WHERE lot_id IN (
    SELECT lot.id FROM lot JOIN accession ON accession.id = accession_id JOIN variety ON variety.id = variety_id
    WHERE crop_id = NEW.id);
END;
--> statement-breakpoint
CREATE TRIGGER forecast_goes_stale_by_threshold AFTER UPDATE OF viability_threshold, viability_threshold_of ON collection BEGIN
  UPDATE lot_forecast SET stale_since = (SELECT max(id) FROM entry)
  WHERE TRUE;
END;
--> statement-breakpoint
CREATE TRIGGER forecast_goes_stale_by_taking_back AFTER UPDATE OF takes_back_id ON entry WHEN NEW.takes_back_id IS NOT NULL BEGIN
  UPDATE lot_forecast SET stale_since = (SELECT max(id) FROM entry)
  WHERE lot_id IN (
    SELECT lot_id FROM germination_result WHERE entry_id = NEW.takes_back_id
    UNION SELECT lot_id FROM lot_place WHERE entry_id = NEW.takes_back_id
    UNION SELECT lot_id FROM lot_container WHERE entry_id = NEW.takes_back_id
    UNION SELECT lot_id FROM seed_moisture WHERE entry_id = NEW.takes_back_id
    UNION SELECT lot_id FROM movement WHERE entry_id = NEW.takes_back_id AND kind = 'join'
    UNION SELECT lot_place.lot_id FROM climate_batch
      JOIN storage_place AS around ON around.id = climate_batch.place_id
      JOIN storage_place ON storage_place.id = around.id
        OR substr(storage_place.path, 1, length(around.path) + 3) = around.path || ' / '
      JOIN lot_place ON lot_place.place_id = storage_place.id
      WHERE climate_batch.entry_id = NEW.takes_back_id);
END;
--> statement-breakpoint
CREATE VIRTUAL TABLE accession_search USING fts5 (
  words,
  content = '',
  contentless_delete = 1,
  tokenize = 'unicode61 remove_diacritics 2',
  prefix = '1 2 3'
);
