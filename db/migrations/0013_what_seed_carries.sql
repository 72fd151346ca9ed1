CREATE TABLE accession_terms (
  id INTEGER PRIMARY KEY,
  accession_id INTEGER NOT NULL REFERENCES accession (id),
  share TEXT NOT NULL CHECK (share IN ('anyone', 'community', 'ask-first', 'nobody')),
  publish_story INTEGER NOT NULL CHECK (publish_story IN (0, 1)),
  publish_name INTEGER NOT NULL CHECK (publish_name IN (0, 1)),
  may_be_sold INTEGER NOT NULL CHECK (may_be_sold IN (0, 1)),
  agreement TEXT NOT NULL,
  agreement_ends TEXT,
  community_label TEXT NOT NULL,
  community_link TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX accession_terms_by_accession ON accession_terms (accession_id);
--> statement-breakpoint
CREATE INDEX accession_terms_by_entry ON accession_terms (entry_id);
--> statement-breakpoint
CREATE TABLE accession_policy (
  id INTEGER PRIMARY KEY,
  accession_id INTEGER NOT NULL REFERENCES accession (id),
  breeding_status TEXT NOT NULL CHECK (breeding_status IN ('unknown', 'open-pollinated', 'landrace', 'breeders-population', 'first-generation-hybrid')),
  policy TEXT NOT NULL CHECK (policy IN ('keep', 'pass-on', 'closed')),
  on_date TEXT NOT NULL,
  reason TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX accession_policy_by_accession ON accession_policy (accession_id);
--> statement-breakpoint
CREATE INDEX accession_policy_by_entry ON accession_policy (entry_id);
--> statement-breakpoint
CREATE TABLE lot_caution_new (
  id INTEGER PRIMARY KEY,
  lot_id INTEGER NOT NULL REFERENCES lot (id),
  caution TEXT NOT NULL CHECK (caution IN ('treated', 'pests-seen', 'regulated', 'toxic', 'protected-variety', 'possible-cross')),
  on_date TEXT NOT NULL,
  note TEXT NOT NULL,
  entry_id INTEGER REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
INSERT INTO lot_caution_new (lot_id, caution, on_date, note)
SELECT lot.id, caution, received_on, accession_caution.note
FROM accession_caution JOIN accession ON accession.id = accession_caution.accession_id JOIN lot ON lot.accession_id = accession.id
WHERE NOT EXISTS (SELECT 1 FROM lot_parent WHERE lot_parent.lot_id = lot.id AND relation IN ('grown', 'split'))
ORDER BY lot.id, caution;
--> statement-breakpoint
INSERT INTO lot_caution_new (lot_id, caution, on_date, note)
SELECT lot_id, caution,
  coalesce((SELECT on_date FROM seed_return WHERE seed_return.lot_id = lot_caution.lot_id), substr(recorded_at, 1, 10)), note
FROM lot_caution JOIN lot ON lot.id = lot_id JOIN entry ON entry.id = lot.entry_id
ORDER BY lot_id, caution;
--> statement-breakpoint
DROP TABLE accession_caution;
--> statement-breakpoint
DROP TABLE lot_caution;
--> statement-breakpoint
ALTER TABLE lot_caution_new RENAME TO lot_caution;
--> statement-breakpoint
CREATE INDEX lot_caution_by_lot ON lot_caution (lot_id);
--> statement-breakpoint
CREATE INDEX lot_caution_by_entry ON lot_caution (entry_id);
--> statement-breakpoint
CREATE TABLE lot_caution_end (
  id INTEGER PRIMARY KEY,
  lot_id INTEGER NOT NULL REFERENCES lot (id),
  caution TEXT NOT NULL CHECK (caution IN ('treated', 'pests-seen', 'regulated', 'toxic', 'protected-variety', 'possible-cross')),
  on_date TEXT NOT NULL,
  reason TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX lot_caution_end_by_lot ON lot_caution_end (lot_id);
--> statement-breakpoint
CREATE INDEX lot_caution_end_by_entry ON lot_caution_end (entry_id);
--> statement-breakpoint
CREATE TABLE return_answer (
  id INTEGER PRIMARY KEY,
  lot_id INTEGER NOT NULL REFERENCES lot (id),
  flowered_near TEXT NOT NULL CHECK (flowered_near IN ('nothing', 'kept-apart', 'others', 'not-known')),
  near_note TEXT NOT NULL,
  odd TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX return_answer_by_lot ON return_answer (lot_id);
--> statement-breakpoint
CREATE INDEX return_answer_by_entry ON return_answer (entry_id);
--> statement-breakpoint
CREATE TABLE return_check (
  id INTEGER PRIMARY KEY,
  lot_id INTEGER NOT NULL REFERENCES lot (id),
  dry TEXT NOT NULL CHECK (dry IN ('yes', 'no', 'not-known')),
  clean TEXT NOT NULL CHECK (clean IN ('yes', 'no', 'not-known')),
  true_to_type TEXT NOT NULL CHECK (true_to_type IN ('yes', 'no', 'not-known')),
  compared_with TEXT NOT NULL CHECK (compared_with IN ('nothing', 'reference-sample', 'description', 'grown-beside')),
  outcome TEXT NOT NULL CHECK (outcome IN ('keep', 'pass-on', 'wait')),
  on_date TEXT NOT NULL,
  note TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX return_check_by_lot ON return_check (lot_id);
--> statement-breakpoint
CREATE INDEX return_check_by_entry ON return_check (entry_id);
--> statement-breakpoint
CREATE TABLE recall (
  id INTEGER PRIMARY KEY,
  lot_id INTEGER NOT NULL REFERENCES lot (id),
  on_date TEXT NOT NULL,
  reason TEXT NOT NULL,
  advice TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX recall_by_entry ON recall (entry_id);
--> statement-breakpoint
CREATE TABLE recall_lot (
  id INTEGER PRIMARY KEY,
  recall_id INTEGER NOT NULL REFERENCES recall (id),
  lot_id INTEGER NOT NULL REFERENCES lot (id),
  affected TEXT NOT NULL CHECK (affected IN ('source', 'same-seed', 'perhaps')),
  entry_id INTEGER NOT NULL REFERENCES entry (id),
  UNIQUE (recall_id, lot_id)
) STRICT;
--> statement-breakpoint
CREATE INDEX recall_lot_by_lot ON recall_lot (lot_id);
--> statement-breakpoint
CREATE INDEX recall_lot_by_entry ON recall_lot (entry_id);
--> statement-breakpoint
CREATE TABLE recall_outcome (
  id INTEGER PRIMARY KEY,
  recall_id INTEGER NOT NULL REFERENCES recall (id),
  lot_id INTEGER REFERENCES lot (id),
  person_id INTEGER REFERENCES person (id),
  outcome TEXT NOT NULL CHECK (outcome IN ('told', 'sent-back', 'destroyed', 'sown-already', 'none-left', 'checked-fine', 'checked-affected')),
  on_date TEXT NOT NULL,
  note TEXT NOT NULL,
  entry_id INTEGER NOT NULL REFERENCES entry (id),
  CHECK (lot_id IS NULL OR person_id IS NULL)
) STRICT;
--> statement-breakpoint
CREATE INDEX recall_outcome_by_recall ON recall_outcome (recall_id);
--> statement-breakpoint
CREATE INDEX recall_outcome_by_entry ON recall_outcome (entry_id);
--> statement-breakpoint
CREATE TABLE duplicate_terms (
  id INTEGER PRIMARY KEY,
  lot_id INTEGER NOT NULL REFERENCES lot (id),
  contact TEXT NOT NULL,
  agreement TEXT NOT NULL,
  agreement_ends TEXT,
  conditions TEXT NOT NULL,
  next_look TEXT,
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX duplicate_terms_by_lot ON duplicate_terms (lot_id);
--> statement-breakpoint
CREATE INDEX duplicate_terms_by_entry ON duplicate_terms (entry_id);
--> statement-breakpoint
CREATE TABLE institution_request (
  id INTEGER PRIMARY KEY,
  withdrawal_id INTEGER NOT NULL REFERENCES withdrawal (id),
  asked_on TEXT,
  intended_use TEXT NOT NULL,
  agreement TEXT NOT NULL,
  plant_health TEXT NOT NULL,
  sent_on TEXT,
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX institution_request_by_withdrawal ON institution_request (withdrawal_id);
--> statement-breakpoint
CREATE INDEX institution_request_by_entry ON institution_request (entry_id);
--> statement-breakpoint
CREATE TABLE institution_report (
  id INTEGER PRIMARY KEY,
  withdrawal_id INTEGER NOT NULL REFERENCES withdrawal (id),
  on_date TEXT NOT NULL,
  note TEXT NOT NULL CHECK (note <> ''),
  entry_id INTEGER NOT NULL REFERENCES entry (id)
) STRICT;
--> statement-breakpoint
CREATE INDEX institution_report_by_withdrawal ON institution_report (withdrawal_id);
--> statement-breakpoint
CREATE INDEX institution_report_by_entry ON institution_report (entry_id);
--> statement-breakpoint
ALTER TABLE collection ADD COLUMN check_returns TEXT NOT NULL DEFAULT 'by-risk' CHECK (check_returns IN ('by-risk', 'always'));
--> statement-breakpoint
ALTER TABLE collection ADD COLUMN due_dates INTEGER NOT NULL DEFAULT 0 CHECK (due_dates IN (0, 1));
--> statement-breakpoint
ALTER TABLE collection ADD COLUMN whom_to_call TEXT NOT NULL DEFAULT '';
--> statement-breakpoint
UPDATE collection SET due_dates = EXISTS (SELECT 1 FROM withdrawal WHERE promised_by IS NOT NULL);
--> statement-breakpoint
CREATE INDEX withdrawal_by_entry ON withdrawal (entry_id);
--> statement-breakpoint
CREATE INDEX promise_waiver_by_entry ON promise_waiver (entry_id);
