/* png-write.c: pictures out as PNG
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/png-write.h"

#include "photo/atomic-file.h"
#include "photo/png-stream.h"
#include "photo/row-source.h"

#include <math.h>

/* Rows drawn and written at once: 20,000 px wide that is 20 MB. */
#define STRIP_ROWS 256

/* R when none is given: on a print 160 mm wide 1/70 is the 2.3 mm of the look
 * book, section 4. */
#define LONG_SIDE_PER_R 70.0

typedef struct
{
  WmMarkLook *looks;
  WmLayoutMark *places;
  WmPoint *points; /* of all marks, result px */
  gsize count;
  WmMarkStyle style;
} Marks;

static void
clear_marks (Marks *marks)
{
  g_free (marks->looks);
  g_free (marks->places);
  g_free (marks->points);
}

/* Scales the marks to the result and finds places for their discs. */
static void
prepare_marks (Marks *marks, const WmPictureOptions *options, int width, int height,
               double scale)
{
  gsize n_points = 0, at = 0;
  double radius = options->radius > 0
                      ? options->radius
                      : MAX (WM_MARK_R_PHOTO, MAX (width, height) / LONG_SIDE_PER_R);
  WmLayoutView view = { .width = width, .height = height, .radius = radius };

  for (gsize i = 0; i < options->n_marks; i++)
    n_points += options->marks[i].n_points;

  marks->count = 0;
  marks->looks = g_new0 (WmMarkLook, options->n_marks);
  marks->places = g_new0 (WmLayoutMark, options->n_marks);
  marks->points = g_new0 (WmPoint, n_points);
  wm_mark_style_init (&marks->style);
  marks->style.grey = options->grey;
  marks->style.font = options->font;
  marks->style.px = MAX (1.0, radius / WM_MARK_R_PHOTO);

  for (gsize i = 0; i < options->n_marks; i++)
    {
      const WmPictureMark *mark = &options->marks[i];
      WmMarkLook *look = &marks->looks[marks->count];
      WmLayoutMark *place = &marks->places[marks->count];

      if (mark->n_points == 0)
        continue;
      look->severity = place->severity = mark->severity;
      look->shape = place->shape = mark->shape;
      look->points = place->points = marks->points + at;
      look->n_points = place->n_points = mark->n_points;
      look->number = mark->number;
      look->state = mark->state;
      look->value = mark->value;
      look->radius = radius;
      place->is_pinned = mark->is_pinned;
      place->disc = (WmPoint) { mark->disc.x * scale, mark->disc.y * scale };
      for (gsize p = 0; p < mark->n_points; p++, at++)
        marks->points[at] =
            (WmPoint) { mark->points[p].x * scale, mark->points[p].y * scale };
      marks->count++;
    }

  wm_mark_layout (marks->places, marks->count, &view);
  for (gsize i = 0; i < marks->count; i++)
    marks->looks[i].disc = marks->places[i].disc;
}

/* Rec. 709 luma of the coded values: what a grey printer makes of it, near enough
 * (common practice). */
static void
make_grey (WmPixels *strip, int rows)
{
  for (int y = 0; y < rows; y++)
    {
      guint8 *p = strip->data + y * strip->stride;

      for (int x = 0; x < strip->width; x++, p += 4)
        p[0] = p[1] = p[2] = (guint8)((18 * p[0] + 183 * p[1] + 55 * p[2] + 128) >> 8);
    }
}

