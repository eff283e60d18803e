/* align-describe.c: the turn and the description of one blob
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/align-features.h"

#include <math.h>
#include <string.h>

/* Lowe 2004, section 5: 36 directions, a window of 1.5 sigma, a second turn
 * when its peak reaches 0.8 of the highest. */
#define DIRECTIONS 36
#define TURN_WINDOW 1.5f
#define SECOND_TURN 0.8f

/* Lowe 2004, section 6: 4 x 4 cells of 3 sigma, 8 directions each. */
#define CELLS 4
#define CELL_SIGMAS 3.0f
#define BINS 8
/* Samples along a side of the window: 4 to a cell. */
#define SAMPLES 16
/* Length of every description after the square root: fits 16 bits a number
 * and 32 bits a product of two. */
#define LENGTH 2048.0f

/* exp (-x) for x from 0 to 4.5 in steps of 1/64, filled at first use. */
#define EXP_STEPS 64
#define EXP_MOST 4.5f
#define EXP_SIZE 290 /* EXP_MOST * EXP_STEPS and a little */

static const float *
get_exponentials (void)
{
  static float table[EXP_SIZE];
  static gsize ready = 0;

  if (g_once_init_enter (&ready))
    {
      for (gsize k = 0; k < G_N_ELEMENTS (table); k++)
        table[k] = expf (-(float)k / EXP_STEPS);
      g_once_init_leave (&ready, 1);
    }
  return table;
}

/* Angle of (x, y) in turns, 0 to 1; error below 0.0004 of a turn. */
static inline float
turns_of (float y, float x)
{
  float ax = fabsf (x);
  float ay = fabsf (y);
  float r = MIN (ax, ay) / (MAX (ax, ay) + 1e-12f);
  /* r / (2 pi) times the usual cubic correction to the arc tangent */
  float t = r * (0.1591549f * (0.7853982f + 0.273f * (1.0f - r)));

  t = ay > ax ? 0.25f - t : t;
  t = x < 0 ? 0.5f - t : t;
  return y < 0 ? (t > 0 ? 1.0f - t : 0.0f) : t;
}

int
wm_blob_turns (const WmBlob *blob, float angles[2])
{
  const WmPlane *plane = blob->plane;
  float histogram[DIRECTIONS] = { 0 };
  float smooth[DIRECTIONS];
  float window = TURN_WINDOW * blob->sigma;
  int radius = (int)(3.0f * window + 0.5f);
  int cx = (int)blob->x;
  int cy = (int)blob->y;
  const float *exponential = get_exponentials ();
  float highest = 0.0f;
  int n = 0;

  for (int y = MAX (cy - radius, 1); y <= MIN (cy + radius, plane->height - 2); y++)
    for (int x = MAX (cx - radius, 1); x <= MIN (cx + radius, plane->width - 2); x++)
      {
        const float *p = plane->v + (gsize)y * (gsize)plane->width + (gsize)x;
        float dx = (float)x + 0.5f - blob->x;
        float dy = (float)y + 0.5f - blob->y;
        float gx = p[1] - p[-1];
        float gy = p[plane->width] - p[-plane->width];
        float far = (dx * dx + dy * dy) / (2.0f * window * window);

        if (far < EXP_MOST)
          histogram[(int)(turns_of (gy, gx) * DIRECTIONS + 0.5f) % DIRECTIONS] +=
              exponential[(int)(far * EXP_STEPS)] * sqrtf (gx * gx + gy * gy);
      }
  for (int k = 0; k < DIRECTIONS; k++)
    {
      const float *h = histogram;
      int a = (k + DIRECTIONS - 1) % DIRECTIONS, b = (k + 1) % DIRECTIONS;
      int aa = (k + DIRECTIONS - 2) % DIRECTIONS, bb = (k + 2) % DIRECTIONS;

      smooth[k] = (h[aa] + h[bb]) / 16 + (h[a] + h[b]) / 4 + h[k] * 6 / 16;
      highest = MAX (highest, smooth[k]);
    }
  for (int pass = 0; pass < 2; pass++)
    for (int k = 0; k < DIRECTIONS && n < 2; k++)
      {
        float l = smooth[(k + DIRECTIONS - 1) % DIRECTIONS];
        float r = smooth[(k + 1) % DIRECTIONS];
        float v = smooth[k];

        if (!(v > l && v >= r) || (pass == 0) != (v >= highest)
            || v < SECOND_TURN * highest)
          continue;
        angles[n++] = ((float)k + 0.5f * (l - r) / (l - 2 * v + r)) * (float)(2 * G_PI)
                      / DIRECTIONS;
      }
  return n;
}

