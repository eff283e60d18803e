/* sheet-find.c: our printed scale sheet, found on a photo by its marks
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/sheet-find.h"

#include <math.h>
#include <string.h>

#include "photo/align-matrix.h"
#include "photo/load.h"
#include "photo/sheet-corners.h"
#include "photo/sheet-marks.h"
#include "reckon/words.h"

/* Marks are looked for at this size, px of the longer side. */
#define WM_LOOK_PX 1600
/* At most so many forms of one number of dots are tried with each other. */
#define MAX_ALIKE 6
#define LEAST_MARKS 3
/* Marks looked for belong together when their corners fit the field to this share of a
 * mark's side, at the coarse size. The other field misses by 0.1 and more. */
#define WM_COARSE_SHARE 0.05
/* And at full size to this share of the field's width: three thousandths would be 0.3 mm
 * on 100 mm, which is no scale any more. */
#define WM_FINE_SHARE 0.003
/* A corner found by two straight sides of 20 places each is good to about this, however
 * well they happen to fit (test-sheet.c: 0.05 px with blur and noise). */
#define WM_LEAST_U_PX 0.1

typedef struct
{
  WmSheetField field;
  const WmSheetMark *marks[WM_SHEET_N_MARKS]; /* NULL: not seen */
  int n;
  double matrix[9]; /* mm of the field to px */
  double miss;      /* root mean square over a mark's side */
  double size_px;   /* width of the field */
} Choice;

/* Corners of mark @index of @field, mm, clockwise from its top left. */
static void
get_mark_mm (WmSheetField field, int index, WmPoint mm[4])
{
  WmPoint o = wm_sheet_mark_origin (field, index);
  double side = wm_sheet_form (field)->mark_mm;

  mm[0] = o;
  mm[1] = (WmPoint) { o.x + side, o.y };
  mm[2] = (WmPoint) { o.x + side, o.y + side };
  mm[3] = (WmPoint) { o.x, o.y + side };
}

/* The turn of the four corners found that is nearest to where they ought to be. */
static void
turn_corners (const WmPoint found[4], const WmPoint wanted[4], WmPoint turned[4])
{
  double best = G_MAXDOUBLE;
  int best_turn = 0;

  for (int turn = 0; turn < 4; turn++)
    {
      double sum = 0;

      for (int i = 0; i < 4; i++)
        sum += hypot (found[(i + turn) % 4].x - wanted[i].x,
                      found[(i + turn) % 4].y - wanted[i].y);
      if (sum < best)
        {
          best = sum;
          best_turn = turn;
        }
    }
  for (int i = 0; i < 4; i++)
    turned[i] = found[(i + best_turn) % 4];
}

/* Root mean square of what a matrix misses, px. */
static double
miss_of (const double matrix[9], const WmPoint *mm, const WmPoint *px, int n)
{
  double sum = 0;

  for (int i = 0; i < n; i++)
    {
      WmPoint at = wm_align_map (matrix, mm[i]);

      sum += pow (at.x - px[i].x, 2) + pow (at.y - px[i].y, 2);
    }
  return sqrt (sum / n);
}

/* The corners of all marks as pairs, mm and px. Returns: how many */
static int
pair_corners (const Choice *choice, const double start[9], WmPoint *mm, WmPoint *px)
{
  int n = 0;

  for (int i = 0; i < WM_SHEET_N_MARKS; i++)
    if (choice->marks[i] != NULL)
      {
        WmPoint wanted[4];

        get_mark_mm (choice->field, i, &mm[n]);
        for (int k = 0; k < 4; k++)
          wanted[k] = wm_align_map (start, mm[n + k]);
        turn_corners (choice->marks[i]->corners, wanted, &px[n]);
        n += 4;
      }
  return n;
}

/* From the middles of the marks to all their corners. */
static gboolean
fit_choice (Choice *choice)
{
  WmPoint mm[4 * WM_SHEET_N_MARKS], px[4 * WM_SHEET_N_MARKS];
  double start[9], side = 0;
  int n = 0;

  for (int i = 0; i < WM_SHEET_N_MARKS; i++)
    if (choice->marks[i] != NULL)
      {
        WmPoint corners[4];

        get_mark_mm (choice->field, i, corners);
        mm[n] = wm_sheet_middle (corners);
        px[n++] = choice->marks[i]->middle;
        side += choice->marks[i]->side_px;
      }
  choice->n = n;
  if (!wm_matrix_fit (n == WM_SHEET_N_MARKS ? WM_FIT_PROJECTIVE : WM_FIT_AFFINE, mm, px,
                      NULL, n, start)
      || !(wm_matrix_scale_at (start, mm[0]) > 0))
    return FALSE;
  n = pair_corners (choice, start, mm, px);
  if (!wm_matrix_fit (WM_FIT_PROJECTIVE, mm, px, NULL, n, choice->matrix)
      || !(wm_matrix_scale_at (choice->matrix, mm[0]) > 0))
    return FALSE;
  choice->miss = miss_of (choice->matrix, mm, px, n) / (side / choice->n);
  choice->size_px = wm_sheet_form (choice->field)->width_mm * side / choice->n
                    / wm_sheet_form (choice->field)->mark_mm;
  return TRUE;
}

