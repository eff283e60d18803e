/* photo-box.c: a photo, or a part of it, in a box on the sheet, with its marks
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/photo-box.h"

#include <cairo-pdf.h>
#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "photo/align.h"
#include "photo/jpeg-out.h"
#include "photo/load.h"
#include "photo/mark-layout.h"
#include "record/points.h"
#include "report/photo-scale.h"

/* Pictures for mail: as fine as a printed photo is looked at (our choice; 220 is the
 * usual figure of office programs, common practice, no source). */
#define WM_MAIL_DPI 220.0
#define WM_MAIL_QUALITY 85
#define WM_PRINT_QUALITY 92

/* No picture on a screen is made larger than this, px. */
#define WM_SCREEN_MOST 4096

/* No cairo surface is longer (cairo 1.16, MAX_IMAGE_SIZE in cairo-image-surface.c). */
#define WM_SURFACE_MOST 32767

static const double corner_mm = 1.6;

void
wm_photo_boxes_init (WmPhotoBoxes *self, WmVisitData *data, WmReportSize size)
{
  self->data = data;
  self->size = size;
  self->cancellable = NULL;
  self->surfaces = g_hash_table_new_full (g_str_hash, g_str_equal, g_free,
                                          (GDestroyNotify)cairo_surface_destroy);
}

void
wm_photo_boxes_clear (WmPhotoBoxes *self)
{
  g_clear_pointer (&self->surfaces, g_hash_table_unref);
  g_clear_object (&self->cancellable);
}

double
wm_photo_px_per_true_mm (WmPhoto *photo)
{
  WmPhotoScale scale;

  return wm_photo_scale_read (photo, &scale) ? 1 / wm_photo_scale_mm_per_px (&scale)
                                             : NAN;
}

/* Turns about @centre, then @px_per_mm, with @centre in the middle of the box. */
static void
set_view (WmBoxView *view, WmPhoto *photo, WmPoint centre, double px_per_mm,
          double width_mm, double height_mm)
{
  view->photo = photo;
  cairo_matrix_init_translate (&view->to_box, width_mm / 2, height_mm / 2);
  cairo_matrix_scale (&view->to_box, 1 / px_per_mm, 1 / px_per_mm);
  cairo_matrix_rotate (&view->to_box, G_PI_2 * (double)(photo->quarter_turns & 3));
  cairo_matrix_translate (&view->to_box, -centre.x, -centre.y);
}

/* The photo's sides as they stand in the box. */
static void
get_turned_size (WmPhoto *photo, double *out_width, double *out_height)
{
  gboolean lying = (photo->quarter_turns & 1) != 0;

  *out_width = (double)(lying ? photo->height : photo->width);
  *out_height = (double)(lying ? photo->width : photo->height);
}

void
wm_box_view_fit (WmBoxView *view, WmPhoto *photo, double width_mm, double height_mm)
{
  double width;
  double height;
  WmPoint middle = { (double)photo->width / 2, (double)photo->height / 2 };

  get_turned_size (photo, &width, &height);
  set_view (view, photo, middle, MAX (width / width_mm, height / height_mm), width_mm,
            height_mm);
}

/* Moves one axis so that the photo covers the box where it is large enough, and is
 * centred where it is not. @from, @to: the photo's edges in the box. */
static double
shift_into (double from, double to, double size_mm)
{
  if (to - from <= size_mm)
    return (size_mm - from - to) / 2;
  if (from > 0)
    return -from;
  return to < size_mm ? size_mm - to : 0;
}

static void
get_edges (const WmBoxView *view, double box[4])
{
  double x1 = 0;
  double y1 = 0;
  double x2 = (double)view->photo->width;
  double y2 = (double)view->photo->height;

  cairo_matrix_transform_point (&view->to_box, &x1, &y1);
  cairo_matrix_transform_point (&view->to_box, &x2, &y2);
  box[0] = MIN (x1, x2);
  box[1] = MIN (y1, y2);
  box[2] = MAX (x1, x2);
  box[3] = MAX (y1, y2);
}

void
wm_box_view_close_up (WmBoxView *view, WmPhoto *photo, WmPoint centre, double px_per_mm,
                      double width_mm, double height_mm)
{
  double box[4];

  set_view (view, photo, centre, px_per_mm, width_mm, height_mm);
  get_edges (view, box);
  view->to_box.x0 += shift_into (box[0], box[2], width_mm);
  view->to_box.y0 += shift_into (box[1], box[3], height_mm);
}

