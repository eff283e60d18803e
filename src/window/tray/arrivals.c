/* arrivals.c: the watched folder, and the new photos in it that are ready
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/tray/arrivals.h"

#include <glib/gi18n.h>

/* A monitor tells of changes at once where the folder can tell; looking again tells of
 * them elsewhere, and is the clock of waiting. Seconds. */
#define LOOK_EVERY_S 1

/* More than a visit ever takes; the rest waits in the folder. */
#define MOST 300

struct _WmArrivals
{
  GObject parent_instance;

  char *folder;
  GFileMonitor *monitor;
  GCancellable *cancellable; /* of this folder */
  guint look_id;
  gboolean looking;
  gboolean looked; /* at least once: what was there is known */
  gboolean reading;
  char *problem;
  GHashTable *known; /* path -> File as it was at the beginning */
  GHashTable *list;  /* path -> WmArrival */
};

typedef struct
{
  char *path;
  gint64 size;
  gint64 changed_us;
} File;

enum
{
  CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmArrivals, wm_arrivals, G_TYPE_OBJECT)

static void
file_free (gpointer data)
{
  File *file = data;

  g_free (file->path);
  g_free (file);
}

void
wm_arrivals_tell (WmArrivals *self)
{
  g_signal_emit (self, signals[CHANGED], 0);
}

/* ---- order ------------------------------------------------------------------------ */

static int
compare_time (gconstpointer a, gconstpointer b)
{
  const WmArrival *first = *(WmArrival *const *)a, *second = *(WmArrival *const *)b;

  if (first->taken_at_us != second->taken_at_us)
    return first->taken_at_us < second->taken_at_us ? -1 : 1;
  return g_strcmp0 (first->path, second->path);
}

static int
compare_shown (gconstpointer a, gconstpointer b)
{
  const WmArrival *first = *(WmArrival *const *)a, *second = *(WmArrival *const *)b;

  if (first->group != second->group)
    return first->group < second->group ? -1 : 1;
  return (int)first->place - (int)second->place;
}

/* The sharpest of each burst comes in unless the jeweller said otherwise. */
static void
group_all (GPtrArray *ready)
{
  g_autofree WmBurstFrame *frames = g_new0 (WmBurstFrame, ready->len + 1);
  g_autofree guint *groups = g_new0 (guint, ready->len + 1);
  g_autofree guint *places = g_new0 (guint, ready->len + 1);
  g_autofree guint *sizes = g_new0 (guint, ready->len + 1);

  for (guint i = 0; i < ready->len; i++)
    {
      WmArrival *arrival = g_ptr_array_index (ready, i);

      frames[i].taken_at_us = arrival->taken_at_us;
      frames[i].likeness = &arrival->likeness;
      frames[i].focus = arrival->judgement.focus;
    }
  wm_burst_group (frames, ready->len, groups, places);
  for (guint i = 0; i < ready->len; i++)
    sizes[groups[i]]++;
  for (guint i = 0; i < ready->len; i++)
    {
      WmArrival *arrival = g_ptr_array_index (ready, i);

      arrival->group = groups[i];
      arrival->place = places[i];
      arrival->group_size = sizes[groups[i]];
      if (!arrival->touched)
        arrival->chosen = places[i] == 0;
    }
}

GPtrArray *
wm_arrivals_list (WmArrivals *self)
{
  GPtrArray *ready = g_ptr_array_new ();
  GHashTableIter iter;
  gpointer value;

  g_hash_table_iter_init (&iter, self->list);
  /* What can not be reached can not be taken in. */
  while (self->problem == NULL && g_hash_table_iter_next (&iter, NULL, &value))
    {
      WmArrival *arrival = value;

      if (arrival->state == WM_ARRIVAL_READY && !arrival->aside)
        g_ptr_array_add (ready, arrival);
    }
  g_ptr_array_sort (ready, compare_time);
  group_all (ready);
  g_ptr_array_sort (ready, compare_shown);
  return ready;
}

const WmArrival *
wm_arrivals_get_broken (WmArrivals *self)
{
  GHashTableIter iter;
  gpointer value;

  g_hash_table_iter_init (&iter, self->list);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    if (((WmArrival *)value)->state == WM_ARRIVAL_BROKEN && !((WmArrival *)value)->aside)
      return value;
  return NULL;
}

/* ---- reading ----------------------------------------------------------------------- */

static void read_next (WmArrivals *self);

static void
read_file (GTask *task, gpointer source, gpointer path, GCancellable *cancellable)
{
  GError *error = NULL;
  WmArrivalFacts *facts = wm_arrival_read (path, cancellable, &error);

  if (facts == NULL)
    g_task_return_error (task, error);
  else
    g_task_return_pointer (task, facts, (GDestroyNotify)wm_arrival_facts_free);
}

