/* stack.c: frames focused at different depths merged into one photo
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/stack.h"

#include "photo/align.h"
#include "photo/atomic-file.h"
#include "photo/jpeg-out.h"
#include "photo/load.h"
#include "photo/open.h"
#include "photo/warp.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdlib.h>

/* Sharpness is the mean of the Laplacian over a window of so many px to each side:
 * wider than an edge, narrower than a claw (our choice). */
#define WINDOW 5

/* Grey levels of Laplacian below which nothing is sharper than anything else: there the
 * frames are averaged, which also halves their grain. */
#define FLOOR 1.5f

/* The sharpest frame counts by its sharpness to this power: twice as sharp is sixteen
 * times the weight. */
#define POWER 4

#define STRIP_ROWS 128

/* A frame is moved only when the difference to the middle one falls to this share. */
#define BETTER 0.95

/* Side of the views in which differences are compared: coarse, so that what is out of
 * focus in one frame does not count. */
#define COMPARE_SIDE 400

#define QUALITY 95

typedef struct
{
  int width, height;
  float *sums; /* blue, green, red and weight of each pixel */
  WmPixels *middle;
  WmPixels *small; /* the middle one for comparing */
} Stack;

static WmPixels *
shrink (WmPixels *pixels, int side, const char *name, GError **error)
{
  double scale = MIN (1.0, (double)side / MAX (pixels->width, pixels->height));
  g_autoptr (WmVipsImage) image =
      wm_vips_scale_to (wm_pixels_to_vips (pixels), MAX (1, (int)(pixels->width * scale)),
                        MAX (1, (int)(pixels->height * scale)), name, error);

  return image == NULL ? NULL : wm_vips_to_pixels (image, name, NULL, error);
}

/* Mean difference where both have a picture. */
static double
difference (WmPixels *a, WmPixels *b)
{
  double sum = 0, count = 0;

  for (int y = 0; y < MIN (a->height, b->height); y++)
    for (int x = 0; x < MIN (a->width, b->width); x++)
      {
        const guint8 *p = a->data + y * a->stride + (gsize)x * 4;
        const guint8 *q = b->data + y * b->stride + (gsize)x * 4;

        if (p[3] < 255 || q[3] < 255)
          continue;
        sum += abs (p[0] - q[0]) + abs (p[1] - q[1]) + abs (p[2] - q[2]);
        count += 3;
      }

  return count > 0 ? sum / count : G_MAXDOUBLE;
}

/* The frame as it lies, or laid on the middle one where that is measurably better. */
static WmPixels *
lay_on_middle (Stack *stack, WmPixels *frame, const char *name, gboolean *moved,
               GCancellable *cancellable)
{
  WmAlignImage before = { stack->middle->data, stack->width, stack->height,
                          stack->middle->stride, 4 };
  WmAlignImage after = { frame->data, frame->width, frame->height, frame->stride, 4 };
  static const double identity[9] = { 1, 0, 0, 0, 1, 0, 0, 0, 1 };
  WmAlignment alignment;
  g_autoptr (WmPixels) laid = NULL;
  g_autoptr (WmPixels) small_laid = NULL;
  g_autoptr (WmPixels) small_frame = NULL;

  *moved = FALSE;
  if (!wm_align_refine_images (&before, &after, identity, cancellable, NULL, NULL,
                               &alignment, NULL)
      || !alignment.aligned)
    return wm_pixels_ref (frame);

  laid =
      wm_warp_region (frame, 1, alignment.matrix, 0, 0, 1, stack->width, stack->height);
  if (laid != NULL)
    small_laid = shrink (laid, COMPARE_SIDE, name, NULL);
  small_frame = shrink (frame, COMPARE_SIDE, name, NULL);
  if (small_laid == NULL || small_frame == NULL
      || difference (small_laid, stack->small)
             > BETTER * difference (small_frame, stack->small))
    return wm_pixels_ref (frame);

  *moved = TRUE;
  return g_steal_pointer (&laid);
}

