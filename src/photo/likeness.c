/* likeness.c: do two photos show the same thing from the same side?
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/likeness.h"

#include <math.h>
#include <string.h>

/* Cells that a hand may have moved between two frames, each way: an eighth of the
 * picture (our choice). */
#define MOST_SHIFT 6

/* A cell is the mean of so many cells to each side, so that half a cell of movement
 * matters little (our choice). */
#define SPREAD 1

/* Photos of other proportions were turned, or cropped: not one burst. */
#define SAME_SHAPE 0.05

static float
mean_of_cell (WmPixels *pixels, int x1, int y1, int x2, int y2)
{
  double sum = 0;

  for (int y = y1; y < y2; y++)
    {
      const guint8 *p = pixels->data + (gsize)y * pixels->stride + (gsize)x1 * 4;

      for (int x = x1; x < x2; x++, p += 4)
        sum += p[0] + 2 * p[1] + p[2];
    }
  return (float)(sum / (4.0 * (x2 - x1) * (y2 - y1)));
}

void
wm_likeness_take (WmPixels *pixels, WmLikeness *out)
{
  double cell = (double)MAX (pixels->width, pixels->height) / WM_LIKENESS_SIDE;

  memset (out, 0, sizeof *out);
  out->columns = CLAMP ((int)lround (pixels->width / cell), 1, WM_LIKENESS_SIDE);
  out->rows = CLAMP ((int)lround (pixels->height / cell), 1, WM_LIKENESS_SIDE);
  for (int row = 0; row < out->rows; row++)
    for (int column = 0; column < out->columns; column++)
      {
        int x1 = pixels->width * MAX (column - SPREAD, 0) / out->columns;
        int y1 = pixels->height * MAX (row - SPREAD, 0) / out->rows;
        int x2 = pixels->width * MIN (column + 1 + SPREAD, out->columns) / out->columns;
        int y2 = pixels->height * MIN (row + 1 + SPREAD, out->rows) / out->rows;

        out->grey[row * WM_LIKENESS_SIDE + column] =
            mean_of_cell (pixels, x1, y1, MAX (x2, x1 + 1), MAX (y2, y1 + 1));
      }
}

/* Correlation of @a with @b moved by so many cells, where they overlap. */
static double
correlate (const WmLikeness *a, const WmLikeness *b, int dx, int dy)
{
  double sa = 0, sb = 0, saa = 0, sbb = 0, sab = 0, n = 0, va, vb;

  for (int row = MAX (0, dy); row < MIN (a->rows, b->rows + dy); row++)
    for (int column = MAX (0, dx); column < MIN (a->columns, b->columns + dx); column++)
      {
        double p = a->grey[row * WM_LIKENESS_SIDE + column];
        double q = b->grey[(row - dy) * WM_LIKENESS_SIDE + column - dx];

        sa += p;
        sb += q;
        saa += p * p;
        sbb += q * q;
        sab += p * q;
        n++;
      }
  if (n < 1)
    return 0;
  va = saa - sa * sa / n;
  vb = sbb - sb * sb / n;

  /* Plain grey cards are alike; a grey card and a picture are not. */
  if (va < n && vb < n)
    return fabs (sa - sb) < 8 * n ? 1 : 0;
  if (va < n || vb < n)
    return 0;
  return (sab - sa * sb / n) / sqrt (va * vb);
}

double
wm_likeness_compare (const WmLikeness *a, const WmLikeness *b)
{
  double best = 0;

  if (a->columns == 0 || b->columns == 0
      || fabs ((double)a->columns / a->rows - (double)b->columns / b->rows) > SAME_SHAPE)
    return 0;
  for (int dy = -MOST_SHIFT; dy <= MOST_SHIFT; dy++)
    for (int dx = -MOST_SHIFT; dx <= MOST_SHIFT; dx++)
      best = MAX (best, correlate (a, b, dx, dy));
  return best;
}
