/* report-actions.c: the report to a PDF file and to the printer
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/hand-back/report-actions.h"

#include <glib/gi18n.h>

#include "report/report.h"

/* What a worker needs; it never sees the session or a window. */
typedef struct
{
  WmSession *session; /* touched on the main thread only */
  GtkWindow *parent;
  WmArchive *archive;
  WmTrade *trade;
  WmId visit_id;
  char *path;
} Job;

static void
free_job (gpointer data)
{
  Job *job = data;

  g_object_unref (job->session);
  g_clear_object (&job->parent);
  g_object_unref (job->archive);
  wm_trade_unref (job->trade);
  g_free (job->path);
  g_free (job);
}

static Job *
make_job (GtkWindow *parent, WmSession *session)
{
  const WmId *visit_id = wm_session_get_visit_id (session);
  Job *job;

  if (visit_id == NULL || wm_session_get_trade (session) == NULL)
    return NULL;
  job = g_new0 (Job, 1);
  job->session = g_object_ref (session);
  job->parent = g_object_ref (parent);
  job->archive = g_object_ref (wm_session_get_archive (session));
  job->trade = wm_trade_ref (wm_session_get_trade (session));
  job->visit_id = *visit_id;
  return job;
}

static void
tell_error (WmSession *session, const GError *error)
{
  g_autofree char *text = NULL;

  if (error->domain == G_IO_ERROR || error->domain == G_FILE_ERROR)
    {
      /* The file's name and the system's reason are in the message. */
      text = g_strdup_printf (_ ("The report was not written. %s"), error->message);
      wm_session_toast (session, text);
    }
  else
    wm_session_toast_error (session, error);
}

/* ---- PDF ------------------------------------------------------------------------------
 */

/* Off the main thread. */
static void
write_pdf (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  Job *job = task_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (WmReport) report =
      wm_report_new (job->archive, job->trade, &job->visit_id, NULL, &error);

  if (report == NULL || !wm_report_write_pdf (report, job->path, &error))
    g_task_return_error (task, g_steal_pointer (&error));
  else
    g_task_return_boolean (task, TRUE);
}

static void
on_pdf_written (GObject *source, GAsyncResult *result, gpointer unused)
{
  Job *job = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) error = NULL;
  g_autofree char *name = NULL, *text = NULL;

  if (!g_task_propagate_boolean (G_TASK (result), &error))
    {
      tell_error (job->session, error);
      return;
    }
  name = g_filename_display_basename (job->path);
  /* Translators: a file name: Report saved as 2026-0151-Q.pdf */
  text = g_strdup_printf (_ ("Report saved as %s"), name);
  wm_session_toast (job->session, text);
}

static void
on_path_chosen (GtkNativeDialog *dialog, int response, Job *job)
{
  g_autoptr (GFile) file = NULL;
  g_autoptr (GTask) task = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  job->path = file == NULL ? NULL : g_file_get_path (file);
  g_object_unref (dialog);
  if (job->path == NULL)
    {
      free_job (job);
      return;
    }

  task = g_task_new (NULL, NULL, on_pdf_written, NULL);
  g_task_set_task_data (task, job, free_job);
  g_task_run_in_thread (task, write_pdf);
}

void
wm_report_save (GtkWindow *parent, WmSession *session)
{
  Job *job = make_job (parent, session);
  WmPiece *piece = wm_session_get_piece (session);
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *day = g_date_time_format (now, "%Y-%m-%d");
  g_autofree char *name = NULL;
  GtkFileChooserNative *chooser;

  if (job == NULL)
    return;
  name = g_strdup_printf ("%s-%s.pdf", piece->number, day);
  chooser = gtk_file_chooser_native_new (_ ("Save report as PDF"), parent,
                                         GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"), NULL);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), name);
  g_signal_connect (chooser, "response", G_CALLBACK (on_path_chosen), job);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

/* ---- printer
 * ---------------------------------------------------------------------------- */

static void
on_draw_page (GtkPrintOperation *operation, GtkPrintContext *context, int page,
              WmReport *report)
{
  wm_report_draw_page (report, page, gtk_print_context_get_cairo_context (context));
}

static void
on_printed (GtkPrintOperation *operation, GtkPrintOperationResult result,
            WmSession *session)
{
  g_autoptr (GError) error = NULL;

  if (result == GTK_PRINT_OPERATION_RESULT_ERROR)
    {
      g_autofree char *text = NULL;

      gtk_print_operation_get_error (operation, &error);
      text = g_strdup_printf (_ ("The report was not printed. %s"),
                              error == NULL ? "" : error->message);
      wm_session_toast (session, text);
    }
}

static void
set_paper (GtkPrintOperation *operation, WmReport *report)
{
  g_autoptr (GtkPageSetup) setup = gtk_page_setup_new ();
  GtkPaperSize *paper;
  double width_mm, height_mm;

  wm_report_get_page_size_mm (report, &width_mm, &height_mm);
  paper = gtk_paper_size_new_custom ("wearmark", _ ("Report"), width_mm, height_mm,
                                     GTK_UNIT_MM);
  gtk_page_setup_set_paper_size (setup, paper);
  gtk_paper_size_free (paper);
  gtk_print_operation_set_default_page_setup (operation, setup);
}

/* Off the main thread: reading the record and laying the pages out. */
static void
make_report (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  Job *job = task_data;
  g_autoptr (GError) error = NULL;
  WmReport *report =
      wm_report_new (job->archive, job->trade, &job->visit_id, NULL, &error);

  if (report == NULL)
    g_task_return_error (task, g_steal_pointer (&error));
  else
    g_task_return_pointer (task, report, (GDestroyNotify)wm_report_free);
}

static void
on_report_made (GObject *source, GAsyncResult *result, gpointer unused)
{
  Job *job = g_task_get_task_data (G_TASK (result));
  g_autoptr (GError) error = NULL;
  WmReport *report = g_task_propagate_pointer (G_TASK (result), &error);
  g_autoptr (GtkPrintOperation) operation = NULL;

  if (report == NULL)
    {
      tell_error (job->session, error);
      return;
    }
  operation = gtk_print_operation_new ();
  gtk_print_operation_set_n_pages (operation, wm_report_get_n_pages (report));
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_embed_page_setup (operation, TRUE);
  gtk_print_operation_set_allow_async (operation, TRUE);
  set_paper (operation, report);
  g_signal_connect (operation, "draw-page", G_CALLBACK (on_draw_page), report);
  g_signal_connect_object (operation, "done", G_CALLBACK (on_printed), job->session, 0);
  g_object_set_data_full (G_OBJECT (operation), "report", report,
                          (GDestroyNotify)wm_report_free);
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG,
                           job->parent, NULL);
}

void
wm_report_print (GtkWindow *parent, WmSession *session)
{
  Job *job = make_job (parent, session);
  g_autoptr (GTask) task = NULL;

  if (job == NULL)
    return;
  task = g_task_new (NULL, NULL, on_report_made, NULL);
  g_task_set_task_data (task, job, free_job);
  g_task_run_in_thread (task, make_report);
}
