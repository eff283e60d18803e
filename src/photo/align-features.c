/* align-features.c: finding the blobs, and finding them again
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/align-features.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Lowe 2004, sections 3 and 4: three scales an octave, first blur 1.6 pixels,
 * no blob whose two curvatures differ more than tenfold. */
#define SCALES 3
#define PLANES (SCALES + 3)
#define FIRST_SIGMA 1.6
#define EDGE_RATIO 10.0f
#define MAX_OCTAVES 5

/* A pixel of a reduced photo is itself about this blurred. */
#define CAMERA_SIGMA 0.6

/* Grey levels out of 255. Lowe's 0.03 is 7.6 for a sharp blob, too much for
 * polished metal on cloth in soft light; the best are taken anyway. */
#define LEAST_CONTRAST 1.2f

typedef struct
{
  int octave;
  int scale;
  float x, y;  /* pixels of the octave */
  float sigma; /* pixels of the octave */
  float strength;
  gboolean on_piece;
} Candidate;

typedef struct
{
  int octaves;
  WmPlane *gauss[MAX_OCTAVES][PLANES];
} Stack;

static void
clear_stack (Stack *stack)
{
  for (int o = 0; o < stack->octaves; o++)
    for (int s = 0; s < PLANES; s++)
      wm_plane_free (stack->gauss[o][s]);
}

/* Every second pixel: the plane is blurred enough for that. The pixel taken is
 * the first of two, so places shift by half a pixel: see place_on_level(). */
static WmPlane *
take_every_second (const WmPlane *plane)
{
  WmPlane *out = wm_plane_new (plane->width / 2, plane->height / 2);

  for (int y = 0; y < out->height; y++)
    for (int x = 0; x < out->width; x++)
      out->v[y * out->width + x] = plane->v[2 * y * plane->width + 2 * x];
  return out;
}

static void
build_stack (Stack *stack, const WmPlane *base)
{
  double step = pow (2.0, 1.0 / SCALES);
  g_autoptr (WmPlane) scratch = wm_plane_new (base->width, base->height);

  for (int o = 0; o < MAX_OCTAVES; o++)
    {
      if (o == 0)
        stack->gauss[0][0] = wm_plane_blur (
            base, (float)sqrt (FIRST_SIGMA * FIRST_SIGMA - CAMERA_SIGMA * CAMERA_SIGMA));
      else if (MIN (stack->gauss[o - 1][0]->width, stack->gauss[o - 1][0]->height) < 40)
        break;
      else
        stack->gauss[o][0] = take_every_second (stack->gauss[o - 1][SCALES]);
      stack->octaves = o + 1;
      for (int s = 1; s < PLANES; s++)
        {
          double now = FIRST_SIGMA * pow (step, s - 1);
          double add = now * sqrt (step * step - 1.0);

          stack->gauss[o][s] =
              wm_plane_new (stack->gauss[o][0]->width, stack->gauss[o][0]->height);
          wm_plane_blur_into (stack->gauss[o][s - 1], (float)add, scratch,
                              stack->gauss[o][s]);
        }
    }
}

/* Pixel index in octave @octave to pixels of the base, middles at .5. */
static inline float
place_on_base (float index, int octave)
{
  return index * (float)(1 << octave) + 0.5f;
}

WM_FAST_KERNEL static void
subtract_planes (const float *a, const float *b, float *out, gsize n)
{
  for (gsize k = 0; k < n; k++)
    out[k] = b[k] - a[k];
}

static gboolean
is_extreme (const WmPlane *const d[3], gsize at, int width)
{
  float v = d[1]->v[at];
  int sign = v > 0 ? 1 : -1;

  for (int s = 1; s != 4; s++)
    for (int j = -1; j <= 1; j++)
      {
        const float *row = d[s % 3]->v + at + (gssize)j * width;

        for (int i = -1; i <= 1; i++)
          if ((s % 3 != 1 || i != 0 || j != 0) && (sign > 0 ? row[i] >= v : row[i] <= v))
            return FALSE;
      }
  return TRUE;
}

