/* photo-strip.c: the photos of a visit in a row: before, during, after
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/photo-strip.h"

#include <glib/gi18n.h>

#include "window/action-table.h"
#include "window/photo-popover.h"
#include "window/photo-tile.h"

static const char *const moments[] = { WM_PHOTO_BEFORE, WM_PHOTO_DURING, WM_PHOTO_AFTER };

#define N_MOMENTS G_N_ELEMENTS (moments)

struct _WmPhotoStrip
{
  AdwBin parent_instance;

  GtkWidget *scroller;
  GtkWidget *row; /* everything in it */
  GtkWidget *sections[3];
  GtkWidget *progress; /* what comes in */
  GtkLabel *progress_label;
  GtkProgressBar *progress_bar;
  WmPhotoPopover *popover;
  GPtrArray *tiles; /* WmPhotoTile, borrowed */
  WmTrade *trade;
  char *type;
  char *shown; /* what the tiles were made for */
  WmRoom room;
};

enum
{
  PHOTO_CHOSEN,
  PHOTO_MOVED,
  PHOTO_DESCRIBED,
  IMPORT_CANCELLED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmPhotoStrip, wm_photo_strip, ADW_TYPE_BIN)

const char *
wm_photo_moment_words (const char *moment)
{
  if (g_strcmp0 (moment, WM_PHOTO_DURING) == 0)
    return _ ("During");
  if (g_strcmp0 (moment, WM_PHOTO_AFTER) == 0)
    return _ ("After");
  return _ ("Before");
}

char *
wm_photo_title (WmTrade *trade, WmPhoto *photo)
{
  const WmView *view = trade != NULL ? wm_trade_find_view (trade, photo->view) : NULL;
  const char *words = view != NULL ? wm_trade_text (view->name) : photo->caption;

  const char *moment = wm_photo_moment_words (photo->moment);
  g_autofree char *title =
      words == NULL ? g_strdup (moment) : g_strdup_printf (_ ("%s, %s"), moment, words);

  if (g_strcmp0 (photo->made_from, "stack") == 0)
    return g_strdup_printf (_ ("%s, stacked"), title);
  return g_steal_pointer (&title);
}

/* ---- tiles -------------------------------------------------------------------- */

static WmPhotoTile *
find_tile (WmPhotoStrip *self, const WmId *id)
{
  for (guint i = 0; i < self->tiles->len; i++)
    {
      WmPhotoTile *tile = g_ptr_array_index (self->tiles, i);

      if (wm_id_equal (wm_record_get_id (WM_RECORD (wm_photo_tile_get_photo (tile))), id))
        return tile;
    }
  return NULL;
}

static void
on_tile_chosen (WmPhotoTile *tile, WmPhotoStrip *self)
{
  WmId id = *wm_record_get_id (WM_RECORD (wm_photo_tile_get_photo (tile)));

  g_signal_emit (self, signals[PHOTO_CHOSEN], 0, &id);
}

static void
on_tile_menu (WmPhotoTile *tile, WmPhotoStrip *self)
{
  WmId id = *wm_record_get_id (WM_RECORD (wm_photo_tile_get_photo (tile)));

  /* The popover's buttons act on the photo that is shown. */
  g_signal_emit (self, signals[PHOTO_CHOSEN], 0, &id);
  wm_photo_strip_describe (self, &id);
}

/* Another photo was dropped on @tile, on its left or right half. */
static void
on_tile_dropped (WmPhotoTile *tile, WmPhoto *dropped, gboolean behind, WmPhotoStrip *self)
{
  WmPhoto *at = wm_photo_tile_get_photo (tile);
  WmId id = *wm_record_get_id (WM_RECORD (dropped));

  if (!wm_id_equal (&id, wm_record_get_id (WM_RECORD (at))))
    g_signal_emit (self, signals[PHOTO_MOVED], 0, &id, at->moment,
                   (int)at->position + (behind ? 1 : 0));
}

static gboolean
on_section_dropped (GtkDropTarget *target, const GValue *value, double x, double y,
                    WmPhotoStrip *self)
{
  WmPhoto *photo = g_value_get_object (value);
  const char *moment = g_object_get_data (G_OBJECT (target), "moment");
  WmId id = *wm_record_get_id (WM_RECORD (photo));

  g_signal_emit (self, signals[PHOTO_MOVED], 0, &id, moment, G_MAXINT);
  return TRUE;
}

