/* photo-tray.c: new photos of the watched folder, offered over the strip
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/tray/photo-tray.h"

#include <glib/gi18n.h>

#include "window/action-table.h"
#include "window/photo-tile.h"
#include "window/resource.h"

struct _WmPhotoTray
{
  AdwBin parent_instance;

  GtkRevealer *revealer;
  GtkLabel *heading;
  GtkLabel *second;
  GtkScrolledWindow *scroller;
  GtkBox *tiles;
  GtkButton *take;
  GtkButton *aside;

  WmArrivals *arrivals;
  GPtrArray *shown; /* paths, to know whether anything differs */
  WmRoom room;
};

G_DEFINE_FINAL_TYPE (WmPhotoTray, wm_photo_tray, ADW_TYPE_BIN)

/* ---- a tile -------------------------------------------------------------------- */

static char *
describe (const WmArrival *arrival)
{
  g_autofree char *verdict = wm_judgement_summary (&arrival->judgement);

  if (arrival->group_size < 2)
    return g_strdup_printf ("%s, %s", arrival->name, verdict);
  if (arrival->place == 0)
    return g_strdup_printf (_ ("%s, %s, sharpest of a burst of %u"), arrival->name,
                            verdict, arrival->group_size);
  return g_strdup_printf (_ ("%s, %s, of a burst of %u"), arrival->name, verdict,
                          arrival->group_size);
}

static const char *
get_badge (const WmArrival *arrival)
{
  if (arrival->judgement.verdict == WM_VERDICT_RETAKE)
    return _ ("take again");
  if (arrival->group_size > 1 && arrival->place == 0)
    return _ ("sharpest");
  return NULL;
}

static void
show_count (WmPhotoTray *self)
{
  g_autoptr (GPtrArray) ready = wm_arrivals_list (self->arrivals);
  guint chosen = 0;
  g_autofree char *text = NULL;

  for (guint i = 0; i < ready->len; i++)
    chosen += ((WmArrival *)g_ptr_array_index (ready, i))->chosen;
  text = g_strdup_printf (ngettext ("Take in %u", "Take in %u", chosen), chosen);
  gtk_button_set_label (self->take, text);
  gtk_widget_set_sensitive (GTK_WIDGET (self->take), chosen > 0);
}

static void
on_toggled (GtkToggleButton *button, WmPhotoTray *self)
{
  const char *path = g_object_get_data (G_OBJECT (button), "path");
  g_autoptr (GPtrArray) ready = wm_arrivals_list (self->arrivals);

  for (guint i = 0; i < ready->len; i++)
    {
      WmArrival *arrival = g_ptr_array_index (ready, i);

      if (g_strcmp0 (arrival->path, path) != 0)
        continue;
      arrival->touched = TRUE;
      arrival->chosen = gtk_toggle_button_get_active (button);
    }
  show_count (self);
}

static GtkWidget *
make_picture (const WmArrival *arrival)
{
  g_autoptr (GBytes) bytes = wm_pixels_get_bytes (arrival->pixels);
  g_autoptr (GdkTexture) texture = gdk_memory_texture_new (
      arrival->pixels->width, arrival->pixels->height, GDK_MEMORY_B8G8R8A8_PREMULTIPLIED,
      bytes, arrival->pixels->stride);
  GtkWidget *picture = gtk_picture_new_for_paintable (GDK_PAINTABLE (texture));

  gtk_picture_set_content_fit (GTK_PICTURE (picture), GTK_CONTENT_FIT_COVER);
  gtk_widget_set_overflow (picture, GTK_OVERFLOW_HIDDEN);
  gtk_widget_add_css_class (picture, "thumbnail");
  return picture;
}

static GtkWidget *
make_badge (const char *text)
{
  GtkWidget *badge = gtk_label_new (text);

  gtk_widget_set_halign (badge, GTK_ALIGN_START);
  gtk_widget_set_valign (badge, GTK_ALIGN_END);
  gtk_widget_add_css_class (badge, "badge");
  return badge;
}

/* Every tile has the same tick, so that what comes in is seen without colour. */
static GtkWidget *
make_tick (GtkWidget *button)
{
  GtkWidget *tick = gtk_image_new_from_icon_name ("object-select-symbolic");

  gtk_widget_set_halign (tick, GTK_ALIGN_END);
  gtk_widget_set_valign (tick, GTK_ALIGN_START);
  gtk_widget_add_css_class (tick, "badge");
  g_object_bind_property (button, "active", tick, "visible", G_BINDING_SYNC_CREATE);
  return tick;
}

static GtkWidget *
make_tile (WmPhotoTray *self, const WmArrival *arrival)
{
  gboolean narrow = self->room == WM_ROOM_NARROW;
  GtkWidget *button = gtk_toggle_button_new ();
  GtkWidget *overlay = gtk_overlay_new ();
  GtkWidget *room = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  g_autofree char *name = describe (arrival);
  const char *badge = get_badge (arrival);

  /* The picture lies over it, or its own size would count. */
  gtk_widget_set_size_request (room, narrow ? WM_TILE_NARROW_WIDTH : WM_TILE_WIDTH,
                               narrow ? WM_TILE_NARROW_HEIGHT : WM_TILE_HEIGHT);
  gtk_overlay_set_child (GTK_OVERLAY (overlay), room);
  gtk_overlay_add_overlay (GTK_OVERLAY (overlay), make_picture (arrival));
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), arrival->chosen);
  gtk_overlay_add_overlay (GTK_OVERLAY (overlay), make_tick (button));
  if (badge != NULL && !narrow)
    gtk_overlay_add_overlay (GTK_OVERLAY (overlay), make_badge (badge));
  gtk_button_set_child (GTK_BUTTON (button), overlay);
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_add_css_class (button, "photo-tile");
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  /* A burst stands together. */
  if (arrival->place == 0)
    gtk_widget_set_margin_start (button, 12);
  gtk_widget_set_tooltip_text (button, name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, -1);
  g_object_set_data_full (G_OBJECT (button), "path", g_strdup (arrival->path), g_free);
  g_signal_connect (button, "toggled", G_CALLBACK (on_toggled), self);
  return button;
}

