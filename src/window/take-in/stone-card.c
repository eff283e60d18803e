/* stone-card.c: the stones of the shown piece, kind by kind
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/take-in/stone-card.h"

#include <glib/gi18n.h>

#include "window/take-in/stone-row.h"

struct _WmStoneCard
{
  GtkWidget parent_instance;

  GtkWidget *empty;
  GPtrArray *rows; /* WmStoneRow, in order */
  WmSession *session;
  gboolean focus_last;
};

G_DEFINE_FINAL_TYPE (WmStoneCard, wm_stone_card, GTK_TYPE_WIDGET)

static void
cut_rows (WmStoneCard *self, guint n)
{
  while (self->rows->len > n)
    {
      gtk_widget_unparent (self->rows->pdata[self->rows->len - 1]);
      g_ptr_array_set_size (self->rows, self->rows->len - 1);
    }
}

/* A row keeps its group while that is still there, so that typing is not disturbed. */
static gboolean
is_in_order (WmStoneCard *self, GPtrArray *groups)
{
  if (groups->len < self->rows->len)
    return FALSE;
  for (guint i = 0; i < self->rows->len; i++)
    {
      WmStoneGroup *group = wm_stone_row_get_group (self->rows->pdata[i]);

      if (!wm_id_equal (wm_record_get_id (WM_RECORD (group)),
                        wm_record_get_id (groups->pdata[i])))
        return FALSE;
    }
  return TRUE;
}

void
wm_stone_card_show (WmStoneCard *self, WmSession *session)
{
  WmPiece *piece = wm_session_get_piece (session);
  g_autoptr (GPtrArray) groups = NULL;

  g_set_object (&self->session, session);
  if (piece != NULL)
    groups = wm_archive_list (wm_session_get_archive (session), WM_KIND_STONE_GROUP,
                              "piece_id", wm_record_get_id (WM_RECORD (piece)), NULL);
  if (groups == NULL)
    groups = g_ptr_array_new ();

  if (!is_in_order (self, groups))
    cut_rows (self, 0);
  for (guint i = 0; i < groups->len; i++)
    {
      if (i == self->rows->len)
        {
          GtkWidget *row = wm_stone_row_new (session);

          gtk_widget_set_parent (row, GTK_WIDGET (self));
          g_ptr_array_add (self->rows, row);
        }
      wm_stone_row_show (self->rows->pdata[i], groups->pdata[i]);
    }
  gtk_widget_set_visible (self->empty, groups->len == 0);

  if (self->focus_last && groups->len > 0)
    gtk_widget_child_focus (self->rows->pdata[groups->len - 1], GTK_DIR_TAB_FORWARD);
  self->focus_last = FALSE;
}

void
wm_stone_card_add (WmStoneCard *self)
{
  WmPiece *piece = wm_session_get_piece (self->session);
  g_autoptr (WmStoneGroup) group = wm_stone_group_new ();
  WmEdit *edit;

  if (piece == NULL)
    return;
  group->piece_id = *wm_record_get_id (WM_RECORD (piece));
  group->position = self->rows->len;
  edit = wm_session_begin (self->session, N_ ("Add stones"));
  wm_session_put (self->session, edit, group);
  self->focus_last = TRUE;
  wm_session_commit (self->session, edit);
}

void
wm_stone_card_leave (WmStoneCard *self)
{
  for (guint i = 0; i < self->rows->len; i++)
    wm_stone_row_leave (self->rows->pdata[i]);
}

static void
wm_stone_card_dispose (GObject *object)
{
  WmStoneCard *self = WM_STONE_CARD (object);

  cut_rows (self, 0);
  g_clear_pointer (&self->empty, gtk_widget_unparent);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (wm_stone_card_parent_class)->dispose (object);
}

static void
wm_stone_card_finalize (GObject *object)
{
  g_ptr_array_unref (WM_STONE_CARD (object)->rows);

  G_OBJECT_CLASS (wm_stone_card_parent_class)->finalize (object);
}

static void
wm_stone_card_class_init (WmStoneCardClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = wm_stone_card_dispose;
  G_OBJECT_CLASS (klass)->finalize = wm_stone_card_finalize;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass),
                                            GTK_TYPE_BOX_LAYOUT);
}

static void
wm_stone_card_init (WmStoneCard *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 12);
  self->rows = g_ptr_array_new ();
  self->empty = gtk_label_new (_ ("No stones entered."));
  gtk_label_set_xalign (GTK_LABEL (self->empty), 0);
  gtk_widget_add_css_class (self->empty, "empty-line");
  gtk_widget_set_parent (self->empty, GTK_WIDGET (self));
}
