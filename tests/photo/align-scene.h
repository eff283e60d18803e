/* align-scene.h: made pairs of photos with an exact truth, for the tests of the
 * alignment: an irregular piece on a textured cloth, drawn from formulas through
 * any matrix, so that no resampling blurs the truth
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <math.h>

#include "photo/align.h"
#include "photo/align-matrix.h"

#define SCENE_W 800
#define SCENE_H 534

typedef struct
{
  guint32 piece;      /* which piece */
  guint32 cloth;      /* which cloth */
  gboolean is_plain;  /* a plain ring in place of the piece */
  gboolean is_mended; /* one part differs */
  gboolean is_plate;  /* a plate with a hoop in place of it, the same for every piece */
  guint32 letters;    /* what is cut into the plate */
  double raised_px;   /* every other disc lies so far beside its place: it is higher */
  double to_piece[9]; /* photo px to the piece's own px */
  double to_cloth[9];
  double gain;
  double bias;
  double noise; /* standard deviation, grey levels */
} Scene;

static inline guint32
mix (guint32 a, guint32 b, guint32 c)
{
  guint32 h = a * 0x9E3779B1u ^ b * 0x85EBCA77u ^ c * 0xC2B2AE3Du;

  h ^= h >> 15;
  h *= 0x2C1B3C6Du;
  h ^= h >> 12;
  h *= 0x297A2D39u;
  return h ^ h >> 15;
}

static inline double
share (guint32 h)
{
  return (double)(h & 0xFFFFFF) / 0x1000000;
}

/* Smooth value noise, 0 to 1, with cells of @cell px. */
static inline double
value_noise (double x, double y, double cell, guint32 seed)
{
  double u = floor (x / cell), v = floor (y / cell);
  double fu = x / cell - u, fv = y / cell - v;
  double su = fu * fu * (3 - 2 * fu), sv = fv * fv * (3 - 2 * fv);
  guint32 i = (guint32)(int)u, j = (guint32)(int)v;
  double a = share (mix (i, j, seed)), b = share (mix (i + 1, j, seed));
  double c = share (mix (i, j + 1, seed)), d = share (mix (i + 1, j + 1, seed));

  return (a + su * (b - a)) * (1 - sv) + (c + su * (d - c)) * sv;
}

/* A plate with strokes cut into it, above a hoop. */
static inline double
shade_plate (const Scene *s, double x, double y)
{
  double hoop = hypot (x, (y - 70) * 1.25);
  double py = y + 50;
  double edge = fmax (fabs (x) / 150, fabs (py) / 105);

  if (edge > 1)
    return fabs (hoop - 110) < 13 ? 150 + 70 * cos ((hoop - 110) / 13 * 1.5) : -1;
  for (guint32 k = 0; k < 12; k++)
    {
      double dx = x - 190 * (share (mix (k, 21, s->letters)) - 0.5);
      double dy = py - 120 * (share (mix (k, 22, s->letters)) - 0.5);
      double angle = 3.1416 * share (mix (k, 23, s->letters));
      double along = dx * cos (angle) + dy * sin (angle);
      double across = -dx * sin (angle) + dy * cos (angle);

      if (fabs (along) < 24 && fabs (across) < 3)
        return 90;
    }
  return edge > 0.93 ? 235 : 190;
}

/* Discs (stones), each with rim and facets, joined by bars (wires): 0 to 255, or
 * below 0 where the piece is not. */
static inline double
shade_piece (const Scene *s, double x, double y)
{
  double value = -1;

  if (s->is_plain)
    {
      double r = hypot (x, y);

      return fabs (r - 120) < 12 ? 150 + 90 * cos ((r - 120) / 12 * 1.5) : -1;
    }
  if (s->is_plate)
    return shade_plate (s, x, y);
  if (fabs (x) > 235 || fabs (y) > 185)
    return -1;
  for (guint32 k = 0; k < 14; k++)
    {
      double cx = 320 * (share (mix (k, 1, s->piece)) - 0.5);
      double cy = 220 * (share (mix (k, 2, s->piece)) - 0.5);
      double radius = 12 + 20 * share (mix (k, 3, s->piece));
      double angle = 6.2832 * share (mix (k, 4, s->piece));
      double dx = x - cx - (k & 1 ? s->raised_px : 0), dy = y - cy;
      double r = hypot (dx, dy);
      double along = dx * cos (angle) + dy * sin (angle);
      double across = -dx * sin (angle) + dy * cos (angle);

      if (fabs (across) < 4 && fabs (along) < 70 && value < 0)
        value = 190 - 12 * fabs (across);
      if (r > radius)
        continue;
      if (r > radius * 0.8)
        value = 225;
      else if (s->is_mended && k == 3)
        value = 90 + 100 * r / radius;
      else
        value =
            80 + 110 * share (mix (k, 5 + (guint32)(3 + 3 * atan2 (dy, dx)), s->piece));
    }
  return value;
}

