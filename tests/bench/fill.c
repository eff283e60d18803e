/* fill.c: an archive of many invented pieces, for measuring
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "fill.h"

#include "trade/number.h"

/* Pieces an edit: enough that the disk's sync does not count. */
#define PIECES_AN_EDIT 500
/* 2016-11-25, ten years before the day of the sample pieces. */
#define FIRST_S 1480032000
#define YEARS_S (10.0 * 365.25 * 86400)

static const char *const first_names[] = {
  "Agnes",  "Bruno", "Clara", "Dario", "Edda",  "Fritz", "Greta",  "Hanno", "Ilse",
  "Jonas",  "Karin", "Leif",  "Maren", "Nils",  "Orla",  "Pavel",  "Quinn", "Rosa",
  "Sigrid", "Theo",  "Uta",   "Vera",  "Wilma", "Xenia", "Yorick", "Zoë"
};
static const char *const last_names[] = {
  "Abelwind",  "Birkenhall", "Carrowmoor", "Dornfels",   "Eschbach",    "Fallmerayn",
  "Grünwiese", "Hollins",    "Irrgang",    "Jasperkamp", "Kranzler",    "Lindqvaal",
  "Millrace",  "Nollfuss",   "Ostermoor",  "Pellwick",   "Quistrup",    "Rautenberg",
  "Sternhold", "Tannwald",   "Uhlenbrock", "Vossberg",   "Winterbourne"
};
static const char *const types[] = { "ring_claw",     "bangle", "brooch", "earrings",
                                     "pendant_chain", "strand", "locket" };
static const char *const metals[] = { "au750y", "au585y", "au750w", "ag925", "pt950" };
static const char *const stones[] = { "sapphire", "diamond", "ruby",   "emerald",
                                      "pearl",    "opal",    "garnet", "topaz" };
static const char *const things[] = { "high crown",   "open back",     "twisted shank",
                                      "hidden clasp", "engraved edge", "old sizing seam",
                                      "milled rim",   "hollow links",  "safety chain",
                                      "split band" };
static const char *const faults[] = { "Worn claws",   "Loose stone",    "Thin shank",
                                      "Cracked seam", "Worn end ring",  "Bent pin",
                                      "Weak catch",   "Stretched links" };

const char *const bench_words[] = { "agnes",        "carrowmoor", "zoë",    "grünwiese",
                                    "winterbourne", "ring",       "bangle", "sapphire",
                                    "diamond",      "worn",       "claws",  "twisted",
                                    "2023",         "0151",       "au750y", "emerald",
                                    "quistrup",     "locket",     NULL };

#define PICK(rand, list) (list)[g_rand_int_range (rand, 0, G_N_ELEMENTS (list))]

static WmPerson *
make_owner (GRand *rand)
{
  WmPerson *owner = wm_person_new ();
  g_autofree char *name =
      g_strdup_printf ("%s %s", PICK (rand, first_names), PICK (rand, last_names));

  g_object_set (owner, "role", WM_ROLE_OWNER, "name", name, "language", "en", NULL);
  return owner;
}

static void
put_visit (WmEdit *edit, WmPiece *piece, GRand *rand, gboolean is_last)
{
  g_autoptr (WmVisit) visit = wm_visit_new ();
  gint64 in_s = FIRST_S + (gint64)(g_rand_double (rand) * YEARS_S);

  g_object_set (visit, "piece-id", wm_record_get_id (WM_RECORD (piece)), "moment",
                WM_MOMENT_HAND_BACK, "taken-in-at-s", in_s, NULL);
  /* One in four hundred is on the bench. */
  if (!is_last || g_rand_int_range (rand, 0, 400) > 0)
    g_object_set (visit, "handed-back-at-s", in_s + 5 * 86400, "next-check-on",
                  g_rand_boolean (rand) ? "2026-12-01" : "2028-03-01", NULL);
  wm_edit_put (edit, visit);
  for (gint64 i = 0; i < 2; i++)
    {
      g_autoptr (WmCheck) check = wm_check_new ();

      g_object_set (check, "visit-id", wm_record_get_id (WM_RECORD (visit)), "position",
                    i, "item", "cl01", "title", "Claw tips", "fault", PICK (rand, faults),
                    "severity", (gint64)g_rand_int_range (rand, 1, 4), NULL);
      wm_edit_put (edit, check);
    }
}

static void
put_piece (WmEdit *edit, guint nth, const WmId *owner_id, GRand *rand)
{
  g_autoptr (WmPiece) piece = wm_piece_new ();
  g_autoptr (WmStoneGroup) group = wm_stone_group_new ();
  g_autofree char *number = wm_number_make (2016 + nth % 11, 1 + nth / 11);
  const char *metal = PICK (rand, metals);
  const char *stone = PICK (rand, stones);
  g_autofree char *description =
      g_strdup_printf ("%s with %s, %s", PICK (rand, types), stone, PICK (rand, things));

  g_object_set (piece, "number", number, "type", PICK (rand, types), "metal", metal,
                "description", description, "owner-id", owner_id, NULL);
  g_object_set (group, "piece-id", wm_record_get_id (WM_RECORD (piece)), "species", stone,
                "count", (gint64)1 + nth % 20, NULL);
  wm_edit_put (edit, piece);
  wm_edit_put (edit, group);
  if (nth % 3 == 0)
    put_visit (edit, piece, rand, FALSE);
  put_visit (edit, piece, rand, TRUE);
}

void
bench_fill (WmArchive *archive, guint n)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20261125);

  for (guint done = 0; done < n;)
    {
      g_autoptr (WmEdit) edit = wm_edit_new ("Bench", NULL, NULL);
      g_autoptr (WmPerson) owner = NULL;
      g_autoptr (GError) error = NULL;

      for (guint i = 0; i < PIECES_AN_EDIT && done < n; i++, done++)
        {
          if (i % 3 == 0)
            {
              g_clear_object (&owner);
              owner = make_owner (rand);
              wm_edit_put (edit, owner);
            }
          put_piece (edit, done, wm_record_get_id (WM_RECORD (owner)), rand);
        }
      if (!wm_archive_commit (archive, edit, &error))
        g_error ("%s", error->message);
    }
}
