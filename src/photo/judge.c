/* judge.c: is this photo good enough to show what it is to show?
 *
 * How the limits were chosen: on the sample pieces' photos (rendered, 2000 px, with
 * grain) as they are and blurred by known amounts, with and without noise.
 * tests/photo/test-judge.c repeats that and prints the figures. As made they measure
 * 0 to 0.7 px; blurred by 1, 1.5, 2 and 3 px: about 1.2, 1.6, 2.0 and 2.9.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/judge.h"

#include "photo/focus.h"
#include "photo/jpeg-read.h"
#include "photo/load.h"
#include "photo/probe-source.h"

#include <math.h>

/* Blur counts against what the photo could show at this many pixels: more of them
 * are not needed to see a claw, and every camera's true pixels are softer then. */
#define WANTED_SIDE 3000

/* Blur, px at WANTED_SIDE or at the photo's own size if that is less. */
#define SOFT_FROM 1.45
#define BLURRED_FROM 2.4

/* Blur that makes a focus of one half. */
#define HALF_FOCUS 2.0

/* Along one direction this much wider than along the sharpest one, and wide. */
#define SHAKEN_FROM 0.5
#define SHAKEN_BLUR 1.2
#define SHAKEN_BADLY 2.4

/* Least blur that direction is asked of: below it lies the pixel grid itself. */
#define GRID_BLUR 0.5

/* Clipped share of what is not plain background (our choice; the reference's 1 and
 * 5 % are for the part alone, which is seldom more than half of the frame). */
#define CLIPPED_FROM 0.02
#define CLIPPED_BADLY 0.10

#define CLIP_BRIGHT 254
#define CLIP_DARK 1

/* A ring of 20 mm that fills 500 px has 25 px a millimetre: not one claw to measure. */
#define SMALL_SIDE 1000
#define TOO_SMALL_SIDE 500

#define MOST_EDGES 250000
#define LEAST_EDGES 60
#define LEAST_EDGES_PLACE 12

#define BLOCK 16

static double
focus_of_blur (double blur)
{
  return 1 / (1 + blur / HALF_FOCUS * (blur / HALF_FOCUS));
}

gboolean
wm_focus_is_soft (double focus)
{
  return focus <= focus_of_blur (SOFT_FROM);
}

gboolean
wm_focus_is_blurred (double focus)
{
  return focus <= focus_of_blur (BLURRED_FROM);
}

/* Slope kept by the second smoothing (focus.h), 0.5 of a perfect edge to 1. */
static double
reblur_of_blur (double blur)
{
  return sqrt ((blur * blur + 0.8 * 0.8) / (blur * blur + 1.6 * 1.6));
}

/* How much one pixel of the view counts for. */
static double
blur_scale (int long_side, double scale)
{
  double photo_side = long_side * scale;

  return MIN (photo_side, WANTED_SIDE) / long_side;
}

static void
judge_shake (const GArray *edges, double scale, WmJudgement *out)
{
  double least = G_MAXDOUBLE, most = 0;
  int direction = 0, counted = 0;

  out->shake = 0;
  for (int d = 0; d < WM_EDGE_DIRECTIONS; d++)
    {
      double blur = wm_edges_blur_along (edges, d, LEAST_EDGES);

      if (isnan (blur))
        continue;
      counted++;
      least = MIN (least, blur);
      if (blur > most)
        {
          most = blur;
          direction = d;
        }
    }
  if (counted < WM_EDGE_DIRECTIONS / 2)
    return;

  out->shake = 1 - MAX (least, GRID_BLUR) / MAX (most, GRID_BLUR);
  out->shake_degrees = 180.0 * direction / WM_EDGE_DIRECTIONS;
  if (out->shake >= SHAKEN_FROM && most * scale >= SHAKEN_BLUR)
    out->reasons |= WM_REASON_SHAKEN;
  if (out->reasons & WM_REASON_SHAKEN && most * scale >= SHAKEN_BADLY)
    out->verdict = WM_VERDICT_RETAKE;
}

static void
judge_focus (WmPixels *pixels, double scale, WmJudgement *out)
{
  g_autoptr (GArray) edges = wm_edges_find (pixels, MOST_EDGES);
  double per_px = blur_scale (MAX (pixels->width, pixels->height), scale);
  double blur = wm_edges_blur (edges, LEAST_EDGES) * per_px;

  out->focus = out->reblur = NAN;
  if (isnan (blur))
    {
      out->reasons |= WM_REASON_NO_DETAIL;
      return;
    }

  out->focus = focus_of_blur (blur);
  out->reblur = reblur_of_blur (blur);
  if (blur >= BLURRED_FROM)
    {
      out->reasons |= WM_REASON_BLURRED;
      out->verdict = WM_VERDICT_RETAKE;
    }
  else if (blur >= SOFT_FROM)
    out->reasons |= WM_REASON_SOFT;

  judge_shake (edges, per_px, out);
}

