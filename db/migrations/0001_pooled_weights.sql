ALTER TABLE seed_weight ADD COLUMN pooled_doubt REAL CHECK (pooled_doubt BETWEEN 0 AND 1);