/* The affine map that a homography is near one place: value and first derivatives. */
static gboolean
linearise (const double m[9], double x, double y, cairo_matrix_t *out)
{
  double w = m[6] * x + m[7] * y + m[8];
  double u = m[0] * x + m[1] * y + m[2];
  double v = m[3] * x + m[4] * y + m[5];

  if (!isfinite (w) || fabs (w) < 1e-9)
    return FALSE;
  out->xx = (m[0] - u / w * m[6]) / w;
  out->xy = (m[1] - u / w * m[7]) / w;
  out->yx = (m[3] - v / w * m[6]) / w;
  out->yy = (m[4] - v / w * m[7]) / w;
  out->x0 = u / w - out->xx * x - out->xy * y;
  out->y0 = v / w - out->yx * x - out->yy * y;
  return isfinite (out->x0) && isfinite (out->y0)
         && fabs (out->xx * out->yy - out->xy * out->yx) > 1e-6;
}

gboolean
wm_box_view_follow (WmBoxView *view, WmPhoto *after, const double matrix[9],
                    const WmBoxView *before, double width_mm, double height_mm)
{
  cairo_matrix_t from_box = before->to_box;
  cairo_matrix_t near_place;
  double inverse[9];
  double x = width_mm / 2;
  double y = height_mm / 2;
  WmPoint place;

  if (cairo_matrix_invert (&from_box) != CAIRO_STATUS_SUCCESS
      || !wm_align_invert (matrix, inverse))
    return FALSE;
  cairo_matrix_transform_point (&from_box, &x, &y);
  place = wm_align_map (inverse, (WmPoint) { x, y });
  if (!isfinite (place.x) || !isfinite (place.y)
      || !linearise (matrix, place.x, place.y, &near_place))
    return FALSE;

  view->photo = after;
  cairo_matrix_multiply (&view->to_box, &near_place, &before->to_box);
  return TRUE;
}

/* ---- pictures ------------------------------------------------------------- */

static gboolean
is_paper (cairo_t *cr)
{
  cairo_surface_type_t type = cairo_surface_get_type (cairo_get_target (cr));

  return type == CAIRO_SURFACE_TYPE_PDF || type == CAIRO_SURFACE_TYPE_PS;
}

static void
unref_bytes (void *bytes)
{
  g_bytes_unref (bytes);
}

/* Lets a PDF carry @jpeg instead of the surface's pixels; @name the same for the same
 * picture, so that it is carried once. */
static void
attach_jpeg (cairo_surface_t *surface, GBytes *jpeg, const char *name)
{
  gsize size;
  const guchar *data = g_bytes_get_data (jpeg, &size);
  char *copy = g_strdup (name);

  cairo_surface_set_mime_data (surface, CAIRO_MIME_TYPE_JPEG, data, size, unref_bytes,
                               g_bytes_ref (jpeg));
  cairo_surface_set_mime_data (surface, CAIRO_MIME_TYPE_UNIQUE_ID, (guchar *)copy,
                               strlen (copy), g_free, copy);
}

/* The whole photo for a printed page: its own bytes where a PDF can carry them. The
 * pixels under them are never looked at, so they may stay unwritten (and unpaged). */
static cairo_surface_t *
make_whole (WmPhotoBoxes *self, const char *path, WmPhoto *photo, GError **error)
{
  cairo_surface_t *surface;
  g_autoptr (GBytes) jpeg = NULL;

  if (wm_jpeg_can_pass_through (path))
    jpeg = wm_jpeg_load_stripped (path, error);
  else
    {
      g_autoptr (WmPixels) pixels = wm_photo_load_fit (
          path, (int)photo->width, (int)photo->height, self->cancellable, error);

      jpeg = pixels != NULL ? wm_jpeg_encode (pixels, WM_PRINT_QUALITY, error) : NULL;
    }
  if (jpeg == NULL)
    return NULL;

  surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)photo->width,
                                        (int)photo->height);
  attach_jpeg (surface, jpeg, photo->sha256 != NULL ? photo->sha256 : path);
  return surface;
}

/* A photo too long for that goes into the PDF part by part, as for mail. */
static gboolean
can_be_whole (WmPhoto *photo)
{
  return photo->width <= WM_SURFACE_MOST && photo->height <= WM_SURFACE_MOST;
}

