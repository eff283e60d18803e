/* photo-import.c: photos coming in, in the background
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/photo-import.h"

#include <adwaita.h>
#include <glib/gi18n.h>
#include <glib/gstdio.h>

#include "photo/photo-error.h"
#include "photo/probe.h"
#include "report/take-photo.h"
#include "window/problem.h"

struct _WmPhotoImport
{
  GObject parent_instance;

  WmArchive *archive;
  WmId visit_id;
  char *moment, *view; /* of what is added next */
  GCancellable *cancellable;
  GQueue waiting; /* Job */
  gboolean is_running;
  guint n_done, n_total;
  char *current; /* name of the file under way */
  GPtrArray *failures;
};

/* One file on its way, handed to the worker whole. */
typedef struct
{
  WmArchive *archive;
  char *path;          /* NULL: a picture to be written first */
  GdkTexture *texture; /* of the clipboard */
  char *name;
  WmId visit_id;
  char *moment, *view;
} Job;

enum
{
  PROGRESS,
  TAKEN,
  FINISHED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmPhotoImport, wm_photo_import, G_TYPE_OBJECT)

static void take_next (WmPhotoImport *self);

static void
job_free (gpointer data)
{
  Job *job = data;

  g_object_unref (job->archive);
  g_clear_object (&job->texture);
  g_free (job->path);
  g_free (job->name);
  g_free (job->moment);
  g_free (job->view);
  g_free (job);
}

static void
failure_free (gpointer data)
{
  WmImportFailure *failure = data;

  g_free (failure->name);
  g_free (failure->reason);
  g_free (failure);
}

static void
add_failure (WmPhotoImport *self, const char *name, const char *reason)
{
  WmImportFailure *failure = g_new0 (WmImportFailure, 1);

  failure->name = g_strdup (name);
  failure->reason = g_strdup (reason);
  g_ptr_array_add (self->failures, failure);
}

/* Runs on a worker: a picture of the clipboard becomes a PNG like any other file. */
static char *
write_texture (Job *job, GError **error)
{
  g_autofree char *folder =
      g_build_filename (wm_archive_get_cache_folder (job->archive), "pasted", NULL);
  g_autofree char *unique = g_uuid_string_random ();
  g_autofree char *file = g_strconcat (unique, ".png", NULL);
  g_autofree char *path = g_build_filename (folder, file, NULL);

  if (g_mkdir_with_parents (folder, 0700) != 0
      || !gdk_texture_save_to_png (job->texture, path))
    {
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_FAILED,
                           _ ("The pasted picture could not be written to the disk. "
                              "Make room and paste it again."));
      return NULL;
    }
  return g_steal_pointer (&path);
}

/* Runs on a worker. */
static void
take (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Job *job = data;
  GError *error = NULL;
  g_autofree char *written = NULL;
  WmPhoto *photo = NULL;

  if (job->path == NULL)
    written = write_texture (job, &error);
  if (job->path != NULL || written != NULL)
    photo = wm_take_photo (job->archive, job->path != NULL ? job->path : written,
                           &job->visit_id, job->moment, cancellable, &error);
  if (photo != NULL && written != NULL)
    wm_record_set_text (WM_RECORD (photo), "original-name", job->name);
  if (photo != NULL)
    wm_record_set_text (WM_RECORD (photo), "view", job->view);
  if (written != NULL)
    g_unlink (written);
  if (photo == NULL)
    g_task_return_error (task, error);
  else
    g_task_return_pointer (task, photo, g_object_unref);
}

/* The photo room's sentences name the file and say what to do; the archive's codes get
 * theirs from the table of problems. */
static char *
describe (const GError *error)
{
  if (error->domain == WM_ARCHIVE_ERROR)
    return wm_problem_line (error);
  return g_strdup (error->message);
}

static void
on_taken (GObject *source, GAsyncResult *result, gpointer user_data)
{
  WmPhotoImport *self = WM_PHOTO_IMPORT (source);
  Job *job = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) error = NULL;
  g_autoptr (WmPhoto) photo = g_task_propagate_pointer (G_TASK (result), &error);

  self->n_done++;
  if (photo != NULL)
    g_signal_emit (self, signals[TAKEN], 0, photo);
  else if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    {
      g_autofree char *reason = describe (error);

      add_failure (self, job->name, reason);
    }
  take_next (self);
}

static void
finish (WmPhotoImport *self)
{
  self->is_running = FALSE;
  g_clear_pointer (&self->current, g_free);
  g_signal_emit (self, signals[FINISHED], 0);
  self->n_done = self->n_total = 0;
  g_ptr_array_set_size (self->failures, 0);
}

