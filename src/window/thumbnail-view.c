/* thumbnail-view.c: a small picture of a photo, loaded off the main thread
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/thumbnail-view.h"

#include "photo/thumbnail.h"

/* Two dozen rows on a tall screen, twice over, and the strip. 384 px pictures take
 * about 0.4 MB each. */
#define MAX_KEPT 96

struct _WmThumbnailView
{
  GtkWidget parent_instance;

  int width;
  int height;
  char *key; /* of the picture wanted */
  char *icon_name;
  GdkTexture *texture;
  GtkIconPaintable *icon;
  GCancellable *cancellable;
};

/* What a worker needs, copied: it never sees a widget. */
typedef struct
{
  char *cache_folder;
  char *sha256;
  char *path;
  int px;
  GTask *task; /* its last reference may go on the worker: it holds no widget */
} Job;

typedef struct
{
  WmThumbnailView *view;
  char *key;
} Asker;

G_DEFINE_FINAL_TYPE (WmThumbnailView, wm_thumbnail_view, GTK_TYPE_WIDGET)

/* ---- pictures kept in memory, main thread only ----------------------------- */

static GHashTable *kept;                 /* key -> GdkTexture */
static GQueue kept_order = G_QUEUE_INIT; /* keys of @kept, oldest first */

static void
keep_texture (const char *key, GdkTexture *texture)
{
  char *own_key;

  if (kept == NULL)
    kept = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_object_unref);
  if (g_hash_table_contains (kept, key))
    return;

  own_key = g_strdup (key);
  g_hash_table_insert (kept, own_key, g_object_ref (texture));
  g_queue_push_tail (&kept_order, own_key);
  if (g_queue_get_length (&kept_order) > MAX_KEPT)
    g_hash_table_remove (kept, g_queue_pop_head (&kept_order));
}

static GdkTexture *
find_texture (const char *key)
{
  return kept == NULL ? NULL : g_hash_table_lookup (kept, key);
}

/* ---- workers --------------------------------------------------------------- */

static void
free_job (Job *job)
{
  g_free (job->cache_folder);
  g_free (job->sha256);
  g_free (job->path);
  g_clear_object (&job->task);
  g_free (job);
}

/* Off the main thread. */
static void
load_picture (gpointer data, gpointer unused)
{
  Job *job = data;
  g_autoptr (GError) error = NULL;
  WmPixels *pixels;

  if (!g_task_return_error_if_cancelled (job->task))
    {
      pixels = wm_thumbnail_load (job->cache_folder, job->sha256, job->path, job->px,
                                  g_task_get_cancellable (job->task), &error);
      if (pixels != NULL)
        g_task_return_pointer (job->task, pixels, (GDestroyNotify)wm_pixels_unref);
      else
        g_task_return_error (job->task, g_steal_pointer (&error));
    }
  free_job (job);
}

static GThreadPool *
get_pool (void)
{
  static GThreadPool *pool;

  /* Engineering findings: one worker a core, and leave one core to the window. */
  if (pool == NULL)
    pool = g_thread_pool_new (load_picture, NULL, MAX (1, g_get_num_processors () - 1),
                              FALSE, NULL);
  return pool;
}

/* ---- widget ----------------------------------------------------------------- */

static void
show_texture (WmThumbnailView *self, GdkTexture *texture)
{
  if (g_set_object (&self->texture, texture))
    gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
on_picture_loaded (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autofree Asker *asker = user_data;
  g_autoptr (WmThumbnailView) self = asker->view;
  g_autofree char *key = asker->key;
  g_autoptr (WmPixels) pixels = g_task_propagate_pointer (G_TASK (result), NULL);
  g_autoptr (GdkTexture) texture = NULL;
  g_autoptr (GBytes) bytes = NULL;

  if (pixels == NULL)
    return; /* cancelled, or unreadable: the icon stays */

  bytes = wm_pixels_get_bytes (pixels);
  texture =
      gdk_memory_texture_new (pixels->width, pixels->height,
                              GDK_MEMORY_B8G8R8A8_PREMULTIPLIED, bytes, pixels->stride);
  keep_texture (key, texture);
  if (g_strcmp0 (self->key, key) == 0)
    show_texture (self, texture);
}

static void
stop_loading (WmThumbnailView *self)
{
  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
}

static void
wm_thumbnail_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                           int *minimum, int *natural, int *minimum_baseline,
                           int *natural_baseline)
{
  WmThumbnailView *self = WM_THUMBNAIL_VIEW (widget);
  int size = orientation == GTK_ORIENTATION_HORIZONTAL ? self->width : self->height;

  *minimum = *natural = MAX (size, 0);
}

static void
snapshot_texture (WmThumbnailView *self, GtkSnapshot *snapshot, float width, float height)
{
  float picture_width = gdk_texture_get_width (self->texture);
  float picture_height = gdk_texture_get_height (self->texture);
  float zoom = MAX (width / picture_width, height / picture_height);
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (
      (width - picture_width * zoom) / 2, (height - picture_height * zoom) / 2,
      picture_width * zoom, picture_height * zoom);

  gtk_snapshot_append_texture (snapshot, self->texture, &bounds);
}

