/* diary-page.c: who should come back in the next twelve weeks
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/diary/diary-page.h"

#include <adwaita.h>
#include <glib/gi18n.h>

#include "photo/mark-look.h"
#include "window/diary/diary-rule.h"
#include "window/glyph.h"
#include "window/labels.h"
#include "window/pieces/pieces-model.h"
#include "window/resource.h"
#include "window/template.h"

/* More rows than a shop has checks in twelve weeks; the count above says if there are
 * more still. */
#define MAX_ROWS 300

struct _WmDiaryPage
{
  GtkWidget parent_instance;

  GtkLabel *summary;
  WmDiaryRule *rule;
  GtkBox *months;

  WmSession *session;
};

G_DEFINE_FINAL_TYPE (WmDiaryPage, wm_diary_page, GTK_TYPE_WIDGET)

static int
compare_due (gconstpointer a, gconstpointer b)
{
  const WmPieceRow *left = *(WmPieceRow *const *)a, *right = *(WmPieceRow *const *)b;

  return g_strcmp0 (left->next_check_on, right->next_check_on);
}

static int
count_days (const char *date)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  GDate today, due;
  int year, month, day;

  g_date_clear (&today, 1);
  g_date_clear (&due, 1);
  if (date == NULL || sscanf (date, "%4d-%2d-%2d", &year, &month, &day) != 3
      || !g_date_valid_dmy (day, month, year))
    return 0;
  g_date_set_dmy (&today, g_date_time_get_day_of_month (now), g_date_time_get_month (now),
                  g_date_time_get_year (now));
  g_date_set_dmy (&due, day, month, year);
  return g_date_days_between (&today, &due);
}

/* The sentence of the visit that set the date. */
static char *
find_reason (WmDiaryPage *self, WmPieceRow *row)
{
  g_autoptr (GPtrArray) visits =
      wm_archive_list (wm_session_get_archive (self->session), WM_KIND_VISIT, "piece_id",
                       &row->piece_id, NULL);

  for (guint i = visits == NULL ? 0 : visits->len; i > 0; i--)
    {
      WmVisit *visit = visits->pdata[i - 1];

      if (g_strcmp0 (visit->next_check_on, row->next_check_on) == 0)
        return g_strdup (visit->next_check_reason);
    }
  return NULL;
}

static void
on_line_activated (GtkListBox *list, GtkListBoxRow *line, WmDiaryPage *self)
{
  WmPieceRow *row = g_object_get_data (G_OBJECT (line), "row");

  wm_session_open_piece (self->session, &row->piece_id, NULL);
}

static GtkWidget *
make_name (WmDiaryPage *self, WmPieceRow *row)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *owner =
      gtk_label_new (row->owner_name == NULL ? row->number : row->owner_name);
  g_autofree char *kind = wm_label_type (self->session, row->type);
  g_autofree char *text =
      g_strdup_printf ("%s  ·  %s", kind, wm_severity_word (row->severity));
  GtkWidget *second = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (owner), 0);
  gtk_label_set_ellipsize (GTK_LABEL (owner), PANGO_ELLIPSIZE_END);
  /* The same for every line, so that the reasons stand under one another. */
  gtk_widget_set_size_request (box, 210, -1);
  gtk_widget_add_css_class (owner, "finding");
  gtk_widget_add_css_class (owner, "row-title");
  gtk_label_set_xalign (GTK_LABEL (second), 0);
  gtk_label_set_ellipsize (GTK_LABEL (second), PANGO_ELLIPSIZE_END);
  gtk_label_set_max_width_chars (GTK_LABEL (owner), 1);
  gtk_label_set_max_width_chars (GTK_LABEL (second), 1);
  gtk_widget_add_css_class (second, "second-line");
  gtk_box_append (GTK_BOX (box), owner);
  gtk_box_append (GTK_BOX (box), second);
  return box;
}

