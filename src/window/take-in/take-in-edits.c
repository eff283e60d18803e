/* take-in-edits.c: the edits of taking a piece in that touch more than one record
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/take-in/take-in-edits.h"

#include <glib/gi18n.h>

#include "reckon/severity.h"
#include "record/make-checks.h"
#include "window/form/form-value.h"

typedef struct
{
  WmId piece_id;
  WmId visit_id;
} Opening;

static gint64
get_now_s (void)
{
  return g_get_real_time () / G_USEC_PER_SEC;
}

static void
open_when_kept (WmSession *session, gboolean kept, gpointer user_data)
{
  g_autofree Opening *opening = user_data;

  if (!kept)
    return;
  wm_session_open_piece (session, &opening->piece_id, &opening->visit_id);
  wm_session_go_to_moment (session, WM_MOMENT_TAKE_IN);
}

static WmVisit *
make_visit (WmSession *session, const WmId *piece_id)
{
  WmVisit *visit = wm_visit_new ();
  const WmId *by = wm_session_get_by (session);

  visit->piece_id = *piece_id;
  visit->taken_in_at_s = get_now_s ();
  if (by != NULL)
    visit->taken_in_by = *by;
  wm_record_set_text (WM_RECORD (visit), "moment", WM_MOMENT_TAKE_IN);
  return visit;
}

static void
commit_and_open (WmSession *session, WmEdit *edit, WmPiece *piece, WmVisit *visit)
{
  Opening *opening = g_new (Opening, 1);

  opening->piece_id = *wm_record_get_id (WM_RECORD (piece));
  opening->visit_id = *wm_record_get_id (WM_RECORD (visit));
  wm_session_commit_then (session, edit, open_when_kept, opening);
}

void
wm_take_in_new_piece (WmSession *session)
{
  WmArchive *archive = wm_session_get_archive (session);
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autoptr (GError) error = NULL;
  g_autofree char *number =
      wm_archive_take_number (archive, g_date_time_get_year (now), &error);
  g_autofree char *currency = NULL;
  g_autoptr (WmPiece) piece = NULL;
  g_autoptr (WmVisit) visit = NULL;
  WmEdit *edit;

  if (number == NULL)
    {
      wm_session_toast_error (session, error);
      return;
    }

  wm_session_close_piece (session);
  currency = wm_form_currency (session);
  piece = wm_piece_new ();
  wm_record_set_text (WM_RECORD (piece), "number", number);
  wm_record_set_text (WM_RECORD (piece), "currency", currency);
  visit = make_visit (session, wm_record_get_id (WM_RECORD (piece)));

  edit = wm_edit_new (N_ ("Take in a piece"), wm_record_get_id (WM_RECORD (piece)),
                      wm_session_get_by (session));
  wm_session_put (session, edit, piece);
  wm_session_put (session, edit, visit);
  commit_and_open (session, edit, piece, visit);
}

static void
put_checks (WmSession *session, WmEdit *edit, GPtrArray *checks)
{
  for (guint i = 0; i < checks->len; i++)
    wm_session_put (session, edit, checks->pdata[i]);
}

void
wm_take_in_new_visit (WmSession *session)
{
  WmPiece *piece = wm_session_get_piece (session);
  WmTrade *trade = wm_session_get_trade (session);
  g_autoptr (WmVisit) visit = NULL;
  g_autoptr (GPtrArray) checks = NULL;
  WmEdit *edit;

  if (piece == NULL)
    return;
  visit = make_visit (session, wm_record_get_id (WM_RECORD (piece)));
  edit = wm_session_begin (session, N_ ("New visit"));
  wm_session_put (session, edit, visit);
  if (trade != NULL)
    {
      checks = wm_make_checks (trade, piece->type, wm_record_get_id (WM_RECORD (visit)));
      put_checks (session, edit, checks);
    }
  commit_and_open (session, edit, piece, visit);
}

static gboolean
has_item (GPtrArray *checks, const char *item)
{
  for (guint i = 0; i < checks->len; i++)
    if (g_strcmp0 (((WmCheck *)checks->pdata[i])->item, item) == 0)
      return TRUE;
  return FALSE;
}

/* A check with a mark or a number has been worked on too, though it has no answer. */
static gboolean
is_untouched (WmCheck *check)
{
  return check->severity == WM_SEVERITY_NOT_LOOKED_AT && check->note == NULL
         && check->number == WM_UNKNOWN;
}

static void
change_checks (WmSession *session, WmEdit *edit, const char *type)
{
  const WmId *visit_id = wm_session_get_visit_id (session);
  g_autoptr (GPtrArray) old = wm_archive_list (wm_session_get_archive (session),
                                               WM_KIND_CHECK, "visit_id", visit_id, NULL);
  g_autoptr (GPtrArray) fresh =
      wm_make_checks (wm_session_get_trade (session), type, visit_id);
  gint64 position = 0;

  for (guint i = 0; old != NULL && i < old->len; i++)
    {
      WmCheck *check = old->pdata[i];

      if (is_untouched (check) && !has_item (fresh, check->item))
        wm_edit_remove (edit, check);
      else
        position = MAX (position, check->position + 1);
    }
  for (guint i = 0; i < fresh->len; i++)
    {
      WmCheck *check = fresh->pdata[i];

      if (old != NULL && has_item (old, check->item))
        continue;
      check->position += position;
      wm_session_put (session, edit, check);
    }
}

void
wm_take_in_set_type (WmSession *session, const char *type)
{
  WmPiece *piece = wm_session_get_piece (session);
  g_autoptr (WmPiece) copy = NULL;
  WmEdit *edit;

  if (piece == NULL || g_strcmp0 (piece->type, type) == 0)
    return;
  copy = wm_session_copy (session, piece);
  wm_record_set_text (WM_RECORD (copy), "type", type);
  edit = wm_session_begin (session, N_ ("Kind of piece"));
  wm_session_put (session, edit, copy);
  if (wm_session_get_visit (session) != NULL && wm_session_get_trade (session) != NULL)
    change_checks (session, edit, type);
  wm_session_commit (session, edit);
}

static void
put_owner (WmSession *session, WmEdit *edit, WmPerson *owner)
{
  g_autoptr (WmPiece) copy = wm_session_copy (session, wm_session_get_piece (session));

  copy->owner_id = *wm_record_get_id (WM_RECORD (owner));
  wm_session_put (session, edit, copy);
  wm_session_commit (session, edit);
}

void
wm_take_in_set_owner (WmSession *session, WmPerson *owner)
{
  if (wm_session_get_piece (session) != NULL)
    put_owner (session, wm_session_begin (session, N_ ("Owner")), owner);
}

void
wm_take_in_new_owner (WmSession *session, const char *name)
{
  g_autoptr (WmPerson) owner = wm_person_new ();
  WmEdit *edit;

  if (wm_session_get_piece (session) == NULL)
    return;
  wm_record_set_text (WM_RECORD (owner), "role", WM_ROLE_OWNER);
  wm_record_set_text (WM_RECORD (owner), "name", name);
  edit = wm_session_begin (session, N_ ("New customer"));
  wm_session_put (session, edit, owner);
  put_owner (session, edit, owner);
}
