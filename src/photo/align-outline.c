/* align-outline.c: laying the outlines of two pieces on each other
 *
 * For polished metal, on which few blobs are found again. The edges on the
 * piece of the before photo are turned, enlarged and shifted in steps over maps
 * of the after photo's edges, one map for each of some directions; middle and
 * extent of the two pieces say where and how large to look.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/align-models.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Edges are compared at 200 pixels' length, one map a direction. */
#define LEVEL 3
#define CELL (1 << LEVEL)
#define DIRECTIONS 8
#define MOST_POINTS 300

/* Steps of the search. Turn: 5 degrees move the rim of a piece of 60 pixels
 * radius by 5 pixels, the width of a map's edge (SPREAD each side). */
#define TURNS 72
#define SPREAD 1.5f
#define SHIFT_STEP 4
#define SHIFT_STEPS 2 /* each way */

typedef struct
{
  float x, y;  /* from the middle of the piece, level pixels */
  float turns; /* direction of the slope, half turns, 0 to 1 */
  float weight;
} Edge;

typedef struct
{
  float score;
  float turn, size, x, y;
} Pose;

static void
slope_at (const WmPlane *p, int x, int y, float *gx, float *gy)
{
  const float *v = p->v + (gsize)y * (gsize)p->width + (gsize)x;

  *gx = v[1] - v[-1];
  *gy = v[p->width] - v[-p->width];
}

/* Direction of a slope whatever its sign, 0 to 1 for half a turn. */
static float
half_turns_of (float gx, float gy)
{
  float t = atan2f (gy, gx) / (float)G_PI;

  return t - floorf (t);
}

/* Strong and weak edges count nearly alike; noise does not count. */
static float
weigh_slope (float gx, float gy, float noise)
{
  float size = sqrtf (gx * gx + gy * gy);

  return size < noise ? 0.0f : sqrtf (size / (size + 4 * noise));
}

#define NOISE 6.0f /* grey levels over two pixels of level 3 */

static int
compare_edges (gconstpointer a, gconstpointer b)
{
  const Edge *p = a;
  const Edge *q = b;

  return p->weight > q->weight ? -1 : p->weight < q->weight ? 1 : 0;
}

static GArray *
collect_edges (const WmPlane *grey, const WmPieceMask *piece)
{
  GArray *edges = g_array_new (FALSE, FALSE, sizeof (Edge));
  float cx = (float)piece->centre.x / CELL;
  float cy = (float)piece->centre.y / CELL;

  for (int y = 1; y < grey->height - 1; y++)
    for (int x = 1; x < grey->width - 1; x++)
      {
        float gx, gy;
        Edge e;

        if (!wm_piece_mask_has (piece, (x + 0.5) * CELL, (y + 0.5) * CELL))
          continue;
        slope_at (grey, x, y, &gx, &gy);
        e.weight = weigh_slope (gx, gy, NOISE);
        if (!(e.weight > 0))
          continue;
        e.x = (float)x + 0.5f - cx;
        e.y = (float)y + 0.5f - cy;
        e.turns = half_turns_of (gx, gy);
        g_array_append_val (edges, e);
      }
  g_array_sort (edges, compare_edges);
  if (edges->len > 3 * MOST_POINTS)
    g_array_set_size (edges, 3 * MOST_POINTS);
  return edges;
}

/* One blurred map of edge weight for each direction; parts of an edge between
 * two directions go to both. */
static void
make_maps (const WmPlane *grey, const WmPieceMask *piece, WmPlane *maps[DIRECTIONS])
{
  for (int d = 0; d < DIRECTIONS; d++)
    maps[d] = wm_plane_new (grey->width, grey->height);
  for (int y = 1; y < grey->height - 1; y++)
    for (int x = 1; x < grey->width - 1; x++)
      {
        float gx, gy, weight, at, part;
        int d;

        if (!wm_piece_mask_has (piece, (x + 0.5) * CELL, (y + 0.5) * CELL))
          continue;
        slope_at (grey, x, y, &gx, &gy);
        weight = weigh_slope (gx, gy, NOISE);
        if (!(weight > 0))
          continue;
        at = half_turns_of (gx, gy) * DIRECTIONS;
        d = (int)at;
        part = at - (float)d;
        maps[d % DIRECTIONS]->v[y * grey->width + x] += weight * (1 - part);
        maps[(d + 1) % DIRECTIONS]->v[y * grey->width + x] += weight * part;
      }
  for (int d = 0; d < DIRECTIONS; d++)
    {
      WmPlane *blurred = wm_plane_blur (maps[d], SPREAD);

      wm_plane_free (maps[d]);
      maps[d] = blurred;
    }
}

