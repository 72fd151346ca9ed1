ALTER TABLE collection ADD COLUMN language TEXT NOT NULL DEFAULT 'en';
--> statement-breakpoint
ALTER TABLE person ADD COLUMN language TEXT NOT NULL DEFAULT '';
