/* sheet-corners.c: the corners of a mark to a fraction of a pixel
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/sheet-corners.h"

#include <math.h>

#include "photo/load.h"
#include "reckon/edge.h"

/* How far to both sides of a side is looked, as a share of its length: within the frame
 * (0.18 of the mark) and the white round it (WM_SHEET_QUIET). */
#define WM_REACH_SHARE 0.12
#define N_PLACES 32
#define LEAST_PLACES 14
/* The ends of a side are left out: there the other side's blur shows. */
#define WM_END_SHARE 0.14
/* Paper against frame, in shares of full light: less is no clear edge. */
#define WM_LEAST_STEP 0.06
/* Places farther than this from the line's middle course are left out (px, and in
 * spreads). */
#define WM_STRAY_SPREADS 2.5
#define MAX_STEPS 400

typedef struct
{
  WmPixels *pixels;
  double left, top; /* photo px of the pixels' corner */
} Part;

static double
light_of (const guint8 *bgra)
{
  static gsize once = 0;
  static double table[256];

  if (g_once_init_enter (&once))
    {
      for (int i = 0; i < 256; i++)
        table[i] = wm_linear_from_srgb (i / 255.0);
      g_once_init_leave (&once, 1);
    }
  /* ITU-R BT.709 weights of light, from memory. */
  return 0.0722 * table[bgra[0]] + 0.7152 * table[bgra[1]] + 0.2126 * table[bgra[2]];
}

static double
light_at (const Part *part, double x, double y)
{
  WmPixels *pixels = part->pixels;
  double px = CLAMP (x - part->left - 0.5, 0.0, pixels->width - 1.001);
  double py = CLAMP (y - part->top - 0.5, 0.0, pixels->height - 1.001);
  int ix = (int)px, iy = (int)py;
  double fx = px - ix, fy = py - iy;
  const guint8 *a = pixels->data + iy * pixels->stride + 4 * ix;
  const guint8 *b = pixels->height > 1 ? a + pixels->stride : a;

  return (1 - fy) * ((1 - fx) * light_of (a) + fx * light_of (a + 4))
         + fy * ((1 - fx) * light_of (b) + fx * light_of (b + 4));
}

/* Where along (@nx, @ny) from @at the light is half way between the inner and the outer
 * end; NaN without a clear edge. */
static double
find_edge (const Part *part, WmPoint at, double nx, double ny, double reach)
{
  int n = CLAMP ((int)(4 * reach), 8, MAX_STEPS);
  double light[MAX_STEPS + 1];
  double step = 2 * reach / n, inner = 0, outer = 0, half;
  int ends = MAX (n / 6, 1);

  for (int i = 0; i <= n; i++)
    light[i] =
        light_at (part, at.x + nx * (i * step - reach), at.y + ny * (i * step - reach));
  for (int i = 0; i < ends; i++)
    {
      inner += light[i] / ends;
      outer += light[n - i] / ends;
    }
  if (outer - inner < WM_LEAST_STEP)
    return NAN;
  half = (inner + outer) / 2;
  for (int i = 0; i < n; i++)
    if (light[i] < half && light[i + 1] >= half)
      return (i + (half - light[i]) / (light[i + 1] - light[i])) * step - reach;
  return NAN;
}

typedef struct
{
  double along[N_PLACES], across[N_PLACES];
  int n;
} Places;

/* across = a + b along; strays are left out once. */
static gboolean
fit_line (Places *places, double *out_a, double *out_b)
{
  for (int round = 0; round < 3; round++)
    {
      double s = 0, st = 0, sa = 0, stt = 0, sta = 0, spread = 0, det;
      int kept = 0;

      for (int i = 0; i < places->n; i++)
        {
          double t = places->along[i], a = places->across[i];

          s++;
          st += t;
          sa += a;
          stt += t * t;
          sta += t * a;
        }
      det = s * stt - st * st;
      if (places->n < LEAST_PLACES || !(fabs (det) > 1e-9))
        return FALSE;
      *out_a = (stt * sa - st * sta) / det;
      *out_b = (s * sta - st * sa) / det;
      for (int i = 0; i < places->n; i++)
        spread += pow (places->across[i] - *out_a - *out_b * places->along[i], 2);
      spread = sqrt (spread / places->n);
      for (int i = 0; i < places->n; i++)
        if (fabs (places->across[i] - *out_a - *out_b * places->along[i])
            <= MAX (WM_STRAY_SPREADS * spread, 0.05))
          {
            places->along[kept] = places->along[i];
            places->across[kept++] = places->across[i];
          }
      places->n = kept;
    }
  return TRUE;
}

