-- 001.sql: the records, the log of edits, the list of pieces
--
-- A released schema file never changes: a change is the next file. Plain types only.
-- Keys are 16 bytes on both sides of every foreign key. Foreign keys are looked at
-- when the transaction ends, so that rows may come and go in any order within it.
-- What belongs to a removed row is removed by the program, row by row, because each
-- row goes into the log (links.c); so no ON DELETE here.

CREATE TABLE "setting" (
  id BLOB NOT NULL PRIMARY KEY CHECK (length (id) = 16),
  "name" TEXT NOT NULL UNIQUE,
  "value" TEXT,
  made_at_us INTEGER NOT NULL,
  changed_at_us INTEGER NOT NULL,
  changed_by BLOB,
  revision INTEGER NOT NULL CHECK (revision > 0)
) STRICT;

CREATE TABLE "person" (
  id BLOB NOT NULL PRIMARY KEY CHECK (length (id) = 16),
  "role" TEXT,
  "name" TEXT,
  "initials" TEXT,
  "phone" TEXT,
  "email" TEXT,
  "address" TEXT,
  "letters_by" TEXT,
  "language" TEXT,
  "note" TEXT,
  "retired" INTEGER NOT NULL DEFAULT 0 CHECK ("retired" IN (0, 1)),
  made_at_us INTEGER NOT NULL,
  changed_at_us INTEGER NOT NULL,
  changed_by BLOB,
  revision INTEGER NOT NULL CHECK (revision > 0)
) STRICT;

CREATE TABLE "piece" (
  id BLOB NOT NULL PRIMARY KEY CHECK (length (id) = 16),
  "number" TEXT UNIQUE,
  "type" TEXT,
  "owner_id" BLOB REFERENCES "person" (id) DEFERRABLE INITIALLY DEFERRED,
  "metal" TEXT,
  "fineness" INTEGER,
  "fineness_basis" TEXT,
  "description" TEXT,
  "unlike" TEXT,
  "worn" TEXT,
  "size" TEXT,
  "length_mm" REAL,
  "declared_minor" INTEGER,
  "currency" TEXT,
  "declared_basis" TEXT,
  "shop_note" TEXT,
  made_at_us INTEGER NOT NULL,
  changed_at_us INTEGER NOT NULL,
  changed_by BLOB,
  revision INTEGER NOT NULL CHECK (revision > 0)
) STRICT;
CREATE INDEX "piece_owner_id" ON "piece" ("owner_id");

CREATE TABLE "stone_group" (
  id BLOB NOT NULL PRIMARY KEY CHECK (length (id) = 16),
  "piece_id" BLOB NOT NULL REFERENCES "piece" (id) DEFERRABLE INITIALLY DEFERRED,
  "position" INTEGER NOT NULL DEFAULT 0,
  "species" TEXT,
  "count" INTEGER,
  "cut" TEXT,
  "length_mm" REAL,
  "width_mm" REAL,
  "depth_mm" REAL,
  "basis" TEXT,
  "note" TEXT,
  made_at_us INTEGER NOT NULL,
  changed_at_us INTEGER NOT NULL,
  changed_by BLOB,
  revision INTEGER NOT NULL CHECK (revision > 0)
) STRICT;
CREATE INDEX "stone_group_piece_id" ON "stone_group" ("piece_id");

CREATE TABLE "visit" (
  id BLOB NOT NULL PRIMARY KEY CHECK (length (id) = 16),
  "piece_id" BLOB NOT NULL REFERENCES "piece" (id) DEFERRABLE INITIALLY DEFERRED,
  "moment" TEXT,
  "taken_in_at_s" INTEGER,
  "taken_in_by" BLOB REFERENCES "person" (id) DEFERRABLE INITIALLY DEFERRED,
  "promised_on" TEXT,
  "wishes" TEXT,
  "condition" TEXT,
  "mass_in_mg" INTEGER,
  "mass_out_mg" INTEGER,
  "price_limit_minor" INTEGER,
  "inspected_at_s" INTEGER,
  "inspected_by" BLOB REFERENCES "person" (id) DEFERRABLE INITIALLY DEFERRED,
  "open_reason" TEXT,
  "handed_back_at_s" INTEGER,
  "handed_back_by" BLOB REFERENCES "person" (id) DEFERRABLE INITIALLY DEFERRED,
  "next_check_on" TEXT,
  "next_check_reason" TEXT,
  "shop_note" TEXT,
  made_at_us INTEGER NOT NULL,
  changed_at_us INTEGER NOT NULL,
  changed_by BLOB,
  revision INTEGER NOT NULL CHECK (revision > 0)
) STRICT;
CREATE INDEX "visit_piece_id" ON "visit" ("piece_id");
CREATE INDEX "visit_taken_in_by" ON "visit" ("taken_in_by");
CREATE INDEX "visit_inspected_by" ON "visit" ("inspected_by");
CREATE INDEX "visit_handed_back_by" ON "visit" ("handed_back_by");

