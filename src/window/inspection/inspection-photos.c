/* inspection-photos.c: photos coming in, their order, view, removal
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>
#include <string.h>

#include "window/inspection/inspection-private.h"

static const char *const moments[] = { WM_PHOTO_BEFORE, WM_PHOTO_DURING, WM_PHOTO_AFTER };

static int
get_moment_rank (WmPhoto *photo)
{
  for (guint i = 0; i < G_N_ELEMENTS (moments); i++)
    if (g_strcmp0 (photo->moment, moments[i]) == 0)
      return i;
  return 0;
}

static int
compare_photos (gconstpointer a, gconstpointer b)
{
  WmPhoto *first = *(WmPhoto *const *)a, *second = *(WmPhoto *const *)b;
  int rank = get_moment_rank (first) - get_moment_rank (second);

  if (rank != 0)
    return rank;
  if (first->position != second->position)
    return first->position < second->position ? -1 : 1;
  return wm_id_compare (wm_record_get_id (WM_RECORD (first)),
                        wm_record_get_id (WM_RECORD (second)));
}

void
wm_inspection_sort_photos (GPtrArray *photos)
{
  g_ptr_array_sort (photos, compare_photos);
}

void
wm_inspection_show_strip (WmInspectionPage *self)
{
  WmPiece *piece = self->session != NULL ? wm_session_get_piece (self->session) : NULL;
  g_autofree WmStripPhoto *photos = g_new0 (WmStripPhoto, self->photos->len + 1);
  guint n_photos = 0;

  if (self->session == NULL)
    return;
  for (guint i = 0; i < self->photos->len; i++)
    {
      WmPhoto *photo = g_ptr_array_index (self->photos, i);

      if (wm_inspection_is_folded (self, photo))
        continue;
      photos[n_photos].photo = photo;
      photos[n_photos++].n_marks =
          wm_inspection_count_marks_of_photo (self, wm_record_get_id (WM_RECORD (photo)));
    }
  wm_photo_strip_show (self->strip, wm_session_get_archive (self->session),
                       wm_session_get_trade (self->session),
                       piece != NULL ? piece->type : NULL, photos, n_photos,
                       &self->photo_id);
}

/* ---- coming in
 * ------------------------------------------------------------------------- */

/* The first free place of a moment in any visit, shown or not. */
static gint64
find_position (WmInspectionPage *self, const WmId *visit_id, const char *moment)
{
  g_autoptr (GPtrArray) photos = wm_archive_list_of_visit (
      wm_session_get_archive (self->session), WM_KIND_PHOTO, visit_id, NULL);
  gboolean is_shown = wm_id_equal (visit_id, &self->visit_id);
  GPtrArray *list = is_shown ? self->photos : photos;
  gint64 next = 0;

  for (guint i = 0; list != NULL && i < list->len; i++)
    {
      WmPhoto *photo = g_ptr_array_index (list, i);

      if (g_strcmp0 (photo->moment, moment) == 0)
        next = MAX (next, photo->position + 1);
    }
  return next;
}

static void
on_taken (WmPhotoImport *import, WmPhoto *photo, WmInspectionPage *self)
{
  gboolean is_shown = wm_id_equal (&photo->visit_id, &self->visit_id);
  WmEdit *edit = wm_edit_new (N_ ("Add photo"), &self->import_piece_id,
                              wm_session_get_by (self->session));

  photo->position = find_position (self, &photo->visit_id, photo->moment);
  wm_session_put (self->session, edit, photo);
  wm_inspection_commit (self, edit);
  self->import_taken++;
  if (!is_shown)
    return;
  wm_inspection_replace (self->photos, photo);
  wm_inspection_sort_photos (self->photos);
  /* The first one that came in is looked at at once. */
  if (self->import_taken == 1)
    self->photo_id = *wm_record_get_id (WM_RECORD (photo));
  wm_inspection_show (self);
}

static void
on_progress (WmPhotoImport *import, WmInspectionPage *self)
{
  guint n_done, n_total;
  const char *name = wm_photo_import_get_progress (import, &n_done, &n_total);

  wm_photo_strip_set_progress (self->strip, n_done, n_total, name);
}