typedef struct
{
  WmPoint at;
  double dx, dy;
} Line;

static gboolean
find_side (const Part *part, WmPoint from, WmPoint to, Line *line)
{
  double length = hypot (to.x - from.x, to.y - from.y);
  double dx = (to.x - from.x) / length, dy = (to.y - from.y) / length;
  double nx = dy, ny = -dx; /* outwards, as the corners go clockwise */
  double a, b;
  Places places = { .n = 0 };

  for (int i = 0; i < N_PLACES; i++)
    {
      double t =
          length * (WM_END_SHARE + (1 - 2 * WM_END_SHARE) * i / (double)(N_PLACES - 1));
      WmPoint at = { from.x + t * dx, from.y + t * dy };
      double edge = find_edge (part, at, nx, ny, WM_REACH_SHARE * length);

      if (!isnan (edge))
        {
          places.along[places.n] = t;
          places.across[places.n++] = edge;
        }
    }
  if (!fit_line (&places, &a, &b))
    return FALSE;
  line->at = (WmPoint) { from.x + a * nx, from.y + a * ny };
  line->dx = dx + b * nx;
  line->dy = dy + b * ny;
  return TRUE;
}

static gboolean
find_crossing (const Line *one, const Line *two, WmPoint *out)
{
  double det = one->dx * two->dy - one->dy * two->dx;
  double t;

  if (!(fabs (det) > 1e-3))
    return FALSE;
  t = ((two->at.x - one->at.x) * two->dy - (two->at.y - one->at.y) * two->dx) / det;
  *out = (WmPoint) { one->at.x + t * one->dx, one->at.y + t * one->dy };
  return TRUE;
}

/* The mark and the white round it at true pixels. */
static gboolean
load_part (const char *path, const WmPoint corners[4], Part *part,
           GCancellable *cancellable, GError **error)
{
  double left = G_MAXDOUBLE, top = G_MAXDOUBLE, right = -G_MAXDOUBLE,
         bottom = -G_MAXDOUBLE, room;

  for (int i = 0; i < 4; i++)
    {
      left = MIN (left, corners[i].x);
      right = MAX (right, corners[i].x);
      top = MIN (top, corners[i].y);
      bottom = MAX (bottom, corners[i].y);
    }
  room = 0.2 * MAX (right - left, bottom - top) + 2;
  part->left = MAX (floor (left - room), 0);
  part->top = MAX (floor (top - room), 0);
  right = ceil (right + room);
  bottom = ceil (bottom + room);
  part->pixels = wm_photo_load_region (path, part->left, part->top, right - part->left,
                                       bottom - part->top, (int)(right - part->left),
                                       (int)(bottom - part->top), cancellable, error);
  return part->pixels != NULL;
}

gboolean
wm_sheet_corners_refine (const char *path, WmPoint corners[4], GCancellable *cancellable,
                         GError **error)
{
  /* The second time from better corners: the first may start a few pixels off. */
  for (int pass = 0; pass < 2; pass++)
    {
      g_autoptr (WmPixels) pixels = NULL;
      Part part;
      Line sides[4];
      WmPoint found[4];

      if (!load_part (path, corners, &part, cancellable, error))
        return FALSE;
      pixels = part.pixels;
      for (int i = 0; i < 4; i++)
        if (!find_side (&part, corners[i], corners[(i + 1) % 4], &sides[i]))
          return FALSE;
      for (int i = 0; i < 4; i++)
        if (!find_crossing (&sides[(i + 3) % 4], &sides[i], &found[i]))
          return FALSE;
      for (int i = 0; i < 4; i++)
        corners[i] = found[i];
    }
  return TRUE;
}