/* Better: the field that is larger on the photo; then more marks; then the better fit. */
static gboolean
is_better (const Choice *one, const Choice *two)
{
  if (one->field != two->field)
    return one->size_px > two->size_px;
  if (one->n != two->n)
    return one->n > two->n;
  return one->miss < two->miss;
}

/* Marks by their number of dots. */
typedef struct
{
  const WmSheetMark *of[WM_SHEET_N_MARKS][MAX_ALIKE + 1]; /* the last is NULL: none */
  int n[WM_SHEET_N_MARKS];
} Sorted;

static void
sort_marks (const GArray *marks, Sorted *sorted)
{
  memset (sorted, 0, sizeof *sorted);
  for (guint i = 0; i < marks->len; i++)
    {
      const WmSheetMark *mark = &g_array_index (marks, WmSheetMark, i);
      int k = mark->n_dots - 1;

      if (sorted->n[k] < MAX_ALIKE)
        sorted->of[k][sorted->n[k]++] = mark;
    }
}

static int
count_kinds (const Sorted *sorted)
{
  int n = 0;

  for (int k = 0; k < WM_SHEET_N_MARKS; k++)
    n += sorted->n[k] > 0;
  return n;
}

/* Every way of taking one mark of each number, or none of one number, for one field. */
static gboolean
choose_field (const Sorted *sorted, WmSheetField field, Choice *best)
{
  gboolean found = FALSE;
  int pick[WM_SHEET_N_MARKS];

  for (pick[0] = 0; pick[0] <= sorted->n[0]; pick[0]++)
    for (pick[1] = 0; pick[1] <= sorted->n[1]; pick[1]++)
      for (pick[2] = 0; pick[2] <= sorted->n[2]; pick[2]++)
        for (pick[3] = 0; pick[3] <= sorted->n[3]; pick[3]++)
          {
            Choice choice = { .field = field };
            int n = 0;

            for (int k = 0; k < WM_SHEET_N_MARKS; k++)
              {
                choice.marks[k] = pick[k] < sorted->n[k] ? sorted->of[k][pick[k]] : NULL;
                n += choice.marks[k] != NULL;
              }
            if (n < LEAST_MARKS || !fit_choice (&choice) || choice.miss > WM_COARSE_SHARE)
              continue;
            if (!found || is_better (&choice, best))
              *best = choice;
            found = TRUE;
          }
  return found;
}

static gboolean
choose (const Sorted *sorted, Choice *best)
{
  gboolean found = FALSE;

  for (int field = 0; field < WM_SHEET_N_FIELDS; field++)
    {
      Choice choice;

      if (!choose_field (sorted, (WmSheetField)field, &choice))
        continue;
      if (!found || is_better (&choice, best))
        *best = choice;
      found = TRUE;
    }
  return found;
}

/* The camera's lean from how differently the field's two directions are enlarged in its
 * middle: exact for a camera far away, near enough to warn by. */
static double
find_tilt_deg (const double m[9], WmPoint at)
{
  WmPoint o = wm_align_map (m, at);
  WmPoint x = wm_align_map (m, (WmPoint) { at.x + 1, at.y });
  WmPoint y = wm_align_map (m, (WmPoint) { at.x, at.y + 1 });
  double a = x.x - o.x, b = y.x - o.x, c = x.y - o.y, d = y.y - o.y;
  double sum = a * a + b * b + c * c + d * d, det = a * d - b * c;
  double root = sqrt (MAX (sum * sum - 4 * det * det, 0));
  double small = sqrt (MAX ((sum - root) / 2, 0)), large = sqrt ((sum + root) / 2);

  return large > 0 ? acos (CLAMP (small / large, 0.0, 1.0)) * 180 / G_PI : 0;
}