/* Clipped pixels of each block; @is_bright: at the top, else at the bottom. */
static guint16 *
count_clipped (WmPixels *pixels, gboolean is_bright, int columns, int rows)
{
  guint16 *counts = g_new0 (guint16, columns * rows);

  for (int y = 0; y < pixels->height; y++)
    {
      const guint8 *p = pixels->data + y * pixels->stride;

      for (int x = 0; x < pixels->width; x++, p += 4)
        if (is_bright ? MIN (MIN (p[0], p[1]), p[2]) >= CLIP_BRIGHT
                      : MAX (MAX (p[0], p[1]), p[2]) <= CLIP_DARK)
          counts[y / BLOCK * columns + x / BLOCK]++;
    }

  return counts;
}

/* White paper and black velvet are no fault: clipped blocks that hang together with
 * the frame's edge, and the blocks beside them, are background. Where they make up
 * most of that edge, so are clipped blocks inside the piece: the paper is seen through
 * a ring. */
static gboolean *
find_background (const guint16 *counts, int columns, int rows)
{
  gboolean *is_background = g_new0 (gboolean, columns * rows);
  g_autofree int *stack = g_new (int, columns *rows);
  int height = 0, edge = 0;

  for (int i = 0; i < columns * rows; i++)
    {
      gboolean is_edge = i % columns == 0 || i % columns == columns - 1 || i < columns
                         || i >= columns * (rows - 1);

      edge += is_edge;
      if (is_edge && counts[i] > BLOCK * BLOCK / 2)
        {
          is_background[i] = TRUE;
          stack[height++] = i;
        }
    }

  if (height > edge / 2)
    for (int i = 0; i < columns * rows; i++)
      if (!is_background[i] && counts[i] > BLOCK * BLOCK * 9 / 10)
        {
          is_background[i] = TRUE;
          stack[height++] = i;
        }

  while (height > 0)
    {
      int i = stack[--height];

      for (int way = 0; way < 4; way++)
        {
          int x = i % columns + (way == 0) - (way == 1);
          int y = i / columns + (way == 2) - (way == 3);
          int j = y * columns + x;

          if (x < 0 || y < 0 || x >= columns || y >= rows || is_background[j])
            continue;
          is_background[j] = TRUE;
          /* A block half clipped ends it, and is background still. */
          if (counts[j] > BLOCK * BLOCK * 9 / 10)
            stack[height++] = j;
        }
    }

  return is_background;
}

/* Returns the clipped share of all, and in @subject that of what is no background. */
static double
clipped_share (WmPixels *pixels, gboolean is_bright, double *subject)
{
  int columns = (pixels->width - 1) / BLOCK + 1, rows = (pixels->height - 1) / BLOCK + 1;
  g_autofree guint16 *counts = count_clipped (pixels, is_bright, columns, rows);
  g_autofree gboolean *is_background = find_background (counts, columns, rows);
  double all = 0, clipped = 0, blocks = 0;

  for (int i = 0; i < columns * rows; i++)
    {
      all += counts[i];
      if (!is_background[i])
        {
          clipped += counts[i];
          blocks++;
        }
    }

  *subject = blocks > 0 ? clipped / (blocks * BLOCK * BLOCK) : 0;
  return all / ((double)pixels->width * pixels->height);
}

static void
judge_light (WmPixels *pixels, WmJudgement *out)
{
  double blown, blocked;

  out->clipped_bright = clipped_share (pixels, TRUE, &blown);
  out->clipped_dark = clipped_share (pixels, FALSE, &blocked);
  if (blown >= CLIPPED_FROM)
    out->reasons |= WM_REASON_BLOWN;
  if (blocked >= CLIPPED_FROM)
    out->reasons |= WM_REASON_BLOCKED;
  if (blown >= CLIPPED_BADLY)
    out->verdict = WM_VERDICT_RETAKE;
}

