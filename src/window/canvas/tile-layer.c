/* tile-layer.c: a photo as textures, placed by a view transform
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/canvas/tile-layer.h"

#include <math.h>

#include "window/canvas/cut-texture.h"

/* Textures kept: 128 tiles of 512 x 512 px hold 128 MB, two 4K screens full. The
 * pixels are shared with the photo room's own cache. */
#define MAX_TEXTURES 128

/* Neighbours outside the view come after everything in it. */
#define RING_PRIORITY 10000

struct _WmTileLayer
{
  GObject parent_instance;

  WmTileStore *store;
  GCancellable *cancellable;
  WmPixels *preview_pixels;
  WmCutTexture preview; /* whole: NULL until it is there */
  gboolean has_frame;
  WmFrameMap frame;
  WmPhotoFacts framed_facts;
  GdkTexture *tint;     /* or NULL */
  GHashTable *textures; /* tile key -> Tile */
  GHashTable *wanted;   /* set of tile keys asked for */
  guint64 tick;
  gboolean has_failed;
};

typedef struct
{
  WmCutTexture texture;
  guint64 used_at; /* tick of the last view that wanted it */
} Tile;

/* Which tiles of one level a view needs. */
typedef struct
{
  int level;
  int first_column, last_column;
  int first_row, last_row;
  int columns, rows; /* of the whole level */
} Range;

enum
{
  CHANGED,
  FAILED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmTileLayer, wm_tile_layer, G_TYPE_OBJECT)

static void
tile_free (gpointer data)
{
  Tile *tile = data;

  wm_cut_texture_clear (&tile->texture);
  g_free (tile);
}

/* At most 128 tiles a side (probe.h: 65,500 px), so 8 bits each. */
static gpointer
tile_key (int level, int column, int row)
{
  return GUINT_TO_POINTER (1u + ((guint)level << 16 | (guint)row << 8 | (guint)column));
}

static Tile *
take_tile (WmTileLayer *self, gpointer key, WmPixels *pixels)
{
  Tile *tile = g_new0 (Tile, 1);

  wm_cut_texture_init (&tile->texture, pixels);
  tile->used_at = self->tick;
  g_hash_table_replace (self->textures, key, tile);
  return tile;
}

/* The box of the photo that @view shows; FALSE when it can not be told. */
static gboolean
find_box (WmTileLayer *self, const WmViewTransform *view, double photo[4])
{
  double in_view[4] = { 0, 0, view->view_width, view->view_height };

  if (self->has_frame)
    return wm_frame_map_box_to_photo (&self->frame, view, photo);
  wm_view_transform_box_to_photo (view, in_view, photo);
  return TRUE;
}

/* Tiles of @level that @view shows; FALSE when the photo is out of sight. */
static gboolean
find_range (WmTileLayer *self, const WmViewTransform *view, int level, Range *out)
{
  const WmPhotoFacts *facts = wm_tile_store_get_facts (self->store);
  double photo[4], x2, y2, sx, sy;
  int width, height;

  if (!find_box (self, view, photo))
    return FALSE;
  x2 = MIN (photo[0] + photo[2], facts->width);
  y2 = MIN (photo[1] + photo[3], facts->height);
  if (x2 <= MAX (photo[0], 0) || y2 <= MAX (photo[1], 0))
    return FALSE;

  wm_tile_store_get_level_size (self->store, level, &width, &height);
  sx = (double)width / facts->width;
  sy = (double)height / facts->height;
  out->level = level;
  out->columns = (width + WM_TILE - 1) / WM_TILE;
  out->rows = (height + WM_TILE - 1) / WM_TILE;
  out->first_column = CLAMP (MAX (photo[0], 0) * sx / WM_TILE, 0, out->columns - 1);
  out->last_column = CLAMP (x2 * sx / WM_TILE, 0, out->columns - 1);
  out->first_row = CLAMP (MAX (photo[1], 0) * sy / WM_TILE, 0, out->rows - 1);
  out->last_row = CLAMP (y2 * sy / WM_TILE, 0, out->rows - 1);
  return TRUE;
}

static int
level_for (WmTileLayer *self, const WmViewTransform *view, double scale)
{
  double zoom = self->has_frame ? wm_frame_map_zoom (&self->frame, view) : view->zoom;

  return wm_tile_store_level_for_scale (self->store, zoom * scale);
}

