/* arrival-photos.c: photos of one moment: the first one large, the others under it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/take-in/arrival-photos.h"

#include <glib/gi18n.h>

#include "window/photo-import.h"
#include "window/photo-strip.h"
#include "window/photo-words.h"
#include "window/resource.h"
#include "window/template.h"
#include "window/thumbnail-view.h"

#define LARGE_HEIGHT 400
#define SMALL_HEIGHT 108

struct _WmArrivalPhotos
{
  GtkWidget parent_instance;

  GtkWidget *large;
  GtkWidget *large_button;
  WmThumbnailView *large_view;
  GtkLabel *verdict;
  GtkWidget *empty;
  GtkLabel *empty_label;
  GtkFlowBox *others;
  GtkWidget *progress;
  GtkProgressBar *progress_bar;

  char *moment;
  WmSession *session;
  GPtrArray *photos;
  WmPhotoImport *import;
  WmId import_visit_id; /* the visit they were meant for, whatever is shown later */
  WmId import_piece_id;
  guint n_taken;
};

enum
{
  PROP_0,
  PROP_MOMENT,
  N_PROPS
};

static GParamSpec *props[N_PROPS];

G_DEFINE_FINAL_TYPE (WmArrivalPhotos, wm_arrival_photos, GTK_TYPE_WIDGET)

static const char *
get_moment (WmArrivalPhotos *self)
{
  return self->moment != NULL ? self->moment : WM_PHOTO_BEFORE;
}

/* ---- showing --------------------------------------------------------------------- */

static GPtrArray *
list_photos (WmArrivalPhotos *self, WmSession *session)
{
  const WmId *visit_id = wm_session_get_visit_id (session);
  GPtrArray *photos = NULL;

  if (visit_id != NULL)
    photos = wm_archive_list (wm_session_get_archive (session), WM_KIND_PHOTO, "visit_id",
                              visit_id, NULL);
  if (photos == NULL)
    return g_ptr_array_new ();

  for (guint i = photos->len; i > 0; i--)
    if (g_strcmp0 (((WmPhoto *)photos->pdata[i - 1])->moment, get_moment (self)) != 0)
      g_ptr_array_remove_index (photos, i - 1);
  return photos;
}

static void
on_photo_clicked (GtkButton *button, WmArrivalPhotos *self)
{
  wm_session_go_to_moment (self->session, WM_MOMENT_INSPECTION);
}

static void
name_button (WmArrivalPhotos *self, GtkWidget *button, WmPhoto *photo)
{
  g_autofree char *title = wm_photo_title (wm_session_get_trade (self->session), photo);

  gtk_widget_set_tooltip_text (button, title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  title, -1);
}

static void
show_large (WmArrivalPhotos *self)
{
  WmPhoto *photo = self->photos->len > 0 ? self->photos->pdata[0] : NULL;
  g_autofree char *words = NULL;

  gtk_widget_set_visible (self->large, photo != NULL);
  gtk_widget_set_visible (self->empty, photo == NULL);
  if (photo == NULL)
    return;

  words = wm_photo_verdict_words (photo);
  wm_thumbnail_view_set_photo (self->large_view, wm_session_get_archive (self->session),
                               photo->sha256, photo->format);
  gtk_label_set_label (self->verdict, words == NULL ? "" : words);
  gtk_widget_set_visible (GTK_WIDGET (self->verdict), words != NULL);
  name_button (self, self->large_button, photo);
}

static GtkWidget *
make_small (WmArrivalPhotos *self, WmPhoto *photo)
{
  GtkWidget *button = gtk_button_new ();
  GtkWidget *view = wm_thumbnail_view_new (-1, SMALL_HEIGHT);

  gtk_widget_add_css_class (button, "flat");
  gtk_widget_add_css_class (button, "photo-button");
  wm_thumbnail_view_set_photo (WM_THUMBNAIL_VIEW (view),
                               wm_session_get_archive (self->session), photo->sha256,
                               photo->format);
  gtk_button_set_child (GTK_BUTTON (button), view);
  name_button (self, button, photo);
  g_signal_connect (button, "clicked", G_CALLBACK (on_photo_clicked), self);
  return button;
}

