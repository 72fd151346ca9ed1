CREATE TABLE event (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL CHECK (name <> ''),
  on_date TEXT NOT NULL,
  note TEXT NOT NULL
) STRICT;
--> statement-breakpoint
ALTER TABLE entry ADD COLUMN person_id INTEGER REFERENCES person (id);
--> statement-breakpoint
ALTER TABLE entry ADD COLUMN station TEXT NOT NULL DEFAULT '';
--> statement-breakpoint
ALTER TABLE entry ADD COLUMN event_id INTEGER REFERENCES event (id);
--> statement-breakpoint
ALTER TABLE entry ADD COLUMN hash TEXT NOT NULL DEFAULT '';
--> statement-breakpoint
CREATE TABLE entry_text (
  part TEXT PRIMARY KEY,
  entry_id INTEGER NOT NULL REFERENCES entry (id),
  salt TEXT NOT NULL,
  digest TEXT NOT NULL
) STRICT, WITHOUT ROWID;
--> statement-breakpoint
CREATE INDEX entry_text_by_entry ON entry_text (entry_id);
--> statement-breakpoint
UPDATE draft SET kind = 'return' WHERE kind = 'take-back';
--> statement-breakpoint
CREATE TABLE lot_parent_new (
  lot_id INTEGER NOT NULL REFERENCES lot (id),
  parent_lot_id INTEGER NOT NULL REFERENCES lot (id) CHECK (parent_lot_id <> lot_id),
  relation TEXT NOT NULL CHECK (relation IN ('grown', 'split', 'merged')),
  PRIMARY KEY (lot_id, parent_lot_id, relation)
) STRICT, WITHOUT ROWID;
--> statement-breakpoint
INSERT INTO lot_parent_new SELECT lot_id, parent_lot_id, CASE relation WHEN 'joined' THEN 'merged' ELSE relation END FROM lot_parent;
--> statement-breakpoint
DROP TABLE lot_parent;
--> statement-breakpoint
ALTER TABLE lot_parent_new RENAME TO lot_parent;
--> statement-breakpoint
DROP TRIGGER forecast_goes_stale_by_taking_back;
--> statement-breakpoint
DROP TRIGGER movement_is_never_deleted;
--> statement-breakpoint
CREATE TABLE movement_new (
  id INTEGER PRIMARY KEY,
  lot_id INTEGER NOT NULL REFERENCES lot (id),
  entry_id INTEGER NOT NULL REFERENCES entry (id),
  kind TEXT NOT NULL CHECK (kind IN ('intake', 'return', 'withdrawal', 'test', 'discard', 'stocktake', 'split', 'merge', 'recount', 'reversal')),
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
INSERT INTO movement_new
SELECT id, lot_id, entry_id, CASE kind WHEN 'join' THEN 'merge' ELSE kind END, on_date, count, mass_mg, measured, weight_ug,
  person_id, withdrawal_id, reverses_id, note
FROM movement ORDER BY id;
--> statement-breakpoint
DROP TABLE movement;
--> statement-breakpoint
ALTER TABLE movement_new RENAME TO movement;
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
CREATE TRIGGER forecast_goes_stale_by_merging AFTER INSERT ON movement WHEN NEW.kind = 'merge' BEGIN
  UPDATE lot_forecast SET stale_since = (SELECT max(id) FROM entry)
  WHERE lot_id = NEW.lot_id;
END;
--> statement-breakpoint
CREATE TRIGGER forecast_goes_stale_by_undoing AFTER UPDATE OF undoes_id ON entry WHEN NEW.undoes_id IS NOT NULL BEGIN
  UPDATE lot_forecast SET stale_since = (SELECT max(id) FROM entry)
  WHERE lot_id IN (
    SELECT lot_id FROM germination_result WHERE entry_id = NEW.undoes_id
    UNION SELECT lot_id FROM lot_place WHERE entry_id = NEW.undoes_id
    UNION SELECT lot_id FROM lot_container WHERE entry_id = NEW.undoes_id
    UNION SELECT lot_id FROM seed_moisture WHERE entry_id = NEW.undoes_id
    UNION SELECT lot_id FROM movement WHERE entry_id = NEW.undoes_id AND kind = 'merge'
    UNION SELECT lot_place.lot_id FROM climate_batch
      JOIN storage_place AS around ON around.id = climate_batch.place_id
      JOIN storage_place ON storage_place.id = around.id
        OR substr(storage_place.path, 1, length(around.path) + 3) = around.path || ' / '
      JOIN lot_place ON lot_place.place_id = storage_place.id
      WHERE climate_batch.entry_id = NEW.undoes_id);
END;
