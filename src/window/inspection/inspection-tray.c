/* inspection-tray.c: new photos of the watched folder, taken in or put aside
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>

#include "record/setting.h"
#include "window/inspection/inspection-private.h"

static char *
find_watched_folder (WmInspectionPage *self)
{
  g_autoptr (GPtrArray) settings = wm_archive_list (
      wm_session_get_archive (self->session), WM_KIND_SETTING, NULL, NULL, NULL);

  for (guint i = 0; settings != NULL && i < settings->len; i++)
    {
      WmSetting *setting = g_ptr_array_index (settings, i);

      if (g_strcmp0 (setting->name, WM_SETTING_WATCHED_FOLDER) == 0)
        return g_strdup (setting->value);
    }
  return NULL;
}

void
wm_inspection_watch (WmInspectionPage *self)
{
  g_autofree char *folder = find_watched_folder (self);

  wm_arrivals_set_folder (self->arrivals, folder);
}

static void
on_changed (WmArrivals *arrivals, WmInspectionPage *self)
{
  wm_photo_tray_show (self->tray, arrivals);
}

/* ---- actions ------------------------------------------------------------------- */

static void
on_take (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmInspectionPage *self = user_data;
  g_autoptr (GPtrArray) ready = wm_arrivals_list (self->arrivals);
  g_autoptr (GListStore) files = g_list_store_new (G_TYPE_FILE);

  for (guint i = 0; i < ready->len; i++)
    {
      WmArrival *arrival = g_ptr_array_index (ready, i);
      g_autoptr (GFile) file = NULL;

      if (!arrival->chosen)
        continue;
      file = g_file_new_for_path (arrival->path);
      g_list_store_append (files, file);
    }
  if (g_list_model_get_n_items (G_LIST_MODEL (files)) == 0
      || !wm_inspection_add_files (self, G_LIST_MODEL (files)))
    return;
  /* The rest of a burst goes with its sharpest; it stays in the folder. */
  for (guint i = 0; i < ready->len; i++)
    {
      WmArrival *arrival = g_ptr_array_index (ready, i);

      if (arrival->chosen || arrival->group_size > 1)
        wm_arrivals_put_aside (self->arrivals, arrival, arrival->chosen);
    }
  wm_arrivals_tell (self->arrivals);
}

static void
on_aside (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmInspectionPage *self = user_data;
  g_autoptr (GPtrArray) ready = wm_arrivals_list (self->arrivals);

  if (ready->len == 0)
    return;
  for (guint i = 0; i < ready->len; i++)
    wm_arrivals_put_aside (self->arrivals, g_ptr_array_index (ready, i), FALSE);
  wm_arrivals_tell (self->arrivals);
  wm_session_toast (self->session, _ ("Put aside; nothing in the folder was changed. "
                                      "Ctrl+Shift+T offers them again."));
}

static void
on_back (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmInspectionPage *self = user_data;

  if (wm_arrivals_bring_back (self->arrivals) == 0)
    wm_session_toast (self->session, _ ("No new photo was put aside."));
}

static const GActionEntry entries[] = {
  { "tray-take", on_take },
  { "tray-aside", on_aside },
  { "tray-back", on_back },
};

void
wm_inspection_init_tray (WmInspectionPage *self)
{
  self->arrivals = wm_arrivals_new ();
  g_signal_connect_object (self->arrivals, "changed", G_CALLBACK (on_changed), self, 0);
  g_action_map_add_action_entries (G_ACTION_MAP (self->photo_actions), entries,
                                   G_N_ELEMENTS (entries), self);
}