static void
on_finished (WmPhotoImport *import, WmInspectionPage *self)
{
  GPtrArray *failures = wm_photo_import_get_failures (import);
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  wm_photo_strip_set_progress (self->strip, 0, 0, NULL);
  if (failures->len > 0)
    wm_photo_import_show_failures (root != NULL ? GTK_WINDOW (root) : NULL, failures,
                                   self->import_taken);
  self->import_taken = 0;
}

/* The import, ready for photos of @moment. */
static WmPhotoImport *
prepare_import (WmInspectionPage *self, const char *moment, const char *view)
{
  if (self->session == NULL || wm_session_get_visit (self->session) == NULL
      || wm_session_is_read_only (self->session))
    return NULL;
  if (self->import == NULL)
    {
      self->import = wm_photo_import_new (wm_session_get_archive (self->session));
      g_signal_connect (self->import, "taken", G_CALLBACK (on_taken), self);
      g_signal_connect (self->import, "progress", G_CALLBACK (on_progress), self);
      g_signal_connect (self->import, "finished", G_CALLBACK (on_finished), self);
    }
  self->import_piece_id =
      *wm_record_get_id (WM_RECORD (wm_session_get_piece (self->session)));
  wm_photo_import_set_place (self->import, &self->visit_id, moment, view);
  return self->import;
}

void
wm_inspection_drop_import (WmInspectionPage *self)
{
  if (self->import == NULL)
    return;
  g_signal_handlers_disconnect_by_data (self->import, self);
  wm_photo_import_cancel (self->import);
  g_clear_object (&self->import);
}

/* Photos dropped or pasted belong beside the one that is shown. */
static const char *
get_shown_moment (WmInspectionPage *self)
{
  WmPhoto *photo = wm_inspection_get_photo (self);

  return photo != NULL && photo->moment != NULL ? photo->moment : WM_PHOTO_BEFORE;
}

gboolean
wm_inspection_add_files (WmInspectionPage *self, GListModel *files)
{
  WmPhotoImport *import = prepare_import (self, get_shown_moment (self), NULL);

  if (import == NULL)
    return FALSE;
  wm_photo_import_add (import, files);
  return TRUE;
}

typedef struct
{
  WmInspectionPage *page;
  char *moment, *view;
} Choice;

static void
choice_free (gpointer data)
{
  Choice *choice = data;

  g_object_unref (choice->page);
  g_free (choice->moment);
  g_free (choice->view);
  g_free (choice);
}

static void
on_files_chosen (GListModel *files, gpointer user_data)
{
  Choice *choice = user_data;
  WmPhotoImport *import = prepare_import (choice->page, choice->moment, choice->view);

  if (import != NULL)
    wm_photo_import_add (import, files);
}

static void
choose_files (WmInspectionPage *self, const char *moment, const char *view)
{
  Choice *choice = g_new0 (Choice, 1);

  choice->page = g_object_ref (self);
  choice->moment = g_strdup (moment);
  choice->view = g_strdup (view);
  wm_photo_import_choose (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))),
                          on_files_chosen, choice, choice_free);
}

static gboolean
on_files_dropped (GtkDropTarget *target, const GValue *value, double x, double y,
                  WmInspectionPage *self)
{
  g_autoptr (GListStore) files = g_list_store_new (G_TYPE_FILE);
  GSList *list = g_value_get_boxed (value);

  for (GSList *link = list; link != NULL; link = link->next)
    g_list_store_append (files, link->data);
  return wm_inspection_add_files (self, G_LIST_MODEL (files));
}

static void
on_files_pasted (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (WmInspectionPage) self = user_data;
  g_autoptr (GListStore) files = g_list_store_new (G_TYPE_FILE);
  const GValue *value =
      gdk_clipboard_read_value_finish (GDK_CLIPBOARD (source), result, NULL);

  if (value == NULL)
    return;
  for (GSList *link = g_value_get_boxed (value); link != NULL; link = link->next)
    g_list_store_append (files, link->data);
  wm_inspection_add_files (self, G_LIST_MODEL (files));
}

static void
on_texture_pasted (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (WmInspectionPage) self = user_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GdkTexture) texture =
      gdk_clipboard_read_texture_finish (GDK_CLIPBOARD (source), result, &error);
  WmPhotoImport *import = prepare_import (self, get_shown_moment (self), NULL);

  if (import == NULL)
    return;
  if (texture != NULL)
    wm_photo_import_add_texture (import, texture);
  else
    wm_session_toast (self->session, _ ("There is no picture to paste."));
}

