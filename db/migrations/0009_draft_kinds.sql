CREATE TABLE draft_of_any_kind (
  id TEXT PRIMARY KEY,
  kind TEXT NOT NULL CHECK (kind <> ''),
  text TEXT NOT NULL CHECK (text <> ''),
  kept_at TEXT NOT NULL
) STRICT;
--> statement-breakpoint
INSERT INTO draft_of_any_kind (id, kind, text, kept_at) SELECT id, kind, text, kept_at FROM draft;
--> statement-breakpoint
DROP TABLE draft;
--> statement-breakpoint
ALTER TABLE draft_of_any_kind RENAME TO draft;
