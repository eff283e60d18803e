/* bench-print.c: the heat plan and the quote to the printer
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/bench-work/bench-print.h"

#include <glib/gi18n.h>

#include "report/quote-paper.h"
#include "report/report.h"
#include "window/bench-work/plan-words.h"

/* ---- the plan's rows --------------------------------------------------------------- */

static void
add_line (WmRowPaper *paper, const char *title, char *text)
{
  g_autofree char *line = g_strdup_printf ("%s: %s", title, text);

  wm_row_paper_line (paper, FALSE, WM_SEVERITY_NOT_LOOKED_AT, 0, line, NULL);
  g_free (text);
}

static void
add_step (WmRowPaper *paper, const WmBenchPlan *plan, const WmPlanStep *step)
{
  g_autofree char *title = wm_plan_step_title (step);
  g_autofree char *head = g_strdup_printf ("%d. %s", step->number, title);
  g_autofree char *how = wm_plan_step_how (step);
  g_autofree char *heat = wm_plan_step_heat (step);
  gboolean bad;

  wm_row_paper_line (paper, TRUE, (WmSeverity)step->check->severity,
                     step->check->number != WM_UNKNOWN ? (int)step->check->number : 0,
                     head, NULL);
  wm_row_paper_line (paper, FALSE, WM_SEVERITY_NOT_LOOKED_AT, 0, how, NULL);
  if (*heat != '\0')
    wm_row_paper_line (paper, FALSE, WM_SEVERITY_NOT_LOOKED_AT, 0, heat, NULL);
  add_line (paper, _ ("to the metal"), wm_plan_metal_margin (step, &bad));
  add_line (paper, _ ("to the nearest joint"), wm_plan_joint_margin (plan, step, &bad));
  add_line (paper, _ ("to the nearest stone"), wm_plan_stone_margin (step, &bad));
}

static void
add_list (WmRowPaper *paper, const char *title, WmTextStyle style, GPtrArray *lines)
{
  if (lines->len > 0)
    wm_row_paper_heading (paper, title);
  for (guint i = 0; i < lines->len; i++)
    wm_row_paper_text (paper, style, lines->pdata[i]);
}

static WmRowPaper *
make_plan (WmVisitData *data, WmLanguage *language, WmPaper size)
{
  g_autoptr (WmBenchPlan) plan =
      wm_bench_plan_new (data->trade, data->piece, data->stones, data->checks,
                         data->measurements, data->remedies);
  WmRowPaper *paper = wm_row_paper_new (data, language, size);
  g_autofree char *why = wm_plan_refusal (plan);
  g_autoptr (GPtrArray) notes = NULL, cautions = NULL, sources = NULL;

  wm_row_paper_title (paper, _ ("Heat plan"),
                      _ ("Hottest joint first. Every margin is the worst case: the whole "
                         "piece as hot as the joint."));
  if (plan->state != WM_PLAN_READY)
    {
      wm_row_paper_notice (paper, _ ("Without a metal of the tables nothing can be said "
                                     "about heat."));
      return paper;
    }
  if (why != NULL)
    {
      g_autofree char *text = g_strdup_printf (
          _ ("This plan can not be made safe as it is, because:\n%s"), why);

      wm_row_paper_notice (paper, text);
    }
  for (guint i = 0; i < plan->steps->len; i++)
    add_step (paper, plan, plan->steps->pdata[i]);
  notes = wm_plan_notes (plan);
  cautions = wm_plan_cautions (plan);
  sources = wm_plan_sources (plan);
  add_list (paper, _ ("What to look out for"), WM_TEXT_BODY, notes);
  add_list (paper, _ ("Cautions"), WM_TEXT_BODY, cautions);
  add_list (paper, _ ("Where the numbers come from"), WM_TEXT_SMALL, sources);
  return paper;
}

static WmRowPaper *
make_quote (WmArchive *archive, WmVisitData *data, WmPaper size, GError **error)
{
  g_autoptr (WmVisitQuote) quote = wm_quote_load (archive, data, error);
  g_autoptr (WmLanguage) language =
      wm_language_new (data->owner != NULL ? data->owner->language : NULL);
  g_autofree char *currency = wm_quote_currency (archive, data->piece);

  return quote != NULL ? wm_quote_paper_new (data, quote, currency, language, size,
                                             g_get_real_time () / G_USEC_PER_SEC)
                       : NULL;
}

/* ---- printing ---------------------------------------------------------------------- */

static void
on_draw_page (GtkPrintOperation *operation, GtkPrintContext *context, int page,
              gpointer paper)
{
  wm_row_paper_draw_page (paper, (guint)page,
                          gtk_print_context_get_cairo_context (context));
}

static void
on_printed (GtkPrintOperation *operation, GtkPrintOperationResult result,
            WmSession *session)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;

  if (result != GTK_PRINT_OPERATION_RESULT_ERROR)
    return;
  gtk_print_operation_get_error (operation, &error);
  text =
      g_strdup_printf (_ ("It was not printed. %s"), error == NULL ? "" : error->message);
  wm_session_toast (session, text);
}

static void
print_paper (GtkWindow *parent, WmSession *session, WmRowPaper *paper, WmPaper size,
             const char *name)
{
  g_autoptr (GtkPrintOperation) operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = gtk_page_setup_new ();
  GtkPaperSize *paper_size = gtk_paper_size_new (
      size == WM_PAPER_LETTER ? GTK_PAPER_NAME_LETTER : GTK_PAPER_NAME_A4);

  gtk_page_setup_set_paper_size (setup, paper_size);
  gtk_paper_size_free (paper_size);
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_n_pages (operation, (int)wm_row_paper_get_n_pages (paper));
  gtk_print_operation_set_job_name (operation, name);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_allow_async (operation, TRUE);
  g_object_set_data_full (G_OBJECT (operation), "paper", paper,
                          (GDestroyNotify)wm_row_paper_free);
  g_signal_connect (operation, "draw-page", G_CALLBACK (on_draw_page), paper);
  g_signal_connect_object (operation, "done", G_CALLBACK (on_printed), session, 0);
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, parent,
                           NULL);
}

static void
print_visit (GtkWindow *parent, WmSession *session, gboolean is_quote)
{
  WmArchive *archive = wm_session_get_archive (session);
  const WmId *visit_id = wm_session_get_visit_id (session);
  WmPaper size = wm_report_get_paper (archive);
  g_autoptr (WmLanguage) language = wm_language_new (g_get_language_names ()[0]);
  g_autoptr (WmVisitData) data = NULL;
  g_autoptr (GError) error = NULL;
  WmRowPaper *paper = NULL;

  if (visit_id == NULL)
    return;
  data = wm_visit_data_load (archive, wm_session_get_trade (session), visit_id, &error);
  if (data != NULL)
    paper = is_quote ? make_quote (archive, data, size, &error)
                     : make_plan (data, language, size);
  if (paper == NULL)
    {
      wm_session_toast_error (session, error);
      return;
    }
  print_paper (parent, session, paper, size, is_quote ? _ ("Quote") : _ ("Heat plan"));
}

void
wm_bench_print_plan (GtkWindow *parent, WmSession *session)
{
  print_visit (parent, session, FALSE);
}

void
wm_bench_print_quote (GtkWindow *parent, WmSession *session)
{
  print_visit (parent, session, TRUE);
}