CREATE TABLE "photo" (
  id BLOB NOT NULL PRIMARY KEY CHECK (length (id) = 16),
  "visit_id" BLOB NOT NULL REFERENCES "visit" (id) DEFERRABLE INITIALLY DEFERRED,
  "position" INTEGER NOT NULL DEFAULT 0,
  "moment" TEXT,
  "view" TEXT,
  "caption" TEXT,
  "sha256" TEXT NOT NULL CHECK (length ("sha256") = 64),
  "format" TEXT NOT NULL,
  "byte_size" INTEGER,
  "width" INTEGER,
  "height" INTEGER,
  "orientation" INTEGER,
  "quarter_turns" INTEGER NOT NULL DEFAULT 0 CHECK ("quarter_turns" BETWEEN 0 AND 3),
  "taken_at_s" INTEGER,
  "original_name" TEXT,
  "scale_x1" REAL,
  "scale_y1" REAL,
  "scale_x2" REAL,
  "scale_y2" REAL,
  "scale_mm" REAL,
  "verdict" TEXT,
  "verdict_reasons" TEXT,
  made_at_us INTEGER NOT NULL,
  changed_at_us INTEGER NOT NULL,
  changed_by BLOB,
  revision INTEGER NOT NULL CHECK (revision > 0)
) STRICT;
CREATE INDEX "photo_sha256" ON "photo" ("sha256");
CREATE INDEX "photo_visit_id" ON "photo" ("visit_id");

CREATE TABLE "pairing" (
  id BLOB NOT NULL PRIMARY KEY CHECK (length (id) = 16),
  "before_photo_id" BLOB NOT NULL REFERENCES "photo" (id) DEFERRABLE INITIALLY DEFERRED,
  "after_photo_id" BLOB NOT NULL REFERENCES "photo" (id) DEFERRABLE INITIALLY DEFERRED,
  "m0" REAL,
  "m1" REAL,
  "m2" REAL,
  "m3" REAL,
  "m4" REAL,
  "m5" REAL,
  "m6" REAL,
  "m7" REAL,
  "m8" REAL,
  "residual_px" REAL,
  "overlap" REAL,
  "made_by" TEXT,
  "points" TEXT,
  made_at_us INTEGER NOT NULL,
  changed_at_us INTEGER NOT NULL,
  changed_by BLOB,
  revision INTEGER NOT NULL CHECK (revision > 0)
) STRICT;
CREATE INDEX "pairing_before_photo_id" ON "pairing" ("before_photo_id");
CREATE INDEX "pairing_after_photo_id" ON "pairing" ("after_photo_id");

CREATE TABLE "check" (
  id BLOB NOT NULL PRIMARY KEY CHECK (length (id) = 16),
  "visit_id" BLOB NOT NULL REFERENCES "visit" (id) DEFERRABLE INITIALLY DEFERRED,
  "position" INTEGER NOT NULL DEFAULT 0,
  "item" TEXT,
  "part" TEXT,
  "title" TEXT,
  "fault" TEXT,
  "look" TEXT,
  "if_left" TEXT,
  "remedies" TEXT,
  "customer" TEXT,
  "source" TEXT,
  "number" INTEGER,
  "severity" INTEGER NOT NULL DEFAULT 0 CHECK ("severity" BETWEEN 0 AND 5),
  "note" TEXT,
  "answered_at_s" INTEGER,
  "answered_by" BLOB REFERENCES "person" (id) DEFERRABLE INITIALLY DEFERRED,
  "after_severity" INTEGER NOT NULL DEFAULT 0 CHECK ("after_severity" BETWEEN 0 AND 5),
  made_at_us INTEGER NOT NULL,
  changed_at_us INTEGER NOT NULL,
  changed_by BLOB,
  revision INTEGER NOT NULL CHECK (revision > 0)
) STRICT;
CREATE INDEX "check_visit_id" ON "check" ("visit_id");
CREATE INDEX "check_answered_by" ON "check" ("answered_by");

