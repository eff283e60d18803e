/* photo-tile.c: one photo in the strip
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/photo-tile.h"

#include <glib/gi18n.h>

#include "photo/judge.h"
#include "window/photo-words.h"
#include "window/thumbnail-view.h"

struct _WmPhotoTile
{
  AdwBin parent_instance;

  WmPhoto *photo;
  GtkWidget *button;
  WmThumbnailView *thumbnail;
  GtkWidget *badge;
  GtkWidget *verdict;
};

enum
{
  CHOSEN,
  MENU,
  DROPPED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmPhotoTile, wm_photo_tile, ADW_TYPE_BIN)

static void
on_clicked (GtkButton *button, WmPhotoTile *self)
{
  /* The one that is shown stays pressed. */
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), TRUE);
  g_signal_emit (self, signals[CHOSEN], 0);
}

static void
on_secondary (GtkGestureClick *gesture, int n_press, double x, double y,
              WmPhotoTile *self)
{
  gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
  g_signal_emit (self, signals[MENU], 0);
}

static GdkContentProvider *
on_drag_prepare (GtkDragSource *source, double x, double y, WmPhotoTile *self)
{
  g_autoptr (GdkPaintable) paintable =
      gtk_widget_paintable_new (GTK_WIDGET (self->thumbnail));

  gtk_drag_source_set_icon (source, paintable, x, y);
  return gdk_content_provider_new_typed (WM_TYPE_PHOTO, self->photo);
}

static gboolean
on_drop (GtkDropTarget *target, const GValue *value, double x, double y,
         WmPhotoTile *self)
{
  g_signal_emit (self, signals[DROPPED], 0, g_value_get_object (value),
                 x > gtk_widget_get_width (GTK_WIDGET (self)) / 2.0);
  return TRUE;
}

static void
wm_photo_tile_dispose (GObject *object)
{
  g_clear_object (&WM_PHOTO_TILE (object)->photo);
  G_OBJECT_CLASS (wm_photo_tile_parent_class)->dispose (object);
}

static void
wm_photo_tile_class_init (WmPhotoTileClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = wm_photo_tile_dispose;

  signals[CHOSEN] = g_signal_new ("chosen", WM_TYPE_PHOTO_TILE, G_SIGNAL_RUN_LAST, 0,
                                  NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[MENU] = g_signal_new ("menu", WM_TYPE_PHOTO_TILE, G_SIGNAL_RUN_LAST, 0, NULL,
                                NULL, NULL, G_TYPE_NONE, 0);
  signals[DROPPED] =
      g_signal_new ("dropped", WM_TYPE_PHOTO_TILE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                    G_TYPE_NONE, 2, WM_TYPE_PHOTO, G_TYPE_BOOLEAN);
}

static void
add_controllers (WmPhotoTile *self)
{
  GtkGesture *secondary = gtk_gesture_click_new ();
  GtkDragSource *source = gtk_drag_source_new ();
  GtkDropTarget *target = gtk_drop_target_new (WM_TYPE_PHOTO, GDK_ACTION_MOVE);

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (secondary), GDK_BUTTON_SECONDARY);
  g_signal_connect (secondary, "pressed", G_CALLBACK (on_secondary), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (secondary));
  gtk_drag_source_set_actions (source, GDK_ACTION_MOVE);
  g_signal_connect (source, "prepare", G_CALLBACK (on_drag_prepare), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (source));
  g_signal_connect (target, "drop", G_CALLBACK (on_drop), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (target));
}

static void
wm_photo_tile_init (WmPhotoTile *self)
{
  GtkWidget *overlay = gtk_overlay_new ();

  self->thumbnail =
      WM_THUMBNAIL_VIEW (wm_thumbnail_view_new (WM_TILE_WIDTH, WM_TILE_HEIGHT));
  self->badge = gtk_label_new (NULL);
  gtk_widget_set_halign (self->badge, GTK_ALIGN_END);
  gtk_widget_set_valign (self->badge, GTK_ALIGN_START);
  gtk_widget_add_css_class (self->badge, "badge");
  self->verdict = gtk_label_new (NULL);
  gtk_widget_set_halign (self->verdict, GTK_ALIGN_START);
  gtk_widget_set_valign (self->verdict, GTK_ALIGN_END);
  gtk_widget_add_css_class (self->verdict, "badge");
  gtk_overlay_set_child (GTK_OVERLAY (overlay), GTK_WIDGET (self->thumbnail));
  gtk_overlay_add_overlay (GTK_OVERLAY (overlay), self->badge);
  gtk_overlay_add_overlay (GTK_OVERLAY (overlay), self->verdict);
  self->button = gtk_toggle_button_new ();
  gtk_button_set_child (GTK_BUTTON (self->button), overlay);
  gtk_widget_add_css_class (self->button, "flat");
  gtk_widget_add_css_class (self->button, "photo-tile");
  gtk_widget_set_valign (self->button, GTK_ALIGN_CENTER);
  g_signal_connect (self->button, "clicked", G_CALLBACK (on_clicked), self);
  adw_bin_set_child (ADW_BIN (self), self->button);
  add_controllers (self);
}

static void
show_verdict (WmPhotoTile *self)
{
  gboolean retake =
      g_strcmp0 (self->photo->verdict, wm_verdict_code (WM_VERDICT_RETAKE)) == 0;

  gtk_label_set_text (GTK_LABEL (self->verdict), _ ("take again"));
  gtk_widget_set_visible (self->verdict, retake);
}

WmPhotoTile *
wm_photo_tile_new (WmArchive *archive, WmPhoto *photo, const char *title, guint n_marks)
{
  WmPhotoTile *self = g_object_new (WM_TYPE_PHOTO_TILE, NULL);
  g_autofree char *marks =
      g_strdup_printf (ngettext ("%u mark", "%u marks", n_marks), n_marks);
  g_autofree char *verdict = wm_photo_verdict_words (photo);
  g_autofree char *name =
      g_strdup_printf ("%s, %s%s%s", title, marks, verdict != NULL ? ", " : "",
                       verdict != NULL ? verdict : "");
  g_autofree char *figure = g_strdup_printf ("%u", n_marks);

  self->photo = g_object_ref (photo);
  wm_thumbnail_view_set_photo (self->thumbnail, archive, photo->sha256, photo->format);
  gtk_label_set_text (GTK_LABEL (self->badge), figure);
  gtk_widget_set_visible (self->badge, n_marks > 0);
  show_verdict (self);
  gtk_widget_set_tooltip_text (self->button, name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->button),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  return self;
}

WmPhoto *
wm_photo_tile_get_photo (WmPhotoTile *self)
{
  return self->photo;
}

void
wm_photo_tile_set_room (WmPhotoTile *self, WmRoom room)
{
  gboolean narrow = room == WM_ROOM_NARROW;

  wm_thumbnail_view_set_size (self->thumbnail,
                              narrow ? WM_TILE_NARROW_WIDTH : WM_TILE_WIDTH,
                              narrow ? WM_TILE_NARROW_HEIGHT : WM_TILE_HEIGHT);
  gtk_widget_set_opacity (self->badge, narrow ? 0 : 1);
  gtk_widget_set_opacity (self->verdict, narrow ? 0 : 1);
}

void
wm_photo_tile_set_current (WmPhotoTile *self, gboolean current)
{
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->button), current);
}

void
wm_photo_tile_focus (WmPhotoTile *self)
{
  gtk_widget_grab_focus (self->button);
}