static void
on_read (GObject *source, GAsyncResult *result, gpointer unused)
{
  WmArrivals *self = WM_ARRIVALS (source);
  g_autoptr (GError) error = NULL;
  WmArrivalFacts *facts = g_task_propagate_pointer (G_TASK (result), &error);
  WmArrival *arrival;

  self->reading = FALSE;
  /* Of another folder by now. */
  if (g_task_get_cancellable (G_TASK (result)) == self->cancellable)
    {
      arrival = g_hash_table_lookup (self->list, g_task_get_task_data (G_TASK (result)));
      if (arrival != NULL)
        wm_arrival_take (arrival, facts, error, g_get_monotonic_time ());
      wm_arrivals_tell (self);
    }
  g_clear_pointer (&facts, wm_arrival_facts_free);
  read_next (self);
}

/* One after the other: the jeweller is working meanwhile. */
static void
read_next (WmArrivals *self)
{
  GHashTableIter iter;
  gpointer value;

  if (self->reading)
    return;
  g_hash_table_iter_init (&iter, self->list);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    {
      WmArrival *arrival = value;
      g_autoptr (GTask) task = NULL;

      if (arrival->state != WM_ARRIVAL_READING)
        continue;
      self->reading = TRUE;
      task = g_task_new (self, self->cancellable, on_read, NULL);
      g_task_set_check_cancellable (task, FALSE);
      g_task_set_task_data (task, g_strdup (arrival->path), g_free);
      g_task_run_in_thread (task, read_file);
      return;
    }
}

/* ---- looking ------------------------------------------------------------------------
 */

/* A name that a program gives to a file it has not finished, or hides. */
static gboolean
is_passed_over (const char *name)
{
  static const char *const endings[] = { ".part", ".tmp", ".partial", ".crdownload" };

  if (name[0] == '.')
    return TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (endings); i++)
    if (g_str_has_suffix (name, endings[i]))
      return TRUE;
  return FALSE;
}

static void
list_folder (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  g_autoptr (GFile) folder = g_file_new_for_path (data);
  g_autoptr (GPtrArray) files = g_ptr_array_new_with_free_func (file_free);
  GError *error = NULL;
  g_autoptr (GFileEnumerator) all = g_file_enumerate_children (
      folder,
      G_FILE_ATTRIBUTE_STANDARD_NAME
      "," G_FILE_ATTRIBUTE_STANDARD_TYPE "," G_FILE_ATTRIBUTE_STANDARD_SIZE
      "," G_FILE_ATTRIBUTE_TIME_MODIFIED "," G_FILE_ATTRIBUTE_TIME_MODIFIED_USEC,
      G_FILE_QUERY_INFO_NONE, cancellable, &error);
  GFileInfo *info;
  GFile *child;

  while (all != NULL
         && g_file_enumerator_iterate (all, &info, &child, cancellable, &error)
         && info != NULL)
    {
      File *file;

      if (g_file_info_get_file_type (info) != G_FILE_TYPE_REGULAR
          || is_passed_over (g_file_info_get_name (info)))
        continue;
      file = g_new0 (File, 1);
      file->path = g_file_get_path (child);
      file->size = g_file_info_get_size (info);
      file->changed_us =
          (gint64)g_file_info_get_attribute_uint64 (info, G_FILE_ATTRIBUTE_TIME_MODIFIED)
              * G_USEC_PER_SEC
          + g_file_info_get_attribute_uint32 (info, G_FILE_ATTRIBUTE_TIME_MODIFIED_USEC);
      g_ptr_array_add (files, file);
    }
  if (error != NULL)
    g_task_return_error (task, error);
  else
    g_task_return_pointer (task, g_steal_pointer (&files),
                           (GDestroyNotify)g_ptr_array_unref);
}

/* Whether it was there, as it is, before anybody looked. */
static gboolean
is_known (WmArrivals *self, const File *file)
{
  const File *known = g_hash_table_lookup (self->known, file->path);

  return known != NULL && known->size == file->size
         && known->changed_us == file->changed_us;
}

static void
look_at_file (WmArrivals *self, File *file, gint64 now_us)
{
  WmArrival *arrival = g_hash_table_lookup (self->list, file->path);

  if (arrival != NULL)
    wm_arrival_look (arrival, file->size, file->changed_us, now_us);
  else if (!is_known (self, file) && g_hash_table_size (self->list) < MOST)
    {
      arrival = wm_arrival_new (file->path, file->size, file->changed_us, now_us);
      g_hash_table_insert (self->list, arrival->path, arrival);
    }
}

/* What is no longer in the folder can not be taken in. */
static gboolean
forget_missing (WmArrivals *self, GPtrArray *files)
{
  g_autoptr (GHashTable) there = g_hash_table_new (g_str_hash, g_str_equal);
  gboolean lost = FALSE;
  GHashTableIter iter;
  gpointer path;

  for (guint i = 0; i < files->len; i++)
    g_hash_table_add (there, ((File *)g_ptr_array_index (files, i))->path);
  g_hash_table_iter_init (&iter, self->list);
  while (g_hash_table_iter_next (&iter, &path, NULL))
    if (!g_hash_table_contains (there, path))
      {
        g_hash_table_iter_remove (&iter);
        lost = TRUE;
      }
  return lost;
}