static void
add_tile (WmPhotoStrip *self, GtkWidget *section, WmArchive *archive,
          const WmStripPhoto *entry, const WmId *current)
{
  g_autofree char *title = wm_photo_title (self->trade, entry->photo);
  WmPhotoTile *tile = wm_photo_tile_new (archive, entry->photo, title, entry->n_marks);

  wm_photo_tile_set_room (tile, self->room);
  wm_photo_tile_set_current (
      tile, current != NULL
                && wm_id_equal (wm_record_get_id (WM_RECORD (entry->photo)), current));
  g_signal_connect (tile, "chosen", G_CALLBACK (on_tile_chosen), self);
  g_signal_connect (tile, "menu", G_CALLBACK (on_tile_menu), self);
  g_signal_connect (tile, "dropped", G_CALLBACK (on_tile_dropped), self);
  g_ptr_array_add (self->tiles, tile);
  gtk_box_append (GTK_BOX (section), GTK_WIDGET (tile));
}

/* ---- what is missing ------------------------------------------------------------ */

static gboolean
is_taken (const WmStripPhoto *photos, guint n_photos, const char *view)
{
  for (guint i = 0; i < n_photos; i++)
    if (g_strcmp0 (photos[i].photo->view, view) == 0
        && g_strcmp0 (photos[i].photo->moment, WM_PHOTO_BEFORE) == 0)
      return TRUE;
  return FALSE;
}

/* "6 views to take", which opens to their names. */
static void
add_missing_views (WmPhotoStrip *self, GtkWidget *section, const WmStripPhoto *photos,
                   guint n_photos)
{
  const WmPieceType *type =
      self->trade != NULL ? wm_trade_find_piece_type (self->trade, self->type) : NULL;
  g_autoptr (GMenu) menu = g_menu_new ();
  g_autofree char *text = NULL;
  GtkWidget *button, *label;
  guint n_missing = 0;

  for (guint i = 0; type != NULL && type->views[i] != NULL; i++)
    {
      const WmView *view = wm_trade_find_view (self->trade, type->views[i]);
      g_autoptr (GMenuItem) item = NULL;

      if (view == NULL || is_taken (photos, n_photos, view->key))
        continue;
      item = g_menu_item_new (wm_trade_text (view->name), NULL);
      g_menu_item_set_action_and_target (item, "photo.add-view", "s", view->key);
      g_menu_append_item (menu, item);
      n_missing++;
    }
  if (n_missing == 0)
    return;
  text = g_strdup_printf (ngettext ("%u view\nto take", "%u views\nto take", n_missing),
                          n_missing);
  label = gtk_label_new (text);
  gtk_label_set_justify (GTK_LABEL (label), GTK_JUSTIFY_CENTER);
  gtk_widget_add_css_class (label, "second-line");
  button = gtk_menu_button_new ();
  gtk_menu_button_set_child (GTK_MENU_BUTTON (button), label);
  gtk_menu_button_set_direction (GTK_MENU_BUTTON (button), GTK_ARROW_UP);
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (button), G_MENU_MODEL (menu));
  gtk_widget_set_tooltip_text (button, _ ("Standard views of this kind of piece that "
                                          "have no photo yet"));
  g_strdelimit (text, "\n", ' ');
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  text, -1);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (button, "flat");
  gtk_box_append (GTK_BOX (section), button);
}

/* ---- sections ------------------------------------------------------------------- */

