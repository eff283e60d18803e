/* align-track.c: looking for places of the piece on the other photo
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/align-track.h"

#include <math.h>
#include <string.h>

#define SIDE 16 /* of the square compared: one vector register wide, times two */
#define WINDOW (SIDE + 2 * WM_TRACK_REACH)

/* Slopes of about the camera's noise count little: grey levels over 2 pixels. */
#define SOFT 3.0f

/* The square as two planes of damped slopes, 0 off the piece. */
typedef struct
{
  float u[SIDE][SIDE];
  float v[SIDE][SIDE];
  float on[SIDE][SIDE]; /* 1 on the piece, else 0 */
  float size;           /* sum of squares of u and v */
} Square;

struct _WmSquares
{
  int n;
  Square at[];
};

typedef struct
{
  float u[WINDOW][WINDOW];
  float v[WINDOW][WINDOW];
} Window;

static inline void
damp_slope (float gx, float gy, float *u, float *v)
{
  float f = 1.0f / sqrtf (sqrtf (gx * gx + gy * gy) + SOFT);

  *u = gx * f;
  *v = gy * f;
}

static void
cut_square (const WmPlane *grey, const WmPieceMask *piece, int level, int x0, int y0,
            Square *square)
{
  double factor = 1 << level;

  square->size = 1e-6f;
  for (int y = 0; y < SIDE; y++)
    {
      const float *row = grey->v + (gsize)(y0 + y) * (gsize)grey->width + (gsize)x0;

      for (int x = 0; x < SIDE; x++)
        {
          float on =
              wm_piece_mask_has (piece, (x0 + x + 0.5) * factor, (y0 + y + 0.5) * factor);
          float u, v;

          damp_slope (row[x + 1] - row[x - 1],
                      row[x + grey->width] - row[x - grey->width], &u, &v);
          square->u[y][x] = on * u;
          square->v[y][x] = on * v;
          square->on[y][x] = on;
          square->size += on * (u * u + v * v);
        }
    }
}

#define BORDER 1 /* the slopes need a pixel around */

WM_FAST_KERNEL static void
damp_window (float value[WINDOW + 2 * BORDER][WINDOW + 2 * BORDER], int side,
             Window *window)
{
  for (int y = 0; y < side; y++)
    for (int x = 0; x < side; x++)
      damp_slope (value[y + 1][x + 2] - value[y + 1][x],
                  value[y + 2][x + 1] - value[y][x + 1], &window->u[y][x],
                  &window->v[y][x]);
}

/* Samples the n x n pixels around (px, py) along the derivative d, bilinear, edges
 * repeated. */
WM_FAST_KERNEL static void
sample_window (const WmPlane *plane, float px, float py, const float d[4], int n,
               float value[WINDOW + 2 * BORDER][WINDOW + 2 * BORDER])
{
  float reach = 0.5f * (float)n;
  float wide = (float)plane->width - 1.001f;
  float high = (float)plane->height - 1.001f;
  int stride = plane->width;

  for (int y = 0; y < n; y++)
    {
      float dy = (float)y + 0.5f - reach;

      for (int x = 0; x < n; x++)
        {
          float dx = (float)x + 0.5f - reach;
          float sx = px + d[0] * dx + d[1] * dy - 0.5f;
          float sy = py + d[2] * dx + d[3] * dy - 0.5f;

          sx = sx < 0 ? 0 : sx > wide ? wide : sx;
          sy = sy < 0 ? 0 : sy > high ? high : sy;

          int ix = (int)sx, iy = (int)sy;
          float fx = sx - (float)ix, fy = sy - (float)iy;
          const float *v = plane->v + iy * stride + ix;

          value[y][x] = (1 - fy) * (v[0] + fx * (v[1] - v[0]))
                        + fy * (v[stride] + fx * (v[stride + 1] - v[stride]));
        }
    }
}

/* Slopes of the other photo as seen from this one: sampled along the local
 * derivative of the matrix, from the pyramid level that has about these pixels. */
static gboolean
cut_window (WmPlane *const *after, int level, const double m[9], const WmPlace *place,
            int side, Window *window)
{
  float value[WINDOW + 2 * BORDER][WINDOW + 2 * BORDER];
  double factor = 1 << level;
  WmPoint centre = { place->x * factor, place->y * factor };
  WmPoint p = wm_align_map (m, centre);
  double scale = wm_matrix_scale_at (m, centre);
  double w = m[6] * centre.x + m[7] * centre.y + m[8];
  int use = level, n = side + 2 * BORDER;

  if (!(scale > 0.1) || !isfinite (p.x) || !isfinite (p.y))
    return FALSE;
  while (use > 0 && scale * factor / (1 << use) < 0.70)
    use--;
  while (use < WM_PLANE_LEVELS - 1 && scale * factor / (1 << use) > 1.42)
    use++;

  const WmPlane *plane = after[use];
  double unit = 1 << use;
  double step = factor / unit / w;
  const float d[4] = { (float)((m[0] - p.x * m[6]) * step),
                       (float)((m[1] - p.x * m[7]) * step),
                       (float)((m[3] - p.y * m[6]) * step),
                       (float)((m[4] - p.y * m[7]) * step) };
  float px = (float)(p.x / unit), py = (float)(p.y / unit);

  if (px - 4 < 0 || py - 4 < 0 || px + 4 > plane->width || py + 4 > plane->height)
    return FALSE;
  sample_window (plane, px, py, d, n, value);
  damp_window (value, side, window);
  return TRUE;
}