static GtkWidget *
make_line (WmDiaryPage *self, WmPieceRow *row)
{
  GtkWidget *line = gtk_list_box_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 14);
  g_autofree char *day = wm_label_short_date (row->next_check_on);
  g_autofree char *reason = find_reason (self, row);
  g_autofree char *spoken = g_strdup_printf (
      "%s, %s, %s", day, row->owner_name == NULL ? row->number : row->owner_name,
      reason == NULL ? "" : reason);
  GtkWidget *date = gtk_label_new (day);
  GtkWidget *why = gtk_label_new (reason);
  gboolean late = count_days (row->next_check_on) < 0;
  GtkWidget *state = gtk_label_new (late ? _ ("overdue") : "");

  gtk_label_set_xalign (GTK_LABEL (date), 0);
  gtk_label_set_width_chars (GTK_LABEL (date), 11);
  gtk_widget_add_css_class (date, "row-title");
  gtk_widget_add_css_class (date, "finding");
  gtk_label_set_xalign (GTK_LABEL (why), 0);
  gtk_label_set_wrap (GTK_LABEL (why), TRUE);
  gtk_widget_set_hexpand (why, TRUE);
  gtk_widget_add_css_class (state, "second-line");
  gtk_box_append (GTK_BOX (box), date);
  gtk_box_append (GTK_BOX (box), wm_glyph_new (row->severity, WM_MARK_R_CHIP));
  gtk_box_append (GTK_BOX (box), make_name (self, row));
  gtk_box_append (GTK_BOX (box), why);
  gtk_box_append (GTK_BOX (box), state);
  gtk_widget_add_css_class (box, "card-line");
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (line), box);
  g_object_set_data_full (G_OBJECT (line), "row", g_object_ref (row), g_object_unref);
  gtk_accessible_update_property (GTK_ACCESSIBLE (line), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  spoken, -1);
  return line;
}

static GtkWidget *
add_month (WmDiaryPage *self, const char *name)
{
  GtkWidget *title = gtk_label_new (name);
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *list = gtk_list_box_new ();

  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_widget_add_css_class (title, "group-label");
  gtk_widget_add_css_class (title, "group-head");
  gtk_widget_add_css_class (card, "card-list");
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (list), GTK_SELECTION_NONE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, -1);
  g_signal_connect (list, "row-activated", G_CALLBACK (on_line_activated), self);
  gtk_box_append (GTK_BOX (card), list);
  gtk_box_append (self->months, title);
  gtk_box_append (self->months, card);
  return list;
}

static void
show_months (WmDiaryPage *self, GPtrArray *rows)
{
  g_autofree char *shown = NULL;
  GtkWidget *list = NULL, *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->months))) != NULL)
    gtk_box_remove (self->months, child);
  for (guint i = 0; i < rows->len; i++)
    {
      WmPieceRow *row = rows->pdata[i];
      g_autofree char *month = wm_label_month (row->next_check_on);

      if (list == NULL || g_strcmp0 (month, shown) != 0)
        {
          list = add_month (self, month);
          g_free (shown);
          shown = g_strdup (month);
        }
      gtk_list_box_append (GTK_LIST_BOX (list), make_line (self, row));
    }
}

static void
show_rule (WmDiaryPage *self, GPtrArray *rows)
{
  g_autofree int *days = g_new (int, rows->len + 1);
  g_autofree int *severities = g_new (int, rows->len + 1);

  for (guint i = 0; i < rows->len; i++)
    {
      WmPieceRow *row = rows->pdata[i];

      days[i] = count_days (row->next_check_on);
      severities[i] = row->severity;
    }
  wm_diary_rule_show (self->rule, days, severities, rows->len);
}

void
wm_diary_page_show (WmDiaryPage *self, WmSession *session)
{
  g_autofree char *due_by = wm_pieces_due_by (WM_DIARY_WEEKS * 7);
  g_autoptr (GPtrArray) rows = NULL;
  g_autofree char *summary = NULL;

  g_set_object (&self->session, session);
  rows = wm_archive_search (wm_session_get_archive (session), NULL, WM_PIECES_DUE, due_by,
                            0, MAX_ROWS, NULL);
  if (rows == NULL)
    rows = g_ptr_array_new ();
  g_ptr_array_sort (rows, compare_due);

  summary = g_strdup_printf (ngettext ("%u piece in the next twelve weeks",
                                       "%u pieces in the next twelve weeks", rows->len),
                             rows->len);
  gtk_label_set_label (self->summary,
                       rows->len > 0 ? summary
                                     : _ ("Nothing is due in the next twelve weeks."));
  show_rule (self, rows);
  show_months (self, rows);
}

static void
wm_diary_page_dispose (GObject *object)
{
  WmDiaryPage *self = WM_DIARY_PAGE (object);

  wm_template_dispose (GTK_WIDGET (self), WM_TYPE_DIARY_PAGE);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (wm_diary_page_parent_class)->dispose (object);
}

static void
wm_diary_page_class_init (WmDiaryPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_diary_page_dispose;

  g_type_ensure (WM_TYPE_DIARY_RULE);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "diary-page.ui");
  gtk_widget_class_bind_template_child (widget_class, WmDiaryPage, summary);
  gtk_widget_class_bind_template_child (widget_class, WmDiaryPage, rule);
  gtk_widget_class_bind_template_child (widget_class, WmDiaryPage, months);
}

static void
wm_diary_page_init (WmDiaryPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
