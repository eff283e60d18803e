/* test-ground.c: the piece told from the ground, on drawn pictures of known parts
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/ground.h"

/* Grey ground of @level with a coarse weave, light falling off to the right, and a
 * golden square from 96 to 160 px. */
static WmPixels *
draw (int level)
{
  WmPixels *pixels = wm_pixels_new (256, 192);

  for (int y = 0; y < 192; y++)
    for (int x = 0; x < 256; x++)
      {
        guint8 *p = pixels->data + y * pixels->stride + x * 4;
        int weave = ((x / 3 + y / 3) % 2 == 0 ? 14 : -14) - x / 24;
        gboolean is_gold = x >= 96 && x < 160 && y >= 64 && y < 128;

        p[0] = is_gold ? 60 : level + weave;
        p[1] = is_gold ? 150 : level + weave;
        p[2] = is_gold ? 190 : level + weave;
        p[3] = 255;
      }
  return pixels;
}

static void
test_piece_and_ground (void)
{
  /* Dark and light cloth alike: a weave is no piece. */
  for (int level = 60; level <= 220; level += 160)
    {
      g_autoptr (WmPixels) pixels = draw (level);
      int columns, rows;
      g_autofree guint8 *map = wm_ground_map (pixels, 16, &columns, &rows);

      g_assert_cmpint (columns, ==, 16);
      g_assert_cmpint (rows, ==, 12);
      for (int row = 0; row < rows; row++)
        for (int column = 0; column < columns; column++)
          {
            gboolean is_gold = column >= 6 && column < 10 && row >= 4 && row < 8;
            guint8 value = map[row * columns + column];

            if (is_gold)
              g_assert_cmpint (value, >, 200);
            else
              g_assert_cmpint (value, <, 128);
          }
    }
}

static void
test_too_small (void)
{
  g_autoptr (WmPixels) pixels = wm_pixels_new (40, 40);
  int columns, rows;

  g_assert_null (wm_ground_map (pixels, 16, &columns, &rows));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/photo/ground/piece", test_piece_and_ground);
  g_test_add_func ("/photo/ground/small", test_too_small);
  return g_test_run ();
}
