/* inspection-stack.c: frames merged into one photo, and folded behind it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>

#include "photo/stack.h"
#include "window/inspection/inspection-private.h"
#include "window/stack/stack-rule.h"
#include "window/stack/stack-window.h"

/* The photo was merged: it goes behind the last of its moment, and the frames say what
 * they were merged into. One edit, so that one undo takes it back. */
static void
on_merged (WmPhoto *photo, GPtrArray *frames, gpointer user_data)
{
  WmInspectionPage *self = user_data;
  WmEdit *edit;

  if (self->session == NULL || wm_session_is_read_only (self->session)
      || !wm_id_equal (&photo->visit_id, &self->visit_id))
    return;
  edit = wm_session_begin (self->session, N_ ("Merge focus stack"));
  photo->position = ((WmPhoto *)g_ptr_array_index (frames, 0))->position;
  wm_session_put (self->session, edit, photo);
  wm_inspection_replace (self->photos, photo);
  for (guint i = 0; i < frames->len; i++)
    {
      WmPhoto *shown = wm_inspection_find (
          self->photos, wm_record_get_id (g_ptr_array_index (frames, i)));
      g_autoptr (WmPhoto) frame = NULL;

      if (shown == NULL)
        continue;
      frame = wm_session_copy (self->session, shown);
      frame->stacked_into = *wm_record_get_id (WM_RECORD (photo));
      wm_session_put (self->session, edit, frame);
      wm_inspection_replace (self->photos, frame);
    }
  wm_inspection_sort_photos (self->photos);
  wm_inspection_commit (self, edit);
  self->photo_id = *wm_record_get_id (WM_RECORD (photo));
  wm_inspection_show (self);
}

static void
on_stack (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmInspectionPage *self = user_data;
  WmPhoto *photo = wm_inspection_get_photo (self);
  g_autoptr (GPtrArray) candidates = NULL;

  if (photo == NULL || wm_session_is_read_only (self->session))
    return;
  candidates = wm_stack_candidates (self->photos, photo);
  if (candidates->len < WM_STACK_LEAST || !g_ptr_array_find (candidates, photo, NULL))
    {
      wm_session_toast (self->session,
                        _ ("A stack needs two or more photos of the same size and "
                           "moment that are not merged yet. Show one of them first."));
      return;
    }
  wm_stack_window_present (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))),
                           wm_session_get_archive (self->session), candidates, photo,
                           on_merged, g_object_ref (self), g_object_unref);
}

static void
on_frames (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmInspectionPage *self = user_data;

  self->shows_frames = !self->shows_frames;
  wm_inspection_show_strip (self);
}

gboolean
wm_inspection_is_folded (WmInspectionPage *self, WmPhoto *photo)
{
  const WmId *id = wm_record_get_id (WM_RECORD (photo));

  /* A frame is seen while it is shown, or has marks, or its stack is gone. */
  return !self->shows_frames && !wm_id_is_none (&photo->stacked_into)
         && !wm_id_equal (id, &self->photo_id)
         && wm_inspection_find (self->photos, &photo->stacked_into) != NULL
         && wm_inspection_count_marks_of_photo (self, id) == 0;
}

void
wm_inspection_init_stack (WmInspectionPage *self)
{
  static const GActionEntry entries[] = {
    { "stack", on_stack },
    { "frames", on_frames },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self->photo_actions), entries,
                                   G_N_ELEMENTS (entries), self);
}
