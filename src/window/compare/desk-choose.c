/* desk-choose.c: which photo belongs to which
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>

#include "window/compare/desk-private.h"
#include "window/labels.h"
#include "window/photo-strip.h"
#include "window/thumbnail-view.h"

/* Of a thumbnail in the list, px. */
#define THUMB_WIDTH 66
#define THUMB_HEIGHT 44

char *
wm_desk_name_photo (WmCompareDesk *self, WmPhoto *photo)
{
  return wm_photo_title (wm_session_get_trade (self->session), photo);
}

static GtkWidget *
make_thumbnail (WmCompareDesk *self, WmPhoto *photo)
{
  GtkWidget *view = g_object_new (WM_TYPE_THUMBNAIL_VIEW, NULL);

  wm_thumbnail_view_set_size (WM_THUMBNAIL_VIEW (view), THUMB_WIDTH, THUMB_HEIGHT);
  wm_thumbnail_view_set_photo (WM_THUMBNAIL_VIEW (view),
                               wm_session_get_archive (self->session), photo->sha256,
                               photo->format);
  return view;
}

static GtkWidget *
add_row (WmCompareDesk *self, WmPhoto *before, WmPhoto *after, const char *text,
         gboolean current)
{
  GtkWidget *button = gtk_button_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 9);
  GtkWidget *label = gtk_label_new (text);

  if (before != NULL)
    gtk_box_append (GTK_BOX (box), make_thumbnail (self, before));
  gtk_box_append (GTK_BOX (box), make_thumbnail (self, after));
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_box_append (GTK_BOX (box), label);
  if (current)
    gtk_box_append (GTK_BOX (box),
                    gtk_image_new_from_icon_name ("object-select-symbolic"));
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_widget_add_css_class (button, "flat");
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  text, -1);
  gtk_box_append (self->choices, button);
  return button;
}

static void
add_heading (WmCompareDesk *self, const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_set_margin_start (label, 9);
  gtk_widget_set_margin_top (label, 9);
  gtk_widget_set_margin_bottom (label, 3);
  gtk_widget_add_css_class (label, "group-label");
  gtk_box_append (self->choices, label);
}

static void
on_pair_clicked (GtkButton *button, WmCompareDesk *self)
{
  int index = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "index"));

  gtk_popover_popdown (GTK_POPOVER (self->popover));
  if (index < (int)self->pairs->len)
    wm_desk_show_pair (self, index);
}

static void
on_photo_clicked (GtkButton *button, WmCompareDesk *self)
{
  const WmPair *pair = wm_desk_get_pair (self);
  WmPhoto *after = g_object_get_data (G_OBJECT (button), "photo");

  gtk_popover_popdown (GTK_POPOVER (self->popover));
  if (pair != NULL && after != pair->after)
    wm_pairer_choose (self->pairer, pair->before, after);
}

static void
add_pairs (WmCompareDesk *self)
{
  add_heading (self, _ ("Photos to compare"));
  for (guint i = 0; i < self->pairs->len; i++)
    {
      const WmPair *pair = &g_array_index (self->pairs, WmPair, i);
      gboolean same = wm_id_equal (&pair->before->visit_id, &pair->after->visit_id);
      g_autofree char *name = wm_desk_name_photo (self, pair->before);
      g_autofree char *text = g_strdup_printf (
          same ? _ ("%s and after") : _ ("Last visit (%s) and this"), name);
      GtkWidget *button =
          add_row (self, pair->before, pair->after, text, (int)i == self->current);

      g_object_set_data (G_OBJECT (button), "index", GINT_TO_POINTER (i));
      g_signal_connect (button, "clicked", G_CALLBACK (on_pair_clicked), self);
    }
}

/* Another photo in place of the one after. */
static void
add_photos (WmCompareDesk *self, const WmPair *pair)
{
  g_autoptr (GPtrArray) afters =
      wm_photos_of_moment (self->data->photos, pair->after->moment);
  g_autofree char *name = wm_desk_name_photo (self, pair->before);
  g_autofree char *heading = g_strdup_printf (_ ("What belongs to “%s”"), name);

  if (afters->len < 2 || !wm_desk_can_write (self) || self->by_hand)
    return;
  add_heading (self, heading);
  for (guint i = 0; i < afters->len; i++)
    {
      WmPhoto *after = g_ptr_array_index (afters, i);
      g_autofree char *text = wm_desk_name_photo (self, after);
      GtkWidget *button = add_row (self, NULL, after, text, after == pair->after);

      g_object_set_data_full (G_OBJECT (button), "photo", g_object_ref (after),
                              g_object_unref);
      g_signal_connect (button, "clicked", G_CALLBACK (on_photo_clicked), self);
    }
}

void
wm_desk_fill_choices (WmCompareDesk *self)
{
  const WmPair *pair = wm_desk_get_pair (self);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->choices))) != NULL)
    gtk_box_remove (self->choices, child);
  add_pairs (self);
  if (pair != NULL)
    add_photos (self, pair);
}