/* Drops the textures that were not wanted for longest. */
static void
drop_old (WmTileLayer *self)
{
  while (g_hash_table_size (self->textures) > MAX_TEXTURES)
    {
      GHashTableIter iter;
      gpointer key, value, oldest = NULL;
      guint64 oldest_at = self->tick;

      g_hash_table_iter_init (&iter, self->textures);
      while (g_hash_table_iter_next (&iter, &key, &value))
        if (((Tile *)value)->used_at < oldest_at)
          {
            oldest_at = ((Tile *)value)->used_at;
            oldest = key;
          }
      if (oldest == NULL)
        return;
      g_hash_table_remove (self->textures, oldest);
    }
}

static void
report_failure (WmTileLayer *self, const GError *error)
{
  if (self->has_failed)
    return;
  self->has_failed = TRUE;
  g_signal_emit (self, signals[FAILED], 0, error);
}

static void
on_tile_ready (WmTileStore *store, int level, int column, int row, WmPixels *pixels,
               const GError *error, gpointer user_data)
{
  WmTileLayer *self = user_data;
  gpointer key = tile_key (level, column, row);

  g_hash_table_remove (self->wanted, key);
  if (pixels == NULL)
    {
      report_failure (self, error);
      return;
    }
  if (g_hash_table_contains (self->textures, key))
    return;
  take_tile (self, key, pixels);
  drop_old (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
on_preview_ready (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (WmTileLayer) self = user_data; /* ref taken at the start */
  g_autoptr (GError) error = NULL;
  WmPixels *pixels;

  if (self->store == NULL)
    return;
  pixels = wm_tile_store_get_preview_finish (self->store, result, &error);
  if (pixels == NULL)
    {
      if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
        report_failure (self, error);
      return;
    }
  self->preview_pixels = pixels;
  wm_cut_texture_init (&self->preview, pixels);
  g_signal_emit (self, signals[CHANGED], 0);
}

/* Marks a tile as used; FALSE when it has to be asked for. */
static gboolean
use_tile (WmTileLayer *self, int level, int column, int row)
{
  gpointer key = tile_key (level, column, row);
  Tile *tile = g_hash_table_lookup (self->textures, key);

  if (tile == NULL)
    {
      g_autoptr (WmPixels) pixels = wm_tile_store_peek (self->store, level, column, row);

      if (pixels == NULL)
        return FALSE;
      tile = take_tile (self, key, pixels);
    }
  tile->used_at = self->tick;
  return TRUE;
}

static void
ask_for_range (WmTileLayer *self, const Range *range, GHashTable *wanted)
{
  double mid_column = (range->first_column + range->last_column) / 2.0;
  double mid_row = (range->first_row + range->last_row) / 2.0;

  for (int row = MAX (range->first_row - 1, 0);
       row <= MIN (range->last_row + 1, range->rows - 1); row++)
    for (int column = MAX (range->first_column - 1, 0);
         column <= MIN (range->last_column + 1, range->columns - 1); column++)
      {
        gboolean in_view = row >= range->first_row && row <= range->last_row
                           && column >= range->first_column
                           && column <= range->last_column;
        int priority = 10 * hypot (column - mid_column, row - mid_row);

        if (use_tile (self, range->level, column, row))
          continue;
        g_hash_table_insert (
            wanted, tile_key (range->level, column, row),
            GINT_TO_POINTER (in_view ? priority : priority + RING_PRIORITY));
      }
}

/* Whether everything in @wanted is being waited for already. */
static gboolean
is_asked_for (WmTileLayer *self, GHashTable *wanted)
{
  GHashTableIter iter;
  gpointer key;

  g_hash_table_iter_init (&iter, wanted);
  while (g_hash_table_iter_next (&iter, &key, NULL))
    if (!g_hash_table_contains (self->wanted, key))
      return FALSE;
  return TRUE;
}

/* A tile in its place; edges on whole device pixels, so that neighbours meet. */
static void
place_upright (GtkSnapshot *snapshot, GdkTexture *texture, const WmViewTransform *view,
               const double photo[4], double scale)
{
  double box[4], x1, y1, x2, y2;

  wm_view_transform_box_to_view (view, photo, box);
  x1 = round (box[0] * scale) / scale;
  y1 = round (box[1] * scale) / scale;
  x2 = round ((box[0] + box[2]) * scale) / scale;
  y2 = round ((box[1] + box[3]) * scale) / scale;
  if (x2 <= 0 || y2 <= 0 || x1 >= view->view_width || y1 >= view->view_height)
    return;

  if (view->turns == 0)
    {
      gtk_snapshot_append_texture (snapshot, texture,
                                   &GRAPHENE_RECT_INIT (x1, y1, x2 - x1, y2 - y1));
      return;
    }

  {
    gboolean sideways = (view->turns & 1) != 0;
    double width = sideways ? y2 - y1 : x2 - x1, height = sideways ? x2 - x1 : y2 - y1;

    gtk_snapshot_save (snapshot);
    gtk_snapshot_translate (snapshot,
                            &GRAPHENE_POINT_INIT ((x1 + x2) / 2, (y1 + y2) / 2));
    gtk_snapshot_rotate (snapshot, 90 * view->turns);
    gtk_snapshot_append_texture (
        snapshot, texture, &GRAPHENE_RECT_INIT (-width / 2, -height / 2, width, height));
    gtk_snapshot_restore (snapshot);
  }
}

static void
place_texture (WmTileLayer *self, GtkSnapshot *snapshot, WmCutTexture *texture,
               const WmViewTransform *view, const double photo[4], double scale)
{
  if (self->has_frame)
    wm_cut_texture_snapshot (texture, snapshot, &self->frame, view, photo);
  else
    place_upright (snapshot, texture->whole, view, photo, scale);
}

static void
place_level (WmTileLayer *self, GtkSnapshot *snapshot, const WmViewTransform *view,
             int level, double scale)
{
  const WmPhotoFacts *facts = wm_tile_store_get_facts (self->store);
  Range range;
  int width, height;
  double sx, sy;

  if (!find_range (self, view, level, &range))
    return;
  wm_tile_store_get_level_size (self->store, level, &width, &height);
  sx = (double)facts->width / width;
  sy = (double)facts->height / height;

  for (int row = range.first_row; row <= range.last_row; row++)
    for (int column = range.first_column; column <= range.last_column; column++)
      {
        Tile *tile = g_hash_table_lookup (self->textures, tile_key (level, column, row));
        int x = column * WM_TILE, y = row * WM_TILE;
        double photo[4] = { x * sx, y * sy, MIN (WM_TILE, width - x) * sx,
                            MIN (WM_TILE, height - y) * sy };

        if (tile != NULL)
          place_texture (self, snapshot, &tile->texture, view, photo, scale);
      }
}

static void
wm_tile_layer_dispose (GObject *object)
{
  WmTileLayer *self = WM_TILE_LAYER (object);

  g_cancellable_cancel (self->cancellable);
  g_clear_pointer (&self->store, wm_tile_store_unref);
  g_clear_pointer (&self->textures, g_hash_table_unref);
  g_clear_pointer (&self->wanted, g_hash_table_unref);
  wm_cut_texture_clear (&self->preview);
  g_clear_pointer (&self->preview_pixels, wm_pixels_unref);
  g_clear_object (&self->tint);
  g_clear_object (&self->cancellable);
  G_OBJECT_CLASS (wm_tile_layer_parent_class)->dispose (object);
}

static void
wm_tile_layer_class_init (WmTileLayerClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = wm_tile_layer_dispose;

  signals[CHANGED] = g_signal_new ("changed", WM_TYPE_TILE_LAYER, G_SIGNAL_RUN_LAST, 0,
                                   NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[FAILED] =
      g_signal_new ("failed", WM_TYPE_TILE_LAYER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                    G_TYPE_NONE, 1, G_TYPE_ERROR | G_SIGNAL_TYPE_STATIC_SCOPE);
}

static void
wm_tile_layer_init (WmTileLayer *self)
{
  self->cancellable = g_cancellable_new ();
  self->textures = g_hash_table_new_full (NULL, NULL, NULL, tile_free);
  self->wanted = g_hash_table_new (NULL, NULL);
}

WmTileLayer *
wm_tile_layer_new (const char *path, const char *sha256, const char *cache_dir,
                   GError **error)
{
  g_autoptr (WmTileLayer) self = g_object_new (WM_TYPE_TILE_LAYER, NULL);

  self->store = wm_tile_store_new (path, sha256, cache_dir, error);
  if (self->store == NULL)
    return NULL;
  wm_tile_store_get_preview_async (self->store, self->cancellable, on_preview_ready,
                                   g_object_ref (self));
  return g_steal_pointer (&self);
}

const WmPhotoFacts *
wm_tile_layer_get_facts (WmTileLayer *self)
{
  return self->has_frame ? &self->framed_facts : wm_tile_store_get_facts (self->store);
}

gboolean
wm_tile_layer_set_frame (WmTileLayer *self, const double *matrix, double width,
                         double height)
{
  if (matrix == NULL)
    {
      self->has_frame = FALSE;
      return TRUE;
    }
  if (!wm_frame_map_init (&self->frame, matrix, width, height))
    return FALSE;
  self->framed_facts = *wm_tile_store_get_facts (self->store);
  self->framed_facts.width = width;
  self->framed_facts.height = height;
  self->has_frame = TRUE;
  return TRUE;
}

WmPixels *
wm_tile_layer_get_preview (WmTileLayer *self)
{
  return self->has_frame ? NULL : self->preview_pixels;
}

void
wm_tile_layer_want (WmTileLayer *self, const WmViewTransform *const *views, guint n_views,
                    double scale)
{
  g_autoptr (GHashTable) wanted = g_hash_table_new (NULL, NULL);
  GHashTableIter iter;
  gpointer key, priority;

  if (self->has_failed)
    return;
  self->tick++;
  for (guint i = 0; i < n_views; i++)
    {
      Range range;

      if (views[i]->view_width >= 1 && views[i]->view_height >= 1
          && find_range (self, views[i], level_for (self, views[i], scale), &range))
        ask_for_range (self, &range, wanted);
    }
  drop_old (self);
  if (is_asked_for (self, wanted))
    return;

  wm_tile_store_cancel_waiting (self->store);
  g_hash_table_remove_all (self->wanted);
  g_hash_table_iter_init (&iter, wanted);
  while (g_hash_table_iter_next (&iter, &key, &priority))
    g_hash_table_add (self->wanted, key);
  g_hash_table_iter_init (&iter, wanted);
  while (g_hash_table_iter_next (&iter, &key, &priority))
    {
      guint packed = GPOINTER_TO_UINT (key) - 1;

      wm_tile_store_request (self->store, packed >> 16, packed & 255, packed >> 8 & 255,
                             GPOINTER_TO_INT (priority), on_tile_ready, self);
    }
}

gboolean
wm_tile_layer_is_complete (WmTileLayer *self, const WmViewTransform *view, double scale)
{
  Range range;

  if (!find_range (self, view, level_for (self, view, scale), &range))
    return TRUE;
  for (int row = range.first_row; row <= range.last_row; row++)
    for (int column = range.first_column; column <= range.last_column; column++)
      if (!g_hash_table_contains (self->textures, tile_key (range.level, column, row)))
        return FALSE;
  return TRUE;
}

void
wm_tile_layer_snapshot (WmTileLayer *self, GtkSnapshot *snapshot,
                        const WmViewTransform *view, double scale)
{
  const WmPhotoFacts *facts = wm_tile_store_get_facts (self->store);
  double whole[4] = { 0, 0, facts->width, facts->height };
  int level = level_for (self, view, scale);
  gboolean is_complete = wm_tile_layer_is_complete (self, view, scale);

  /* Tiles that lie aslant have soft edges: what shows through them is the photo, too. */
  if (self->preview.whole != NULL && (!is_complete || self->has_frame))
    place_texture (self, snapshot, &self->preview, view, whole, scale);
  if (!is_complete)
    {
      for (int coarser = wm_tile_store_get_levels (self->store) - 1; coarser > level;
           coarser--)
        place_level (self, snapshot, view, coarser, scale);
    }
  place_level (self, snapshot, view, level, scale);
  if (self->tint != NULL && !self->has_frame)
    place_upright (snapshot, self->tint, view, whole, scale);
}

void
wm_tile_layer_set_tint (WmTileLayer *self, WmPixels *tint)
{
  g_clear_object (&self->tint);
  if (tint != NULL)
    {
      g_autoptr (GBytes) bytes = wm_pixels_get_bytes (tint);

      self->tint =
          gdk_memory_texture_new (tint->width, tint->height,
                                  GDK_MEMORY_B8G8R8A8_PREMULTIPLIED, bytes, tint->stride);
    }
  g_signal_emit (self, signals[CHANGED], 0);
}