/* Absolute Laplacian of the luma of one row, kernel [0 1 0; 1 -4 1; 0 1 0]. */
static void
laplacian_row (WmPixels *p, int y, float *out)
{
  const guint8 *row = p->data + (gsize)y * p->stride;
  const guint8 *up = p->data + (gsize)MAX (y - 1, 0) * p->stride;
  const guint8 *down = p->data + (gsize)MIN (y + 1, p->height - 1) * p->stride;

  for (int x = 0; x < p->width; x++)
    {
      int at = 4 * x;
      int left = 4 * MAX (x - 1, 0), right = 4 * MIN (x + 1, p->width - 1);
      float sum = 0;
      static const float share[3] = { 0.114f, 0.587f, 0.299f };

      for (int c = 0; c < 3; c++)
        sum += share[c]
               * (float)(up[at + c] + down[at + c] + row[left + c] + row[right + c]
                         - 4 * row[at + c]);
      out[x] = fabsf (sum);
    }
}

/* Running mean over WINDOW px to each side, along a line of @count at @step. */
static void
mean_line (const float *from, float *to, int count, gsize step)
{
  float sum = 0;
  int inside = 0;

  for (int i = 0; i < MIN (WINDOW, count); i++, inside++)
    sum += from[(gsize)i * step];
  for (int i = 0; i < count; i++)
    {
      if (i + WINDOW < count)
        {
          sum += from[(gsize)(i + WINDOW) * step];
          inside++;
        }
      if (i - WINDOW > 0)
        {
          sum -= from[(gsize)(i - WINDOW - 1) * step];
          inside--;
        }
      to[(gsize)i * step] = sum / (float)inside;
    }
}

static void
add_row (Stack *stack, WmPixels *frame, int y, const float *sharpness)
{
  const guint8 *p = frame->data + (gsize)y * frame->stride;
  float *sum = stack->sums + (gsize)y * stack->width * 4;

  for (int x = 0; x < stack->width; x++, p += 4, sum += 4)
    {
      float weight = powf (sharpness[x] + FLOOR, POWER);

      if (p[3] < 255)
        continue;
      sum[0] += weight * p[0];
      sum[1] += weight * p[1];
      sum[2] += weight * p[2];
      sum[3] += weight;
    }
}

static void
add_frame (Stack *stack, WmPixels *frame)
{
  int width = stack->width;
  gsize size = (gsize)(STRIP_ROWS + 2 * WINDOW) * width;
  g_autofree float *raw = g_new (float, size);
  g_autofree float *along = g_new (float, size);

  for (int top = 0; top < stack->height; top += STRIP_ROWS)
    {
      int first = MAX (0, top - WINDOW);
      int end = MIN (stack->height, top + STRIP_ROWS + WINDOW);

      for (int y = first; y < end; y++)
        {
          float *row = raw + (gsize)(y - first) * width;

          laplacian_row (frame, y, row);
          mean_line (row, along + (gsize)(y - first) * width, width, 1);
        }
      for (int x = 0; x < width; x++)
        mean_line (along + x, raw + x, end - first, (gsize)width);
      for (int y = top; y < MIN (stack->height, top + STRIP_ROWS); y++)
        add_row (stack, frame, y, raw + (gsize)(y - first) * width);
    }
}

static WmPixels *
finish (const Stack *stack)
{
  WmPixels *out = wm_pixels_new (stack->width, stack->height);
  const float *sum = stack->sums;

  if (out == NULL)
    return NULL;
  for (gsize i = 0; i < (gsize)stack->width * stack->height; i++, sum += 4)
    {
      guint8 *p = out->data + 4 * i;

      for (int c = 0; c < 3; c++)
        p[c] = sum[3] > 0 ? (guint8)lroundf (sum[c] / sum[3]) : 255;
      p[3] = 255;
    }

  return out;
}

static gboolean
write_jpeg (WmPixels *pixels, const char *dest, GError **error)
{
  g_autoptr (GBytes) bytes = wm_jpeg_encode (pixels, QUALITY, error);
  g_autoptr (WmAtomicFile) file = NULL;
  gsize size;
  const void *data;

  if (bytes != NULL)
    file = wm_atomic_file_new (dest, error);
  if (file == NULL)
    return FALSE;

  data = g_bytes_get_data (bytes, &size);
  if (fwrite (data, 1, size, file->stream) != size)
    {
      wm_photo_set_errno (error, errno, file->name);
      return FALSE;
    }
  return wm_atomic_file_commit (file, TRUE, error);
}

