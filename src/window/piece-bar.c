/* piece-bar.c: the shown piece in one line, with its visits by date
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/piece-bar.h"

#include <glib/gi18n.h>

#include "window/glyph.h"
#include "window/resource.h"
#include "window/thumbnail-view.h"
#include "window/visit-rule.h"
#include "window/labels.h"
#include "window/template.h"

#define THUMBNAIL_PX 40

struct _WmPieceBar
{
  GtkWidget parent_instance;

  WmThumbnailView *thumbnail;
  GtkBox *texts;
  GtkLabel *number;
  GtkLabel *line;
  WmVisitRule *rule;
  GtkMenuButton *visits_button;

  WmSession *session;
  GPtrArray *visits;  /* of the shown piece, oldest first */
  GArray *severities; /* int, of each visit */
  int current;
};

G_DEFINE_FINAL_TYPE (WmPieceBar, wm_piece_bar, GTK_TYPE_WIDGET)

static int
compare_visits (gconstpointer a, gconstpointer b)
{
  const WmVisit *left = *(WmVisit *const *)a, *right = *(WmVisit *const *)b;

  return (left->taken_in_at_s > right->taken_in_at_s)
         - (left->taken_in_at_s < right->taken_in_at_s);
}

/* Worst as it is now: after the work where that was looked at. */
static int
find_worst (WmArchive *archive, WmVisit *visit)
{
  g_autoptr (GPtrArray) checks = wm_archive_list (
      archive, WM_KIND_CHECK, "visit_id", wm_record_get_id (WM_RECORD (visit)), NULL);
  int worst = WM_SEVERITY_NOT_LOOKED_AT;

  for (guint i = 0; checks != NULL && i < checks->len; i++)
    {
      WmCheck *check = checks->pdata[i];
      int severity = check->after_severity != 0 ? check->after_severity : check->severity;

      if (severity != WM_SEVERITY_NOT_PRESENT)
        worst = MAX (worst, severity);
    }

  return worst;
}

static char *
find_owner (WmPieceBar *self, WmPiece *piece)
{
  g_autoptr (WmPerson) owner = NULL;

  if (!wm_id_is_none (&piece->owner_id))
    owner = wm_archive_get (wm_session_get_archive (self->session), WM_KIND_PERSON,
                            &piece->owner_id, NULL);

  return g_strdup (owner == NULL ? NULL : owner->name);
}

/* The first photo of the last visit that has one. */
static WmPhoto *
find_photo (WmPieceBar *self)
{
  for (int i = self->visits->len - 1; i >= 0; i--)
    {
      g_autoptr (GPtrArray) photos =
          wm_archive_list (wm_session_get_archive (self->session), WM_KIND_PHOTO,
                           "visit_id", wm_record_get_id (self->visits->pdata[i]), NULL);

      if (photos != NULL && photos->len > 0)
        return g_object_ref (photos->pdata[0]);
    }

  return NULL;
}

static void
show_piece (WmPieceBar *self, WmPiece *piece)
{
  g_autofree char *words = wm_label_piece (self->session, piece);
  g_autofree char *owner = find_owner (self, piece);
  g_autofree char *line = owner == NULL ? g_strdup (words)
                          : words[0] == '\0'
                              ? g_strdup (owner)
                              : g_strdup_printf ("%s  ·  %s", words, owner);
  g_autoptr (WmPhoto) photo = find_photo (self);

  gtk_label_set_label (self->number, piece->number);
  gtk_label_set_label (self->line, line);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->line), line);
  wm_thumbnail_view_set_icon (self->thumbnail,
                              wm_label_type_icon (self->session, piece->type));
  wm_thumbnail_view_set_photo (self->thumbnail, wm_session_get_archive (self->session),
                               photo == NULL ? NULL : photo->sha256,
                               photo == NULL ? NULL : photo->format);
}

static GMenuModel *
make_visits_menu (WmPieceBar *self)
{
  GMenu *menu = g_menu_new ();

  for (int i = self->visits->len - 1; i >= 0; i--)
    {
      WmVisit *visit = self->visits->pdata[i];
      g_autofree char *day = wm_label_day (visit->taken_in_at_s);
      g_autofree char *label = g_strdup_printf (
          "%s  ·  %s", day, wm_severity_word (g_array_index (self->severities, int, i)));
      g_autofree char *action = g_strdup_printf ("piece-bar.visit(%d)", i);

      g_menu_append (menu, label, action);
    }

  return G_MENU_MODEL (menu);
}

static void
show_visits (WmPieceBar *self)
{
  g_autofree char *label = NULL;
  g_autoptr (GMenuModel) menu = NULL;

  wm_visit_rule_set_visits (self->rule, self->visits, (const int *)self->severities->data,
                            self->current);
  /* Translators: which visit of how many: Visit 4 of 4 */
  label =
      g_strdup_printf (_ ("Visit %d of %d"), self->current + 1, (int)self->visits->len);
  gtk_menu_button_set_label (self->visits_button, label);
  menu = make_visits_menu (self);
  gtk_menu_button_set_menu_model (self->visits_button, menu);
}

