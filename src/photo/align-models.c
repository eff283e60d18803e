/* align-models.c: what several matches agree on
 *
 * Each match alone says how the photo was shifted, turned and enlarged, as its
 * two blobs have a place, a turn and a size. The one with which most others
 * agree is refitted with these, ever stricter; its matches are taken away and
 * the next one is looked for.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/align-models.h"

#include <math.h>

/* Enough to describe cloth and piece and some accidents; more only costs. */
#define MOST_FROM_PIECE 5
#define MOST_FROM_ALL 3
#define MOST_MATCHES 500

/* Fewer than this agree by accident all the time. */
#define LEAST_SUPPORT 4

/* A blob's turn is good to about 0.1 rad and its size to about 12 %, so a place
 * at distance d is foretold to about 0.15 d. Level 0 pixels. */
#define LOOSE_PX 12.0
#define LOOSE_SHARE 0.10
#define TURN_TOLERANCE 0.45
#define SIZE_TOLERANCE 0.5 /* natural logarithm */

typedef struct
{
  WmPoint b, a; /* before, after, level 0 pixels */
  double turn;  /* after less before, radians */
  double size;  /* ln (after / before) */
  double weight;
  gboolean on_piece;
  gboolean used;
} Pair;

static double
wrap (double angle)
{
  return angle - 2 * G_PI * floor (angle / (2 * G_PI) + 0.5);
}

static void
similarity_of (const Pair *p, double m[9])
{
  double s = exp (p->size);
  double c = s * cos (p->turn);
  double d = s * sin (p->turn);
  double r[9] = { c, -d, p->a.x - c * p->b.x + d * p->b.y,
                  d, c,  p->a.y - d * p->b.x - c * p->b.y,
                  0, 0,  1 };

  for (int k = 0; k < 9; k++)
    m[k] = r[k];
}

static double
count_support (const GArray *pairs, const Pair *seed, gboolean piece_only)
{
  double m[9], support = 0;

  similarity_of (seed, m);
  for (guint k = 0; k < pairs->len; k++)
    {
      const Pair *p = &g_array_index (pairs, Pair, k);
      double dx, dy, far, limit;

      if (p->used || (piece_only && !p->on_piece)
          || fabs (wrap (p->turn - seed->turn)) > TURN_TOLERANCE
          || fabs (p->size - seed->size) > SIZE_TOLERANCE)
        continue;
      dx = m[0] * p->b.x + m[1] * p->b.y + m[2] - p->a.x;
      dy = m[3] * p->b.x + m[4] * p->b.y + m[5] - p->a.y;
      far = hypot (p->a.x - seed->a.x, p->a.y - seed->a.y);
      limit = LOOSE_PX + LOOSE_SHARE * far;
      if (dx * dx + dy * dy < limit * limit)
        support += p->weight;
    }
  return support;
}

/* Matches within @limit of @m into @from and @to; the lists stay with the
 * caller. Returns how many. */
static int
gather (GArray *pairs, const double m[9], const Pair *seed, double limit, double share,
        gboolean piece_only, WmPoint *from, WmPoint *to, double *weights)
{
  int n = 0;

  for (guint k = 0; k < pairs->len; k++)
    {
      const Pair *p = &g_array_index (pairs, Pair, k);
      WmPoint q = wm_align_map (m, p->b);
      double far = seed != NULL ? hypot (p->a.x - seed->a.x, p->a.y - seed->a.y) : 0;

      if (p->used || (piece_only && !p->on_piece)
          || fabs (wrap (p->turn - (seed != NULL ? seed->turn : p->turn)))
                 > TURN_TOLERANCE
          || !(hypot (q.x - p->a.x, q.y - p->a.y) < limit + share * far))
        continue;
      from[n] = p->b;
      to[n] = p->a;
      weights[n++] = p->weight;
    }
  return n;
}