static WmPixels *
load_frame (const Stack *stack, const char *path, GCancellable *cancellable,
            GError **error)
{
  g_autoptr (WmPixels) frame = NULL;
  g_autoptr (WmPhotoFacts) facts = wm_photo_probe_file (path, error);
  g_autofree char *name = wm_photo_display_name (path);
  double scale;

  if (facts == NULL)
    return NULL;

  scale =
      MIN (1.0, sqrt ((double)WM_STACK_PIXELS / ((double)facts->width * facts->height)));
  frame = wm_photo_load_fit (path, MAX (1, (int)(facts->width * scale)),
                             MAX (1, (int)(facts->height * scale)), cancellable, error);
  if (frame != NULL && stack->width > 0
      && (frame->width != stack->width || frame->height != stack->height))
    {
      wm_photo_set_error (error, WM_PHOTO_ERROR_LYING, name,
                          _ ("it is not of the same size as the other frames"));
      return NULL;
    }
  return g_steal_pointer (&frame);
}

static gboolean
begin (Stack *stack, const char *path, GCancellable *cancellable, GError **error)
{
  stack->middle = load_frame (stack, path, cancellable, error);
  if (stack->middle == NULL)
    return FALSE;

  stack->width = stack->middle->width;
  stack->height = stack->middle->height;
  stack->small = shrink (stack->middle, COMPARE_SIDE, path, error);
  stack->sums = g_try_new0 (float, (gsize)stack->width * stack->height * 4);
  if (stack->small != NULL && stack->sums != NULL)
    return TRUE;

  if (stack->sums == NULL && stack->small != NULL)
    wm_photo_set_error (error, WM_PHOTO_ERROR_NO_MEMORY, path, NULL);
  return FALSE;
}

static gboolean
add_file (Stack *stack, const char *path, int *n_moved, GCancellable *cancellable,
          GError **error)
{
  g_autoptr (WmPixels) frame = load_frame (stack, path, cancellable, error);
  g_autoptr (WmPixels) laid = NULL;
  gboolean moved;

  if (frame == NULL)
    return FALSE;

  laid = lay_on_middle (stack, frame, path, &moved, cancellable);
  if (g_cancellable_set_error_if_cancelled (cancellable, error))
    return FALSE;
  add_frame (stack, laid);
  *n_moved += moved;
  return TRUE;
}

gboolean
wm_photo_stack (const char *const *paths, int n, const char *dest, int *n_moved,
                WmStackProgress progress, gpointer user_data, GCancellable *cancellable,
                GError **error)
{
  Stack stack = { 0 };
  g_autoptr (WmPixels) merged = NULL;
  gboolean done;
  int moved = 0;

  g_return_val_if_fail (n >= WM_STACK_LEAST && n <= WM_STACK_MOST, FALSE);

  done = begin (&stack, paths[n / 2], cancellable, error);
  if (done)
    add_frame (&stack, stack.middle);
  for (int i = 0; done && i < n; i++)
    {
      if (i != n / 2)
        done = add_file (&stack, paths[i], &moved, cancellable, error);
      if (progress != NULL)
        progress ((i + 1.0) / (n + 1.0), user_data);
    }

  if (done)
    merged = finish (&stack);
  g_clear_pointer (&stack.middle, wm_pixels_unref);
  g_clear_pointer (&stack.small, wm_pixels_unref);
  g_free (stack.sums);

  if (done && merged == NULL)
    wm_photo_set_error (error, WM_PHOTO_ERROR_NO_MEMORY, paths[0], NULL);
  if (merged == NULL || !write_jpeg (merged, dest, error))
    return FALSE;
  if (n_moved != NULL)
    *n_moved = moved;
  if (progress != NULL)
    progress (1.0, user_data);
  return TRUE;
}