/* One Newton step in place, one parabola in scale; FALSE for an edge. */
static gboolean
settle (const WmPlane *const d[3], int x, int y, Candidate *c)
{
  int w = d[1]->width;
  const float *m = d[1]->v + (gsize)y * (gsize)w + (gsize)x;
  float gx = 0.5f * (m[1] - m[-1]);
  float gy = 0.5f * (m[w] - m[-w]);
  float xx = m[1] + m[-1] - 2 * m[0];
  float yy = m[w] + m[-w] - 2 * m[0];
  float xy = 0.25f * (m[w + 1] - m[w - 1] - m[1 - w] + m[-w - 1]);
  float det = xx * yy - xy * xy;
  float trace = xx + yy;
  float below = d[0]->v[(gsize)y * (gsize)w + (gsize)x];
  float above = d[2]->v[(gsize)y * (gsize)w + (gsize)x];
  float ss = above + below - 2 * m[0];
  float ds, dx, dy;

  if (!(det > 0)
      || trace * trace * EDGE_RATIO >= (EDGE_RATIO + 1) * (EDGE_RATIO + 1) * det)
    return FALSE;
  dx = CLAMP (-(yy * gx - xy * gy) / det, -0.7f, 0.7f);
  dy = CLAMP (-(xx * gy - xy * gx) / det, -0.7f, 0.7f);
  ds = fabsf (ss) > 1e-6f ? CLAMP (-0.5f * (above - below) / ss, -0.6f, 0.6f) : 0.0f;
  c->x = (float)x + dx;
  c->y = (float)y + dy;
  c->strength = fabsf (m[0] + 0.5f * (gx * dx + gy * dy));
  c->sigma = (float)(FIRST_SIGMA * pow (2.0, ((double)c->scale + ds) / SCALES));
  return TRUE;
}

static void
find_in_scale (const WmPlane *const three[3], int octave, int scale,
               const WmPieceMask *piece, double factor, GArray *found)
{
  const int margin = 5;
  int w = three[1]->width;
  int h = three[1]->height;

  for (int y = margin; y < h - margin; y++)
    for (int x = margin; x < w - margin; x++)
      {
        gsize at = (gsize)y * (gsize)w + (gsize)x;
        const float *d = three[1]->v + at;
        float v = fabsf (d[0]);
        Candidate c = { .octave = octave, .scale = scale };

        if (v < LEAST_CONTRAST || v < fabsf (d[1]) || v < fabsf (d[-1])
            || !is_extreme (three, at, w) || !settle (three, x, y, &c))
          continue;
        c.on_piece = wm_piece_mask_has (piece, place_on_base (c.x, octave) * factor,
                                        place_on_base (c.y, octave) * factor);
        g_array_append_val (found, c);
      }
}

/* Three planes of differences at a time, used in turn. */
static void
find_in_octave (const Stack *stack, int octave, const WmPieceMask *piece, double factor,
                GArray *found)
{
  WmPlane *const *gauss = stack->gauss[octave];
  int w = gauss[0]->width;
  int h = gauss[0]->height;
  WmPlane *d[3] = { wm_plane_new (w, h), wm_plane_new (w, h), wm_plane_new (w, h) };

  for (int s = 0; s < PLANES - 1; s++)
    {
      const WmPlane *const three[3] = { d[(s + 1) % 3], d[(s + 2) % 3], d[s % 3] };

      subtract_planes (gauss[s]->v, gauss[s + 1]->v, d[s % 3]->v, (gsize)w * (gsize)h);
      if (s >= 2)
        find_in_scale (three, octave, s - 1, piece, factor, found);
    }
  for (int k = 0; k < 3; k++)
    wm_plane_free (d[k]);
}

static int
compare_candidates (gconstpointer a, gconstpointer b)
{
  const Candidate *p = a;
  const Candidate *q = b;

  if (p->on_piece != q->on_piece)
    return p->on_piece ? -1 : 1;
  return p->strength > q->strength ? -1 : p->strength < q->strength ? 1 : 0;
}

/* The piece may take three quarters of the places, the ground the rest. */
static void
choose (GArray *found, int most)
{
  guint piece = 0, keep_piece, keep_ground;

  g_array_sort (found, compare_candidates);
  while (piece < found->len && g_array_index (found, Candidate, piece).on_piece)
    piece++;
  keep_piece = MIN (piece, (guint)most * 3 / 4);
  keep_ground = MIN (found->len - piece, (guint)most - keep_piece);
  keep_ground = MIN (keep_ground, MAX ((guint)most / 3, (guint)most - keep_piece));
  g_array_remove_range (found, keep_piece, piece - keep_piece);
  g_array_set_size (found, keep_piece + keep_ground);
}

