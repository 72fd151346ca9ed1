ALTER TABLE collection ADD COLUMN masked_names TEXT NOT NULL DEFAULT '[]';
