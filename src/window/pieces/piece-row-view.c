/* piece-row-view.c: one line of the list of pieces on the screen
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/pieces/piece-row-view.h"

#include <glib/gi18n.h>

#include "photo/mark-look.h"
#include "window/glyph.h"
#include "window/resource.h"
#include "window/thumbnail-view.h"
#include "window/labels.h"
#include "window/template.h"

struct _WmPieceRowView
{
  GtkWidget parent_instance;

  GtkWidget *head;
  GtkLabel *title;
  GtkLabel *count;
  GtkWidget *body;
  WmThumbnailView *thumbnail;
  GtkLabel *number;
  GtkLabel *owner;
  GtkLabel *kind;
  GtkLabel *word;
  WmGlyph *glyph;
  GtkLabel *status;

  WmSession *session;
  WmPiecesItem *item;
};

G_DEFINE_FINAL_TYPE (WmPieceRowView, wm_piece_row_view, GTK_TYPE_WIDGET)

static char *
describe_on_bench (WmPieceRow *row)
{
  g_autofree char *day = NULL;

  if (row->promised_on != NULL)
    {
      day = wm_label_short_date (row->promised_on);
      return g_strdup_printf (_ ("promised for %s"), day);
    }
  day = wm_label_short_day (row->taken_in_at_s);
  return g_strdup_printf (_ ("in since %s"), day);
}

char *
wm_piece_row_describe_status (WmPieceRow *row)
{
  g_autofree char *day = NULL;

  if (row->on_bench)
    return g_strcmp0 (row->moment, WM_MOMENT_HAND_BACK) == 0
               ? g_strdup (_ ("to hand back"))
               : describe_on_bench (row);
  if (row->next_check_on != NULL)
    {
      day = wm_label_short_date (row->next_check_on);
      return g_strdup_printf (_ ("due %s"), day);
    }
  if (row->handed_back_at_s != WM_UNKNOWN)
    {
      day = wm_label_short_day (row->handed_back_at_s);
      return g_strdup_printf (_ ("handed back %s"), day);
    }
  return g_strdup ("");
}

static void
show_row (WmPieceRowView *self, WmPieceRow *row)
{
  g_autofree char *kind = NULL, *status = NULL, *spoken = NULL;

  gtk_widget_set_opacity (self->body, row == NULL ? 0.0 : 1.0);
  if (row == NULL)
    {
      wm_thumbnail_view_set_photo (self->thumbnail,
                                   wm_session_get_archive (self->session), NULL, NULL);
      return;
    }

  kind = wm_label_type (self->session, row->type);
  status = wm_piece_row_describe_status (row);
  gtk_label_set_label (self->number, row->number);
  gtk_label_set_label (self->owner,
                       row->owner_name == NULL ? _ ("no owner yet") : row->owner_name);
  gtk_label_set_label (self->kind, kind);
  gtk_label_set_label (self->word, wm_severity_word (row->severity));
  wm_glyph_set_severity (self->glyph, row->severity);
  gtk_label_set_label (self->status, status);
  wm_thumbnail_view_set_icon (self->thumbnail,
                              wm_label_type_icon (self->session, row->type));
  wm_thumbnail_view_set_photo (self->thumbnail, wm_session_get_archive (self->session),
                               row->photo_sha256, row->photo_format);

  spoken = g_strdup_printf ("%s, %s, %s, %s, %s", row->number,
                            gtk_label_get_label (self->owner), kind,
                            wm_severity_word (row->severity), status);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  spoken, -1);
}

static void
on_row_read (WmPiecesItem *item, GParamSpec *pspec, WmPieceRowView *self)
{
  show_row (self, wm_pieces_item_get_row (item));
}

static void
wm_piece_row_view_dispose (GObject *object)
{
  WmPieceRowView *self = WM_PIECE_ROW_VIEW (object);

  if (self->item != NULL)
    g_signal_handlers_disconnect_by_data (self->item, self);
  g_clear_object (&self->item);
  g_clear_object (&self->session);
  wm_template_dispose (GTK_WIDGET (self), WM_TYPE_PIECE_ROW_VIEW);

  G_OBJECT_CLASS (wm_piece_row_view_parent_class)->dispose (object);
}

static void
wm_piece_row_view_class_init (WmPieceRowViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_piece_row_view_dispose;

  g_type_ensure (WM_TYPE_GLYPH);
  g_type_ensure (WM_TYPE_THUMBNAIL_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "piece-row-view.ui");
  gtk_widget_class_bind_template_child (widget_class, WmPieceRowView, head);
  gtk_widget_class_bind_template_child (widget_class, WmPieceRowView, title);
  gtk_widget_class_bind_template_child (widget_class, WmPieceRowView, count);
  gtk_widget_class_bind_template_child (widget_class, WmPieceRowView, body);
  gtk_widget_class_bind_template_child (widget_class, WmPieceRowView, thumbnail);
  gtk_widget_class_bind_template_child (widget_class, WmPieceRowView, number);
  gtk_widget_class_bind_template_child (widget_class, WmPieceRowView, owner);
  gtk_widget_class_bind_template_child (widget_class, WmPieceRowView, kind);
  gtk_widget_class_bind_template_child (widget_class, WmPieceRowView, word);
  gtk_widget_class_bind_template_child (widget_class, WmPieceRowView, glyph);
  gtk_widget_class_bind_template_child (widget_class, WmPieceRowView, status);
}

static void
wm_piece_row_view_init (WmPieceRowView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  wm_thumbnail_view_set_size (self->thumbnail, 80, 60);
  wm_glyph_set_radius (self->glyph, WM_MARK_R_CHIP);
}

GtkWidget *
wm_piece_row_view_new (WmSession *session)
{
  WmPieceRowView *self = g_object_new (WM_TYPE_PIECE_ROW_VIEW, NULL);

  self->session = g_object_ref (session);
  return GTK_WIDGET (self);
}

void
wm_piece_row_view_set_item (WmPieceRowView *self, WmPiecesItem *item)
{
  gboolean head;

  if (self->item != NULL)
    g_signal_handlers_disconnect_by_data (self->item, self);
  g_set_object (&self->item, item);
  if (item == NULL)
    return;

  head = wm_pieces_item_is_head (item);
  gtk_widget_set_visible (self->head, head);
  gtk_widget_set_visible (self->body, !head);
  if (head)
    {
      gtk_label_set_label (self->title, wm_pieces_item_get_title (item));
      gtk_label_set_label (self->count, wm_pieces_item_get_count (item));
      return;
    }
  g_signal_connect (item, "notify::row", G_CALLBACK (on_row_read), self);
  show_row (self, wm_pieces_item_get_row (item));
}