static void
on_paste (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmInspectionPage *self = user_data;
  GdkClipboard *clipboard = gtk_widget_get_clipboard (GTK_WIDGET (self));

  if (gdk_content_formats_contain_gtype (gdk_clipboard_get_formats (clipboard),
                                         GDK_TYPE_FILE_LIST))
    gdk_clipboard_read_value_async (clipboard, GDK_TYPE_FILE_LIST, G_PRIORITY_DEFAULT,
                                    NULL, on_files_pasted, g_object_ref (self));
  else
    gdk_clipboard_read_texture_async (clipboard, NULL, on_texture_pasted,
                                      g_object_ref (self));
}

/* ---- order, view, removal
 * ---------------------------------------------------------------- */

/* Puts @photo at @position of @moment and numbers both moments again: one edit. */
static void
move_photo (WmInspectionPage *self, WmPhoto *photo, const char *moment, int position)
{
  WmEdit *edit = wm_session_begin (self->session, N_ ("Move photo"));
  g_autoptr (GPtrArray) order = g_ptr_array_new_with_free_func (g_object_unref);
  guint at = 0;

  for (guint i = 0; i < self->photos->len; i++)
    {
      WmPhoto *other = g_ptr_array_index (self->photos, i);

      if (other != photo && g_strcmp0 (other->moment, moment) == 0)
        {
          if (other->position < position)
            at = order->len + 1;
          g_ptr_array_add (order, wm_session_copy (self->session, other));
        }
    }
  {
    WmPhoto *moved = wm_session_copy (self->session, photo);

    wm_record_set_text (WM_RECORD (moved), "moment", moment);
    g_ptr_array_insert (order, at, moved);
  }
  for (guint i = 0; i < order->len; i++)
    {
      WmPhoto *one = g_ptr_array_index (order, i);
      WmPhoto *before =
          wm_inspection_find (self->photos, wm_record_get_id (WM_RECORD (one)));

      one->position = i;
      if (wm_record_equal (WM_RECORD (one), WM_RECORD (before)))
        continue;
      wm_session_put (self->session, edit, one);
      wm_inspection_replace (self->photos, one);
    }
  wm_inspection_sort_photos (self->photos);
  wm_inspection_commit (self, edit);
  wm_inspection_show (self);
}

static void
on_photo_moved (WmPhotoStrip *strip, WmId *id, const char *moment, int position,
                WmInspectionPage *self)
{
  WmPhoto *photo = wm_inspection_find (self->photos, id);

  if (photo != NULL && !wm_session_is_read_only (self->session))
    move_photo (self, photo, moment, position);
}

static void
on_step (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmInspectionPage *self = user_data;
  WmPhoto *photo = wm_inspection_get_photo (self);
  gboolean later = g_str_equal (g_variant_get_string (parameter, NULL), "later");

  if (photo == NULL || wm_session_is_read_only (self->session))
    return;
  /* Behind the next one, or before the one before. */
  move_photo (self, photo, photo->moment,
              later ? (int)photo->position + 2 : MAX ((int)photo->position - 1, 0));
}

static void
on_photo_described (WmPhotoStrip *strip, WmId *id, const char *view, const char *caption,
                    WmInspectionPage *self)
{
  WmPhoto *shown = wm_inspection_find (self->photos, id);
  g_autoptr (WmPhoto) photo = NULL;
  WmEdit *edit;

  if (shown == NULL || wm_session_is_read_only (self->session))
    return;
  photo = wm_session_copy (self->session, shown);
  wm_record_set_text (WM_RECORD (photo), "view", view);
  wm_record_set_text (WM_RECORD (photo), "caption", caption);
  edit = wm_session_begin (self->session, N_ ("Describe photo"));
  wm_session_put (self->session, edit, photo);
  wm_inspection_replace (self->photos, photo);
  wm_inspection_commit (self, edit);
  wm_inspection_show (self);
}