static GtkWidget *
make_add_button (WmPhotoStrip *self, const char *moment, gboolean is_large)
{
  GtkWidget *button = gtk_button_new ();
  GtkWidget *icon = gtk_image_new_from_icon_name ("wm-add-photo-symbolic");
  gboolean narrow = self->room == WM_ROOM_NARROW;

  if (is_large && !narrow)
    {
      GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
      GtkWidget *label = gtk_label_new (_ ("Add photo"));

      gtk_widget_add_css_class (label, "add-label");
      gtk_box_append (GTK_BOX (box), icon);
      gtk_box_append (GTK_BOX (box), label);
      gtk_widget_set_valign (box, GTK_ALIGN_CENTER);
      gtk_button_set_child (GTK_BUTTON (button), box);
      gtk_widget_set_size_request (button, WM_TILE_WIDTH, WM_TILE_HEIGHT);
      gtk_widget_add_css_class (button, "add-tile");
    }
  else
    {
      gtk_button_set_child (GTK_BUTTON (button), icon);
      gtk_widget_add_css_class (button, "flat");
    }
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "photo.add");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", moment);
  {
    g_autofree char *name = g_strdup_printf ("photo.add::%s", moment);

    wm_action_name_widget (button, name);
  }
  return button;
}

static void
fill_section (WmPhotoStrip *self, guint index, WmArchive *archive,
              const WmStripPhoto *photos, guint n_photos, const WmId *current)
{
  GtkWidget *section = self->sections[index], *label, *child;
  guint n = 0;

  while ((child = gtk_widget_get_first_child (section)) != NULL)
    gtk_box_remove (GTK_BOX (section), child);
  label = gtk_label_new (wm_photo_moment_words (moments[index]));
  gtk_widget_add_css_class (label, "group-label");
  gtk_widget_set_margin_end (label, 9);
  gtk_box_append (GTK_BOX (section), label);
  for (guint i = 0; i < n_photos; i++)
    if (g_strcmp0 (photos[i].photo->moment, moments[index]) == 0)
      {
        add_tile (self, section, archive, &photos[i], current);
        n++;
      }
  if (n == 0 && index > 0)
    {
      GtkWidget *none = gtk_label_new (_ ("none yet"));

      gtk_widget_add_css_class (none, "second-line");
      gtk_box_append (GTK_BOX (section), none);
    }
  gtk_box_append (GTK_BOX (section), make_add_button (self, moments[index], index == 0));
  if (index == 0)
    add_missing_views (self, section, photos, n_photos);
}

/* Keeps the keyboard on the tile of the same photo when tiles are made again. */
static gboolean
get_focused (WmPhotoStrip *self, WmId *id)
{
  for (guint i = 0; i < self->tiles->len; i++)
    {
      WmPhotoTile *tile = g_ptr_array_index (self->tiles, i);

      if (gtk_widget_get_focus_child (GTK_WIDGET (tile)) != NULL
          || gtk_widget_has_focus (GTK_WIDGET (tile)))
        {
          *id = *wm_record_get_id (WM_RECORD (wm_photo_tile_get_photo (tile)));
          return TRUE;
        }
    }
  return FALSE;
}

/* Everything the tiles depend on: they are made again only when it differs, so that an
 * answered check does not disturb them. */
static char *
describe (WmPhotoStrip *self, const char *type, const WmStripPhoto *photos,
          guint n_photos)
{
  GString *text = g_string_new (type);

  g_string_append_printf (text, " %d\n", self->room);
  for (guint i = 0; i < n_photos; i++)
    {
      WmPhoto *photo = photos[i].photo;
      g_autofree char *id = wm_id_to_string (wm_record_get_id (WM_RECORD (photo)));

      g_string_append_printf (text, "%s %s %s %s %s %s %u\n", id, photo->sha256,
                              photo->moment, photo->view, photo->caption, photo->verdict,
                              photos[i].n_marks);
    }
  return g_string_free (text, FALSE);
}

static void
show_current (WmPhotoStrip *self, const WmId *current)
{
  for (guint i = 0; i < self->tiles->len; i++)
    {
      WmPhotoTile *tile = g_ptr_array_index (self->tiles, i);
      WmRecord *photo = WM_RECORD (wm_photo_tile_get_photo (tile));

      wm_photo_tile_set_current (
          tile, current != NULL && wm_id_equal (wm_record_get_id (photo), current));
    }
}

