/* sheet-marks.c: square frames with dots, as they show on a photo
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/sheet-marks.h"

#include <math.h>
#include <string.h>

#include "photo/sheet-blobs.h"
#include "photo/sheet-form.h"

/* Under this side the dots of a mark run together (their gap is 0.13 of it). */
#define WM_LEAST_SIDE_PX 22.0
/* Smaller patches are specks: a dot of the smallest mark has 11 px. */
#define WM_LEAST_PATCH_PX 5
/* White in the frame as a share of the whole mark: 0.41 as printed; blur, ink and
 * threshold move it. */
#define WM_HOLE_LOW 0.22
#define WM_HOLE_HIGH 0.60
/* A dot likewise: 0.023 as printed. */
#define WM_DOT_LOW 0.006
#define WM_DOT_HIGH 0.060
/* Dots of one mark are alike to within this factor. */
#define WM_DOTS_ALIKE 3.0
/* Area of the mark against that of the straight-sided form on its corners. */
#define WM_FILLED_LOW 0.82
#define WM_FILLED_HIGH 1.15
/* Longest against shortest side: a sheet that leans by 70 degrees has 3. */
#define WM_SIDES_APART 3.0

/* What is inside a frame, gathered from the patches that name it as theirs. */
typedef struct
{
  int n_holes;
  int hole_area;
  int n_dots;
  int least_dot, most_dot;
  int dots_area;
} Inside;

