/* arrival-photos.c: the photos taken on arrival: the first one large, the others under it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/take-in/arrival-photos.h"

#include <glib/gi18n.h>

#include "window/resource.h"
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
  GtkFlowBox *others;

  WmSession *session;
  GPtrArray *photos;
};

G_DEFINE_FINAL_TYPE (WmArrivalPhotos, wm_arrival_photos, GTK_TYPE_WIDGET)

/* ---- showing --------------------------------------------------------------------- */

/* Photos before the work, in order: what was seen on arrival. */
static GPtrArray *
list_photos (WmSession *session)
{
  const WmId *visit_id = wm_session_get_visit_id (session);
  GPtrArray *photos = NULL;

  if (visit_id != NULL)
    photos = wm_archive_list (wm_session_get_archive (session), WM_KIND_PHOTO, "visit_id",
                              visit_id, NULL);
  if (photos == NULL)
    return g_ptr_array_new ();

  for (guint i = photos->len; i > 0; i--)
    if (g_strcmp0 (((WmPhoto *)photos->pdata[i - 1])->moment, WM_PHOTO_BEFORE) != 0)
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
  const char *title = photo->caption != NULL ? photo->caption : _("Photo on arrival");

  gtk_widget_set_tooltip_text (button, title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  title, -1);
}

static void
show_large (WmArrivalPhotos *self)
{
  WmPhoto *photo = self->photos->len > 0 ? self->photos->pdata[0] : NULL;

  gtk_widget_set_visible (self->large, photo != NULL);
  gtk_widget_set_visible (self->empty, photo == NULL);
  if (photo == NULL)
    return;

  wm_thumbnail_view_set_photo (self->large_view, wm_session_get_archive (self->session),
                               photo->sha256, photo->format);
  gtk_widget_set_visible (GTK_WIDGET (self->verdict), FALSE);
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

static void
show_others (WmArrivalPhotos *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->others))) != NULL)
    gtk_flow_box_remove (self->others, child);
  for (guint i = 1; i < self->photos->len; i++)
    gtk_flow_box_append (self->others, make_small (self, self->photos->pdata[i]));
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
  g_autoptr(GPtrArray) photos = list_photos (session);
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

/* ---- overrides --------------------------------------------------------------------- */

static void
wm_arrival_photos_dispose (GObject *object)
{
  WmArrivalPhotos *self = WM_ARRIVAL_PHOTOS (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), WM_TYPE_ARRIVAL_PHOTOS);
  g_clear_pointer (&self->photos, g_ptr_array_unref);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (wm_arrival_photos_parent_class)->dispose (object);
}

static void
wm_arrival_photos_class_init (WmArrivalPhotosClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_arrival_photos_dispose;

  g_type_ensure (WM_TYPE_THUMBNAIL_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "arrival-photos.ui");
  gtk_widget_class_bind_template_child (widget_class, WmArrivalPhotos, large);
  gtk_widget_class_bind_template_child (widget_class, WmArrivalPhotos, large_button);
  gtk_widget_class_bind_template_child (widget_class, WmArrivalPhotos, large_view);
  gtk_widget_class_bind_template_child (widget_class, WmArrivalPhotos, verdict);
  gtk_widget_class_bind_template_child (widget_class, WmArrivalPhotos, empty);
  gtk_widget_class_bind_template_child (widget_class, WmArrivalPhotos, others);
  gtk_widget_class_bind_template_callback (widget_class, on_photo_clicked);
}

static void
wm_arrival_photos_init (WmArrivalPhotos *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  wm_thumbnail_view_set_size (self->large_view, -1, LARGE_HEIGHT);
}