static void
take_files (WmArrivals *self, GPtrArray *files)
{
  gint64 now_us = g_get_monotonic_time ();

  if (!self->looked)
    for (guint i = 0; i < files->len; i++)
      {
        File *file = g_ptr_array_index (files, i);
        File *known = g_memdup2 (file, sizeof *file);

        known->path = g_strdup (file->path);
        g_hash_table_insert (self->known, known->path, known);
      }
  self->looked = TRUE;
  for (guint i = 0; i < files->len; i++)
    look_at_file (self, g_ptr_array_index (files, i), now_us);
  if (forget_missing (self, files))
    wm_arrivals_tell (self);
  read_next (self);
}

static void
on_listed (GObject *source, GAsyncResult *result, gpointer unused)
{
  WmArrivals *self = WM_ARRIVALS (source);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) files = g_task_propagate_pointer (G_TASK (result), &error);
  gboolean had_problem = self->problem != NULL;

  if (g_task_get_cancellable (G_TASK (result)) != self->cancellable)
    return;
  self->looking = FALSE;
  g_clear_pointer (&self->problem, g_free);
  if (files != NULL)
    take_files (self, files);
  else
    /* Translators: the first is a folder, the second what the system says */
    self->problem = g_strdup_printf (
        _ ("The watched folder “%s” can not be read: %s. New photos come in by Ctrl+O "
           "meanwhile."),
        self->folder, error->message);
  if (had_problem != (self->problem != NULL))
    wm_arrivals_tell (self);
}

static gboolean
look (gpointer data)
{
  WmArrivals *self = data;
  g_autoptr (GTask) task = NULL;

  if (self->looking)
    return G_SOURCE_CONTINUE;
  self->looking = TRUE;
  task = g_task_new (self, self->cancellable, on_listed, NULL);
  g_task_set_check_cancellable (task, FALSE);
  g_task_set_task_data (task, g_strdup (self->folder), g_free);
  g_task_run_in_thread (task, list_folder);
  return G_SOURCE_CONTINUE;
}

static void
on_monitor (GFileMonitor *monitor, GFile *file, GFile *other, GFileMonitorEvent event,
            WmArrivals *self)
{
  look (self);
}

/* ---- public --------------------------------------------------------------------------
 */

static void
stop (WmArrivals *self)
{
  g_clear_handle_id (&self->look_id, g_source_remove);
  if (self->monitor != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->monitor, self);
      g_file_monitor_cancel (self->monitor);
      g_clear_object (&self->monitor);
    }
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  g_clear_pointer (&self->problem, g_free);
  g_clear_pointer (&self->folder, g_free);
  self->looking = self->looked = FALSE;
}

void
wm_arrivals_set_folder (WmArrivals *self, const char *folder)
{
  g_autoptr (GFile) file = NULL;

  if (folder != NULL && folder[0] == '\0')
    folder = NULL;
  if (g_strcmp0 (folder, self->folder) == 0)
    return;
  stop (self);
  g_hash_table_remove_all (self->known);
  g_hash_table_remove_all (self->list);
  self->folder = g_strdup (folder);
  if (folder != NULL)
    {
      self->cancellable = g_cancellable_new ();
      file = g_file_new_for_path (folder);
      self->monitor = g_file_monitor_directory (file, G_FILE_MONITOR_NONE, NULL, NULL);
      if (self->monitor != NULL)
        g_signal_connect (self->monitor, "changed", G_CALLBACK (on_monitor), self);
      self->look_id = g_timeout_add_seconds (LOOK_EVERY_S, look, self);
      look (self);
    }
  wm_arrivals_tell (self);
}

const char *
wm_arrivals_get_folder (WmArrivals *self)
{
  return self->folder;
}

const char *
wm_arrivals_get_problem (WmArrivals *self)
{
  return self->problem;
}

void
wm_arrivals_put_aside (WmArrivals *self, WmArrival *arrival, gboolean taken)
{
  arrival->aside = TRUE;
  arrival->taken = taken;
}

guint
wm_arrivals_bring_back (WmArrivals *self)
{
  GHashTableIter iter;
  gpointer value;
  guint n = 0;

  g_hash_table_iter_init (&iter, self->list);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    {
      WmArrival *arrival = value;

      if (!arrival->aside || arrival->taken)
        continue;
      arrival->aside = FALSE;
      n++;
    }
  wm_arrivals_tell (self);
  return n;
}

static void
wm_arrivals_dispose (GObject *object)
{
  WmArrivals *self = WM_ARRIVALS (object);

  stop (self);
  g_clear_pointer (&self->known, g_hash_table_unref);
  g_clear_pointer (&self->list, g_hash_table_unref);
  G_OBJECT_CLASS (wm_arrivals_parent_class)->dispose (object);
}

static void
wm_arrivals_class_init (WmArrivalsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = wm_arrivals_dispose;
  signals[CHANGED] = g_signal_new ("changed", WM_TYPE_ARRIVALS, G_SIGNAL_RUN_LAST, 0,
                                   NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
wm_arrivals_init (WmArrivals *self)
{
  self->known = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, file_free);
  self->list = g_hash_table_new_full (g_str_hash, g_str_equal, NULL,
                                      (GDestroyNotify)wm_arrival_free);
}

WmArrivals *
wm_arrivals_new (void)
{
  return g_object_new (WM_TYPE_ARRIVALS, NULL);
}
