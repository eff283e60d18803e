/* report-view.c: the pages of the report as they will be printed
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/hand-back/report-view.h"

#include <glib/gi18n.h>

#include "report/report.h"
#include "window/problem.h"
#include "window/resource.h"
#include "window/template.h"

/* A little over two pixels a point: sharp at the width the page has on the screen. */
#define PX_PER_PT 2.0
#define PT_PER_MM (72.0 / 25.4)
#define PAGE_WIDTH 600
/* Edits in quick succession make the pages once. */
#define DELAY_MS 350

struct _WmReportView
{
  GtkWidget parent_instance;

  GtkWidget *waiting;
  GtkLabel *problem;
  GtkBox *pages;

  WmSession *session;
  GCancellable *cancellable;
  guint delay_id;
  WmId shown_id;
};

/* What the worker needs, and what it gives back. */
typedef struct
{
  WmArchive *archive;
  WmTrade *trade;
  WmId visit_id;
} Job;

G_DEFINE_FINAL_TYPE (WmReportView, wm_report_view, GTK_TYPE_WIDGET)

static void
free_job (gpointer data)
{
  Job *job = data;

  g_object_unref (job->archive);
  wm_trade_unref (job->trade);
  g_free (job);
}

/* Off the main thread. */
static cairo_surface_t *
draw_page (WmReport *report, guint page)
{
  double width_mm, height_mm;
  cairo_surface_t *surface;
  cairo_t *cr;

  wm_report_get_page_size_mm (report, &width_mm, &height_mm);
  surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24,
                                        (int)(width_mm * PT_PER_MM * PX_PER_PT),
                                        (int)(height_mm * PT_PER_MM * PX_PER_PT));
  cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_scale (cr, PX_PER_PT, PX_PER_PT);
  wm_report_draw_page (report, page, cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

/* Off the main thread. */
static void
make_pages (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  Job *job = task_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (WmReport) report =
      wm_report_new (job->archive, job->trade, &job->visit_id, NULL, &error);
  g_autoptr (GPtrArray) pages = NULL;

  if (report == NULL)
    {
      g_task_return_error (task, g_steal_pointer (&error));
      return;
    }

  pages = g_ptr_array_new_with_free_func ((GDestroyNotify)cairo_surface_destroy);
  wm_report_set_cancellable (report, cancellable);
  for (guint i = 0; i < wm_report_get_n_pages (report); i++)
    {
      if (g_task_return_error_if_cancelled (task))
        return;
      g_ptr_array_add (pages, draw_page (report, i));
    }
  g_task_return_pointer (task, g_steal_pointer (&pages),
                         (GDestroyNotify)g_ptr_array_unref);
}

static GtkWidget *
make_picture (cairo_surface_t *surface, guint page, guint n_pages)
{
  int width = cairo_image_surface_get_width (surface);
  int height = cairo_image_surface_get_height (surface);
  int stride = cairo_image_surface_get_stride (surface);
  g_autoptr (GBytes) bytes =
      g_bytes_new (cairo_image_surface_get_data (surface), (gsize)stride * height);
  g_autoptr (GdkTexture) texture = gdk_memory_texture_new (
      width, height, GDK_MEMORY_B8G8R8A8_PREMULTIPLIED, bytes, stride);
  GtkWidget *picture = gtk_picture_new_for_paintable (GDK_PAINTABLE (texture));
  /* Translators: a page of the report: Page 1 of 3 */
  g_autofree char *name = g_strdup_printf (_ ("Page %u of %u"), page + 1, n_pages);

  gtk_widget_set_size_request (picture, PAGE_WIDTH, PAGE_WIDTH * height / width);
  gtk_widget_set_halign (picture, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (picture, "paper");
  gtk_widget_set_tooltip_text (picture, name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (picture), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, -1);
  return picture;
}

static void
clear_pages (WmReportView *self)
{
  GtkWidget *page;

  while ((page = gtk_widget_get_first_child (GTK_WIDGET (self->pages))) != NULL)
    gtk_box_remove (self->pages, page);
}

static void
on_pages_made (GObject *source, GAsyncResult *result, gpointer user_data)
{
  WmReportView *self = WM_REPORT_VIEW (source);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) pages = g_task_propagate_pointer (G_TASK (result), &error);
  g_autofree char *line = NULL;

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) || self->session == NULL)
    return;

  gtk_widget_set_visible (self->waiting, FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self->problem), pages == NULL);
  clear_pages (self);
  if (pages == NULL)
    {
      line = wm_problem_line (error);
      gtk_label_set_label (self->problem, line);
      return;
    }
  for (guint i = 0; i < pages->len; i++)
    gtk_box_append (self->pages, make_picture (pages->pdata[i], i, pages->len));
}

static gboolean
start_making (gpointer data)
{
  WmReportView *self = data;
  const WmId *visit_id = wm_session_get_visit_id (self->session);
  g_autoptr (GTask) task = NULL;
  Job *job;

  self->delay_id = 0;
  if (visit_id == NULL || wm_session_get_trade (self->session) == NULL)
    return G_SOURCE_REMOVE;

  self->cancellable = g_cancellable_new ();
  job = g_new0 (Job, 1);
  job->archive = g_object_ref (wm_session_get_archive (self->session));
  job->trade = wm_trade_ref (wm_session_get_trade (self->session));
  job->visit_id = *visit_id;
  task = g_task_new (self, self->cancellable, on_pages_made, NULL);
  g_task_set_task_data (task, job, free_job);
  g_task_run_in_thread (task, make_pages);

  return G_SOURCE_REMOVE;
}

static void
stop_making (WmReportView *self)
{
  g_clear_handle_id (&self->delay_id, g_source_remove);
  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
}

void
wm_report_view_show (WmReportView *self, WmSession *session)
{
  const WmId *visit_id = wm_session_get_visit_id (session);

  g_set_object (&self->session, session);
  stop_making (self);
  if (visit_id == NULL)
    return;
  /* Another visit's pages must not be taken for this one's. */
  if (!wm_id_equal (&self->shown_id, visit_id))
    {
      self->shown_id = *visit_id;
      clear_pages (self);
      gtk_widget_set_visible (self->waiting, TRUE);
    }
  self->delay_id = g_timeout_add (DELAY_MS, start_making, self);
}

static void
wm_report_view_dispose (GObject *object)
{
  WmReportView *self = WM_REPORT_VIEW (object);

  stop_making (self);
  wm_template_dispose (GTK_WIDGET (self), WM_TYPE_REPORT_VIEW);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (wm_report_view_parent_class)->dispose (object);
}

static void
wm_report_view_class_init (WmReportViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_report_view_dispose;

  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "report-view.ui");
  gtk_widget_class_bind_template_child (widget_class, WmReportView, waiting);
  gtk_widget_class_bind_template_child (widget_class, WmReportView, problem);
  gtk_widget_class_bind_template_child (widget_class, WmReportView, pages);
}

static void
wm_report_view_init (WmReportView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
