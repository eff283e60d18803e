/* photo-popover.c: view, caption and moment of one photo
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/photo-popover.h"

#include <glib/gi18n.h>

#include "window/action-table.h"
#include "window/photo-strip.h"

static const char *const moments[] = { WM_PHOTO_BEFORE, WM_PHOTO_DURING, WM_PHOTO_AFTER };

struct _WmPhotoPopover
{
  GtkPopover parent_instance;

  WmId id;
  GtkDropDown *view;
  GtkEntry *caption;
  GtkToggleButton *moments[3];
  GPtrArray *view_keys; /* "" first */
  char *old_view, *old_caption, *old_moment;
  gboolean is_filling;
};

enum
{
  DESCRIBED,
  MOMENT_CHOSEN,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmPhotoPopover, wm_photo_popover, GTK_TYPE_POPOVER)

static void
tell_description (WmPhotoPopover *self)
{
  guint selected = gtk_drop_down_get_selected (self->view);
  const char *view = selected < self->view_keys->len
                         ? g_ptr_array_index (self->view_keys, selected)
                         : "";
  g_autofree char *view_copy = g_strdup (view);
  g_autofree char *caption =
      g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->caption)));
  WmId id = self->id;

  if (g_str_equal (view_copy, self->old_view) && g_str_equal (caption, self->old_caption))
    return;
  g_free (self->old_view);
  g_free (self->old_caption);
  self->old_view = g_strdup (view_copy);
  self->old_caption = g_strdup (caption);
  g_signal_emit (self, signals[DESCRIBED], 0, &id, view_copy, caption);
}

static void
on_closed (WmPhotoPopover *self)
{
  if (!self->is_filling && self->old_view != NULL)
    tell_description (self);
}

static void
on_caption_activated (GtkEntry *entry, WmPhotoPopover *self)
{
  gtk_popover_popdown (GTK_POPOVER (self));
}

static void
on_moment_toggled (GtkToggleButton *button, WmPhotoPopover *self)
{
  WmId id = self->id;

  if (self->is_filling || !gtk_toggle_button_get_active (button))
    return;
  for (guint i = 0; i < G_N_ELEMENTS (moments); i++)
    if (self->moments[i] == button && g_strcmp0 (moments[i], self->old_moment) != 0)
      {
        gtk_popover_popdown (GTK_POPOVER (self));
        g_signal_emit (self, signals[MOMENT_CHOSEN], 0, &id, moments[i]);
      }
}

static GtkWidget *
make_moments (WmPhotoPopover *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);

  gtk_widget_add_css_class (box, "linked");
  for (guint i = 0; i < G_N_ELEMENTS (moments); i++)
    {
      GtkWidget *button =
          gtk_toggle_button_new_with_label (wm_photo_moment_words (moments[i]));

      self->moments[i] = GTK_TOGGLE_BUTTON (button);
      if (i > 0)
        gtk_toggle_button_set_group (self->moments[i], self->moments[0]);
      gtk_widget_set_hexpand (button, TRUE);
      g_signal_connect (button, "toggled", G_CALLBACK (on_moment_toggled), self);
      gtk_box_append (GTK_BOX (box), button);
    }
  return box;
}

static GtkWidget *
make_action_button (const char *icon_name, const char *action)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon_name);

  gtk_actionable_set_detailed_action_name (GTK_ACTIONABLE (button), action);
  wm_action_name_widget (button, action);
  return button;
}

static GtkWidget *
make_buttons (void)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *remove = gtk_button_new_with_label (_ ("Remove"));

  gtk_box_append (GTK_BOX (box),
                  make_action_button ("go-previous-symbolic", "photo.step::earlier"));
  gtk_box_append (GTK_BOX (box),
                  make_action_button ("go-next-symbolic", "photo.step::later"));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (remove), "photo.remove");
  gtk_widget_set_hexpand (remove, TRUE);
  gtk_widget_set_halign (remove, GTK_ALIGN_END);
  gtk_widget_add_css_class (remove, "destructive-action");
  gtk_box_append (GTK_BOX (box), remove);
  return box;
}

/* What is done with the photo, in words: these are seldom used, and no icon says them. */
static GtkWidget *
make_file_buttons (void)
{
  static const char *const actions[] = { "photo.save-picture", "photo.copy-picture",
                                         "photo.stack", "photo.frames" };
  const char *labels[] = { _ ("Save marked picture …"), _ ("Copy marked picture"),
                           _ ("Merge a focus stack …"), _ ("Frames of stacks") };
  GtkWidget *box = gtk_grid_new ();

  gtk_grid_set_column_homogeneous (GTK_GRID (box), TRUE);
  gtk_grid_set_column_spacing (GTK_GRID (box), 6);
  gtk_grid_set_row_spacing (GTK_GRID (box), 6);
  for (guint i = 0; i < G_N_ELEMENTS (actions); i++)
    {
      GtkWidget *button = gtk_button_new_with_label (labels[i]);

      gtk_actionable_set_action_name (GTK_ACTIONABLE (button), actions[i]);
      wm_action_name_widget (button, actions[i]);
      gtk_widget_set_hexpand (button, TRUE);
      gtk_grid_attach (GTK_GRID (box), button, i % 2, i / 2, 1, 1);
    }
  return box;
}