void
wm_photo_judge_pixels (WmPixels *pixels, double scale, WmJudgement *out)
{
  double side = MAX (pixels->width, pixels->height) * MAX (scale, 1);

  *out = (WmJudgement) { .verdict = WM_VERDICT_GOOD };
  judge_focus (pixels, MAX (scale, 1), out);
  judge_light (pixels, out);
  if (side < SMALL_SIDE)
    out->reasons |= WM_REASON_SMALL;
  if (side < TOO_SMALL_SIDE)
    out->verdict = WM_VERDICT_RETAKE;
  if (out->reasons != 0 && out->verdict == WM_VERDICT_GOOD)
    out->verdict = WM_VERDICT_USABLE;
}

gboolean
wm_photo_judge (const char *path, WmJudgement *out, GCancellable *cancellable,
                GError **error)
{
  g_autoptr (WmSource) source = wm_source_open (path, error);
  g_autoptr (WmPhotoFacts) facts = NULL;
  g_autoptr (WmPixels) pixels = NULL;
  int longest, denom = 1;

  if (source != NULL)
    facts = wm_photo_probe_source (source, error);
  if (facts == NULL)
    return FALSE;

  /* Coarser than true pixels only while more than the wanted side is left; turning
   * does not matter here. */
  longest = MAX (facts->width, facts->height);
  while (denom < 8 && longest / (denom * 2) >= WANTED_SIDE * 4 / 5)
    denom *= 2;
  if (wm_jpeg_is_usual (facts))
    pixels = wm_jpeg_decode (source, denom, NULL, cancellable, error);
  else
    pixels = wm_photo_load_fit (path, (facts->width - 1) / denom + 1,
                                (facts->height - 1) / denom + 1, cancellable, error);
  if (pixels == NULL)
    return FALSE;

  wm_photo_judge_pixels (pixels, denom, out);

  /* The direction was found in the stored picture: turn it as the picture is. */
  if (wm_jpeg_is_usual (facts) && facts->orientation > 4)
    out->shake_degrees = fmod (270.0 - out->shake_degrees, 180.0);
  return TRUE;
}

gboolean
wm_photo_focus_at (const char *path, WmPoint place, double radius, double *focus,
                   GCancellable *cancellable, GError **error)
{
  int side = (int)ceil (2 * CLAMP (radius, 16, 512));
  g_autoptr (WmPhotoFacts) facts = wm_photo_probe_file (path, error);
  g_autoptr (WmPixels) pixels = NULL;
  g_autoptr (GArray) edges = NULL;
  double blur, left, top, right, bottom;

  if (facts == NULL)
    return FALSE;

  left = CLAMP (floor (place.x) - side / 2, 0, facts->width - 1);
  top = CLAMP (floor (place.y) - side / 2, 0, facts->height - 1);
  right = MIN (left + side, facts->width);
  bottom = MIN (top + side, facts->height);
  pixels =
      wm_photo_load_region (path, left, top, right - left, bottom - top,
                            (int)(right - left), (int)(bottom - top), cancellable, error);
  if (pixels == NULL)
    return FALSE;

  edges = wm_edges_find (pixels, MOST_EDGES);
  blur = wm_edges_blur (edges, LEAST_EDGES_PLACE)
         * blur_scale (MAX (facts->width, facts->height), 1);
  *focus = isnan (blur) ? NAN : focus_of_blur (blur);
  return TRUE;
}

guint8 *
wm_focus_map (WmPixels *pixels, int block, int *columns, int *rows)
{
  g_autoptr (GArray) edges = wm_edges_find (pixels, MOST_EDGES);
  g_autofree GArray **by_block = NULL;
  double per_px = blur_scale (MAX (pixels->width, pixels->height), 1);
  guint8 *map;
  int count;

  block = CLAMP (block, 8, 256);
  *columns = (pixels->width - 1) / block + 1;
  *rows = (pixels->height - 1) / block + 1;
  count = *columns * *rows;
  map = g_malloc0 ((gsize)count);
  by_block = g_new0 (GArray *, count);

  for (guint i = 0; i < edges->len; i++)
    {
      const WmEdge *edge = &g_array_index (edges, WmEdge, i);
      GArray **here = &by_block[edge->y / block * *columns + edge->x / block];

      if (*here == NULL)
        *here = g_array_new (FALSE, FALSE, sizeof (WmEdge));
      g_array_append_val (*here, *edge);
    }

  for (int i = 0; i < count; i++)
    if (by_block[i] != NULL)
      {
        double blur = wm_edges_blur (by_block[i], 4) * per_px;

        if (!isnan (blur))
          map[i] = (guint8)(1 + 254 * focus_of_blur (blur));
        g_array_unref (by_block[i]);
      }

  return map;
}