WM_FAST_KERNEL static void
compare_at (const Square *square, const Window *window, int x0, int y0, float *product,
            float *size)
{
  float a[SIDE] = { 0 };
  float b[SIDE] = { 0 };

  for (int y = 0; y < SIDE; y++)
    {
      const float *su = square->u[y];
      const float *sv = square->v[y];
      const float *on = square->on[y];
      const float *wu = window->u[y0 + y] + x0;
      const float *wv = window->v[y0 + y] + x0;

      for (int x = 0; x < SIDE; x++)
        {
          a[x] += su[x] * wu[x] + sv[x] * wv[x];
          b[x] += on[x] * (wu[x] * wu[x] + wv[x] * wv[x]);
        }
    }
  *product = *size = 0.0f;
  for (int x = 0; x < SIDE; x++)
    {
      *product += a[x];
      *size += b[x];
    }
}

#define MAX_SHIFTS (2 * WM_TRACK_REACH + 1)

/* Top of the paraboloid through the 3 x 3 values around the best. */
static void
settle_peak (float score[MAX_SHIFTS][MAX_SHIFTS], int bx, int by, double *x, double *y)
{
  double c = score[by][bx];
  double gx = 0.5 * (score[by][bx + 1] - score[by][bx - 1]);
  double gy = 0.5 * (score[by + 1][bx] - score[by - 1][bx]);
  double xx = score[by][bx + 1] + score[by][bx - 1] - 2 * c;
  double yy = score[by + 1][bx] + score[by - 1][bx] - 2 * c;
  double xy = 0.25
              * (score[by + 1][bx + 1] - score[by + 1][bx - 1] - score[by - 1][bx + 1]
                 + score[by - 1][bx - 1]);
  double soft = 0.02 * (xx + yy) - 1e-6;
  double det;

  xx += soft;
  yy += soft;
  det = xx * yy - xy * xy;
  *x = *y = 0;
  if (det > 1e-12)
    {
      *x = CLAMP (-(yy * gx - xy * gy) / det, -0.75, 0.75);
      *y = CLAMP (-(xx * gy - xy * gx) / det, -0.75, 0.75);
    }
}

static void
find_place (const Square *square, const Window *window, int reach, double factor,
            WmSighting *s)
{
  float score[MAX_SHIFTS][MAX_SHIFTS];
  float own = square->size, best = -2.0f;
  int n = 2 * reach + 1, bx = reach, by = reach;
  double x, y;

  for (int j = 0; j < n; j++)
    for (int i = 0; i < n; i++)
      {
        float product, size;

        compare_at (square, window, i, j, &product, &size);
        score[j][i] = product / sqrtf (own * (size + 0.05f * own));
        if (score[j][i] > best)
          {
            best = score[j][i];
            bx = i;
            by = j;
          }
      }
  s->likeness = best;
  x = y = 0;
  if (bx > 0 && by > 0 && bx < n - 1 && by < n - 1)
    settle_peak (score, bx, by, &x, &y);
  s->shift = (WmPoint) { (bx - reach + x) * factor, (by - reach + y) * factor };
}

WmSquares *
wm_squares_new (const WmPlane *grey, const WmPieceMask *piece, int level,
                const GArray *places)
{
  WmSquares *self = g_malloc (sizeof (WmSquares) + places->len * sizeof (Square));

  self->n = (int)places->len;
  for (int k = 0; k < self->n; k++)
    {
      const WmPlace *place = &g_array_index (places, WmPlace, k);

      cut_square (grey, piece, level, place->x - SIDE / 2, place->y - SIDE / 2,
                  &self->at[k]);
    }
  return self;
}

void
wm_squares_free (WmSquares *self)
{
  g_free (self);
}

void
wm_track_places (const WmSquares *squares, WmPlane *const *after, int level,
                 const double to_after[9], const GArray *places, int n, int reach,
                 WmSighting *sightings)
{
  double factor = 1 << level;

  for (int k = 0; k < n; k++)
    {
      const WmPlace *place = &g_array_index (places, WmPlace, k);
      WmSighting *s = &sightings[k];
      Window window;

      *s = (WmSighting) { .place = *place,
                          .at = { place->x * factor, place->y * factor },
                          .likeness = -2 };
      if (cut_window (after, level, to_after, place, SIDE + 2 * reach, &window))
        find_place (&squares->at[k], &window, reach, factor, s);
    }
}