static inline double
shade_cloth (const Scene *s, double x, double y)
{
  return 60 + 40 * value_noise (x, y, 3, s->cloth)
         + 20 * value_noise (x, y, 11, s->cloth + 1);
}

/* The piece drawn with 2 x 2 samples a pixel; warm metal on grey cloth. */
static inline guint8 *
draw_scene (const Scene *s, WmAlignImage *image)
{
  guint8 *pixels = g_malloc (SCENE_W * SCENE_H * 3);

  for (int y = 0; y < SCENE_H; y++)
    for (int x = 0; x < SCENE_W; x++)
      {
        WmPoint c = wm_align_map (s->to_cloth, (WmPoint) { x + 0.5, y + 0.5 });
        double cloth = shade_cloth (s, c.x, c.y);
        double sum[3] = { 0 };

        for (int k = 0; k < 4; k++)
          {
            WmPoint at = { x + 0.25 + 0.5 * (k & 1), y + 0.25 + 0.5 * (k >> 1) };
            WmPoint p = wm_align_map (s->to_piece, at);
            double v = shade_piece (s, p.x, p.y);
            const double metal[3] = { 1.0, 0.82, 0.5 };

            for (int b = 0; b < 3; b++)
              sum[b] += v >= 0 ? v * metal[b] : cloth;
          }
        for (int b = 0; b < 3; b++)
          {
            guint32 h =
                mix ((guint32)x, (guint32)y, (guint32)b + s->piece * 7 + s->cloth * 13);
            /* two uniform numbers: a triangle of the standard deviation asked for */
            double noise = s->noise * 2.449 * (share (h) + share (mix (h, 1, 2)) - 1);

            pixels[(y * SCENE_W + x) * 3 + b] =
                (guint8)CLAMP (s->gain * sum[b] / 4 + s->bias + noise + 0.5, 0, 255);
          }
      }
  *image = (WmAlignImage) { pixels, SCENE_W, SCENE_H, SCENE_W * 3, 3 };
  return pixels;
}

/* Photo to plane: the plane's origin is seen at (x, y), turned and enlarged. */
static inline void
place_plane (double x, double y, double degrees, double size, double tilt, double m[9])
{
  double c = size * cos (degrees * G_PI / 180), d = size * sin (degrees * G_PI / 180);
  double to_photo[9] = { c, -d, x, d, c, y, tilt, -0.6 * tilt, 1 };

  /* the horizon belongs to the middle of the plane, not to the photo's corner */
  to_photo[0] += x * to_photo[6];
  to_photo[1] += x * to_photo[7];
  to_photo[3] += y * to_photo[6];
  to_photo[4] += y * to_photo[7];
  wm_align_invert (to_photo, m);
}

static inline Scene
plain_scene (guint32 piece, guint32 cloth)
{
  Scene s = { .piece = piece, .cloth = cloth, .gain = 1, .noise = 2 };

  place_plane (400, 267, 0, 1, 0, s.to_piece);
  place_plane (400, 267, 0, 1, 0, s.to_cloth);
  return s;
}

/* Largest error over the piece, before px. */
static inline double
measure_error (const Scene *before, const Scene *after, const double matrix[9])
{
  double photo_before[9], photo_after[9], most = 0;

  wm_align_invert (before->to_piece, photo_before);
  wm_align_invert (after->to_piece, photo_after);
  for (int k = 0; k < 9; k++)
    {
      WmPoint p = { 130 * (k % 3 - 1), 90 * (k / 3 - 1) };
      WmPoint want = wm_align_map (photo_before, p);
      WmPoint got = wm_align_map (matrix, wm_align_map (photo_after, p));

      most = fmax (most, hypot (want.x - got.x, want.y - got.y));
    }
  return most;
}
