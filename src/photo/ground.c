/* ground.c: which parts of a photo are the piece, and which the cloth under it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/ground.h"

#include <stdlib.h>

/* A block is the piece from three times the border's own spread, and never under this
 * many of 255 steps: light falls off over the cloth by about that much on our sample
 * photos. */
#define SPREADS 3
#define LEAST 18

typedef struct
{
  guint8 channel[3];
} Mean;

static Mean
mean_of_block (WmPixels *pixels, int x0, int y0, int block)
{
  guint sum[3] = { 0 }, n = 0;
  Mean mean;

  for (int y = y0; y < y0 + block; y++)
    {
      const guint8 *p = pixels->data + y * pixels->stride + x0 * 4;

      for (int x = 0; x < block; x++, p += 4, n++)
        for (int c = 0; c < 3; c++)
          sum[c] += p[c];
    }
  for (int c = 0; c < 3; c++)
    mean.channel[c] = sum[c] / n;
  return mean;
}

static int
compare_bytes (const void *a, const void *b)
{
  return *(const guint8 *)a - *(const guint8 *)b;
}

static guint8
median (guint8 *values, int n)
{
  qsort (values, n, 1, compare_bytes);
  return values[n / 2];
}

/* The ground's colour in one channel and how far it spreads: medians over the border's
 * blocks, so that a ruler or a chain leaving the picture does not count. */
static void
find_ground (const Mean *means, int columns, int rows, int channel, int *colour,
             int *spread)
{
  int n = 0;
  g_autofree guint8 *values = g_malloc (2 * (columns + rows));

  for (int i = 0; i < columns * rows; i++)
    {
      int column = i % columns, row = i / columns;

      if (column == 0 || row == 0 || column == columns - 1 || row == rows - 1)
        values[n++] = means[i].channel[channel];
    }
  *colour = median (values, n);
  for (int i = 0; i < n; i++)
    values[i] = abs (values[i] - *colour);
  *spread = median (values, n);
}

guint8 *
wm_ground_map (WmPixels *pixels, int block, int *columns, int *rows)
{
  int colour[3], spread[3], n;
  g_autofree Mean *means = NULL;
  guint8 *map;

  *columns = pixels->width / block;
  *rows = pixels->height / block;
  if (*columns < 3 || *rows < 3)
    return NULL;

  n = *columns * *rows;
  means = g_new (Mean, n);
  for (int i = 0; i < n; i++)
    means[i] = mean_of_block (pixels, i % *columns * block, i / *columns * block, block);
  for (int c = 0; c < 3; c++)
    find_ground (means, *columns, *rows, c, &colour[c], &spread[c]);

  map = g_malloc (n);
  for (int i = 0; i < n; i++)
    {
      int most = 0;

      for (int c = 0; c < 3; c++)
        most = MAX (most, 255 * abs (means[i].channel[c] - colour[c])
                              / MAX (2 * SPREADS * spread[c], 2 * LEAST));
      map[i] = MIN (most, 255);
    }
  return map;
}
