/* orient.c: from the stored picture to the upright one
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/orient.h"

/* Square blocks of 32 x 32 pixels: 4 KiB read and 4 KiB written stay in the
 * innermost cache while rows become columns. */
#define BLOCK 32

/* Where the stored pixel of upright (0, 0) is, and how far the stored pixel moves
 * when the upright one moves right and down; in pixels, w and h as stored. */
static void
find_steps (int orientation, gssize w, gssize h, gssize *base, gssize *right,
            gssize *down)
{
  static const struct
  {
    int from_right, from_bottom, is_swapped;
  } ways[9] = { { 0, 0, 0 }, { 0, 0, 0 }, { 1, 0, 0 }, { 1, 1, 0 }, { 0, 1, 0 },
                { 0, 0, 1 }, { 0, 1, 1 }, { 1, 1, 1 }, { 1, 0, 1 } };
  int along_x = ways[orientation].from_right ? -1 : 1;
  gssize along_y = ways[orientation].from_bottom ? -w : w;

  *base = (ways[orientation].from_right ? w - 1 : 0)
          + (ways[orientation].from_bottom ? (h - 1) * w : 0);
  *right = ways[orientation].is_swapped ? along_y : along_x;
  *down = ways[orientation].is_swapped ? along_x : along_y;
}

WmPixels *
wm_pixels_upright (WmPixels *pixels, int orientation)
{
  g_autoptr (WmPixels) stored = pixels;
  WmPixels *upright;
  const guint32 *from;
  gssize base, right, down;

  if (orientation <= 1 || orientation > 8)
    return g_steal_pointer (&stored);

  upright = orientation > 4 ? wm_pixels_new (stored->height, stored->width)
                            : wm_pixels_new (stored->width, stored->height);
  if (upright == NULL)
    return NULL;

  find_steps (orientation, stored->width, stored->height, &base, &right, &down);
  from = (const guint32 *)(gpointer)stored->data + base;

  for (int top = 0; top < upright->height; top += BLOCK)
    for (int left = 0; left < upright->width; left += BLOCK)
      for (int y = top; y < MIN (top + BLOCK, upright->height); y++)
        {
          guint32 *to = (guint32 *)(gpointer)(upright->data + y * upright->stride);

          for (int x = left; x < MIN (left + BLOCK, upright->width); x++)
            to[x] = from[x * right + y * down];
        }

  return upright;
}

WmRect
wm_rect_to_coded (WmRect upright, int orientation, int coded_width, int coded_height)
{
  WmRect coded = upright;
  gboolean is_swapped = orientation > 4;

  if (is_swapped)
    {
      coded.x = upright.y;
      coded.y = upright.x;
      coded.width = upright.height;
      coded.height = upright.width;
    }
  if (orientation == 2 || orientation == 3 || orientation == 7 || orientation == 8)
    coded.x = coded_width - coded.x - coded.width;
  if (orientation == 3 || orientation == 4 || orientation == 6 || orientation == 7)
    coded.y = coded_height - coded.y - coded.height;

  return coded;
}