static void
wm_photo_popover_finalize (GObject *object)
{
  WmPhotoPopover *self = WM_PHOTO_POPOVER (object);

  g_ptr_array_unref (self->view_keys);
  g_free (self->old_view);
  g_free (self->old_caption);
  g_free (self->old_moment);
  G_OBJECT_CLASS (wm_photo_popover_parent_class)->finalize (object);
}

static void
wm_photo_popover_class_init (WmPhotoPopoverClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = wm_photo_popover_finalize;

  signals[DESCRIBED] =
      g_signal_new ("described", WM_TYPE_PHOTO_POPOVER, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                    NULL, G_TYPE_NONE, 3, G_TYPE_POINTER, G_TYPE_STRING, G_TYPE_STRING);
  signals[MOMENT_CHOSEN] =
      g_signal_new ("moment-chosen", WM_TYPE_PHOTO_POPOVER, G_SIGNAL_RUN_LAST, 0, NULL,
                    NULL, NULL, G_TYPE_NONE, 2, G_TYPE_POINTER, G_TYPE_STRING);
}

static void
wm_photo_popover_init (WmPhotoPopover *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 9);

  self->view_keys = g_ptr_array_new_with_free_func (g_free);
  self->view = GTK_DROP_DOWN (gtk_drop_down_new (NULL, NULL));
  self->caption = GTK_ENTRY (gtk_entry_new ());
  gtk_entry_set_placeholder_text (self->caption, _ ("Caption"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->caption),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Caption"), -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->view),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("View"), -1);
  g_signal_connect (self->caption, "activate", G_CALLBACK (on_caption_activated), self);
  g_signal_connect (self, "closed", G_CALLBACK (on_closed), NULL);
  gtk_widget_set_size_request (box, 300, -1);
  gtk_widget_add_css_class (box, "popover-box");
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->view));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->caption));
  gtk_box_append (GTK_BOX (box), make_moments (self));
  gtk_box_append (GTK_BOX (box), make_file_buttons ());
  gtk_box_append (GTK_BOX (box), make_buttons ());
  gtk_popover_set_child (GTK_POPOVER (self), box);
  gtk_popover_set_position (GTK_POPOVER (self), GTK_POS_TOP);
}

WmPhotoPopover *
wm_photo_popover_new (void)
{
  return g_object_new (WM_TYPE_PHOTO_POPOVER, NULL);
}

static void
fill_views (WmPhotoPopover *self, WmTrade *trade, const char *type, WmPhoto *photo)
{
  const WmPieceType *row = trade != NULL ? wm_trade_find_piece_type (trade, type) : NULL;
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  guint selected = 0;

  g_ptr_array_set_size (self->view_keys, 0);
  g_ptr_array_add (self->view_keys, g_strdup (""));
  gtk_string_list_append (names, _ ("No standard view"));
  for (guint i = 0; row != NULL && row->views[i] != NULL; i++)
    {
      const WmView *view = wm_trade_find_view (trade, row->views[i]);

      if (view == NULL)
        continue;
      if (g_strcmp0 (view->key, photo->view) == 0)
        selected = self->view_keys->len;
      g_ptr_array_add (self->view_keys, g_strdup (view->key));
      gtk_string_list_append (names, wm_trade_text (view->name));
    }
  if (selected == 0 && photo->view != NULL)
    {
      /* A view of another kind of piece, or of newer tables: kept. */
      selected = self->view_keys->len;
      g_ptr_array_add (self->view_keys, g_strdup (photo->view));
      gtk_string_list_append (names, photo->view);
    }
  gtk_drop_down_set_model (self->view, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->view, selected);
  g_free (self->old_view);
  self->old_view = g_strdup (g_ptr_array_index (self->view_keys, selected));
}

void
wm_photo_popover_show (WmPhotoPopover *self, WmTrade *trade, const char *type,
                       WmPhoto *photo)
{
  self->is_filling = TRUE;
  self->id = *wm_record_get_id (WM_RECORD (photo));
  fill_views (self, trade, type, photo);
  g_free (self->old_caption);
  self->old_caption = g_strdup (photo->caption != NULL ? photo->caption : "");
  gtk_editable_set_text (GTK_EDITABLE (self->caption), self->old_caption);
  g_free (self->old_moment);
  self->old_moment = g_strdup (photo->moment);
  for (guint i = 0; i < G_N_ELEMENTS (moments); i++)
    if (g_strcmp0 (photo->moment, moments[i]) == 0)
      gtk_toggle_button_set_active (self->moments[i], TRUE);
  self->is_filling = FALSE;
  gtk_popover_popup (GTK_POPOVER (self));
}