static cairo_surface_t *
get_whole (WmPhotoBoxes *self, const char *path, WmPhoto *photo, GError **error)
{
  cairo_surface_t *surface = g_hash_table_lookup (self->surfaces, path);

  if (surface == NULL)
    {
      surface = make_whole (self, path, photo, error);
      if (surface != NULL)
        g_hash_table_insert (self->surfaces, g_strdup (path), surface);
    }
  return surface;
}

/* The part of the photo that the box shows, in photo pixels, cut to the photo. */
static gboolean
get_region (const WmBoxView *view, double width_mm, double height_mm, double region[4])
{
  cairo_matrix_t from_box = view->to_box;
  double left = G_MAXDOUBLE;
  double top = G_MAXDOUBLE;
  double right = -G_MAXDOUBLE;
  double bottom = -G_MAXDOUBLE;

  if (cairo_matrix_invert (&from_box) != CAIRO_STATUS_SUCCESS)
    return FALSE;
  for (int corner = 0; corner < 4; corner++)
    {
      double x = corner & 1 ? width_mm : 0;
      double y = corner & 2 ? height_mm : 0;

      cairo_matrix_transform_point (&from_box, &x, &y);
      left = MIN (left, x);
      right = MAX (right, x);
      top = MIN (top, y);
      bottom = MAX (bottom, y);
    }
  region[0] = CLAMP (floor (left), 0, (double)view->photo->width - 1);
  region[1] = CLAMP (floor (top), 0, (double)view->photo->height - 1);
  region[2] = CLAMP (ceil (right), region[0] + 1, (double)view->photo->width) - region[0];
  region[3] =
      CLAMP (ceil (bottom), region[1] + 1, (double)view->photo->height) - region[1];
  return TRUE;
}

/* Only the region, as fine as @dots_per_mm asks and no finer than the photo is. */
static cairo_surface_t *
make_part (WmPhotoBoxes *self, const char *path, const WmBoxView *view,
           const double region[4], double dots_per_mm, gboolean for_paper, GError **error)
{
  double mm_per_px =
      sqrt (fabs (view->to_box.xx * view->to_box.yy - view->to_box.xy * view->to_box.yx));
  double zoom = MIN (1.0, mm_per_px * dots_per_mm);
  int width = (int)CLAMP (ceil (region[2] * zoom), 1, WM_SCREEN_MOST);
  int height = (int)CLAMP (ceil (region[3] * zoom), 1, WM_SCREEN_MOST);
  g_autoptr (WmPixels) pixels =
      wm_photo_load_region (path, region[0], region[1], region[2], region[3], width,
                            height, self->cancellable, error);
  cairo_surface_t *surface;

  if (pixels == NULL)
    return NULL;
  surface = wm_pixels_get_surface (pixels);
  if (for_paper)
    {
      g_autoptr (GBytes) jpeg = wm_jpeg_encode (pixels, WM_MAIL_QUALITY, error);
      g_autofree char *name = g_strdup_printf ("%s %g %g %g %g", path, region[0],
                                               region[1], region[2], region[3]);

      if (jpeg == NULL)
        {
          cairo_surface_destroy (surface);
          return NULL;
        }
      attach_jpeg (surface, jpeg, name);
    }
  return surface;
}

/* The clip and the box's own coordinates (mm) are set. */
static gboolean
paint_photo (WmPhotoBoxes *self, cairo_t *cr, const WmBoxView *view, double width_mm,
             double height_mm, double dots_per_mm, GError **error)
{
  const char *path = wm_visit_data_get_path (self->data, view->photo);
  gboolean paper = is_paper (cr);
  double region[4] = { 0, 0, 0, 0 };
  cairo_surface_t *part = NULL;

  cairo_transform (cr, &view->to_box);
  if (paper && self->size == WM_REPORT_PRINT && can_be_whole (view->photo))
    {
      cairo_surface_t *whole = get_whole (self, path, view->photo, error);

      if (whole == NULL)
        return FALSE;
      /* In a group of its own: cairo 1.16 names a picture twice in a page's resources
       * if the page shows it twice, which qpdf warns of. */
      cairo_push_group (cr);
      cairo_set_source_surface (cr, whole, 0, 0);
      cairo_paint (cr);
      cairo_pop_group_to_source (cr);
      cairo_paint (cr);
      return TRUE;
    }

  if (!get_region (view, width_mm, height_mm, region))
    return TRUE;
  part = make_part (self, path, view, region, dots_per_mm, paper, error);
  if (part == NULL)
    return FALSE;
  cairo_translate (cr, region[0], region[1]);
  cairo_scale (cr, region[2] / cairo_image_surface_get_width (part),
               region[3] / cairo_image_surface_get_height (part));
  cairo_set_source_surface (cr, part, 0, 0);
  /* A screen samples beyond the edge; a PDF carries a JPEG only without that. */
  if (!paper)
    cairo_pattern_set_extend (cairo_get_source (cr), CAIRO_EXTEND_PAD);
  cairo_rectangle (cr, 0, 0, cairo_image_surface_get_width (part),
                   cairo_image_surface_get_height (part));
  cairo_fill (cr);
  cairo_surface_destroy (part);
  return TRUE;
}

