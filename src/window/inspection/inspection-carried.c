/* inspection-carried.c: marks of the last visit, carried over and to be accepted
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>

#include "window/inspection/inspection-private.h"

gboolean
wm_inspection_is_carried (WmMark *mark)
{
  return !mark->confirmed && !wm_id_is_none (&mark->carried_from);
}

/* The check a carried mark is about: its own, else the one of the same item as the check
 * its source was tied to. */
int
wm_inspection_find_carried_check (WmInspectionPage *self, WmMark *mark)
{
  WmArchive *archive = wm_session_get_archive (self->session);
  g_autoptr (WmMark) source = NULL;
  g_autoptr (WmCheck) old = NULL;

  if (!wm_id_is_none (&mark->check_id))
    return wm_checks_find (self->checks, &mark->check_id);
  source = wm_archive_get (archive, WM_KIND_MARK, &mark->carried_from, NULL);
  if (source != NULL && !wm_id_is_none (&source->check_id))
    old = wm_archive_get (archive, WM_KIND_CHECK, &source->check_id, NULL);
  for (guint i = 0; old != NULL && old->item != NULL && i < self->checks->len; i++)
    if (g_strcmp0 (((WmCheck *)self->checks->pdata[i])->item, old->item) == 0)
      return i;
  return -1;
}

/* The selected one, else the first on this photo, else on any. */
static WmMark *
find_waiting (WmInspectionPage *self)
{
  WmMark *selected =
      wm_inspection_find (self->marks, wm_canvas_get_selected (self->canvas));
  WmMark *found = NULL;

  if (selected != NULL && wm_inspection_is_carried (selected))
    return selected;
  for (guint i = 0; i < self->marks->len; i++)
    {
      WmMark *mark = self->marks->pdata[i];

      if (!wm_inspection_is_carried (mark))
        continue;
      if (wm_id_equal (&mark->photo_id, &self->photo_id))
        return mark;
      if (found == NULL)
        found = mark;
    }
  return found;
}

/* Nobody has looked at this place today when the answer is from before it was shown. */
static gboolean
reopens (WmCheck *check)
{
  return check->severity == WM_SEVERITY_SOUND
         || check->severity == WM_SEVERITY_NOT_PRESENT;
}

void
wm_inspection_put_accepted (WmInspectionPage *self, WmEdit *edit, WmMark *mark)
{
  int index = wm_inspection_find_carried_check (self, mark);
  g_autoptr (WmCheck) check = NULL;

  mark->confirmed = TRUE;
  if (index < 0)
    return;
  check = wm_session_copy (self->session, self->checks->pdata[index]);
  wm_check_give_number (check, wm_checks_next_number (self->checks));
  if (reopens (check))
    wm_check_answer (check, WM_SEVERITY_NOT_LOOKED_AT, 0, NULL, 0);
  /* The check goes in first: a mark may only name one that is there. */
  wm_inspection_put_check (self, edit, check);
  mark->check_id = *wm_record_get_id (WM_RECORD (check));
}

static void
on_accept (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmInspectionPage *self = user_data;
  WmMark *shown = find_waiting (self), *next;
  g_autoptr (WmMark) mark = NULL;
  WmEdit *edit;
  int index;

  if (shown == NULL || wm_session_is_read_only (self->session))
    return;
  mark = wm_session_copy (self->session, shown);
  edit = wm_session_begin (self->session, N_ ("Accept carried mark"));
  wm_inspection_put_accepted (self, edit, mark);
  wm_session_put (self->session, edit, mark);
  wm_inspection_replace (self->marks, mark);
  wm_inspection_commit (self, edit);
  wm_inspection_stop_waiting (self);

  index = wm_checks_find (self->checks, &mark->check_id);
  if (index >= 0)
    wm_inspection_open_check (self, index, FALSE);
  wm_inspection_show (self);
  next = find_waiting (self);
  if (next == NULL)
    return;
  if (!wm_id_equal (&next->photo_id, &self->photo_id))
    wm_inspection_show_photo (self, &next->photo_id);
  wm_inspection_choose_carried (self, next);
}

/* Opens the check it is about and says what can be done with it. */
void
wm_inspection_choose_carried (WmInspectionPage *self, WmMark *mark)
{
  const WmId id = *wm_record_get_id (WM_RECORD (mark));
  int index = wm_inspection_find_carried_check (self, mark);

  if (index >= 0)
    wm_inspection_open_check (self, index, FALSE);
  wm_canvas_set_selected (self->canvas, &id);
  wm_canvas_show_mark (self->canvas, &id);
  wm_inspection_hint (self, _ ("From the last visit. A accepts it and goes to the next; "
                               "drag it to a better place, or Delete drops it."));
}

void
wm_inspection_init_carried (WmInspectionPage *self)
{
  static const GActionEntry entries[] = { { "accept", on_accept } };

  g_action_map_add_action_entries (G_ACTION_MAP (self->actions), entries,
                                   G_N_ELEMENTS (entries), self);
}