CREATE TABLE "mark" (
  id BLOB NOT NULL PRIMARY KEY CHECK (length (id) = 16),
  "photo_id" BLOB NOT NULL REFERENCES "photo" (id) DEFERRABLE INITIALLY DEFERRED,
  "check_id" BLOB REFERENCES "check" (id) DEFERRABLE INITIALLY DEFERRED,
  "shape" TEXT,
  "points" TEXT,
  "disc_x" REAL,
  "disc_y" REAL,
  "carried_from" BLOB REFERENCES "mark" (id) DEFERRABLE INITIALLY DEFERRED,
  "confirmed" INTEGER NOT NULL DEFAULT 0 CHECK ("confirmed" IN (0, 1)),
  made_at_us INTEGER NOT NULL,
  changed_at_us INTEGER NOT NULL,
  changed_by BLOB,
  revision INTEGER NOT NULL CHECK (revision > 0)
) STRICT;
CREATE INDEX "mark_photo_id" ON "mark" ("photo_id");
CREATE INDEX "mark_check_id" ON "mark" ("check_id");
CREATE INDEX "mark_carried_from" ON "mark" ("carried_from");

CREATE TABLE "measurement" (
  id BLOB NOT NULL PRIMARY KEY CHECK (length (id) = 16),
  "check_id" BLOB NOT NULL REFERENCES "check" (id) DEFERRABLE INITIALLY DEFERRED,
  "mark_id" BLOB REFERENCES "mark" (id) DEFERRABLE INITIALLY DEFERRED,
  "quantity" TEXT,
  "value_mm" REAL,
  "uncertainty_mm" REAL,
  "as_made_mm" REAL,
  "as_made_basis" TEXT,
  "method" TEXT,
  "moment" TEXT,
  "measured_at_s" INTEGER,
  made_at_us INTEGER NOT NULL,
  changed_at_us INTEGER NOT NULL,
  changed_by BLOB,
  revision INTEGER NOT NULL CHECK (revision > 0)
) STRICT;
CREATE INDEX "measurement_check_id" ON "measurement" ("check_id");
CREATE INDEX "measurement_mark_id" ON "measurement" ("mark_id");

CREATE TABLE "remedy" (
  id BLOB NOT NULL PRIMARY KEY CHECK (length (id) = 16),
  "check_id" BLOB NOT NULL REFERENCES "check" (id) DEFERRABLE INITIALLY DEFERRED,
  "position" INTEGER NOT NULL DEFAULT 0,
  "what" TEXT,
  "minutes" INTEGER,
  "price_minor" INTEGER,
  "answer" TEXT,
  "done_at_s" INTEGER,
  "done_by" BLOB REFERENCES "person" (id) DEFERRABLE INITIALLY DEFERRED,
  made_at_us INTEGER NOT NULL,
  changed_at_us INTEGER NOT NULL,
  changed_by BLOB,
  revision INTEGER NOT NULL CHECK (revision > 0)
) STRICT;
CREATE INDEX "remedy_check_id" ON "remedy" ("check_id");
CREATE INDEX "remedy_done_by" ON "remedy" ("done_by");

CREATE TABLE "proof" (
  id BLOB NOT NULL PRIMARY KEY CHECK (length (id) = 16),
  "visit_id" BLOB NOT NULL REFERENCES "visit" (id) DEFERRABLE INITIALLY DEFERRED,
  "check_id" BLOB REFERENCES "check" (id) DEFERRABLE INITIALLY DEFERRED,
  "position" INTEGER NOT NULL DEFAULT 0,
  "test" TEXT,
  "reading" TEXT,
  "passed" INTEGER NOT NULL DEFAULT 0 CHECK ("passed" IN (0, 1)),
  "tested_at_s" INTEGER,
  "tested_by" BLOB REFERENCES "person" (id) DEFERRABLE INITIALLY DEFERRED,
  made_at_us INTEGER NOT NULL,
  changed_at_us INTEGER NOT NULL,
  changed_by BLOB,
  revision INTEGER NOT NULL CHECK (revision > 0)
) STRICT;
CREATE INDEX "proof_visit_id" ON "proof" ("visit_id");
CREATE INDEX "proof_check_id" ON "proof" ("check_id");
CREATE INDEX "proof_tested_by" ON "proof" ("tested_by");

