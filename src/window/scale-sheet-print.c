/* scale-sheet-print.c: the scale sheet to the printer
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/scale-sheet-print.h"

#include <glib/gi18n.h>

#include "report/report.h"
#include "report/scale-sheet.h"

static void
on_draw_page (GtkPrintOperation *operation, GtkPrintContext *context, int page,
              gpointer paper)
{
  g_autoptr (WmLanguage) language = wm_language_new (g_get_language_names ()[0]);

  wm_scale_sheet_draw ((WmPaper)GPOINTER_TO_INT (paper), language,
                       gtk_print_context_get_cairo_context (context));
}

static void
on_printed (GtkPrintOperation *operation, GtkPrintOperationResult result,
            WmSession *session)
{
  if (result == GTK_PRINT_OPERATION_RESULT_APPLY)
    wm_session_toast (session, _ ("Check the sheet's 100 mm with a rule before use."));
  else if (result == GTK_PRINT_OPERATION_RESULT_ERROR)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *text = NULL;

      gtk_print_operation_get_error (operation, &error);
      text = g_strdup_printf (_ ("The scale sheet was not printed. %s"),
                              error == NULL ? "" : error->message);
      wm_session_toast (session, text);
    }
}

void
wm_scale_sheet_print (GtkWindow *parent, WmSession *session)
{
  WmPaper paper = wm_report_get_paper (wm_session_get_archive (session));
  g_autoptr (GtkPrintOperation) operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = gtk_page_setup_new ();
  g_autoptr (GtkPrintSettings) settings = gtk_print_settings_new ();
  GtkPaperSize *size = gtk_paper_size_new (
      paper == WM_PAPER_LETTER ? GTK_PAPER_NAME_LETTER : GTK_PAPER_NAME_A4);

  gtk_page_setup_set_paper_size (setup, size);
  gtk_paper_size_free (size);
  /* The sheet is worth nothing at another size. */
  gtk_print_settings_set_scale (settings, 100);
  gtk_print_operation_set_print_settings (operation, settings);
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_n_pages (operation, 1);
  gtk_print_operation_set_job_name (operation, _ ("Scale sheet"));
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_allow_async (operation, TRUE);
  g_signal_connect (operation, "draw-page", G_CALLBACK (on_draw_page),
                    GINT_TO_POINTER (paper));
  g_signal_connect_object (operation, "done", G_CALLBACK (on_printed), session, 0);
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, parent,
                           NULL);
}