/* ---- the row ---------------------------------------------------------------------- */

static void
show_words (WmPhotoTray *self, GPtrArray *ready)
{
  const WmArrival *broken = wm_arrivals_get_broken (self->arrivals);
  const char *problem = wm_arrivals_get_problem (self->arrivals);
  g_autofree char *folder =
      wm_arrivals_get_folder (self->arrivals) != NULL
          ? g_filename_display_basename (wm_arrivals_get_folder (self->arrivals))
          : NULL;
  g_autofree char *heading = NULL;
  g_autofree char *second = NULL;

  if (ready->len > 0)
    {
      heading = g_strdup_printf (ngettext ("%u new photo", "%u new photos", ready->len),
                                 ready->len);
      second = broken != NULL ? g_strdup (broken->reason)
                              /* Translators: the name of a folder */
                              : g_strdup_printf (_ ("from “%s”"), folder);
    }
  else
    {
      heading = g_strdup (problem != NULL ? _ ("Watched folder") : _ ("Not whole"));
      second = g_strdup (problem != NULL  ? problem
                         : broken != NULL ? broken->reason
                                          : "");
    }
  gtk_label_set_text (self->heading, heading);
  gtk_label_set_text (self->second, second);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->second), second);
}

static gboolean
is_shown_already (WmPhotoTray *self, GPtrArray *ready)
{
  if (self->shown->len != ready->len)
    return FALSE;
  for (guint i = 0; i < ready->len; i++)
    if (g_strcmp0 (g_ptr_array_index (self->shown, i),
                   ((WmArrival *)g_ptr_array_index (ready, i))->path)
        != 0)
      return FALSE;
  return TRUE;
}

static void
fill (WmPhotoTray *self, GPtrArray *ready)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->tiles))) != NULL)
    gtk_box_remove (self->tiles, child);
  g_ptr_array_set_size (self->shown, 0);
  for (guint i = 0; i < ready->len; i++)
    {
      WmArrival *arrival = g_ptr_array_index (ready, i);

      gtk_box_append (self->tiles, make_tile (self, arrival));
      g_ptr_array_add (self->shown, g_strdup (arrival->path));
    }
}

void
wm_photo_tray_show (WmPhotoTray *self, WmArrivals *arrivals)
{
  g_autoptr (GPtrArray) ready = wm_arrivals_list (arrivals);

  g_set_object (&self->arrivals, arrivals);
  show_words (self, ready);
  if (!is_shown_already (self, ready))
    fill (self, ready);
  gtk_widget_set_visible (GTK_WIDGET (self->scroller), ready->len > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->take), ready->len > 0);
  show_count (self);
  gtk_revealer_set_reveal_child (
      self->revealer, ready->len > 0 || wm_arrivals_get_broken (arrivals) != NULL
                          || wm_arrivals_get_problem (arrivals) != NULL);
}

void
wm_photo_tray_set_room (WmPhotoTray *self, WmRoom room)
{
  if (self->room == room)
    return;
  self->room = room;
  if (self->arrivals != NULL)
    {
      g_ptr_array_set_size (self->shown, 0);
      wm_photo_tray_show (self, self->arrivals);
    }
}

static void
wm_photo_tray_dispose (GObject *object)
{
  WmPhotoTray *self = WM_PHOTO_TRAY (object);

  g_clear_object (&self->arrivals);
  g_clear_pointer (&self->shown, g_ptr_array_unref);
  adw_bin_set_child (ADW_BIN (self), NULL);
  gtk_widget_dispose_template (GTK_WIDGET (self), WM_TYPE_PHOTO_TRAY);
  G_OBJECT_CLASS (wm_photo_tray_parent_class)->dispose (object);
}

static void
wm_photo_tray_class_init (WmPhotoTrayClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_photo_tray_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "photo-tray.ui");
  gtk_widget_class_bind_template_child (widget_class, WmPhotoTray, revealer);
  gtk_widget_class_bind_template_child (widget_class, WmPhotoTray, heading);
  gtk_widget_class_bind_template_child (widget_class, WmPhotoTray, second);
  gtk_widget_class_bind_template_child (widget_class, WmPhotoTray, scroller);
  gtk_widget_class_bind_template_child (widget_class, WmPhotoTray, tiles);
  gtk_widget_class_bind_template_child (widget_class, WmPhotoTray, take);
  gtk_widget_class_bind_template_child (widget_class, WmPhotoTray, aside);
  gtk_widget_class_set_css_name (widget_class, "phototray");
}

static void
wm_photo_tray_init (WmPhotoTray *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->shown = g_ptr_array_new_with_free_func (g_free);
  self->room = WM_ROOM_NORMAL;
  wm_action_name_widget (GTK_WIDGET (self->take), "photo.tray-take");
  wm_action_name_widget (GTK_WIDGET (self->aside), "photo.tray-aside");
}