static GtkWidget *
make_add_button (WmArrivalPhotos *self)
{
  GtkWidget *button = gtk_button_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  gtk_box_append (GTK_BOX (box), gtk_image_new_from_icon_name ("wm-add-photo-symbolic"));
  gtk_box_append (GTK_BOX (box), gtk_label_new (_ ("Add photo")));
  gtk_widget_set_valign (box, GTK_ALIGN_CENTER);
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button),
                                  g_str_equal (get_moment (self), WM_PHOTO_AFTER)
                                      ? "proof.add-photo"
                                      : "take-in.add-photo");
  gtk_widget_set_size_request (button, -1, SMALL_HEIGHT);
  gtk_widget_add_css_class (button, "add-photo");
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Add photo"), -1);
  return button;
}

static void
show_others (WmArrivalPhotos *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->others))) != NULL)
    gtk_flow_box_remove (self->others, child);
  for (guint i = 1; i < self->photos->len; i++)
    gtk_flow_box_append (self->others, make_small (self, self->photos->pdata[i]));
  if (!wm_session_is_read_only (self->session))
    gtk_flow_box_append (self->others, make_add_button (self));
  /* Focus belongs to the buttons, not to the places they stand on. */
  for (child = gtk_widget_get_first_child (GTK_WIDGET (self->others)); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    gtk_widget_set_focusable (child, FALSE);
}

static gboolean
are_same (GPtrArray *a, GPtrArray *b)
{
  if (a == NULL || a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    if (!wm_record_equal (a->pdata[i], b->pdata[i]))
      return FALSE;
  return TRUE;
}

guint
wm_arrival_photos_show (WmArrivalPhotos *self, WmSession *session)
{
  g_autoptr (GPtrArray) photos = list_photos (self, session);
  gboolean same = are_same (self->photos, photos);

  g_set_object (&self->session, session);
  if (!same)
    {
      g_clear_pointer (&self->photos, g_ptr_array_unref);
      self->photos = g_steal_pointer (&photos);
      show_large (self);
      show_others (self);
    }
  return self->photos->len;
}

/* ---- coming in ------------------------------------------------------------------- */

static void
on_progress (WmPhotoImport *import, WmArrivalPhotos *self)
{
  guint n_done, n_total;
  const char *name = wm_photo_import_get_progress (import, &n_done, &n_total);

  gtk_widget_set_visible (self->progress, n_total > 0);
  gtk_progress_bar_set_fraction (self->progress_bar,
                                 n_total > 0 ? (double)n_done / n_total : 0.0);
  gtk_progress_bar_set_text (self->progress_bar, name);
}

static void
on_taken (WmPhotoImport *import, WmPhoto *photo, WmArrivalPhotos *self)
{
  WmEdit *edit = wm_edit_new (N_ ("Add photo"), &self->import_piece_id,
                              wm_session_get_by (self->session));

  photo->visit_id = self->import_visit_id;
  photo->position = (self->photos == NULL ? 0 : self->photos->len) + self->n_taken++;
  wm_record_set_text (WM_RECORD (photo), "moment", get_moment (self));
  wm_session_put (self->session, edit, photo);
  wm_session_commit (self->session, edit);
}

static void
on_finished (WmPhotoImport *import, WmArrivalPhotos *self)
{
  GPtrArray *failures = wm_photo_import_get_failures (import);
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  gtk_widget_set_visible (self->progress, FALSE);
  if (failures->len > 0 && root != NULL)
    wm_photo_import_show_failures (GTK_WINDOW (root), failures, self->n_taken);
  self->n_taken = 0;
}

static void
take_files (GListModel *files, gpointer user_data)
{
  WmArrivalPhotos *self = user_data;
  WmVisit *visit = wm_session_get_visit (self->session);

  if (visit == NULL || wm_session_is_read_only (self->session))
    return;
  if (self->import == NULL)
    {
      self->import = wm_photo_import_new (wm_session_get_archive (self->session));
      g_signal_connect (self->import, "progress", G_CALLBACK (on_progress), self);
      g_signal_connect (self->import, "taken", G_CALLBACK (on_taken), self);
      g_signal_connect (self->import, "finished", G_CALLBACK (on_finished), self);
    }
  if (!wm_photo_import_is_running (self->import))
    {
      self->import_visit_id = *wm_record_get_id (WM_RECORD (visit));
      self->import_piece_id = visit->piece_id;
    }
  wm_photo_import_add (self->import, files);
}

void
wm_arrival_photos_choose (WmArrivalPhotos *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  wm_photo_import_choose (GTK_WINDOW (root), take_files, g_object_ref (self),
                          g_object_unref);
}

static void
stop_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  wm_photo_import_cancel (WM_ARRIVAL_PHOTOS (widget)->import);
}