/* Square root of each share, to a fixed length: comparing such vectors by their
 * distance is comparing the histograms by Hellinger's. Large shares are cut
 * first, so that one bright edge does not decide alone (Lowe: 0.2). */
static void
finish_description (const float *sums, gint16 *out)
{
  float total = 0.0f, cut = 0.0f, length = 0.0f;

  for (int k = 0; k < WM_DESCRIPTION; k++)
    total += sums[k] * sums[k];
  total = sqrtf (total) * 0.2f + 1e-6f;
  for (int k = 0; k < WM_DESCRIPTION; k++)
    cut += MIN (sums[k], total);
  for (int k = 0; k < WM_DESCRIPTION; k++)
    length += MIN (sums[k], total) / (cut + 1e-6f);
  for (int k = 0; k < WM_DESCRIPTION; k++)
    out[k] =
        (gint16)(LENGTH
                     * sqrtf (MIN (sums[k], total) / ((cut + 1e-6f) * (length + 1e-9f)))
                 + 0.5f);
}

void
wm_blob_describe (const WmBlob *blob, float angle, gint16 *description)
{
  /* one cell of margin all round takes what spills over the window */
  float sums[(CELLS + 2) * (CELLS + 2) * BINS] = { 0 };
  float inner[WM_DESCRIPTION];
  const WmPlane *plane = blob->plane;
  float step = CELL_SIGMAS * blob->sigma * CELLS / SAMPLES;
  float c = cosf (angle) * step;
  float s = sinf (angle) * step;
  float turn = angle / (float)(2 * G_PI);
  const float *exponential = get_exponentials ();

  for (int j = 0; j < SAMPLES; j++)
    for (int i = 0; i < SAMPLES; i++)
      {
        float u = (float)i - 0.5f * (SAMPLES - 1);
        float v = (float)j - 0.5f * (SAMPLES - 1);
        int x = (int)(blob->x + c * u - s * v);
        int y = (int)(blob->y + s * u + c * v);
        float gx, gy, size, bin, cu, cv;

        if (x < 1 || y < 1 || x >= plane->width - 1 || y >= plane->height - 1)
          continue;
        const float *p = plane->v + (gsize)y * (gsize)plane->width + (gsize)x;
        gx = p[1] - p[-1];
        gy = p[plane->width] - p[-plane->width];
        size =
            sqrtf (gx * gx + gy * gy)
            * exponential[(int)((u * u + v * v)
                                * (EXP_STEPS / (2.0f * (SAMPLES / 2) * (SAMPLES / 2))))];
        bin = turns_of (gy, gx) - turn;
        bin = (bin - floorf (bin)) * BINS;
        cu = ((float)i + 0.5f) * CELLS / SAMPLES + 0.5f;
        cv = ((float)j + 0.5f) * CELLS / SAMPLES + 0.5f;
        int bu = (int)cu, bv = (int)cv, bb = (int)bin;
        float fu = cu - (float)bu, fv = cv - (float)bv, fb = bin - (float)bb;
        float *cell = sums + ((gsize)bv * (CELLS + 2) + (gsize)bu) * BINS;
        int b0 = bb % BINS, b1 = (bb + 1) % BINS;

        for (int q = 0; q < 4; q++)
          {
            float part = size * (q & 1 ? fu : 1 - fu) * (q & 2 ? fv : 1 - fv);
            float *to = cell + ((q & 1 ? 1 : 0) + (q & 2 ? CELLS + 2 : 0)) * BINS;

            to[b0] += part * (1 - fb);
            to[b1] += part * fb;
          }
      }
  for (int j = 0; j < CELLS; j++)
    memcpy (inner + j * CELLS * BINS, sums + ((j + 1) * (CELLS + 2) + 1) * BINS,
            sizeof (float) * CELLS * BINS);
  finish_description (inner, description);
}