void
wm_photo_strip_show (WmPhotoStrip *self, WmArchive *archive, WmTrade *trade,
                     const char *type, const WmStripPhoto *photos, guint n_photos,
                     const WmId *current)
{
  g_autofree char *now = describe (self, type, photos, n_photos);
  WmId focused;
  gboolean had_focus = get_focused (self, &focused);

  if (g_strcmp0 (now, self->shown) == 0)
    {
      show_current (self, current);
      return;
    }
  g_free (self->shown);
  self->shown = g_steal_pointer (&now);
  gtk_popover_popdown (GTK_POPOVER (self->popover));
  self->trade = trade;
  g_free (self->type);
  self->type = g_strdup (type);
  g_ptr_array_set_size (self->tiles, 0);
  for (guint i = 0; i < N_MOMENTS; i++)
    fill_section (self, i, archive, photos, n_photos, current);
  if (had_focus && find_tile (self, &focused) != NULL)
    wm_photo_tile_focus (find_tile (self, &focused));
}

void
wm_photo_strip_set_room (WmPhotoStrip *self, WmRoom room)
{
  self->room = room;
  if (room == WM_ROOM_NARROW)
    gtk_widget_add_css_class (GTK_WIDGET (self), "narrow");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "narrow");
  for (guint i = 0; i < self->tiles->len; i++)
    wm_photo_tile_set_room (g_ptr_array_index (self->tiles, i), room);
}

void
wm_photo_strip_set_progress (WmPhotoStrip *self, guint n_done, guint n_total,
                             const char *name)
{
  g_autofree char *text = NULL;

  gtk_widget_set_visible (self->progress, n_total > 0);
  if (n_total == 0)
    return;
  text = g_strdup_printf (_ ("photo %u of %u"), MIN (n_done + 1, n_total), n_total);
  gtk_label_set_text (self->progress_label, text);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->progress_label), name);
  gtk_progress_bar_set_fraction (self->progress_bar, (double)n_done / n_total);
}

/* ---- popover -------------------------------------------------------------------- */

static void
on_described (WmPhotoPopover *popover, WmId *id, const char *view, const char *caption,
              WmPhotoStrip *self)
{
  g_signal_emit (self, signals[PHOTO_DESCRIBED], 0, id, view, caption);
}

static void
on_moment_chosen (WmPhotoPopover *popover, WmId *id, const char *moment,
                  WmPhotoStrip *self)
{
  g_signal_emit (self, signals[PHOTO_MOVED], 0, id, moment, G_MAXINT);
}

void
wm_photo_strip_describe (WmPhotoStrip *self, const WmId *id)
{
  WmPhotoTile *tile = find_tile (self, id);
  graphene_rect_t bounds;

  if (tile == NULL
      || !gtk_widget_compute_bounds (GTK_WIDGET (tile), GTK_WIDGET (self), &bounds))
    return;
  gtk_popover_set_pointing_to (GTK_POPOVER (self->popover),
                               &(GdkRectangle) { bounds.origin.x, bounds.origin.y,
                                                 bounds.size.width, bounds.size.height });
  wm_photo_popover_show (self->popover, self->trade, self->type,
                         wm_photo_tile_get_photo (tile));
}

/* ---- widget --------------------------------------------------------------------- */

static void
on_cancel_clicked (GtkButton *button, WmPhotoStrip *self)
{
  g_signal_emit (self, signals[IMPORT_CANCELLED], 0);
}