static float
score_pose (const GArray *edges, guint step, WmPlane *const maps[DIRECTIONS],
            const Pose *p)
{
  float c = p->size * cosf (p->turn);
  float s = p->size * sinf (p->turn);
  float add = p->turn / (float)G_PI + 2.0f;
  int w = maps[0]->width;
  int h = maps[0]->height;
  float sum = 0.0f;

  for (guint k = 0; k < edges->len; k += step)
    {
      const Edge *e = &g_array_index (edges, Edge, k);
      int x = (int)(p->x + c * e->x - s * e->y);
      int y = (int)(p->y + s * e->x + c * e->y);
      int d = (int)((e->turns + add) * DIRECTIONS + 0.5f) % DIRECTIONS;

      if (x >= 0 && y >= 0 && x < w && y < h)
        sum += e->weight * maps[d]->v[y * w + x];
    }
  /* a larger picture of the piece has more pixels of edge to hit: do not
   * reward shrinking the one onto the thick of the other */
  return sum * sqrtf (p->size);
}

static int
compare_poses (gconstpointer a, gconstpointer b)
{
  const Pose *p = a;
  const Pose *q = b;

  return p->score > q->score ? -1 : p->score < q->score ? 1 : 0;
}

/* Small steps around @p, halved until they are below what tracking bridges. */
static void
polish (const GArray *edges, WmPlane *const maps[DIRECTIONS], Pose *p)
{
  float step[4] = { 0.045f, 0.05f, 2.0f, 2.0f };

  for (int round = 0; round < 6; round++)
    {
      gboolean better = FALSE;

      for (int k = 0; k < 8; k++)
        {
          Pose q = *p;
          float by = (k & 1 ? 1.0f : -1.0f) * step[k / 2];

          if (k / 2 == 0)
            q.turn += by;
          else if (k / 2 == 1)
            q.size *= 1.0f + by;
          else if (k / 2 == 2)
            q.x += by;
          else
            q.y += by;
          q.score = score_pose (edges, 1, maps, &q);
          if (q.score > p->score)
            {
              *p = q;
              better = TRUE;
            }
        }
      if (!better)
        for (int k = 0; k < 4; k++)
          step[k] *= 0.5f;
    }
}

static void
append_pose (const Pose *p, const WmPieceMask *before, GArray *models)
{
  double cell = CELL;
  double c = p->size * cos (p->turn);
  double s = p->size * sin (p->turn);
  double bx = before->centre.x;
  double by = before->centre.y;
  WmModel model = { { c, -s, p->x * cell - c * bx + s * by, s, c,
                      p->y * cell - s * bx - c * by, 0, 0, 1 },
                    0 };

  g_array_append_val (models, model);
}

/* Every turn with its best size and place. */
static void
search (const GArray *edges, WmPlane *const maps[DIRECTIONS], const WmPieceMask *before,
        const WmPieceMask *after, Pose best[TURNS])
{
  static const float around[] = { 0.80f, 0.92f, 1.0f, 1.09f, 1.25f };
  float guess = (float)(after->radius / before->radius);
  float cx = (float)after->centre.x / CELL;
  float cy = (float)after->centre.y / CELL;
  guint step = MAX (edges->len / MOST_POINTS, 1);

  for (int t = 0; t < TURNS; t++)
    {
      best[t].score = -1;
      for (guint z = 0; z < G_N_ELEMENTS (around); z++)
        for (int j = -SHIFT_STEPS; j <= SHIFT_STEPS; j++)
          for (int i = -SHIFT_STEPS; i <= SHIFT_STEPS; i++)
            {
              Pose p = { 0, (float)(2 * G_PI) * (float)t / TURNS,
                         CLAMP (guess * around[z], 0.5f, 2.0f),
                         cx + (float)(i * SHIFT_STEP), cy + (float)(j * SHIFT_STEP) };

              p.score = score_pose (edges, step, maps, &p);
              if (p.score > best[t].score)
                best[t] = p;
            }
    }
}

void
wm_models_from_outlines (const WmPhotoPlanes *before, const WmPieceMask *before_piece,
                         const WmPhotoPlanes *after, const WmPieceMask *after_piece,
                         int most, GArray *models)
{
  g_autoptr (GArray) edges = NULL;
  WmPlane *maps[DIRECTIONS];
  Pose best[TURNS], peaks[TURNS];
  int n = 0;

  if (!(before_piece->share > 0) || !(after_piece->share > 0)
      || !(before_piece->radius > 0) || !(after_piece->radius > 0))
    return;
  edges = collect_edges (before->grey[LEVEL], before_piece);
  if (edges->len < 20)
    return;
  make_maps (after->grey[LEVEL], after_piece, maps);
  search (edges, maps, before_piece, after_piece, best);
  for (int t = 0; t < TURNS; t++)
    if (best[t].score >= best[(t + 1) % TURNS].score
        && best[t].score > best[(t + TURNS - 1) % TURNS].score)
      peaks[n++] = best[t];
  qsort (peaks, (size_t)n, sizeof (Pose), compare_poses);
  n = MIN (n, 2 * most);
  for (int k = 0; k < n; k++)
    {
      peaks[k].score = score_pose (edges, 1, maps, &peaks[k]);
      polish (edges, maps, &peaks[k]);
    }
  qsort (peaks, (size_t)n, sizeof (Pose), compare_poses);
  for (int k = 0; k < MIN (n, most); k++)
    append_pose (&peaks[k], before_piece, models);
  for (int d = 0; d < DIRECTIONS; d++)
    wm_plane_free (maps[d]);
}