/* ---- marks ---------------------------------------------------------------- */

static WmShape
get_shape (WmMark *mark)
{
  if (g_strcmp0 (mark->shape, WM_MARK_LINE) == 0)
    return WM_SHAPE_LINE;
  if (g_strcmp0 (mark->shape, WM_MARK_OUTLINE) == 0)
    return WM_SHAPE_OUTLINE;
  return g_strcmp0 (mark->shape, WM_MARK_SPAN) == 0 ? WM_SHAPE_SPAN : WM_SHAPE_SPOT;
}

/* The places of @mark in points of the page, from the box's corner. */
static GArray *
map_points (const WmBoxView *view, WmMark *mark)
{
  GArray *points = wm_points_parse (mark->points);

  for (guint i = 0; points != NULL && i < points->len; i++)
    {
      WmPoint *point = &g_array_index (points, WmPoint, i);

      cairo_matrix_transform_point (&view->to_box, &point->x, &point->y);
      point->x *= WM_POINTS_PER_MM;
      point->y *= WM_POINTS_PER_MM;
    }
  return points;
}

static gboolean
is_inside (GArray *points, double width, double height)
{
  for (guint i = 0; i < points->len; i++)
    {
      WmPoint point = g_array_index (points, WmPoint, i);

      if (point.x >= 0 && point.y >= 0 && point.x <= width && point.y <= height)
        return TRUE;
    }
  return FALSE;
}

static void
draw_marks (WmSheet *sheet, const WmBoxView *view, double width_mm, double height_mm,
            const WmBoxMark *marks, guint n_marks, gboolean scale_bar)
{
  g_autoptr (GPtrArray) places =
      g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
  g_autofree WmLayoutMark *layout = g_new0 (WmLayoutMark, n_marks);
  g_autofree WmMarkLook *looks = g_new0 (WmMarkLook, n_marks);
  WmLayoutBox bar = { 0, (height_mm - 9) * WM_POINTS_PER_MM, 24 * WM_POINTS_PER_MM,
                      9 * WM_POINTS_PER_MM };
  WmLayoutView area = { .width = width_mm * WM_POINTS_PER_MM,
                        .height = height_mm * WM_POINTS_PER_MM,
                        .radius = WM_MARK_R_PAPER_PICTURE_MM * WM_POINTS_PER_MM,
                        .taken = scale_bar ? &bar : NULL,
                        .n_taken = scale_bar ? 1 : 0 };
  WmMarkStyle style;
  guint n = 0;

  for (guint i = 0; i < n_marks; i++)
    {
      g_autoptr (GArray) points = map_points (view, marks[i].mark);

      if (points == NULL || !is_inside (points, area.width, area.height))
        continue;
      layout[n].severity = marks[i].severity;
      layout[n].shape = get_shape (marks[i].mark);
      layout[n].points = (const WmPoint *)points->data;
      layout[n].n_points = points->len;
      looks[n].number = marks[i].number;
      g_ptr_array_add (places, g_steal_pointer (&points));
      n++;
    }

  wm_mark_layout (layout, n, &area);
  wm_mark_style_init (&style);
  style.grey = sheet->grey;
  style.px = 0.24; /* a 300 dpi dot in points */
  for (guint i = 0; i < n; i++)
    {
      looks[i].severity = layout[i].severity;
      looks[i].shape = layout[i].shape;
      looks[i].points = layout[i].points;
      looks[i].n_points = layout[i].n_points;
      looks[i].disc = layout[i].disc;
      looks[i].radius = area.radius;
    }
  wm_mark_draw_all (sheet->cr, looks, n, &style);
}

