CREATE TABLE lot_caution (
  lot_id INTEGER NOT NULL REFERENCES lot (id),
  caution TEXT NOT NULL CHECK (caution IN ('treated', 'pests-seen', 'regulated', 'toxic', 'protected-variety')),
  note TEXT NOT NULL,
  PRIMARY KEY (lot_id, caution)
) STRICT, WITHOUT ROWID;