static double
cross (WmPoint o, WmPoint a, WmPoint b)
{
  return (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
}

WmPoint
wm_sheet_middle (const WmPoint corners[4])
{
  double dx = corners[2].x - corners[0].x, dy = corners[2].y - corners[0].y;
  double ex = corners[3].x - corners[1].x, ey = corners[3].y - corners[1].y;
  double det = dx * ey - dy * ex;
  double t = ((corners[1].x - corners[0].x) * ey - (corners[1].y - corners[0].y) * ex)
             / (det != 0 ? det : 1);

  return (WmPoint) { corners[0].x + t * dx, corners[0].y + t * dy };
}

/* The pixel of @blob that lies farthest from @from, or farthest to one side of the line
 * @a-@b (@side 1 or -1). */
static WmPoint
find_farthest (const WmBlobs *blobs, int index, const WmPoint *from, WmPoint a, WmPoint b,
               int side, double *out_far)
{
  const WmBlob *blob = &g_array_index (blobs->blobs, WmBlob, index);
  WmPoint best = { blob->left, blob->top };
  double far = -1;

  for (int y = blob->top; y <= blob->bottom; y++)
    for (int x = blob->left; x <= blob->right; x++)
      {
        WmPoint at = { x + 0.5, y + 0.5 };
        double d;

        if (blobs->labels[y * blobs->width + x] != index)
          continue;
        d = from != NULL ? hypot (at.x - from->x, at.y - from->y)
                         : side * cross (a, b, at);
        if (d > far)
          {
            far = d;
            best = at;
          }
      }
  *out_far = far;
  return best;
}

/* Corners clockwise: the two ends of the long diagonal, and the farthest either side. */
static gboolean
find_corners (const WmBlobs *blobs, int index, WmSheetMark *mark)
{
  const WmBlob *blob = &g_array_index (blobs->blobs, WmBlob, index);
  WmPoint middle = { (blob->left + blob->right) / 2.0, (blob->top + blob->bottom) / 2.0 };
  double far, left, right;
  WmPoint a = find_farthest (blobs, index, &middle, middle, middle, 0, &far);
  WmPoint c = find_farthest (blobs, index, &a, a, a, 0, &far);
  WmPoint b = find_farthest (blobs, index, NULL, a, c, -1, &left);
  WmPoint d = find_farthest (blobs, index, NULL, a, c, 1, &right);
  double longest = 0, shortest = G_MAXDOUBLE, sum = 0;

  if (left <= 0 || right <= 0)
    return FALSE;
  mark->corners[0] = a;
  mark->corners[1] = b;
  mark->corners[2] = c;
  mark->corners[3] = d;
  for (int i = 0; i < 4; i++)
    {
      WmPoint from = mark->corners[i], to = mark->corners[(i + 1) % 4];
      double side = hypot (to.x - from.x, to.y - from.y);

      if (cross (from, to, mark->corners[(i + 2) % 4]) <= 0)
        return FALSE;
      longest = MAX (longest, side);
      shortest = MIN (shortest, side);
      sum += side;
    }
  mark->side_px = sum / 4;
  mark->middle = wm_sheet_middle (mark->corners);
  return longest <= WM_SIDES_APART * shortest && mark->side_px >= WM_LEAST_SIDE_PX;
}

static gboolean
has_straight_sides (const WmSheetMark *mark, double filled)
{
  const WmPoint *c = mark->corners;
  /* Corners are middles of pixels: half a pixel is missing all round. */
  double area = (fabs (cross (c[0], c[1], c[2])) + fabs (cross (c[0], c[2], c[3]))) / 2
                + 2 * mark->side_px;

  return filled >= WM_FILLED_LOW * area && filled <= WM_FILLED_HIGH * area;
}

static Inside *
look_inside (const WmBlobs *blobs)
{
  guint n = blobs->blobs->len;
  const WmBlob *all = (const WmBlob *)blobs->blobs->data;
  Inside *inside = g_new0 (Inside, n);

  /* Dots first: a hole brings those that it has to its frame. */
  for (guint i = 0; i < n; i++)
    if (all[i].is_dark && all[i].parent >= 0 && all[i].area >= WM_LEAST_PATCH_PX)
      {
        Inside *hole = &inside[all[i].parent];

        hole->least_dot =
            hole->n_dots == 0 ? all[i].area : MIN (hole->least_dot, all[i].area);
        hole->most_dot = MAX (hole->most_dot, all[i].area);
        hole->dots_area += all[i].area;
        hole->n_dots++;
      }
  for (guint i = 0; i < n; i++)
    if (!all[i].is_dark && all[i].parent >= 0 && inside[i].n_dots > 0
        && all[i].area >= WM_LEAST_PATCH_PX)
      {
        Inside *frame = &inside[all[i].parent];

        if (frame->n_holes++ == 0)
          {
            frame->hole_area = all[i].area;
            frame->n_dots = inside[i].n_dots;
            frame->least_dot = inside[i].least_dot;
            frame->most_dot = inside[i].most_dot;
            frame->dots_area = inside[i].dots_area;
          }
      }
  return inside;
}

static gboolean
is_mark (const WmBlob *frame, const Inside *in, double *out_filled)
{
  double filled = frame->area + in->hole_area + in->dots_area;
  double hole = (in->hole_area + in->dots_area) / filled;

  *out_filled = filled;
  return frame->is_dark && frame->parent >= 0 && in->n_holes == 1 && in->n_dots >= 1
         && in->n_dots <= WM_SHEET_N_MARKS && hole >= WM_HOLE_LOW && hole <= WM_HOLE_HIGH
         && in->least_dot >= WM_DOT_LOW * filled && in->most_dot <= WM_DOT_HIGH * filled
         && in->most_dot <= WM_DOTS_ALIKE * in->least_dot;
}

GArray *
wm_sheet_marks_find (WmPixels *pixels)
{
  g_autoptr (WmBlobs) blobs = wm_blobs_new (pixels);
  g_autofree Inside *inside = look_inside (blobs);
  GArray *marks = g_array_new (FALSE, FALSE, sizeof (WmSheetMark));

  for (guint i = 0; i < blobs->blobs->len; i++)
    {
      WmSheetMark mark = { .n_dots = inside[i].n_dots };
      double filled;

      if (is_mark (&g_array_index (blobs->blobs, WmBlob, i), &inside[i], &filled)
          && find_corners (blobs, (int)i, &mark) && has_straight_sides (&mark, filled))
        g_array_append_val (marks, mark);
    }
  return marks;
}