static void
take_next (WmPhotoImport *self)
{
  Job *job = g_queue_pop_head (&self->waiting);
  g_autoptr (GTask) task = NULL;

  if (job == NULL)
    {
      finish (self);
      return;
    }
  self->is_running = TRUE;
  g_free (self->current);
  self->current = g_strdup (job->name);
  g_signal_emit (self, signals[PROGRESS], 0);
  task = g_task_new (self, self->cancellable, on_taken, NULL);
  g_task_set_task_data (task, job, job_free);
  g_task_run_in_thread (task, take);
}

static void
add_job (WmPhotoImport *self, Job *job)
{
  job->archive = g_object_ref (self->archive);
  job->visit_id = self->visit_id;
  job->moment = g_strdup (self->moment);
  job->view = g_steal_pointer (&self->view); /* only the first shows it */
  g_queue_push_tail (&self->waiting, job);
  self->n_total++;
}

static void
start (WmPhotoImport *self)
{
  if (self->is_running)
    g_signal_emit (self, signals[PROGRESS], 0);
  else if (self->n_total > 0)
    take_next (self);
}

static void
wm_photo_import_dispose (GObject *object)
{
  WmPhotoImport *self = WM_PHOTO_IMPORT (object);

  wm_photo_import_cancel (self);
  g_clear_object (&self->archive);
  g_clear_object (&self->cancellable);
  g_clear_pointer (&self->failures, g_ptr_array_unref);
  g_clear_pointer (&self->current, g_free);
  g_clear_pointer (&self->moment, g_free);
  g_clear_pointer (&self->view, g_free);
  G_OBJECT_CLASS (wm_photo_import_parent_class)->dispose (object);
}

static void
wm_photo_import_class_init (WmPhotoImportClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = wm_photo_import_dispose;

  signals[PROGRESS] = g_signal_new ("progress", WM_TYPE_PHOTO_IMPORT, G_SIGNAL_RUN_LAST,
                                    0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[TAKEN] = g_signal_new ("taken", WM_TYPE_PHOTO_IMPORT, G_SIGNAL_RUN_LAST, 0,
                                 NULL, NULL, NULL, G_TYPE_NONE, 1, WM_TYPE_PHOTO);
  signals[FINISHED] = g_signal_new ("finished", WM_TYPE_PHOTO_IMPORT, G_SIGNAL_RUN_LAST,
                                    0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
wm_photo_import_init (WmPhotoImport *self)
{
  g_queue_init (&self->waiting);
  self->cancellable = g_cancellable_new ();
  self->failures = g_ptr_array_new_with_free_func (failure_free);
}

WmPhotoImport *
wm_photo_import_new (WmArchive *archive)
{
  WmPhotoImport *self = g_object_new (WM_TYPE_PHOTO_IMPORT, NULL);

  self->archive = g_object_ref (archive);
  return self;
}

void
wm_photo_import_set_place (WmPhotoImport *self, const WmId *visit_id, const char *moment,
                           const char *view)
{
  self->visit_id = *visit_id;
  g_free (self->moment);
  self->moment = g_strdup (moment);
  g_free (self->view);
  self->view = g_strdup (view);
}

void
wm_photo_import_add (WmPhotoImport *self, GListModel *files)
{
  for (guint i = 0; i < g_list_model_get_n_items (files); i++)
    {
      g_autoptr (GFile) file = g_list_model_get_item (files, i);
      const char *path = g_file_peek_path (file);
      g_autofree char *uri = path == NULL ? g_file_get_uri (file) : NULL;
      g_autofree char *name = wm_photo_display_name (path != NULL ? path : uri);
      Job *job;

      if (path == NULL)
        {
          add_failure (self, name,
                       _ ("It is not on this computer. Save it here first, "
                          "then add it."));
          self->n_total++;
          self->n_done++;
          continue;
        }
      job = g_new0 (Job, 1);
      job->path = g_strdup (path);
      job->name = g_steal_pointer (&name);
      add_job (self, job);
    }
  start (self);
}

void
wm_photo_import_add_texture (WmPhotoImport *self, GdkTexture *texture)
{
  Job *job = g_new0 (Job, 1);

  job->texture = g_object_ref (texture);
  job->name = g_strdup (_ ("Pasted picture"));
  add_job (self, job);
  start (self);
}

void
wm_photo_import_cancel (WmPhotoImport *self)
{
  g_cancellable_cancel (self->cancellable);
  g_object_unref (self->cancellable);
  self->cancellable = g_cancellable_new (); /* for what is added from now on */
  g_queue_clear_full (&self->waiting, job_free);
}

gboolean
wm_photo_import_is_running (WmPhotoImport *self)
{
  return self->is_running;
}

const char *
wm_photo_import_get_progress (WmPhotoImport *self, guint *n_done, guint *n_total)
{
  *n_done = self->n_done;
  *n_total = self->n_total;
  return self->current;
}

GPtrArray *
wm_photo_import_get_failures (WmPhotoImport *self)
{
  return self->failures;
}

/* ---- telling ------------------------------------------------------------------ */

/* View px: a name over a reason of three lines, and as much as a small window has room
 * for. */
#define FAILURE_ROW 84
#define FAILURES_HEIGHT 300

static GtkWidget *
make_failure_row (const WmImportFailure *failure)
{
  GtkWidget *row = adw_action_row_new ();

  /* A file's name may hold anything, so nothing in it is markup. */
  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), failure->name);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), failure->reason);
  adw_action_row_set_subtitle_lines (ADW_ACTION_ROW (row), 0);
  gtk_widget_set_focusable (row, FALSE);
  return row;
}

