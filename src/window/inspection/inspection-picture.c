/* inspection-picture.c: the shown photo with its marks, saved or copied
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <errno.h>
#include <glib/gi18n.h>
#include <glib/gstdio.h>

#include "report/marked-picture.h"
#include "window/inspection/inspection-private.h"
#include "window/problem.h"

/* Long side of what is copied, px: a screen full. */
#define COPY_SIDE 2000

typedef struct
{
  WmSession *session; /* touched on the main thread only */
  GtkWidget *widget;  /* whose clipboard gets it; NULL: it stays a file */
  WmArchive *archive;
  WmPiece *piece;
  WmPhoto *photo;
  char *path;
  int long_side;
  gboolean grey;
} Job;

static void
job_free (gpointer data)
{
  Job *job = data;

  g_object_unref (job->session);
  g_clear_object (&job->widget);
  g_object_unref (job->archive);
  g_object_unref (job->piece);
  g_object_unref (job->photo);
  g_free (job->path);
  g_free (job);
}

/* Runs on a worker. */
static void
write_picture (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Job *job = data;
  GError *error = NULL;

  if (wm_marked_picture_write (job->archive, job->piece, job->photo, job->path,
                               job->long_side, job->grey, cancellable, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void
tell_error (Job *job, const GError *error)
{
  g_autofree char *text = NULL;

  if (error->domain == WM_ARCHIVE_ERROR)
    {
      wm_session_toast_error (job->session, error);
      return;
    }
  text = g_strdup_printf (_ ("The picture was not written. %s"), error->message);
  wm_session_toast (job->session, text);
}

static void
on_written (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Job *job = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) error = NULL;
  g_autoptr (GdkTexture) texture = NULL;

  if (!g_task_propagate_boolean (G_TASK (result), &error))
    {
      tell_error (job, error);
      return;
    }
  if (job->widget == NULL)
    {
      wm_session_toast (job->session,
                        _ ("Marked picture saved, without the place and camera that the "
                           "photo's file may tell."));
      return;
    }
  texture = gdk_texture_new_from_filename (job->path, &error);
  g_unlink (job->path);
  if (texture == NULL)
    {
      tell_error (job, error);
      return;
    }
  gdk_clipboard_set_texture (gtk_widget_get_clipboard (job->widget), texture);
  wm_session_toast (job->session, _ ("Marked picture copied."));
}

/* NULL while no photo is shown. */
static Job *
make_job (WmInspectionPage *self)
{
  WmPhoto *photo = wm_inspection_get_photo (self);
  WmPiece *piece = self->session != NULL ? wm_session_get_piece (self->session) : NULL;
  Job *job;

  if (photo == NULL || piece == NULL)
    return NULL;
  job = g_new0 (Job, 1);
  job->session = g_object_ref (self->session);
  job->archive = g_object_ref (wm_session_get_archive (self->session));
  job->piece = g_object_ref (piece);
  job->photo = g_object_ref (photo);
  return job;
}

/* Takes @job. */
static void
start (Job *job)
{
  g_autoptr (GTask) task = g_task_new (NULL, NULL, on_written, NULL);

  g_task_set_task_data (task, job, job_free);
  g_task_run_in_thread (task, write_picture);
}

static void
on_copy (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmInspectionPage *self = user_data;
  Job *job = make_job (self);
  g_autofree char *unique = g_uuid_string_random ();
  g_autofree char *file = g_strconcat (unique, ".png", NULL);
  g_autofree char *folder = NULL;

  if (job == NULL)
    return;
  folder = g_build_filename (wm_archive_get_cache_folder (job->archive), "marked", NULL);
  job->path = g_build_filename (folder, file, NULL);
  job->widget = g_object_ref (GTK_WIDGET (self));
  job->long_side = COPY_SIDE;
  if (g_mkdir_with_parents (folder, 0700) != 0)
    {
      wm_session_toast (job->session, g_strerror (errno));
      job_free (job);
      return;
    }
  start (job);
}

static void
on_response (GtkNativeDialog *dialog, int response, Job *job)
{
  GtkFileChooser *chooser = GTK_FILE_CHOOSER (dialog);
  g_autoptr (GFile) file =
      response == GTK_RESPONSE_ACCEPT ? gtk_file_chooser_get_file (chooser) : NULL;
  const char *path = file != NULL ? g_file_peek_path (file) : NULL;
  const char *size = gtk_file_chooser_get_choice (chooser, "size");
  const char *grey = gtk_file_chooser_get_choice (chooser, "grey");

  gtk_native_dialog_hide (dialog);
  if (path == NULL)
    job_free (job);
  else
    {
      job->path = g_strdup (path);
      job->long_side = size != NULL ? (int)g_ascii_strtoll (size, NULL, 10) : 0;
      job->grey = g_strcmp0 (grey, "true") == 0;
      start (job);
    }
  g_object_unref (dialog);
}

static void
on_save (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  WmInspectionPage *self = user_data;
  static const char *sizes[] = { "0", "3000", "1600", NULL };
  const char *size_words[] = { _ ("as large as the photo"), _ ("3000 pixels, for print"),
                               _ ("1600 pixels, for mail"), NULL };
  Job *job = make_job (self);
  GtkFileChooserNative *dialog;
  g_autofree char *name = NULL;

  if (job == NULL)
    return;
  dialog = gtk_file_chooser_native_new (
      _ ("Save marked picture (.png, or .jpg for mail)"),
      GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))), GTK_FILE_CHOOSER_ACTION_SAVE,
      _ ("Save"), _ ("Cancel"));
  name = g_strdup_printf ("%s.png", job->piece->number);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), name);
  gtk_file_chooser_add_choice (GTK_FILE_CHOOSER (dialog), "size", _ ("Size"), sizes,
                               size_words);
  gtk_file_chooser_add_choice (GTK_FILE_CHOOSER (dialog), "grey", _ ("In grey"), NULL,
                               NULL);
  gtk_file_chooser_set_choice (GTK_FILE_CHOOSER (dialog), "size", "0");
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  g_signal_connect (dialog, "response", G_CALLBACK (on_response), job);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

void
wm_inspection_init_picture (WmInspectionPage *self)
{
  static const GActionEntry entries[] = {
    { "save-picture", on_save },
    { "copy-picture", on_copy },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self->photo_actions), entries,
                                   G_N_ELEMENTS (entries), self);
}
