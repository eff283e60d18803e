/* marked-picture.c: a photo with its marks as a file to be given away
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/marked-picture.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <math.h>

#include "photo/jpeg-out.h"
#include "photo/mark-look.h"
#include "photo/png-write.h"
#include "record/points.h"
#include "reckon/severity.h"
#include "trade/trade.h"

/* Of the levels that are findings; as design.md has them. */
static const char *const severity_words[] = {
  [WM_SEVERITY_WATCH] = N_ ("watch"),
  [WM_SEVERITY_REPAIR] = N_ ("repair"),
  [WM_SEVERITY_NO_WEAR] = N_ ("do not wear"),
};

/* For mail: jpeg-out.h. */
#define QUALITY 85

/* A photo with everything that its picture shows. */
typedef struct
{
  WmPiece *piece;
  WmPhoto *photo;
  GPtrArray *marks;        /* of WmMark, of this photo */
  GPtrArray *checks;       /* of the visit */
  GPtrArray *measurements; /* of the visit */
  GPtrArray *places;       /* of GArray of WmPoint, of each mark that is drawn */
  GPtrArray *values;       /* of char *, of each mark that is drawn; "" for none */
  GArray *drawn;           /* of WmPictureMark */
} Picture;

static void
picture_clear (Picture *self)
{
  g_clear_pointer (&self->marks, g_ptr_array_unref);
  g_clear_pointer (&self->checks, g_ptr_array_unref);
  g_clear_pointer (&self->measurements, g_ptr_array_unref);
  g_clear_pointer (&self->places, g_ptr_array_unref);
  g_clear_pointer (&self->values, g_ptr_array_unref);
  g_clear_pointer (&self->drawn, g_array_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Picture, picture_clear)

static WmShape
get_shape (const WmMark *mark)
{
  if (g_strcmp0 (mark->shape, WM_MARK_LINE) == 0)
    return WM_SHAPE_LINE;
  if (g_strcmp0 (mark->shape, WM_MARK_OUTLINE) == 0)
    return WM_SHAPE_OUTLINE;
  return g_strcmp0 (mark->shape, WM_MARK_SPAN) == 0 ? WM_SHAPE_SPAN : WM_SHAPE_SPOT;
}

static const WmCheck *
find_check (const Picture *self, const WmId *id)
{
  for (guint i = 0; i < self->checks->len; i++)
    if (wm_id_equal (wm_record_get_id (self->checks->pdata[i]), id))
      return self->checks->pdata[i];
  return NULL;
}

/* What was measured along the mark: "1.02 mm", or "". */
static char *
make_value (const Picture *self, const WmMark *mark)
{
  const WmId *id = wm_record_get_id (WM_RECORD ((gpointer)mark));

  for (guint i = 0; i < self->measurements->len; i++)
    {
      const WmMeasurement *measured = self->measurements->pdata[i];

      if (wm_id_equal (&measured->mark_id, id) && isfinite (measured->value_mm))
        return g_strdup_printf (_ ("%.2f mm"), measured->value_mm);
    }
  return g_strdup ("");
}

static void
add_mark (Picture *self, const WmMark *mark)
{
  GArray *points = wm_points_parse (mark->points);
  const WmCheck *check = find_check (self, &mark->check_id);
  gboolean after = g_strcmp0 (self->photo->moment, WM_PHOTO_AFTER) == 0;
  WmPictureMark drawn = { 0 };
  char *value;

  if (points == NULL)
    return;
  value = make_value (self, mark);
  g_ptr_array_add (self->places, points);
  g_ptr_array_add (self->values, value);
  drawn.shape = get_shape (mark);
  drawn.points = (const WmPoint *)points->data;
  drawn.n_points = points->len;
  if (*value != '\0')
    drawn.value = value;
  if (check != NULL)
    {
      drawn.number = check->number > 0 ? (int)check->number : 0;
      drawn.severity =
          (WmSeverity)(after && check->after_severity > 0 ? check->after_severity
                                                          : check->severity);
    }
  if (!wm_id_is_none (&mark->carried_from))
    drawn.state = mark->confirmed ? WM_MARK_PLAIN : WM_MARK_UNCONFIRMED;
  if (isfinite (mark->disc_x) && isfinite (mark->disc_y))
    {
      drawn.is_pinned = TRUE;
      drawn.disc = (WmPoint) { mark->disc_x, mark->disc_y };
    }
  g_array_append_val (self->drawn, drawn);
}

static gboolean
load (Picture *self, WmArchive *archive, const WmId *visit_id, GError **error)
{
  self->marks = wm_archive_list (archive, WM_KIND_MARK, "photo_id",
                                 wm_record_get_id (WM_RECORD (self->photo)), error);
  if (self->marks == NULL)
    return FALSE;
  self->checks = wm_archive_list_of_visit (archive, WM_KIND_CHECK, visit_id, error);
  if (self->checks == NULL)
    return FALSE;
  self->measurements =
      wm_archive_list_of_visit (archive, WM_KIND_MEASUREMENT, visit_id, error);
  if (self->measurements == NULL)
    return FALSE;

  self->places = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
  self->values = g_ptr_array_new_with_free_func (g_free);
  self->drawn = g_array_new (FALSE, FALSE, sizeof (WmPictureMark));
  for (guint i = 0; i < self->marks->len; i++)
    add_mark (self, self->marks->pdata[i]);
  return TRUE;
}

/* "1 repair: Worn claw. Two tips worn flat", a finding a line. */
static char *
describe_findings (const Picture *self)
{
  GString *text = g_string_new (NULL);
  g_autoptr (GHashTable) told = g_hash_table_new (NULL, NULL);

  for (guint i = 0; i < self->marks->len; i++)
    {
      const WmMark *mark = self->marks->pdata[i];
      const WmCheck *check = find_check (self, &mark->check_id);

      if (check == NULL || !wm_severity_is_finding ((WmSeverity)check->severity)
          || !g_hash_table_add (told, (gpointer)check))
        continue;
      g_string_append_printf (
          text, "%s%" G_GINT64_FORMAT " %s: %s", text->len > 0 ? "\n" : "",
          MAX (check->number, 0), _ (severity_words[check->severity]),
          wm_trade_text (check->fault != NULL ? check->fault : check->title));
      if (check->note != NULL)
        g_string_append_printf (text, ". %s", check->note);
    }
  return g_string_free (text, FALSE);
}

static double
get_mm_per_px (const WmPhoto *photo)
{
  double length_px =
      hypot (photo->scale_x2 - photo->scale_x1, photo->scale_y2 - photo->scale_y1);

  return length_px > 0 && photo->scale_mm > 0 ? photo->scale_mm / length_px : 0;
}

static gboolean
write_png (const Picture *self, WmArchive *archive, const char *dest, int long_side,
           gboolean grey, GCancellable *cancellable, GError **error)
{
  g_autofree char *path = wm_archive_photo_path (archive, self->photo);
  g_autofree char *findings = describe_findings (self);
  const char *source =
      self->photo->caption != NULL ? self->photo->caption : self->photo->original_name;
  WmPictureOptions options = { .long_side = long_side,
                               .grey = grey,
                               .marks = (const WmPictureMark *)self->drawn->data,
                               .n_marks = self->drawn->len };

  options.note = (WmPngNote) { .title = self->piece->number,
                               .source = source,
                               .description = *findings != '\0' ? findings : NULL,
                               .has_created = self->photo->taken_at_s != WM_UNKNOWN,
                               .mm_per_px = get_mm_per_px (self->photo) };
  if (options.note.has_created)
    options.note.created_us = self->photo->taken_at_s * G_USEC_PER_SEC;
  return wm_picture_write_png (path, dest, &options, cancellable, error);
}

/* By way of a PNG beside the archive's other small files. */
static gboolean
write_jpeg (const Picture *self, WmArchive *archive, const char *dest, int long_side,
            gboolean grey, GCancellable *cancellable, GError **error)
{
  g_autofree char *folder =
      g_build_filename (wm_archive_get_cache_folder (archive), "marked", NULL);
  g_autofree char *unique = g_uuid_string_random ();
  g_autofree char *file = g_strconcat (unique, ".png", NULL);
  g_autofree char *between = g_build_filename (folder, file, NULL);
  g_autoptr (GBytes) bytes = NULL;
  gsize size;
  const char *data;

  if (g_mkdir_with_parents (folder, 0700) != 0)
    {
      g_set_error (error, G_IO_ERROR, g_io_error_from_errno (errno), "%s",
                   g_strerror (errno));
      return FALSE;
    }
  if (write_png (self, archive, between, long_side, grey, cancellable, error))
    bytes =
        wm_jpeg_for_mail (between, G_MAXUINT16, QUALITY, NULL, NULL, cancellable, error);
  g_unlink (between);
  if (bytes == NULL)
    return FALSE;
  data = g_bytes_get_data (bytes, &size);
  return g_file_set_contents_full (
      dest, data, (gssize)size,
      G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE, 0644, error);
}

gboolean
wm_marked_picture_write (WmArchive *archive, WmPiece *piece, WmPhoto *photo,
                         const char *dest, int long_side, gboolean grey,
                         GCancellable *cancellable, GError **error)
{
  g_auto (Picture) picture = { .piece = piece, .photo = photo };
  g_autofree char *lower = g_ascii_strdown (dest, -1);

  if (!load (&picture, archive, &photo->visit_id, error))
    return FALSE;
  if (g_str_has_suffix (lower, ".jpg") || g_str_has_suffix (lower, ".jpeg"))
    return write_jpeg (&picture, archive, dest, long_side, grey, cancellable, error);
  return write_png (&picture, archive, dest, long_side, grey, cancellable, error);
}
