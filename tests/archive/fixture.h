/* fixture.h: a fresh archive in a folder of its own, and records to put into it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "archive/archive.h"

typedef struct
{
  char *folder;       /* of the archive; inside a temporary folder that is removed */
  WmArchive *archive; /* or NULL while it is closed */
} Fixture;

void fixture_set_up (Fixture *self, gconstpointer unused);
void fixture_set_up_in (Fixture *self, const char *base);
void fixture_tear_down (Fixture *self, gconstpointer unused);

#define fixture_add(path, test)                                                          \
  g_test_add (path, Fixture, NULL, fixture_set_up, test, fixture_tear_down)

/* Closes and opens again, as a restart does. */
void fixture_reopen (Fixture *self);

/* A path in the temporary folder, beside the archive. Caller frees. */
char *fixture_path (Fixture *self, const char *name);
char *fixture_database (Fixture *self);
/* Writes @n bytes of no meaning, the same for the same @seed. Caller frees the path. */
char *fixture_file (Fixture *self, const char *name, gsize n, guint32 seed);

/* Puts one record by an edit of its own. */
void
fixture_put (Fixture *self, const char *label, const WmId *piece_id, gpointer record);
void
fixture_remove (Fixture *self, const char *label, const WmId *piece_id, gpointer record);

/* Each is committed; caller unrefs. */
WmPerson *fixture_add_person (Fixture *self, const char *name);
WmPiece *fixture_add_piece (Fixture *self, const char *number, const char *description);
WmVisit *fixture_add_visit (Fixture *self, WmPiece *piece, gint64 taken_in_at_s);
WmCheck *
fixture_add_check (Fixture *self, WmVisit *visit, const char *fault, int severity);
WmPhoto *fixture_add_photo (Fixture *self, WmVisit *visit, guint32 seed);
WmMark *fixture_add_mark (Fixture *self, WmPhoto *photo, WmCheck *check);

#define fixture_id(record) wm_record_get_id (WM_RECORD (record))

/* No problem at all, or the test fails with the first. */
void fixture_assert_sound (Fixture *self);