static GtkWidget *
make_progress (WmPhotoStrip *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 9);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *cancel = gtk_button_new_from_icon_name ("process-stop-symbolic");

  self->progress_label = GTK_LABEL (gtk_label_new (NULL));
  gtk_widget_add_css_class (GTK_WIDGET (self->progress_label), "second-line");
  self->progress_bar = GTK_PROGRESS_BAR (gtk_progress_bar_new ());
  gtk_widget_set_size_request (GTK_WIDGET (self->progress_bar), 90, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->progress_bar),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Photos coming in"),
                                  -1);
  gtk_widget_set_valign (words, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (words), GTK_WIDGET (self->progress_label));
  gtk_box_append (GTK_BOX (words), GTK_WIDGET (self->progress_bar));
  gtk_widget_set_valign (cancel, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (cancel, "flat");
  gtk_widget_set_tooltip_text (cancel, _ ("Stop: photos already in are kept"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (cancel), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Stop taking photos in"), -1);
  g_signal_connect (cancel, "clicked", G_CALLBACK (on_cancel_clicked), self);
  gtk_box_append (GTK_BOX (box), words);
  gtk_box_append (GTK_BOX (box), cancel);
  gtk_widget_set_visible (box, FALSE);
  return box;
}

static GtkWidget *
make_section (WmPhotoStrip *self, const char *moment)
{
  GtkWidget *section = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 9);
  GtkDropTarget *target = gtk_drop_target_new (WM_TYPE_PHOTO, GDK_ACTION_MOVE);

  g_object_set_data (G_OBJECT (target), "moment", (gpointer)moment);
  g_signal_connect (target, "drop", G_CALLBACK (on_section_dropped), self);
  gtk_widget_add_controller (section, GTK_EVENT_CONTROLLER (target));
  gtk_accessible_update_property (GTK_ACCESSIBLE (section), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  wm_photo_moment_words (moment), -1);
  return section;
}

static void
wm_photo_strip_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  GTK_WIDGET_CLASS (wm_photo_strip_parent_class)
      ->size_allocate (widget, width, height, baseline);
  gtk_popover_present (GTK_POPOVER (WM_PHOTO_STRIP (widget)->popover));
}

static void
wm_photo_strip_dispose (GObject *object)
{
  WmPhotoStrip *self = WM_PHOTO_STRIP (object);

  if (self->popover != NULL)
    gtk_widget_unparent (GTK_WIDGET (self->popover));
  self->popover = NULL;
  g_clear_pointer (&self->tiles, g_ptr_array_unref);
  g_clear_pointer (&self->type, g_free);
  g_clear_pointer (&self->shown, g_free);
  G_OBJECT_CLASS (wm_photo_strip_parent_class)->dispose (object);
}

static void
wm_photo_strip_class_init (WmPhotoStripClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_photo_strip_dispose;
  widget_class->size_allocate = wm_photo_strip_size_allocate;
  gtk_widget_class_set_css_name (widget_class, "photostrip");

  signals[PHOTO_CHOSEN] =
      g_signal_new ("photo-chosen", WM_TYPE_PHOTO_STRIP, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                    NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  signals[PHOTO_MOVED] =
      g_signal_new ("photo-moved", WM_TYPE_PHOTO_STRIP, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                    NULL, G_TYPE_NONE, 3, G_TYPE_POINTER, G_TYPE_STRING, G_TYPE_INT);
  signals[PHOTO_DESCRIBED] = g_signal_new (
      "photo-described", WM_TYPE_PHOTO_STRIP, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
      G_TYPE_NONE, 3, G_TYPE_POINTER, G_TYPE_STRING, G_TYPE_STRING);
  signals[IMPORT_CANCELLED] =
      g_signal_new ("import-cancelled", WM_TYPE_PHOTO_STRIP, G_SIGNAL_RUN_LAST, 0, NULL,
                    NULL, NULL, G_TYPE_NONE, 0);
}

static void
wm_photo_strip_init (WmPhotoStrip *self)
{
  self->room = WM_ROOM_NORMAL;
  self->tiles = g_ptr_array_new ();
  self->row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 18);
  gtk_widget_add_css_class (self->row, "strip-row");
  for (guint i = 0; i < N_MOMENTS; i++)
    {
      if (i > 0)
        gtk_box_append (GTK_BOX (self->row),
                        gtk_separator_new (GTK_ORIENTATION_VERTICAL));
      self->sections[i] = make_section (self, moments[i]);
      gtk_box_append (GTK_BOX (self->row), self->sections[i]);
    }
  self->progress = make_progress (self);
  gtk_box_prepend (GTK_BOX (self->row), self->progress);
  self->scroller = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scroller),
                                  GTK_POLICY_AUTOMATIC, GTK_POLICY_NEVER);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scroller), self->row);
  adw_bin_set_child (ADW_BIN (self), self->scroller);

  self->popover = wm_photo_popover_new ();
  gtk_widget_set_parent (GTK_WIDGET (self->popover), GTK_WIDGET (self));
  g_signal_connect (self->popover, "described", G_CALLBACK (on_described), self);
  g_signal_connect (self->popover, "moment-chosen", G_CALLBACK (on_moment_chosen), self);
}