static void
set_place (WmSheetPlace *out, const Choice *choice, const double matrix[9],
           double residual_px, double check_mm)
{
  const WmSheetForm *form = wm_sheet_form (choice->field);
  double w = form->width_mm, h = form->height_mm;
  const WmPoint mm[4] = { { 0, 0 }, { w, 0 }, { w, h }, { 0, h } };

  out->answer = WM_SHEET_FOUND;
  out->field = choice->field;
  out->n_marks = choice->n;
  for (int i = 0; i < 4; i++)
    out->corners[i] = wm_align_map (matrix, mm[i]);
  out->width_mm = w * check_mm / WM_SHEET_CHECK_MM;
  out->height_mm = h * check_mm / WM_SHEET_CHECK_MM;
  out->residual_px = residual_px;
  out->u_corner_px = MAX (residual_px, WM_LEAST_U_PX);
  out->tilt_deg = find_tilt_deg (matrix, (WmPoint) { w / 2, h / 2 });
}

/* The chosen marks' corners at full size. Those not clearly seen there are dropped. */
static gboolean
refine (const char *path, Choice *choice, WmSheetMark marks[WM_SHEET_N_MARKS],
        double scale, GCancellable *cancellable, GError **error)
{
  choice->n = 0;
  for (int i = 0; i < WM_SHEET_N_MARKS; i++)
    {
      g_autoptr (GError) problem = NULL;

      if (choice->marks[i] == NULL)
        continue;
      marks[i] = *choice->marks[i];
      choice->marks[i] = NULL;
      for (int k = 0; k < 4; k++)
        marks[i].corners[k] =
            (WmPoint) { marks[i].corners[k].x * scale, marks[i].corners[k].y * scale };
      if (wm_sheet_corners_refine (path, marks[i].corners, cancellable, &problem))
        {
          marks[i].middle = wm_sheet_middle (marks[i].corners);
          marks[i].side_px *= scale;
          choice->marks[i] = &marks[i];
          choice->n++;
        }
      else if (problem != NULL)
        {
          g_propagate_error (error, g_steal_pointer (&problem));
          return FALSE;
        }
    }
  return TRUE;
}

static void
finish (Choice *choice, double check_mm, WmSheetPlace *out)
{
  WmPoint mm[4 * WM_SHEET_N_MARKS], px[4 * WM_SHEET_N_MARKS];
  double residual;
  int n;

  out->answer = WM_SHEET_BENT;
  if (choice->n < LEAST_MARKS)
    {
      out->answer = WM_SHEET_TOO_FEW;
      return;
    }
  if (!fit_choice (choice))
    return;
  n = pair_corners (choice, choice->matrix, mm, px);
  residual = miss_of (choice->matrix, mm, px, n);
  if (residual <= WM_FINE_SHARE * choice->size_px)
    set_place (out, choice, choice->matrix, residual, check_mm);
}

gboolean
wm_sheet_find (const char *path, double check_mm, WmSheetPlace *out,
               GCancellable *cancellable, GError **error)
{
  g_autoptr (WmPhotoFacts) facts = wm_photo_probe_file (path, error);
  g_autoptr (WmPixels) pixels = NULL;
  g_autoptr (GArray) marks = NULL;
  WmSheetMark refined[WM_SHEET_N_MARKS];
  Sorted sorted;
  Choice choice;

  g_return_val_if_fail (check_mm >= 80 && check_mm <= 125, FALSE);
  if (facts == NULL)
    return FALSE;
  pixels = wm_photo_load_fit (path, WM_LOOK_PX, WM_LOOK_PX, cancellable, error);
  if (pixels == NULL)
    return FALSE;
  marks = wm_sheet_marks_find (pixels);
  sort_marks (marks, &sorted);
  memset (out, 0, sizeof *out);
  if (!choose (&sorted, &choice))
    {
      out->answer = marks->len == 0                       ? WM_SHEET_NONE
                    : count_kinds (&sorted) < LEAST_MARKS ? WM_SHEET_TOO_FEW
                                                          : WM_SHEET_NO_FIELD;
      return TRUE;
    }
  if (!refine (path, &choice, refined, (double)facts->width / pixels->width, cancellable,
               error))
    return FALSE;
  finish (&choice, check_mm, out);
  return TRUE;
}

const char *
wm_sheet_answer_text (WmSheetAnswer answer)
{
  switch (answer)
    {
    case WM_SHEET_FOUND:
      return N_ ("The scale sheet was found.");
    case WM_SHEET_TOO_FEW:
      return N_ ("Fewer than three marks of the scale sheet can be seen whole: take the "
                 "photo again with three or four of one field in it.");
    case WM_SHEET_NO_FIELD:
      return N_ ("The marks that can be seen do not belong to one field of the scale "
                 "sheet: take the photo again with three or four of one field in it.");
    case WM_SHEET_BENT:
      return N_ ("The marks of the scale sheet do not lie in one plane: lay it flat and "
                 "take the photo again.");
    case WM_SHEET_NONE:
    default:
      return N_ ("No scale sheet is seen on this photo: set the scale by two points or "
                 "take the photo again on the sheet.");
    }
}