CREATE TABLE "reminder" (
  id BLOB NOT NULL PRIMARY KEY CHECK (length (id) = 16),
  "piece_id" BLOB NOT NULL REFERENCES "piece" (id) DEFERRABLE INITIALLY DEFERRED,
  "visit_id" BLOB REFERENCES "visit" (id) DEFERRABLE INITIALLY DEFERRED,
  "due_on" TEXT,
  "reason" TEXT,
  "sent_on" TEXT,
  "way" TEXT,
  "result" TEXT,
  made_at_us INTEGER NOT NULL,
  changed_at_us INTEGER NOT NULL,
  changed_by BLOB,
  revision INTEGER NOT NULL CHECK (revision > 0)
) STRICT;
CREATE INDEX "reminder_piece_id" ON "reminder" ("piece_id");
CREATE INDEX "reminder_visit_id" ON "reminder" ("visit_id");

-- The log: one edit (or its undoing, or its doing again) a row, in order of id.
-- piece_id is not a reference: a piece may be gone and its history stays.
-- undone: 0 stands, 1 undone, 2 undone and can not be done again.
CREATE TABLE edit (
  id BLOB NOT NULL PRIMARY KEY CHECK (length (id) = 16),
  piece_id BLOB,
  label TEXT NOT NULL,
  made_by BLOB,
  made_at_us INTEGER NOT NULL,
  action TEXT NOT NULL CHECK (action IN ('edit', 'undo', 'redo')),
  of_edit BLOB REFERENCES edit (id),
  undone INTEGER NOT NULL DEFAULT 0 CHECK (undone BETWEEN 0 AND 2)
) STRICT;
CREATE INDEX edit_of_piece ON edit (piece_id, undone, id) WHERE action = 'edit';
CREATE INDEX edit_of_edit ON edit (of_edit);

-- What it did to each row: images are JSON objects of the fields that say something;
-- before is NULL for a new row, after is NULL for a removed one (its tombstone).
CREATE TABLE edit_row (
  edit_id BLOB NOT NULL REFERENCES edit (id),
  position INTEGER NOT NULL,
  kind TEXT NOT NULL,
  row_id BLOB NOT NULL CHECK (length (row_id) = 16),
  revision INTEGER NOT NULL,
  before TEXT,
  after TEXT,
  PRIMARY KEY (edit_id, position)
) STRICT, WITHOUT ROWID;
CREATE INDEX edit_row_of_row ON edit_row (row_id, edit_id);

-- The last running number given in each year; a number is never given twice.
CREATE TABLE number_given (
  year INTEGER NOT NULL PRIMARY KEY,
  running INTEGER NOT NULL
) STRICT;

-- The list of pieces, ready to show: made from the records in the same transaction as
-- every edit, and can be made again from them. place orders it: 4096 places a second,
-- by the time the piece was last taken in.
CREATE TABLE piece_line (
  place INTEGER NOT NULL PRIMARY KEY,
  piece_id BLOB NOT NULL UNIQUE REFERENCES piece (id) DEFERRABLE INITIALLY DEFERRED,
  number TEXT,
  type TEXT,
  owner_name TEXT,
  description TEXT,
  severity INTEGER NOT NULL,
  on_bench INTEGER NOT NULL,
  taken_in_at_s INTEGER,
  handed_back_at_s INTEGER,
  moment TEXT,
  promised_on TEXT,
  next_check_on TEXT,
  photo_sha256 TEXT,
  photo_format TEXT
) STRICT;
CREATE INDEX piece_line_on_bench ON piece_line (on_bench) WHERE on_bench = 1;
CREATE INDEX piece_line_due ON piece_line (next_check_on)
  WHERE on_bench = 0 AND next_check_on IS NOT NULL;

-- The words of each piece; rowid is the place of its line.
CREATE VIRTUAL TABLE piece_word USING fts5 (
  number, owner, kind, metal, stones, words, faults,
  tokenize = "unicode61 remove_diacritics 2", prefix = '1 2 3'
);
