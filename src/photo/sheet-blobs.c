/* sheet-blobs.c: dark and light patches of a photo, and which lies in which
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/sheet-blobs.h"

#include <string.h>

/* The surroundings: a square of so many sixteenths of the longer side about a pixel,
 * larger than the largest mark that still shows three (a tenth of the field's width). */
#define WM_AROUND_SHARE 0.14
/* Dark: under this share of the mean around it, and by so many steps (of 255) at the
 * least, or the noise of a plain dark ground would be full of patches. */
#define WM_DARK_SHARE 0.82
#define WM_DARK_STEPS 8

static guint8
luma (const guint8 *bgra)
{
  /* ITU-R BT.601 weights in 256ths, from memory. */
  return (guint8)((29 * bgra[0] + 150 * bgra[1] + 77 * bgra[2]) >> 8);
}

/* Sums of all pixels above and left of each place; (width + 1) x (height + 1). */
static guint32 *
sum_up (const guint8 *grey, int width, int height)
{
  gsize row = (gsize)width + 1;
  guint32 *sums = g_new0 (guint32, row * ((gsize)height + 1));

  for (int y = 0; y < height; y++)
    {
      guint32 line = 0;

      for (int x = 0; x < width; x++)
        {
          line += grey[(gsize)y * width + x];
          sums[(y + 1) * row + x + 1] = sums[y * row + x + 1] + line;
        }
    }
  return sums;
}

static guint8 *
find_dark (WmPixels *pixels)
{
  int width = pixels->width, height = pixels->height;
  int reach = MAX (4, (int)(MAX (width, height) * WM_AROUND_SHARE / 2));
  gsize row = (gsize)width + 1;
  guint8 *grey = g_new (guint8, (gsize)width * height);
  g_autofree guint32 *sums = NULL;

  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++)
      grey[(gsize)y * width + x] = luma (pixels->data + y * pixels->stride + 4 * x);
  sums = sum_up (grey, width, height);

  for (int y = 0; y < height; y++)
    {
      int top = MAX (y - reach, 0), low = MIN (y + reach + 1, height);

      for (int x = 0; x < width; x++)
        {
          int left = MAX (x - reach, 0), right = MIN (x + reach + 1, width);
          guint32 sum = sums[low * row + right] - sums[top * row + right]
                        - sums[low * row + left] + sums[top * row + left];
          double mean = (double)sum / ((low - top) * (right - left));
          guint8 *at = &grey[(gsize)y * width + x];

          *at = *at < mean * WM_DARK_SHARE && *at + WM_DARK_STEPS < mean;
        }
    }
  return grey; /* now 1 = dark */
}

/* ---- labels: union of neighbours -------------------------------------------- */

static int
find_root (int *parents, int i)
{
  while (parents[i] != i)
    {
      parents[i] = parents[parents[i]];
      i = parents[i];
    }
  return i;
}

static void
unite (int *parents, int a, int b)
{
  int i = find_root (parents, a), j = find_root (parents, b);

  /* The earlier pixel stays the root, so that it is the first of its patch. */
  if (i < j)
    parents[j] = i;
  else
    parents[i] = j;
}

/* Dark patches also hold together over corners, light ones do not: so a closed frame
 * parts inside from outside. */
static int *
unite_all (const guint8 *dark, int width, int height)
{
  int *parents = g_new (int, (gsize)width *height);

  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++)
      {
        int i = y * width + x;

        parents[i] = i;
        if (x > 0 && dark[i] == dark[i - 1])
          unite (parents, i, i - 1);
        if (y > 0 && dark[i] == dark[i - width])
          unite (parents, i, i - width);
        if (y > 0 && x > 0 && dark[i] && dark[i - width - 1])
          unite (parents, i, i - width - 1);
        if (y > 0 && x + 1 < width && dark[i] && dark[i - width + 1])
          unite (parents, i, i - width + 1);
      }
  return parents;
}

static void
grow (WmBlob *blob, int x, int y)
{
  blob->area++;
  blob->left = MIN (blob->left, x);
  blob->right = MAX (blob->right, x);
  blob->top = MIN (blob->top, y);
  blob->bottom = MAX (blob->bottom, y);
}

/* What lies above a patch's first pixel (the leftmost of its top row) is round it. */
static void
collect (WmBlobs *self, const guint8 *dark, int *parents)
{
  for (int y = 0; y < self->height; y++)
    for (int x = 0; x < self->width; x++)
      {
        int i = y * self->width + x;
        int root = find_root (parents, i);

        if (root == i)
          {
            WmBlob blob = { .parent = y > 0 ? self->labels[i - self->width] : -1,
                            .left = x,
                            .right = x,
                            .top = y,
                            .bottom = y,
                            .is_dark = dark[i] };

            self->labels[i] = (int)self->blobs->len;
            g_array_append_val (self->blobs, blob);
          }
        else
          self->labels[i] = self->labels[root];
        grow (&g_array_index (self->blobs, WmBlob, self->labels[i]), x, y);
      }
}

WmBlobs *
wm_blobs_new (WmPixels *pixels)
{
  WmBlobs *self = g_new0 (WmBlobs, 1);
  g_autofree guint8 *dark = find_dark (pixels);
  g_autofree int *parents = unite_all (dark, pixels->width, pixels->height);

  self->width = pixels->width;
  self->height = pixels->height;
  self->labels = g_new (int, (gsize)self->width * self->height);
  self->blobs = g_array_new (FALSE, FALSE, sizeof (WmBlob));
  collect (self, dark, parents);
  return self;
}

void
wm_blobs_free (WmBlobs *self)
{
  g_free (self->labels);
  g_array_unref (self->blobs);
  g_free (self);
}