/* Ever stricter and with ever more freedom. FALSE when it falls apart. */
static gboolean
refit (GArray *pairs, const Pair *seed, gboolean piece_only, double m[9], int *support)
{
  static const struct
  {
    WmFitKind kind;
    double limit, share;
    int least;
  } steps[] = {
    { WM_FIT_SIMILARITY, 10, 0.08, 3 }, { WM_FIT_SIMILARITY, 12, 0.05, 3 },
    { WM_FIT_AFFINE, 12, 0.03, 4 },     { WM_FIT_AFFINE, 10, 0.0, 6 },
    { WM_FIT_PROJECTIVE, 8, 0.0, 10 },  { WM_FIT_PROJECTIVE, 6, 0.0, 10 },
  };
  g_autofree WmPoint *from = g_new (WmPoint, pairs->len);
  g_autofree WmPoint *to = g_new (WmPoint, pairs->len);
  g_autofree double *weights = g_new (double, pairs->len);

  similarity_of (seed, m);
  for (guint k = 0; k < G_N_ELEMENTS (steps); k++)
    {
      double next[9];
      int n = gather (pairs, m, seed, steps[k].limit, steps[k].share, piece_only, from,
                      to, weights);

      if (n < steps[k].least)
        continue;
      if (wm_matrix_fit (steps[k].kind, from, to, weights, n, next)
          && wm_matrix_scale_at (next, seed->b) > 0.2)
        for (int i = 0; i < 9; i++)
          m[i] = next[i];
    }
  *support = gather (pairs, m, NULL, 8, 0, piece_only, from, to, weights);
  return *support >= LEAST_SUPPORT;
}

static void
take_away (GArray *pairs, const double m[9])
{
  for (guint k = 0; k < pairs->len; k++)
    {
      Pair *p = &g_array_index (pairs, Pair, k);
      WmPoint q = wm_align_map (m, p->b);

      if (hypot (q.x - p->a.x, q.y - p->a.y) < 8)
        p->used = TRUE;
    }
}

static void
find_models (GArray *pairs, gboolean piece_only, int most, double width, double height,
             GArray *models)
{
  for (int found = 0, tries = 0; found < most && tries < 3 * most; tries++)
    {
      Pair *best = NULL;
      double most_support = 0;
      WmModel model;

      for (guint k = 0; k < pairs->len; k++)
        {
          Pair *p = &g_array_index (pairs, Pair, k);
          double support;

          if (p->used || (piece_only && !p->on_piece))
            continue;
          support = count_support (pairs, p, piece_only);
          if (support > most_support)
            {
              most_support = support;
              best = p;
            }
        }
      if (best == NULL)
        return;
      if (refit (pairs, best, piece_only, model.to_after, &model.support)
          && wm_matrix_is_plausible (model.to_after, width, height, best->b))
        {
          g_array_append_val (models, model);
          take_away (pairs, model.to_after);
          found++;
        }
      best->used = TRUE;
    }
}

void
wm_models_from_matches (const WmFeatures *before, const WmFeatures *after,
                        const GArray *matches, double width, double height,
                        GArray *models)
{
  g_autoptr (GArray) pairs = g_array_new (FALSE, FALSE, sizeof (Pair));

  for (guint k = 0; k < matches->len && k < MOST_MATCHES; k++)
    {
      const WmMatch *match = &g_array_index (matches, WmMatch, k);
      const WmFeature *b = &before->at[match->before];
      const WmFeature *a = &after->at[match->after];
      Pair p = { .b = { b->x, b->y }, .a = { a->x, a->y } };

      p.turn = wrap (a->angle - b->angle);
      p.size = log (a->size / b->size);
      p.weight = match->ratio < 0.8 ? 1.0 : match->ratio < 0.9 ? 0.6 : 0.3;
      p.on_piece = b->on_piece && a->on_piece;
      if (fabs (p.size) < 1.0)
        g_array_append_val (pairs, p);
    }
  find_models (pairs, TRUE, MOST_FROM_PIECE, width, height, models);
  find_models (pairs, FALSE, MOST_FROM_ALL, width, height, models);
}