WmFeatures *
wm_features_new (const WmPhotoPlanes *planes, const WmPieceMask *piece, int level,
                 int most)
{
  WmFeatures *self = g_new0 (WmFeatures, 1);
  g_autoptr (GArray) found = g_array_new (FALSE, FALSE, sizeof (Candidate));
  Stack stack = { 0 };
  float factor = (float)(1 << level);

  build_stack (&stack, planes->grey[level]);
  for (int o = 0; o < stack.octaves; o++)
    find_in_octave (&stack, o, piece, factor, found);
  choose (found, most);

  self->at = g_new (WmFeature, 2 * (gsize)found->len + 1);
  self->description = g_new (gint16, (2 * (gsize)found->len + 1) * WM_DESCRIPTION);
  for (guint k = 0; k < found->len; k++)
    {
      const Candidate *c = &g_array_index (found, Candidate, k);
      WmBlob blob = { stack.gauss[c->octave][c->scale], c->x + 0.5f, c->y + 0.5f,
                      c->sigma };
      float angles[2];
      int turns = wm_blob_turns (&blob, angles);

      for (int t = 0; t < turns; t++)
        {
          WmFeature *f = &self->at[self->n];

          f->x = place_on_base (c->x, c->octave) * factor;
          f->y = place_on_base (c->y, c->octave) * factor;
          f->size = c->sigma * (float)(1 << c->octave) * factor;
          f->angle = angles[t];
          f->strength = c->strength;
          f->on_piece = c->on_piece;
          wm_blob_describe (&blob, angles[t],
                            self->description + (gsize)self->n * WM_DESCRIPTION);
          self->n++;
        }
    }
  clear_stack (&stack);
  return self;
}

void
wm_features_free (WmFeatures *self)
{
  if (self == NULL)
    return;
  g_free (self->at);
  g_free (self->description);
  g_free (self);
}

WM_FAST_KERNEL static void
compare_row (const gint16 *one, const gint16 *all, int n, int *out)
{
  for (int k = 0; k < n; k++)
    {
      const gint16 *other = all + (gsize)k * WM_DESCRIPTION;
      int sum = 0;

      for (int i = 0; i < WM_DESCRIPTION; i++)
        sum += one[i] * other[i];
      out[k] = sum;
    }
}

static int
compare_matches (gconstpointer a, gconstpointer b)
{
  const WmMatch *p = a;
  const WmMatch *q = b;

  return p->ratio < q->ratio ? -1 : p->ratio > q->ratio ? 1 : p->before - q->before;
}

/* Descriptions have the same length (wm_blob_describe), so the squared distance
 * is twice that less twice the product. */
#define SQUARED_LENGTH (2048.0f * 2048.0f)

GArray *
wm_features_match (const WmFeatures *before, const WmFeatures *after)
{
  GArray *matches = g_array_new (FALSE, FALSE, sizeof (WmMatch));
  g_autofree int *row = g_new (int, (gsize)after->n + 1);
  g_autofree int *best_of = g_new (int, (gsize)after->n + 1);
  g_autofree int *best_by = g_new (int, (gsize)after->n + 1);
  g_autofree WmMatch *proposed = g_new (WmMatch, (gsize)before->n + 1);

  for (int k = 0; k < after->n; k++)
    {
      best_of[k] = G_MININT;
      best_by[k] = -1;
    }
  for (int i = 0; i < before->n; i++)
    {
      int best = -1, first = G_MININT, second = G_MININT;

      compare_row (before->description + (gsize)i * WM_DESCRIPTION, after->description,
                   after->n, row);
      for (int k = 0; k < after->n; k++)
        {
          if (row[k] > best_of[k])
            {
              best_of[k] = row[k];
              best_by[k] = i;
            }
          if (row[k] > first)
            {
              /* the same blob with its other turn is no rival */
              if (best < 0
                  || hypotf (after->at[k].x - after->at[best].x,
                             after->at[k].y - after->at[best].y)
                         > 4.0f)
                second = first;
              first = row[k];
              best = k;
            }
          else if (row[k] > second
                   && hypotf (after->at[k].x - after->at[best].x,
                              after->at[k].y - after->at[best].y)
                          > 4.0f)
            second = row[k];
        }
      float d1 = sqrtf (MAX (2.0f * (SQUARED_LENGTH - (float)first), 0.0f));
      float d2 = sqrtf (MAX (2.0f * (SQUARED_LENGTH - (float)second), 1.0f));
      proposed[i] = (WmMatch) { i, best, second == G_MININT ? 1.0f : d1 / d2 };
    }
  for (int i = 0; i < before->n; i++)
    if (proposed[i].after >= 0 && best_by[proposed[i].after] == i)
      g_array_append_val (matches, proposed[i]);
  g_array_sort (matches, compare_matches);
  return matches;
}
