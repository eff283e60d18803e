/* open-problem.c: what is shown when the archive can not be opened
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/open-problem.h"

#include <glib/gi18n.h>

#include "window/problem.h"
#include "window/resource.h"

struct _WmOpenProblem
{
  AdwApplicationWindow parent_instance;

  AdwStatusPage *status;
  GtkLabel *folder;
  GtkWidget *retry;
  GtkWidget *look;
};

enum
{
  RETRY,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmOpenProblem, wm_open_problem, ADW_TYPE_APPLICATION_WINDOW)

static void
retry_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  g_signal_emit (widget, signals[RETRY], 0, WM_ARCHIVE_CREATE);
}

static void
look_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  g_signal_emit (widget, signals[RETRY], 0, WM_ARCHIVE_LOOK);
}

static void
wm_open_problem_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), WM_TYPE_OPEN_PROBLEM);

  G_OBJECT_CLASS (wm_open_problem_parent_class)->dispose (object);
}

static void
wm_open_problem_class_init (WmOpenProblemClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_open_problem_dispose;

  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "open-problem.ui");
  gtk_widget_class_bind_template_child (widget_class, WmOpenProblem, status);
  gtk_widget_class_bind_template_child (widget_class, WmOpenProblem, folder);
  gtk_widget_class_bind_template_child (widget_class, WmOpenProblem, retry);
  gtk_widget_class_bind_template_child (widget_class, WmOpenProblem, look);
  gtk_widget_class_install_action (widget_class, "problem.retry", NULL, retry_action);
  gtk_widget_class_install_action (widget_class, "problem.look", NULL, look_action);

  signals[RETRY] = g_signal_new ("retry", WM_TYPE_OPEN_PROBLEM, G_SIGNAL_RUN_LAST, 0,
                                 NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT);
}

static void
wm_open_problem_init (WmOpenProblem *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

WmOpenProblem *
wm_open_problem_new (GtkApplication *application, const char *folder, const GError *error)
{
  WmOpenProblem *self =
      g_object_new (WM_TYPE_OPEN_PROBLEM, "application", application, NULL);
  const WmProblemWords *words = wm_problem_words (error);
  g_autofree char *description =
      g_strdup_printf ("%s\n\n%s", _ (words->sentence), _ (words->next_step));

  adw_status_page_set_icon_name (self->status, words->icon_name);
  adw_status_page_set_title (self->status, _ (words->title));
  adw_status_page_set_description (self->status, description);
  gtk_label_set_label (self->folder, folder);
  gtk_widget_set_visible (self->retry, words->can_retry);
  gtk_widget_set_visible (self->look, words->can_look);

  return self;
}