/* A bar of a whole 1, 2, 5 or 10 ... mm, at most a third of the box long. */
static void
draw_scale_bar (WmSheet *sheet, const WmBoxView *view, double x_mm, double y_mm,
                double width_mm, double height_mm)
{
  static const double lengths[] = { 50, 20, 10, 5, 2, 1, 0.5 };
  double true_mm =
      wm_photo_px_per_true_mm (view->photo) * hypot (view->to_box.xx, view->to_box.yx);
  WmPhotoScale scale;
  cairo_t *cr = sheet->cr;
  double length = NAN;
  g_autofree char *words = NULL;
  double left;
  double top;

  for (guint i = 0; i < G_N_ELEMENTS (lengths) && isnan (length); i++)
    if (lengths[i] * true_mm <= width_mm / 5)
      length = lengths[i];
  if (!(length * true_mm > 4))
    return;
  /* Of a photo taken at a slant, one bar would be wrong nearly everywhere. */
  if (!wm_photo_scale_read (view->photo, &scale) || !wm_photo_scale_is_even (&scale))
    return;

  left = x_mm + 2;
  top = y_mm + height_mm - 8.5;
  words = g_strdup_printf ("%g mm", length);
  cairo_save (cr);
  cairo_rectangle (cr, (sheet->left_mm + left) * WM_POINTS_PER_MM, top * WM_POINTS_PER_MM,
                   (length * true_mm + 5) * WM_POINTS_PER_MM, 6.5 * WM_POINTS_PER_MM);
  cairo_set_source_rgba (cr, 1, 1, 1, 0.92);
  cairo_fill (cr);
  cairo_restore (cr);
  wm_sheet_line (sheet, left + 2.5, top + 1.8, length * true_mm, 0.3);
  for (int end = 0; end <= 2; end++)
    wm_sheet_line (sheet, left + 2.35 + end * length * true_mm / 2, top + 1.8, 0.3, 1.4);
  wm_sheet_text (sheet, left + 2.5, top + 2.7, 0, WM_TEXT_TINY, words);
}

/* ---- the box -------------------------------------------------------------- */

static void
clip_box (cairo_t *cr, double width_mm, double height_mm)
{
  double r = corner_mm;

  cairo_new_path (cr);
  cairo_arc (cr, width_mm - r, r, r, -G_PI_2, 0);
  cairo_arc (cr, width_mm - r, height_mm - r, r, 0, G_PI_2);
  cairo_arc (cr, r, height_mm - r, r, G_PI_2, G_PI);
  cairo_arc (cr, r, r, r, G_PI, 3 * G_PI_2);
  cairo_close_path (cr);
  cairo_clip (cr);
}

/* Device dots a millimetre of this sheet has: for pictures made for the screen. */
static double
get_dots_per_mm (cairo_t *cr)
{
  double dx = WM_POINTS_PER_MM;
  double dy = 0;

  if (is_paper (cr))
    return WM_MAIL_DPI / 25.4;
  cairo_user_to_device_distance (cr, &dx, &dy);
  return hypot (dx, dy);
}

void
wm_photo_box_draw (WmPhotoBoxes *self, WmSheet *sheet, const WmBoxView *view, double x_mm,
                   double y_mm, double width_mm, double height_mm, const WmBoxMark *marks,
                   guint n_marks, gboolean scale_bar)
{
  cairo_t *cr = sheet->cr;
  g_autoptr (GError) error = NULL;
  gboolean has_bar = scale_bar && isfinite (wm_photo_px_per_true_mm (view->photo));
  double dots_per_mm;
  gboolean painted;

  if (cr == NULL)
    return;
  dots_per_mm = get_dots_per_mm (cr);
  cairo_save (cr);
  cairo_translate (cr, (sheet->left_mm + x_mm) * WM_POINTS_PER_MM,
                   y_mm * WM_POINTS_PER_MM);
  cairo_save (cr);
  cairo_scale (cr, WM_POINTS_PER_MM, WM_POINTS_PER_MM);
  clip_box (cr, width_mm, height_mm);
  cairo_set_source_rgb (cr, 0.92, 0.92, 0.92);
  cairo_paint (cr);
  painted = paint_photo (self, cr, view, width_mm, height_mm, dots_per_mm, &error);
  cairo_restore (cr);
  if (painted)
    draw_marks (sheet, view, width_mm, height_mm, marks, n_marks, has_bar);
  cairo_restore (cr);

  if (!painted)
    wm_sheet_text (
        sheet, x_mm + 4, y_mm + 4, width_mm - 8, WM_TEXT_SMALL,
        wm_say (sheet->language, N_ ("The file of this photo is missing or damaged.")));
  else if (has_bar)
    draw_scale_bar (sheet, view, x_mm, y_mm, width_mm, height_mm);
}
