/* test-align-inspect.c: most of a piece agrees, and the answer is still not given
 *
 * Truth: pieces drawn from formulas (align-scene.h): a plate on a hoop with the same
 * strokes cut into it and with other ones; discs of which every other one lies beside
 * its place, as where it is higher and seen from another side.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "align-scene.h"

static void
align_scenes (const Scene *before, const Scene *after, WmAlignment *out)
{
  g_autoptr (GError) error = NULL;
  WmAlignImage a, b;
  g_autofree guint8 *pa = draw_scene (before, &a);
  g_autofree guint8 *pb = draw_scene (after, &b);

  g_assert_true (wm_align_images (&a, &b, NULL, NULL, NULL, out, &error));
  g_assert_no_error (error);
  g_test_message ("%s, %d of %d places", wm_align_reason_name (out->reason), out->places,
                  out->places_tried);
}

static void
align_plates (guint32 letters, Scene *before, Scene *after, WmAlignment *out)
{
  *before = plain_scene (5, 1);
  *after = plain_scene (5, 40);
  before->is_plate = after->is_plate = TRUE;
  before->letters = 3;
  after->letters = letters;
  place_plane (415, 255, 14, 1, 0, after->to_piece);
  align_scenes (before, after, out);
}

/* The same plate is aligned: the refusals below are not for what it is. */
static void
test_same_letters (void)
{
  Scene before, after;
  WmAlignment out;

  align_plates (3, &before, &after, &out);
  g_assert_true (out.aligned);
  g_assert_cmpfloat (measure_error (&before, &after, out.matrix), <, 0.5);
}

static void
test_other_letters (void)
{
  for (guint32 letters = 4; letters < 8; letters++)
    {
      Scene before, after;
      WmAlignment out;

      align_plates (letters, &before, &after, &out);
      g_assert_false (out.aligned);
      g_assert_cmpint (out.reason, !=, WM_ALIGN_FOUND);
    }
}

/* Seven of fourteen discs 6 px beside their places: no one matrix is right for all. */
static void
test_two_heights (void)
{
  for (guint32 piece = 5; piece < 9; piece++)
    {
      Scene before = plain_scene (piece, 1);
      Scene after = plain_scene (piece, 40);
      WmAlignment out;

      place_plane (415, 255, 14, 1, 0, after.to_piece);
      after.raised_px = 6;
      align_scenes (&before, &after, &out);
      g_assert_false (out.aligned);
      after.raised_px = 0;
      align_scenes (&before, &after, &out);
      g_assert_true (out.aligned);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/photo/align/inspect/same-letters", test_same_letters);
  g_test_add_func ("/photo/align/inspect/other-letters", test_other_letters);
  g_test_add_func ("/photo/align/inspect/two-heights", test_two_heights);
  return g_test_run ();
}
