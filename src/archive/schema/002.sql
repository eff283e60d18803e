-- 002.sql: scales and sections of measurements, suggested severity, how a remedy is
-- joined and what it takes, pairs that were refused, photos made from others
--
-- A released schema file never changes: a change is the next file.

ALTER TABLE "photo" ADD COLUMN "scale_kind" TEXT;
ALTER TABLE "photo" ADD COLUMN "scale_plane" TEXT;
ALTER TABLE "photo" ADD COLUMN "scale_width_mm" REAL;
ALTER TABLE "photo" ADD COLUMN "scale_height_mm" REAL;
ALTER TABLE "photo" ADD COLUMN "scale_u_mm" REAL;
ALTER TABLE "photo" ADD COLUMN "scale_depth_mm" REAL;
ALTER TABLE "photo" ADD COLUMN "scale_basis" TEXT;
ALTER TABLE "photo" ADD COLUMN "made_from" TEXT;
ALTER TABLE "photo" ADD COLUMN "stacked_into" BLOB REFERENCES "photo" (id) DEFERRABLE INITIALLY DEFERRED;
CREATE INDEX "photo_stacked_into" ON "photo" ("stacked_into");

ALTER TABLE "measurement" ADD COLUMN "as_made_uncertainty_mm" REAL;
ALTER TABLE "measurement" ADD COLUMN "section" TEXT;
ALTER TABLE "measurement" ADD COLUMN "width_mm" REAL;
ALTER TABLE "measurement" ADD COLUMN "readings" TEXT;
ALTER TABLE "measurement" ADD COLUMN "ends" TEXT;

ALTER TABLE "check" ADD COLUMN "suggested" INTEGER NOT NULL DEFAULT 0 CHECK ("suggested" BETWEEN 0 AND 5);
ALTER TABLE "check" ADD COLUMN "suggested_reason" TEXT;
ALTER TABLE "check" ADD COLUMN "other_word_note" TEXT;

ALTER TABLE "piece" ADD COLUMN "old_joints" TEXT;

ALTER TABLE "remedy" ADD COLUMN "method" TEXT;
ALTER TABLE "remedy" ADD COLUMN "solder" TEXT;
ALTER TABLE "remedy" ADD COLUMN "stone_mm" REAL;
ALTER TABLE "remedy" ADD COLUMN "stones_out" INTEGER NOT NULL DEFAULT 0 CHECK ("stones_out" IN (0, 1));

ALTER TABLE "pairing" ADD COLUMN "refused" INTEGER NOT NULL DEFAULT 0 CHECK ("refused" IN (0, 1));
ALTER TABLE "pairing" ADD COLUMN "reason" TEXT;
ALTER TABLE "pairing" ADD COLUMN "engine" INTEGER NOT NULL DEFAULT 0;

CREATE TABLE "material" (
  id BLOB NOT NULL PRIMARY KEY CHECK (length (id) = 16),
  "remedy_id" BLOB NOT NULL REFERENCES "remedy" (id) DEFERRABLE INITIALLY DEFERRED,
  "position" INTEGER NOT NULL DEFAULT 0,
  "what" TEXT,
  "metal" TEXT,
  "mass_mg" INTEGER,
  "gram_price_minor" INTEGER,
  "price_minor" INTEGER,
  made_at_us INTEGER NOT NULL,
  changed_at_us INTEGER NOT NULL,
  changed_by BLOB,
  revision INTEGER NOT NULL CHECK (revision > 0)
) STRICT;
CREATE INDEX "material_remedy_id" ON "material" ("remedy_id");
