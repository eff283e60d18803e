/* carry.c: marks carried from one photo to another through their pairing
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/carry.h"

#include <math.h>

#include "photo/align.h"
#include "record/points.h"

static gboolean
is_on (WmMark *mark, WmPhoto *photo)
{
  return wm_id_equal (&mark->photo_id, wm_record_get_id (WM_RECORD (photo)));
}

static gboolean
is_waiting (WmMark *mark)
{
  return !mark->confirmed && !wm_id_is_none (&mark->carried_from);
}

static gboolean
is_there (GPtrArray *there, WmPhoto *to, WmMark *source, const WmId *check_id)
{
  for (guint i = 0; i < there->len; i++)
    {
      WmMark *mark = g_ptr_array_index (there, i);

      if (!is_on (mark, to))
        continue;
      if (wm_id_equal (&mark->carried_from, wm_record_get_id (WM_RECORD (source)))
          || (check_id != NULL && wm_id_equal (&mark->check_id, check_id)))
        return TRUE;
    }
  return FALSE;
}

/* FALSE if the form can not be laid on the photo. */
static gboolean
map_points (GArray *points, const double matrix[9], double width, double height)
{
  double x = 0;
  double y = 0;

  for (guint i = 0; i < points->len; i++)
    {
      WmPoint *point = &g_array_index (points, WmPoint, i);

      *point = wm_align_map (matrix, *point);
      if (!isfinite (point->x) || !isfinite (point->y))
        return FALSE;
      x += point->x / points->len;
      y += point->y / points->len;
      point->x = CLAMP (point->x, 0, width);
      point->y = CLAMP (point->y, 0, height);
    }
  return x >= 0 && y >= 0 && x <= width && y <= height;
}

static WmMark *
carry (WmMark *source, WmPhoto *to, const double matrix[9], const WmId *check_id)
{
  g_autoptr (GArray) points = wm_points_parse (source->points);
  g_autofree char *text = NULL;
  WmMark *mark;

  if (points == NULL
      || !map_points (points, matrix, (double)to->width, (double)to->height))
    return NULL;
  text = wm_points_format ((const WmPoint *)points->data, points->len);
  mark = wm_mark_new ();
  mark->photo_id = *wm_record_get_id (WM_RECORD (to));
  mark->carried_from = *wm_record_get_id (WM_RECORD (source));
  if (check_id != NULL)
    mark->check_id = *check_id;
  wm_record_set_text (WM_RECORD (mark), "shape", source->shape);
  wm_record_set_text (WM_RECORD (mark), "points", text);
  mark->confirmed = FALSE;
  return mark;
}

GPtrArray *
wm_carry_marks (GPtrArray *sources, WmPhoto *from, GPtrArray *there, WmPhoto *to,
                const double matrix[9], WmCarryCheck check, gpointer user_data)
{
  GPtrArray *carried = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; i < sources->len; i++)
    {
      WmMark *source = g_ptr_array_index (sources, i);
      const WmId *check_id;
      WmMark *mark;

      if (!is_on (source, from) || wm_id_is_none (&source->check_id)
          || is_waiting (source))
        continue;
      check_id = check != NULL ? check (source, user_data) : &source->check_id;
      if (is_there (there, to, source, check_id))
        continue;
      mark = carry (source, to, matrix, check_id);
      if (mark != NULL)
        g_ptr_array_add (carried, mark);
    }
  return carried;
}