static void
on_remove (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmInspectionPage *self = user_data;
  WmPhoto *photo = wm_inspection_get_photo (self);
  WmEdit *edit;
  guint index;

  if (photo == NULL || wm_session_is_read_only (self->session))
    return;
  edit = wm_session_begin (self->session, N_ ("Remove photo"));
  wm_edit_remove (edit, photo);
  wm_inspection_commit (self, edit);
  wm_session_toast (self->session, _ ("Photo removed. Ctrl+Z brings it back."));
  if (g_ptr_array_find (self->photos, photo, &index))
    {
      g_ptr_array_remove_index (self->photos, index);
      self->photo_id = index < self->photos->len
                           ? *wm_record_get_id (g_ptr_array_index (self->photos, index))
                           : WM_ID_NONE;
    }
  wm_inspection_show (self);
}

void
wm_inspection_turned (WmInspectionPage *self, int turns)
{
  WmPhoto *shown = wm_inspection_get_photo (self);
  g_autoptr (WmPhoto) photo = NULL;
  WmEdit *edit;

  if (shown == NULL || shown->quarter_turns == turns)
    return;
  photo = wm_session_copy (self->session, shown);
  photo->quarter_turns = turns;
  edit = wm_session_begin (self->session, N_ ("Turn photo"));
  wm_session_put (self->session, edit, photo);
  wm_inspection_replace (self->photos, photo);
  wm_inspection_commit (self, edit);
}

static void
on_turned (WmCanvas *canvas, int turns, WmInspectionPage *self)
{
  wm_inspection_turned (self, turns);
}

/* ---- choosing
 * ------------------------------------------------------------------------------ */

static void
on_photo_chosen (WmPhotoStrip *strip, WmId *id, WmInspectionPage *self)
{
  wm_inspection_show_photo (self, id);
  wm_inspection_show_strip (self);
}

static void
step_shown (WmInspectionPage *self, int step)
{
  guint index = 0;
  WmPhoto *photo = wm_inspection_get_photo (self);

  if (photo == NULL || !g_ptr_array_find (self->photos, photo, &index))
    return;
  /* Past what is folded away. */
  do
    if ((int)index + step < 0 || (index += step) >= self->photos->len)
      return;
  while (wm_inspection_is_folded (self, g_ptr_array_index (self->photos, index)));
  on_photo_chosen (self->strip,
                   (WmId *)wm_record_get_id (g_ptr_array_index (self->photos, index)),
                   self);
}

static void
on_next (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  step_shown (user_data, 1);
}

static void
on_previous (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  step_shown (user_data, -1);
}

static void
on_add (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  choose_files (user_data, g_variant_get_string (parameter, NULL), NULL);
}

static void
on_add_view (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  choose_files (user_data, WM_PHOTO_BEFORE, g_variant_get_string (parameter, NULL));
}

static void
on_describe (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmInspectionPage *self = user_data;

  wm_photo_strip_describe (self->strip, &self->photo_id);
}

static void
on_import_cancelled (WmPhotoStrip *strip, WmInspectionPage *self)
{
  if (self->import != NULL)
    wm_photo_import_cancel (self->import);
}

static const GActionEntry entries[] = {
  { "add", on_add, "s" },      { "add-view", on_add_view, "s" }, { "paste", on_paste },
  { "next", on_next },         { "previous", on_previous },      { "step", on_step, "s" },
  { "describe", on_describe }, { "remove", on_remove },
};

void
wm_inspection_init_photos (WmInspectionPage *self)
{
  GtkDropTarget *target = gtk_drop_target_new (GDK_TYPE_FILE_LIST, GDK_ACTION_COPY);

  self->photo_actions = g_simple_action_group_new ();
  g_action_map_add_action_entries (G_ACTION_MAP (self->photo_actions), entries,
                                   G_N_ELEMENTS (entries), self);
  gtk_widget_insert_action_group (GTK_WIDGET (self), "photo",
                                  G_ACTION_GROUP (self->photo_actions));
  g_signal_connect (target, "drop", G_CALLBACK (on_files_dropped), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (target));
  g_signal_connect (self->strip, "photo-chosen", G_CALLBACK (on_photo_chosen), self);
  g_signal_connect (self->strip, "photo-moved", G_CALLBACK (on_photo_moved), self);
  g_signal_connect (self->strip, "photo-described", G_CALLBACK (on_photo_described),
                    self);
  g_signal_connect (self->strip, "import-cancelled", G_CALLBACK (on_import_cancelled),
                    self);
  g_signal_connect (self->canvas, "turned", G_CALLBACK (on_turned), self);
}