static void
draw_marks (const Marks *marks, WmPixels *strip, int top, int rows)
{
  cairo_surface_t *surface = wm_pixels_get_surface (strip);
  cairo_t *cr = cairo_create (surface);
  gboolean *is_here = g_new0 (gboolean, marks->count);

  cairo_translate (cr, 0, -top);
  for (gsize i = 0; i < marks->count; i++)
    {
      double box[4];

      wm_mark_extents (&marks->looks[i], &marks->style, box);
      is_here[i] = box[1] <= top + rows && box[1] + box[3] >= top;
    }

  for (gsize i = 0; i < marks->count; i++)
    if (is_here[i])
      wm_mark_draw_form (cr, &marks->looks[i], &marks->style);
  for (gsize i = 0; i < marks->count; i++)
    if (is_here[i])
      wm_mark_draw_leader (cr, &marks->looks[i], &marks->style);
  for (gsize i = 0; i < marks->count; i++)
    if (is_here[i])
      wm_mark_draw_disc (cr, &marks->looks[i], &marks->style);

  g_free (is_here);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static gboolean
write_strips (WmRowSource *rows, WmPngStream *png, const Marks *marks, gboolean grey,
              const char *name, GError **error)
{
  int width = wm_row_source_get_width (rows);
  int height = wm_row_source_get_height (rows);
  g_autoptr (WmPixels) strip = wm_pixels_new (width, MIN (STRIP_ROWS, height));

  if (strip == NULL)
    {
      wm_photo_set_error (error, WM_PHOTO_ERROR_NO_MEMORY, name, NULL);
      return FALSE;
    }

  for (int top = 0; top < height; top += STRIP_ROWS)
    {
      int count = MIN (STRIP_ROWS, height - top);

      if (!wm_row_source_read (rows, strip, count, error))
        return FALSE;
      if (grey)
        make_grey (strip, count);
      if (marks->count > 0)
        draw_marks (marks, strip, top, count);
      if (!wm_png_stream_write (png, strip->data, strip->stride, count, error))
        return FALSE;
    }

  return wm_png_stream_finish (png, error);
}

gboolean
wm_picture_write_png (const char *photo, const char *dest,
                      const WmPictureOptions *options, GCancellable *cancellable,
                      GError **error)
{
  g_autoptr (WmRowSource) rows =
      wm_row_source_new (photo, options->long_side, cancellable, error);
  g_autoptr (WmAtomicFile) file = NULL;
  g_autoptr (WmPngStream) png = NULL;
  Marks marks = { 0 };
  double scale;
  gboolean done;

  if (rows == NULL)
    return FALSE;
  file = wm_atomic_file_new (dest, error);
  if (file == NULL)
    return FALSE;

  scale = wm_row_source_get_scale (rows);
  png = wm_png_stream_new (file->stream, NULL, wm_row_source_get_width (rows),
                           wm_row_source_get_height (rows), &options->note,
                           options->note.mm_per_px / scale, file->name, error);
  if (png == NULL)
    return FALSE;

  prepare_marks (&marks, options, wm_row_source_get_width (rows),
                 wm_row_source_get_height (rows), scale);
  done = write_strips (rows, png, &marks, options->grey, file->name, error);
  clear_marks (&marks);

  return done && wm_atomic_file_commit (file, TRUE, error);
}

static gboolean
write_pixels (WmPixels *pixels, WmPngStream *png, GError **error)
{
  return wm_png_stream_write (png, pixels->data, pixels->stride, pixels->height, error)
         && wm_png_stream_finish (png, error);
}

gboolean
wm_pixels_write_png (WmPixels *pixels, const char *dest, const WmPngNote *note,
                     GError **error)
{
  g_autoptr (WmAtomicFile) file = wm_atomic_file_new (dest, error);
  g_autoptr (WmPngStream) png = NULL;

  if (file == NULL)
    return FALSE;

  png = wm_png_stream_new (file->stream, NULL, pixels->width, pixels->height, note,
                           note != NULL ? note->mm_per_px : 0, file->name, error);
  return png != NULL && write_pixels (pixels, png, error)
         && wm_atomic_file_commit (file, TRUE, error);
}

GBytes *
wm_pixels_to_png (WmPixels *pixels, const WmPngNote *note, GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  g_autoptr (WmPngStream) png =
      wm_png_stream_new (NULL, bytes, pixels->width, pixels->height, note,
                         note != NULL ? note->mm_per_px : 0, "PNG", error);

  if (png == NULL || !write_pixels (pixels, png, error))
    return NULL;

  return g_byte_array_free_to_bytes (g_steal_pointer (&bytes));
}