static gboolean
on_drop (GtkDropTarget *target, const GValue *value, double x, double y,
         WmArrivalPhotos *self)
{
  g_autoptr (GListStore) files = g_list_store_new (G_TYPE_FILE);
  GSList *list = g_value_get_boxed (value);

  for (GSList *l = list; l != NULL; l = l->next)
    g_list_store_append (files, l->data);
  take_files (G_LIST_MODEL (files), self);
  return list != NULL;
}

/* ---- overrides --------------------------------------------------------------------- */

static void
wm_arrival_photos_set_property (GObject *object, guint id, const GValue *value,
                                GParamSpec *pspec)
{
  WmArrivalPhotos *self = WM_ARRIVAL_PHOTOS (object);
  gboolean after;

  if (id != PROP_MOMENT)
    {
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
      return;
    }

  g_free (self->moment);
  self->moment = g_value_dup_string (value);
  after = g_strcmp0 (self->moment, WM_PHOTO_AFTER) == 0;
  gtk_label_set_label (
      self->empty_label,
      after ? _ ("No after photo yet. Take it from the same side as the first.")
            : _ ("No photo yet. Drop one here or press Ctrl+O."));
  gtk_accessible_update_property (
      GTK_ACCESSIBLE (self->others), GTK_ACCESSIBLE_PROPERTY_LABEL,
      after ? _ ("Photos after the work") : _ ("Photos taken on arrival"), -1);
}

static void
wm_arrival_photos_dispose (GObject *object)
{
  WmArrivalPhotos *self = WM_ARRIVAL_PHOTOS (object);

  if (self->import != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->import, self);
      wm_photo_import_cancel (self->import);
    }
  g_clear_object (&self->import);
  wm_template_dispose (GTK_WIDGET (self), WM_TYPE_ARRIVAL_PHOTOS);
  g_clear_pointer (&self->photos, g_ptr_array_unref);
  g_clear_pointer (&self->moment, g_free);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (wm_arrival_photos_parent_class)->dispose (object);
}

static void
wm_arrival_photos_class_init (WmArrivalPhotosClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_arrival_photos_dispose;
  G_OBJECT_CLASS (klass)->set_property = wm_arrival_photos_set_property;
  props[PROP_MOMENT] = g_param_spec_string ("moment", NULL, NULL, NULL,
                                            G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (G_OBJECT_CLASS (klass), N_PROPS, props);

  g_type_ensure (WM_TYPE_THUMBNAIL_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "arrival-photos.ui");
  gtk_widget_class_bind_template_child (widget_class, WmArrivalPhotos, large);
  gtk_widget_class_bind_template_child (widget_class, WmArrivalPhotos, large_button);
  gtk_widget_class_bind_template_child (widget_class, WmArrivalPhotos, large_view);
  gtk_widget_class_bind_template_child (widget_class, WmArrivalPhotos, verdict);
  gtk_widget_class_bind_template_child (widget_class, WmArrivalPhotos, empty);
  gtk_widget_class_bind_template_child (widget_class, WmArrivalPhotos, empty_label);
  gtk_widget_class_bind_template_child (widget_class, WmArrivalPhotos, others);
  gtk_widget_class_bind_template_child (widget_class, WmArrivalPhotos, progress);
  gtk_widget_class_bind_template_child (widget_class, WmArrivalPhotos, progress_bar);
  gtk_widget_class_bind_template_callback (widget_class, on_photo_clicked);
  gtk_widget_class_install_action (widget_class, "arrival.stop", NULL, stop_action);
}

static void
wm_arrival_photos_init (WmArrivalPhotos *self)
{
  GtkDropTarget *target = gtk_drop_target_new (GDK_TYPE_FILE_LIST, GDK_ACTION_COPY);

  gtk_widget_init_template (GTK_WIDGET (self));
  wm_thumbnail_view_set_size (self->large_view, -1, LARGE_HEIGHT);
  g_signal_connect (target, "drop", G_CALLBACK (on_drop), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (target));
}
