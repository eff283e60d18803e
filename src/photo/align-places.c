/* align-places.c: choosing the places of the piece that are looked for
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/align-track.h"

#include <math.h>
#include <string.h>

/* Slopes are gathered over cells of so many pixels; one place a cell. */
#define CELL 6

/* Half side of the square that is compared, and room for its slopes. */
#define HALF 8

/* Mean slope, grey levels a pixel, below which a cell is plain. */
#define LEAST_SLOPE 1.5f

/* Ratio of the two slope moments below which a place is a straight edge: the
 * camera's noise alone gives about 0.03 on an edge of 30 grey levels. */
#define STRAIGHT 0.06f

typedef struct
{
  WmPlace place;
  float strength;
} Choice;

static int
compare_choices (gconstpointer a, gconstpointer b)
{
  const Choice *p = a;
  const Choice *q = b;

  return p->strength > q->strength ? -1 : p->strength < q->strength ? 1 : 0;
}

/* Moments of the slopes in the square around the corner (x, y). */
static gboolean
weigh_place (const WmPlane *grey, int x, int y, Choice *choice)
{
  float xx = 0, xy = 0, yy = 0, sum = 0, half, diff, l1, l2, vx, vy, n;
  const int inner = HALF - 2;

  for (int j = y - inner; j < y + inner; j++)
    for (int i = x - inner; i < x + inner; i++)
      {
        const float *v = grey->v + (gsize)j * (gsize)grey->width + (gsize)i;
        float gx = v[1] - v[-1];
        float gy = v[grey->width] - v[-grey->width];
        float size = sqrtf (gx * gx + gy * gy) + 1e-3f;

        xx += gx * gx / size;
        xy += gx * gy / size;
        yy += gy * gy / size;
        sum += size;
      }
  n = (float)(4 * inner * inner);
  if (sum / n < LEAST_SLOPE)
    return FALSE;
  half = 0.5f * (xx + yy);
  diff = sqrtf (0.25f * (xx - yy) * (xx - yy) + xy * xy);
  l1 = half + diff;
  l2 = half - diff;
  vx = xy;
  vy = l1 - xx;
  if (fabsf (vx) + fabsf (vy) < 1e-4f * l1)
    {
      vx = xx >= yy ? 1 : 0;
      vy = xx >= yy ? 0 : 1;
    }
  n = sqrtf (vx * vx + vy * vy);
  choice->place =
      (WmPlace) { x, y, vx / n, vy / n, CLAMP ((l2 / l1 - STRAIGHT) * 2.5f, 0.0f, 1.0f) };
  /* corners first, but edges too: smooth metal has little else */
  choice->strength = sqrtf (MIN (sum, 4000.0f)) * (0.35f + 0.65f * choice->place.along);
  return TRUE;
}

/* Whether a middle or a corner of the cell is on the piece: spares most cells. */
static gboolean
touches_piece (const WmPieceMask *piece, double x0, double y0, double x1, double y1)
{
  return wm_piece_mask_has (piece, 0.5 * (x0 + x1), 0.5 * (y0 + y1))
         || wm_piece_mask_has (piece, x0, y0) || wm_piece_mask_has (piece, x1, y0)
         || wm_piece_mask_has (piece, x0, y1) || wm_piece_mask_has (piece, x1, y1);
}

/* The corner in the cell with the strongest slope beside it. */
static gboolean
find_in_cell (const WmPlane *grey, const WmPieceMask *piece, int level, int x0, int y0,
              Choice *choice)
{
  double factor = 1 << level;
  float most = 0;
  int bx = 0, by = 0;

  if (!touches_piece (piece, x0 * factor, y0 * factor, (x0 + CELL) * factor,
                      (y0 + CELL) * factor))
    return FALSE;

  for (int y = y0; y < y0 + CELL; y++)
    for (int x = x0; x < x0 + CELL; x++)
      {
        const float *v = grey->v + (gsize)y * (gsize)grey->width + (gsize)x;
        float slope = fabsf (v[1] - v[-1]) + fabsf (v[grey->width] - v[-grey->width]);

        if (slope > most)
          {
            most = slope;
            bx = x;
            by = y;
          }
      }
  if (!(most > 2 * LEAST_SLOPE) || !wm_piece_mask_has (piece, bx * factor, by * factor))
    return FALSE;
  return weigh_place (grey, bx, by, choice);
}

GArray *
wm_places_choose (const WmPlane *grey, const WmPieceMask *piece, int level, int most)
{
  GArray *places = g_array_new (FALSE, FALSE, sizeof (WmPlace));
  g_autoptr (GArray) choices = g_array_new (FALSE, FALSE, sizeof (Choice));
  int margin = HALF + 2;
  int coarse = 1, columns = grey->width / CELL + 1;
  g_autofree guint8 *taken = NULL;

  for (int y = margin; y + CELL < grey->height - margin; y += CELL)
    for (int x = margin; x + CELL < grey->width - margin; x += CELL)
      {
        Choice choice;

        if (find_in_cell (grey, piece, level, x, y, &choice))
          g_array_append_val (choices, choice);
      }
  g_array_sort (choices, compare_choices);

  /* spread: at most one place in a coarse square sized so that about @most fit */
  while (choices->len / (guint)(coarse * coarse) > (guint)most * 3 / 2)
    coarse++;
  coarse *= CELL;
  columns = grey->width / coarse + 2;
  taken = g_new0 (guint8, (gsize)columns * (gsize)(grey->height / coarse + 2));
  for (guint k = 0; k < choices->len && places->len < (guint)most; k++)
    {
      const WmPlace *p = &g_array_index (choices, Choice, k).place;
      guint8 *square = taken + (gsize)(p->y / coarse) * (gsize)columns + p->x / coarse;

      if (*square)
        continue;
      *square = 1;
      g_array_append_val (places, *p);
    }
  return places;
}
