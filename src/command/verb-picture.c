/* verb-picture.c: picture NUMBER --photo N -o FILE.png: a photo with its marks
 *
 * With --finding N in place of --photo: the finding's place before and after.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>
#include <math.h>

#include "command/choose-visit.h"
#include "command/severity-words.h"
#include "command/verbs.h"
#include "photo/mark-look.h"
#include "photo/png-write.h"
#include "record/points.h"
#include "report/close-up-picture.h"

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
          MAX (check->number, 0), wm_severity_words (check->severity),
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
write_picture (const Picture *self, WmArchive *archive, const char *dest, GError **error)
{
  g_autofree char *path = wm_archive_photo_path (archive, self->photo);
  g_autofree char *findings = describe_findings (self);
  const char *source =
      self->photo->caption != NULL ? self->photo->caption : self->photo->original_name;
  WmPictureOptions options = { .marks = (const WmPictureMark *)self->drawn->data,
                               .n_marks = self->drawn->len };

  options.note = (WmPngNote) { .title = self->piece->number,
                               .source = source,
                               .description = *findings != '\0' ? findings : NULL,
                               .has_created = self->photo->taken_at_s != WM_UNKNOWN,
                               .mm_per_px = get_mm_per_px (self->photo) };
  if (options.note.has_created)
    options.note.created_us = self->photo->taken_at_s * G_USEC_PER_SEC;
  return wm_picture_write_png (path, dest, &options, NULL, error);
}

/* The Nth photo of the visit; NULL when the reason is told. */
static WmPhoto *
choose_photo (WmCall *call, WmArchive *archive, WmPiece *piece, WmVisit *visit,
              WmExit *out_exit)
{
  const char *nth = wm_call_get_option (call, "photo");
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) photos =
      wm_list_photos (archive, wm_record_get_id (WM_RECORD (visit)), &error);
  guint64 number;

  *out_exit = WM_EXIT_FAILED;
  if (photos == NULL)
    *out_exit = wm_call_fail_with (call, error);
  else if (nth == NULL
           || !g_ascii_string_to_unsigned (nth, 10, 1, G_MAXUINT32, &number, NULL))
    *out_exit =
        wm_call_misused (call, _ ("say which photo with --photo N, 1 for the first"));
  else if (number > photos->len)
    *out_exit =
        wm_call_fail (call, _ ("This visit of %s has %u photos. Nothing was written."),
                      piece->number, photos->len);
  else
    return g_object_ref (photos->pdata[number - 1]);
  return NULL;
}

/* ---- a finding before and after ------------------------------------------------ */

static const WmFinding *
choose_finding (WmCall *call, WmVisitData *data, const char *nth, WmExit *out_exit)
{
  guint64 number;

  if (!g_ascii_string_to_unsigned (nth, 10, 1, G_MAXUINT32, &number, NULL))
    {
      *out_exit = wm_call_misused (
          call, _ ("say which finding with --finding N, the number on its mark"));
      return NULL;
    }
  for (guint i = 0; i < data->findings->len; i++)
    {
      const WmFinding *finding = data->findings->pdata[i];

      if (finding->check->number == (gint64)number)
        return finding;
    }
  *out_exit =
      wm_call_fail (call, _ ("This visit of %s has no finding %u. Nothing was written."),
                    data->piece->number, (guint)number);
  return NULL;
}

static WmExit
write_finding (WmCall *call, WmArchive *archive, WmVisit *visit, const char *nth,
               const char *dest)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (WmVisitData) data = wm_visit_data_load (
      archive, wm_call_get_trade (call), wm_record_get_id (WM_RECORD (visit)), &error);
  g_autoptr (WmLanguage) language = NULL;
  const WmFinding *finding;
  WmExit exit = WM_EXIT_FAILED;

  if (data == NULL)
    return wm_call_fail_with (call, error);
  finding = choose_finding (call, data, nth, &exit);
  if (finding == NULL)
    return exit;
  language = wm_language_new (data->owner != NULL ? data->owner->language : NULL);
  if (wm_close_up_picture_write (data, finding, language, dest, &error))
    return WM_EXIT_DONE;
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND))
    return wm_call_fail (call,
                         _ ("Finding %s of %s is not marked on any photo. Nothing was "
                            "written."),
                         nth, data->piece->number);
  return wm_call_fail_with (call, error);
}

static WmExit
run (WmCall *call)
{
  const char *finding = wm_call_get_option (call, "finding");
  const char *dest = wm_call_get_option (call, "output");
  g_autoptr (WmArchive) archive = NULL;
  g_autoptr (WmPiece) piece = NULL;
  g_autoptr (WmVisit) visit = NULL;
  g_autoptr (WmPhoto) photo = NULL;
  g_autoptr (GError) error = NULL;
  g_auto (Picture) picture = { NULL };
  WmExit exit = WM_EXIT_FAILED;

  if (dest == NULL)
    return wm_call_misused (call, _ ("say where to with -o FILE.png"));
  if (finding != NULL && wm_call_get_option (call, "photo") != NULL)
    return wm_call_misused (call, _ ("--photo or --finding, not both"));
  archive = wm_call_look_at_archive (call);
  if (archive != NULL)
    piece = wm_call_find_piece (call, archive, wm_call_get_operand (call, 0));
  if (piece == NULL)
    return WM_EXIT_FAILED;
  visit = wm_call_choose_visit (call, archive, piece, &exit);
  if (visit != NULL && finding != NULL)
    return write_finding (call, archive, visit, finding, dest);
  if (visit != NULL)
    photo = choose_photo (call, archive, piece, visit, &exit);
  if (photo == NULL)
    return exit;

  picture.piece = piece;
  picture.photo = photo;
  if (!load (&picture, archive, wm_record_get_id (WM_RECORD (visit)), &error)
      || !write_picture (&picture, archive, dest, &error))
    return wm_call_fail_with (call, error);
  return WM_EXIT_DONE;
}

static const WmVerbOption verb_options[] = {
  { "photo", 0, N_ ("N"), N_ ("which photo of the visit, in the order of “show”") },
  { "finding", 0, N_ ("N"), N_ ("a finding's place before and after; N as on its mark") },
  { "output", 'o', N_ ("FILE.png"), N_ ("where to") },
  WM_VISIT_OPTION,
  { NULL },
};

const WmVerb wm_verb_picture = {
  .name = "picture",
  .operands = N_ ("NUMBER"),
  .min_operands = 1,
  .max_operands = 1,
  .summary = N_ ("write a photo with its marks as PNG"),
  .options = verb_options,
  .run = run,
};