static void
snapshot_icon (WmThumbnailView *self, GtkSnapshot *snapshot, float width, float height)
{
  float size = CLAMP (MIN (width, height) * 0.5f, 16, 64);
  GdkRGBA colours[4];
  GtkStyleContext *context = gtk_widget_get_style_context (GTK_WIDGET (self));

  gtk_style_context_get_color (context, &colours[0]);
  colours[1] = colours[2] = colours[3] = colours[0];
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (roundf ((width - size) / 2),
                                                          roundf ((height - size) / 2)));
  gtk_symbolic_paintable_snapshot_symbolic (GTK_SYMBOLIC_PAINTABLE (self->icon), snapshot,
                                            size, size, colours, 4);
  gtk_snapshot_restore (snapshot);
}

static void
wm_thumbnail_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  WmThumbnailView *self = WM_THUMBNAIL_VIEW (widget);
  float width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);

  if (self->texture != NULL)
    snapshot_texture (self, snapshot, width, height);
  else if (self->icon != NULL)
    snapshot_icon (self, snapshot, width, height);
}

static void
wm_thumbnail_view_dispose (GObject *object)
{
  WmThumbnailView *self = WM_THUMBNAIL_VIEW (object);

  stop_loading (self);
  g_clear_object (&self->texture);
  g_clear_object (&self->icon);
  g_clear_pointer (&self->key, g_free);
  g_clear_pointer (&self->icon_name, g_free);

  G_OBJECT_CLASS (wm_thumbnail_view_parent_class)->dispose (object);
}

static void
wm_thumbnail_view_class_init (WmThumbnailViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_thumbnail_view_dispose;
  widget_class->measure = wm_thumbnail_view_measure;
  widget_class->snapshot = wm_thumbnail_view_snapshot;
  gtk_widget_class_set_css_name (widget_class, "wm-thumbnail");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
wm_thumbnail_view_init (WmThumbnailView *self)
{
  self->width = self->height = -1;
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  gtk_widget_add_css_class (GTK_WIDGET (self), "thumbnail");
}

GtkWidget *
wm_thumbnail_view_new (int width, int height)
{
  WmThumbnailView *self = g_object_new (WM_TYPE_THUMBNAIL_VIEW, NULL);

  wm_thumbnail_view_set_size (self, width, height);
  return GTK_WIDGET (self);
}

void
wm_thumbnail_view_set_size (WmThumbnailView *self, int width, int height)
{
  self->width = width;
  self->height = height;
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

void
wm_thumbnail_view_set_icon (WmThumbnailView *self, const char *icon_name)
{
  GtkIconTheme *theme;

  if (g_strcmp0 (icon_name, self->icon_name) == 0)
    return;

  g_free (self->icon_name);
  self->icon_name = g_strdup (icon_name);
  g_clear_object (&self->icon);
  if (icon_name != NULL)
    {
      theme = gtk_icon_theme_get_for_display (gtk_widget_get_display (GTK_WIDGET (self)));
      self->icon = gtk_icon_theme_lookup_icon (
          theme, icon_name, NULL, 32, gtk_widget_get_scale_factor (GTK_WIDGET (self)),
          GTK_TEXT_DIR_NONE, GTK_ICON_LOOKUP_FORCE_SYMBOLIC);
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
wm_thumbnail_view_set_photo (WmThumbnailView *self, WmArchive *archive,
                             const char *sha256, const char *format)
{
  int side =
      MAX (self->width, self->height) * gtk_widget_get_scale_factor (GTK_WIDGET (self));
  int px = side <= 0 || side > WM_THUMBNAIL_LARGE ? WM_PREVIEW
           : side > WM_THUMBNAIL_SMALL            ? WM_THUMBNAIL_LARGE
                                                  : WM_THUMBNAIL_SMALL;
  g_autofree char *key = sha256 == NULL ? NULL : g_strdup_printf ("%s-%d", sha256, px);
  GdkTexture *texture;
  Asker *asker;
  Job *job;

  if (g_strcmp0 (key, self->key) == 0 && (key == NULL || self->texture != NULL))
    return;

  stop_loading (self);
  g_free (self->key);
  self->key = g_strdup (key);
  texture = key == NULL ? NULL : find_texture (key);
  show_texture (self, texture);
  if (key == NULL || texture != NULL)
    return;

  self->cancellable = g_cancellable_new ();
  job = g_new0 (Job, 1);
  job->cache_folder = g_strdup (wm_archive_get_cache_folder (archive));
  job->sha256 = g_strdup (sha256);
  job->path = wm_archive_photo_path_for (archive, sha256, format);
  job->px = px;
  asker = g_new (Asker, 1);
  asker->view = g_object_ref (self);
  asker->key = g_steal_pointer (&key);
  job->task = g_task_new (NULL, self->cancellable, on_picture_loaded, asker);
  g_thread_pool_push (get_pool (), job, NULL);
}