static void
refresh (WmPieceBar *self)
{
  WmPiece *piece = wm_session_get_piece (self->session);
  const WmId *visit_id = wm_session_get_visit_id (self->session);
  WmArchive *archive = wm_session_get_archive (self->session);

  gtk_widget_set_visible (GTK_WIDGET (self), piece != NULL);
  if (piece == NULL)
    return;

  g_clear_pointer (&self->visits, g_ptr_array_unref);
  self->visits = wm_archive_list (archive, WM_KIND_VISIT, "piece_id",
                                  wm_record_get_id (WM_RECORD (piece)), NULL);
  if (self->visits == NULL)
    self->visits = g_ptr_array_new_with_free_func (g_object_unref);
  g_ptr_array_sort (self->visits, compare_visits);

  g_array_set_size (self->severities, 0);
  self->current = -1;
  for (guint i = 0; i < self->visits->len; i++)
    {
      int worst = find_worst (archive, self->visits->pdata[i]);

      g_array_append_val (self->severities, worst);
      if (visit_id != NULL
          && wm_id_equal (wm_record_get_id (self->visits->pdata[i]), visit_id))
        self->current = i;
    }

  show_piece (self, piece);
  show_visits (self);
}

static void
open_visit (WmPieceBar *self, guint index)
{
  WmVisit *visit;

  if (self->visits == NULL || index >= self->visits->len)
    return;
  visit = self->visits->pdata[index];
  wm_session_open_piece (self->session, &visit->piece_id,
                         wm_record_get_id (WM_RECORD (visit)));
}

static void
on_visit_chosen (WmVisitRule *rule, guint index, WmPieceBar *self)
{
  open_visit (self, index);
}

static void
visit_action (GtkWidget *widget, const char *name, GVariant *index)
{
  open_visit (WM_PIECE_BAR (widget), g_variant_get_int32 (index));
}

static void
on_session_moved (WmPieceBar *self)
{
  refresh (self);
}

static void
on_rows_changed (WmSession *session, const WmChange *change, WmPieceBar *self)
{
  if (wm_change_touches (change, WM_KIND_PIECE)
      || wm_change_touches (change, WM_KIND_VISIT)
      || wm_change_touches (change, WM_KIND_CHECK)
      || wm_change_touches (change, WM_KIND_PHOTO)
      || wm_change_touches (change, WM_KIND_PERSON) || change->n_rows == 0)
    refresh (self);
}

static void
wm_piece_bar_dispose (GObject *object)
{
  WmPieceBar *self = WM_PIECE_BAR (object);

  if (self->session != NULL)
    g_signal_handlers_disconnect_by_data (self->session, self);
  g_clear_object (&self->session);
  g_clear_pointer (&self->visits, g_ptr_array_unref);
  g_clear_pointer (&self->severities, g_array_unref);
  wm_template_dispose (GTK_WIDGET (self), WM_TYPE_PIECE_BAR);

  G_OBJECT_CLASS (wm_piece_bar_parent_class)->dispose (object);
}

static void
wm_piece_bar_class_init (WmPieceBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_piece_bar_dispose;

  g_type_ensure (WM_TYPE_THUMBNAIL_VIEW);
  g_type_ensure (WM_TYPE_VISIT_RULE);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "piece-bar.ui");
  gtk_widget_class_bind_template_child (widget_class, WmPieceBar, thumbnail);
  gtk_widget_class_bind_template_child (widget_class, WmPieceBar, texts);
  gtk_widget_class_bind_template_child (widget_class, WmPieceBar, number);
  gtk_widget_class_bind_template_child (widget_class, WmPieceBar, line);
  gtk_widget_class_bind_template_child (widget_class, WmPieceBar, rule);
  gtk_widget_class_bind_template_child (widget_class, WmPieceBar, visits_button);
  gtk_widget_class_bind_template_callback (widget_class, on_visit_chosen);
  gtk_widget_class_install_action (widget_class, "piece-bar.visit", "i", visit_action);
  gtk_widget_class_set_css_name (widget_class, "wm-piece-bar");
}

static void
wm_piece_bar_init (WmPieceBar *self)
{
  self->severities = g_array_new (FALSE, FALSE, sizeof (int));
  gtk_widget_init_template (GTK_WIDGET (self));
  wm_thumbnail_view_set_size (self->thumbnail, THUMBNAIL_PX, THUMBNAIL_PX);
}

void
wm_piece_bar_set_session (WmPieceBar *self, WmSession *session)
{
  self->session = g_object_ref (session);
  g_signal_connect_swapped (session, "visit-changed", G_CALLBACK (on_session_moved),
                            self);
  g_signal_connect (session, "rows-changed", G_CALLBACK (on_rows_changed), self);
  refresh (self);
}

void
wm_piece_bar_set_room (WmPieceBar *self, WmRoom room)
{
  gboolean narrow = room == WM_ROOM_NARROW;

  gtk_widget_set_visible (GTK_WIDGET (self->rule), !narrow);
  gtk_widget_set_visible (GTK_WIDGET (self->visits_button), narrow);
  gtk_widget_set_visible (GTK_WIDGET (self->thumbnail), !narrow);
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self->texts),
                                  narrow ? GTK_ORIENTATION_HORIZONTAL
                                         : GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (self->texts, narrow ? 14 : 2);
}

gboolean
wm_piece_bar_step (WmPieceBar *self, int steps)
{
  int wanted = self->current + steps;

  if (self->visits == NULL || wanted < 0 || wanted >= (int)self->visits->len)
    return FALSE;

  open_visit (self, wanted);
  return TRUE;
}