void
wm_photo_import_show_failures (GtkWindow *parent, GPtrArray *failures, guint n_taken)
{
  g_autofree char *heading = g_strdup_printf (
      ngettext ("%u file was left out", "%u files were left out", failures->len),
      failures->len);
  g_autofree char *body =
      n_taken > 0
          ? g_strdup_printf (ngettext ("%u photo came in and is kept.",
                                       "%u photos came in and are kept.", n_taken),
                             n_taken)
          : g_strdup (_ ("No photo came in. Nothing else was changed."));
  GtkWidget *dialog = adw_message_dialog_new (parent, heading, body);
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *list = gtk_list_box_new ();

  gtk_list_box_set_selection_mode (GTK_LIST_BOX (list), GTK_SELECTION_NONE);
  gtk_widget_add_css_class (list, "boxed-list");
  gtk_accessible_update_property (GTK_ACCESSIBLE (list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Files that were left out"), -1);
  for (guint i = 0; i < failures->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (list),
                         make_failure_row (g_ptr_array_index (failures, i)));
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scroller),
                                              FAILURES_HEIGHT);
  /* The natural height is reckoned for unwrapped reasons, and would cut them. */
  gtk_scrolled_window_set_min_content_height (
      GTK_SCROLLED_WINDOW (scroller), MIN (failures->len * FAILURE_ROW, FAILURES_HEIGHT));
  gtk_widget_set_size_request (scroller, 380, -1);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), list);
  adw_message_dialog_set_extra_child (ADW_MESSAGE_DIALOG (dialog), scroller);
  adw_message_dialog_add_response (ADW_MESSAGE_DIALOG (dialog), "close", _ ("Close"));
  gtk_window_present (GTK_WINDOW (dialog));
}

/* ---- choosing ------------------------------------------------------------------ */

typedef struct
{
  WmPhotosChosen callback;
  gpointer user_data;
  GDestroyNotify destroy;
} Chooser;

static void
chooser_free (gpointer data, GClosure *closure)
{
  Chooser *chooser = data;

  if (chooser->destroy != NULL)
    chooser->destroy (chooser->user_data);
  g_free (chooser);
}

static void
on_response (GtkNativeDialog *dialog, int response, Chooser *chooser)
{
  g_autoptr (GListModel) files = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    files = gtk_file_chooser_get_files (GTK_FILE_CHOOSER (dialog));
  gtk_native_dialog_hide (dialog);
  if (files != NULL && g_list_model_get_n_items (files) > 0)
    chooser->callback (files, chooser->user_data);
  g_object_unref (dialog);
}

static GtkFileFilter *
make_filter (void)
{
  GtkFileFilter *filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, _ ("Photos"));
  for (WmPhotoFormat format = WM_PHOTO_JPEG; format <= WM_PHOTO_AVIF; format++)
    gtk_file_filter_add_mime_type (filter, wm_photo_format_mime (format));
  return filter;
}

void
wm_photo_import_choose (GtkWindow *parent, WmPhotosChosen callback, gpointer user_data,
                        GDestroyNotify destroy)
{
  GtkFileChooserNative *dialog = gtk_file_chooser_native_new (
      _ ("Add photos"), parent, GTK_FILE_CHOOSER_ACTION_OPEN, _ ("Add"), _ ("Cancel"));
  g_autoptr (GtkFileFilter) photos = make_filter ();
  g_autoptr (GtkFileFilter) all = gtk_file_filter_new ();
  Chooser *chooser = g_new0 (Chooser, 1);

  chooser->callback = callback;
  chooser->user_data = user_data;
  chooser->destroy = destroy;
  gtk_file_filter_set_name (all, _ ("All files"));
  gtk_file_filter_add_pattern (all, "*");
  gtk_file_chooser_set_select_multiple (GTK_FILE_CHOOSER (dialog), TRUE);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), photos);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), all);
  g_signal_connect_data (dialog, "response", G_CALLBACK (on_response), chooser,
                         chooser_free, 0);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}
