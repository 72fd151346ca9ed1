ALTER TABLE entry RENAME COLUMN takes_back_id TO undoes_id;
--> statement-breakpoint
ALTER TABLE person RENAME COLUMN joined_into_id TO merged_into_id;
--> statement-breakpoint
ALTER TABLE promise_let_go RENAME TO promise_waiver;
--> statement-breakpoint
ALTER TABLE variety_join RENAME TO variety_merge;
--> statement-breakpoint
ALTER TABLE variety RENAME COLUMN joined_into_id TO merged_into_id;
