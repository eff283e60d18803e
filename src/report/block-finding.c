/* block-finding.c: one finding: the same place before and after, and its story
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>
#include <math.h>

#include "record/points.h"
#include "report/blocks.h"
#include "report/words.h"

/* Look book, section 6. */
#define WM_CLOSE_WIDTH_MM 85.0
#define WM_CLOSE_HEIGHT_MM 56.0

/* What a close-up shows without a known scale: so much of the photo's width; and with
 * one: so many true millimetres. Enough to know where on the piece it is (our choice). */
#define WM_CLOSE_SHARE 0.32
#define WM_CLOSE_TRUE_MM 12.0
/* At most this much of a photo in a close-up, and room round a mark's own form. */
#define WM_CLOSE_MOST_SHARE 0.8
#define WM_CLOSE_ROOM 2.2

/* Middle and larger side of the mark's form. */
static gboolean
get_form (WmMark *mark, WmPoint *out_centre, double *out_size_px)
{
  g_autoptr (GArray) points = wm_points_parse (mark->points);
  double left = G_MAXDOUBLE;
  double top = G_MAXDOUBLE;
  double right = -G_MAXDOUBLE;
  double bottom = -G_MAXDOUBLE;

  if (points == NULL)
    return FALSE;
  for (guint i = 0; i < points->len; i++)
    {
      WmPoint point = g_array_index (points, WmPoint, i);

      left = MIN (left, point.x);
      right = MAX (right, point.x);
      top = MIN (top, point.y);
      bottom = MAX (bottom, point.y);
    }
  out_centre->x = (left + right) / 2;
  out_centre->y = (top + bottom) / 2;
  *out_size_px = MAX (right - left, bottom - top);
  return TRUE;
}

/* How many photo pixels the box is wide. */
static double
choose_width_px (WmPhoto *photo, double form_px)
{
  double px_per_mm = wm_photo_px_per_true_mm (photo);
  double width = isfinite (px_per_mm) ? WM_CLOSE_TRUE_MM * px_per_mm
                                      : WM_CLOSE_SHARE * (double)photo->width;

  width = MAX (width, form_px * WM_CLOSE_ROOM);
  return MIN (width, WM_CLOSE_MOST_SHARE * (double)photo->width);
}

static WmPairing *
find_pairing (WmVisitData *data, WmPhoto *before, WmPhoto *after)
{
  for (guint i = 0; i < data->pairings->len; i++)
    {
      WmPairing *pairing = g_ptr_array_index (data->pairings, i);

      if (!pairing->refused
          && wm_id_equal (&pairing->before_photo_id,
                          wm_record_get_id (WM_RECORD (before)))
          && wm_id_equal (&pairing->after_photo_id, wm_record_get_id (WM_RECORD (after))))
        return pairing;
    }
  return NULL;
}

/* The same place on the after photo: in register where the pair is, else about the
 * after mark at the same scale of the photo. */
static gboolean
find_after_view (const WmPageContext *context, const WmFinding *finding, WmPhoto *before,
                 const WmBoxView *before_view, double width_px, WmBoxView *out_view,
                 WmMark **out_mark, gboolean *out_registered)
{
  WmPhoto *photo;
  WmPairing *pairing;
  WmPoint centre;
  double form_px;
  double true_ratio;

  if (!wm_visit_data_find_place (context->data, finding, WM_PHOTO_AFTER, &photo,
                                 out_mark))
    return FALSE;

  pairing = before != NULL ? find_pairing (context->data, before, photo) : NULL;
  *out_registered = FALSE;
  if (pairing != NULL)
    {
      const double m[9] = { pairing->m0, pairing->m1, pairing->m2,
                            pairing->m3, pairing->m4, pairing->m5,
                            pairing->m6, pairing->m7, pairing->m8 };

      *out_registered = wm_box_view_follow (out_view, photo, m, before_view,
                                            WM_CLOSE_WIDTH_MM, WM_CLOSE_HEIGHT_MM);
      if (*out_registered)
        return TRUE;
    }

  if (!get_form (*out_mark, &centre, &form_px))
    return FALSE;
  true_ratio = before != NULL
                   ? wm_photo_px_per_true_mm (photo) / wm_photo_px_per_true_mm (before)
                   : NAN;
  if (isfinite (true_ratio))
    width_px *= true_ratio;
  else if (before != NULL)
    width_px *= (double)photo->width / (double)before->width;
  else
    width_px = choose_width_px (photo, form_px);
  wm_box_view_close_up (out_view, photo, centre, width_px / WM_CLOSE_WIDTH_MM,
                        WM_CLOSE_WIDTH_MM, WM_CLOSE_HEIGHT_MM);
  return TRUE;
}

static void
place_empty (WmSheet *sheet, double x_mm, double y_mm, const char *text)
{
  wm_sheet_frame (sheet, x_mm, y_mm, WM_CLOSE_WIDTH_MM, WM_CLOSE_HEIGHT_MM);
  wm_sheet_tag (sheet, "P");
  wm_sheet_text (sheet, x_mm + 4, y_mm + WM_CLOSE_HEIGHT_MM / 2 - 2,
                 WM_CLOSE_WIDTH_MM - 8, WM_TEXT_SMALL, wm_say (sheet->language, text));
  wm_sheet_tag_end (sheet, "P");
}

static void
place_view (const WmPageContext *context, const WmBoxView *view, double x_mm, double y_mm,
            WmMark *mark, int number, WmSeverity severity)
{
  WmBoxMark box = { mark, number, severity };

  wm_sheet_tag (context->sheet, "Figure");
  wm_photo_box_draw (context->boxes, context->sheet, view, x_mm, y_mm, WM_CLOSE_WIDTH_MM,
                     WM_CLOSE_HEIGHT_MM, &box, 1, TRUE);
  wm_sheet_tag_end (context->sheet, "Figure");
}

/* Both close-ups with their captions. */
static double
place_close_ups (const WmPageContext *context, const WmFinding *finding, double y_mm)
{
  WmSheet *sheet = context->sheet;
  WmLanguage *language = sheet->language;
  WmCheck *check = finding->check;
  int number = (int)MAX (check->number, 0);
  double right = WM_CLOSE_WIDTH_MM + WM_SHEET_GUTTER_MM;
  double caption_mm = y_mm + WM_CLOSE_HEIGHT_MM + 1.4;
  WmPhoto *photo = NULL;
  WmMark *mark = NULL;
  WmMark *after_mark = NULL;
  WmBoxView view;
  WmBoxView after_view;
  WmPoint centre;
  double form_px;
  double width_px = 0;
  gboolean registered = FALSE;
  gboolean has_after;
  double height;

  if (wm_visit_data_find_place (context->data, finding, WM_PHOTO_BEFORE, &photo, &mark)
      && get_form (mark, &centre, &form_px))
    {
      width_px = choose_width_px (photo, form_px);
      wm_box_view_close_up (&view, photo, centre, width_px / WM_CLOSE_WIDTH_MM,
                            WM_CLOSE_WIDTH_MM, WM_CLOSE_HEIGHT_MM);
      place_view (context, &view, 0, y_mm, mark, number, check->severity);
    }
  else
    {
      photo = NULL;
      place_empty (sheet, 0, y_mm, N_ ("This place was not marked on a photo."));
    }

  has_after = find_after_view (context, finding, photo, &view, width_px, &after_view,
                               &after_mark, &registered);
  if (has_after)
    place_view (context, &after_view, right, y_mm, after_mark, number,
                check->after_severity);
  else if (context->finished)
    place_empty (sheet, right, y_mm, N_ ("There is no after photo of this place."));
  else if (photo != NULL)
    {
      /* Nothing to compare with yet: show where on the piece the place is. */
      wm_box_view_fit (&after_view, photo, WM_CLOSE_WIDTH_MM, WM_CLOSE_HEIGHT_MM);
      place_view (context, &after_view, right, y_mm, mark, number, check->severity);
    }

  wm_sheet_tag (sheet, "Caption");
  height = wm_sheet_text (sheet, 0, caption_mm, 0, WM_TEXT_SMALL,
                          wm_say (language, N_ ("Before")));
  if (has_after)
    wm_sheet_text (sheet, right, caption_mm, 0, WM_TEXT_SMALL,
                   wm_say (language, registered ? N_ ("After, same place, same scale")
                                                : N_ ("After")));
  else if (photo != NULL && !context->finished)
    wm_sheet_text (sheet, right, caption_mm, 0, WM_TEXT_SMALL,
                   wm_say (language, N_ ("Where it is")));
  wm_sheet_tag_end (sheet, "Caption");
  return WM_CLOSE_HEIGHT_MM + 1.4 + height;
}

/* The four columns of the story. */
static double
place_story (const WmPageContext *context, const WmFinding *finding, double y_mm)
{
  WmSheet *sheet = context->sheet;
  WmLanguage *language = sheet->language;
  g_autofree char *found = wm_finding_found (language, context->data, finding);
  g_autofree char *done = wm_finding_done (language, finding);
  g_autofree char *tested = wm_finding_tested (language, finding);
  const char *headings[] = { N_ ("Found"), N_ ("Measured"), N_ ("Done"), N_ ("Tested") };
  const char *texts[] = { found, NULL, done, tested };
  const double column = (WM_SHEET_WIDTH_MM - 3 * WM_SHEET_GUTTER_MM) / 4;
  double tallest = 0;

  for (int i = 0; i < 4; i++)
    {
      double x = i * (column + WM_SHEET_GUTTER_MM);
      double height = 1;

      wm_sheet_line (sheet, x, y_mm, column, 0.3);
      wm_sheet_tag (sheet, "P");
      height += wm_sheet_text (sheet, x, y_mm + height, 0, WM_TEXT_SMALL_STRONG,
                               wm_say (language, headings[i]));
      height += 0.4;
      height +=
          texts[i] != NULL
              ? wm_sheet_text (sheet, x, y_mm + height, column, WM_TEXT_BODY, texts[i])
              : wm_block_measured (context, finding, x, y_mm + height, column);
      wm_sheet_tag_end (sheet, "P");
      tallest = MAX (tallest, height);
    }
  return tallest;
}

double
wm_block_finding (const WmPageContext *context, gconstpointer item, double y_mm)
{
  const WmFinding *finding = item;
  WmSheet *sheet = context->sheet;
  WmLanguage *language = sheet->language;
  WmCheck *check = finding->check;
  gboolean has_after = check->after_severity != WM_SEVERITY_NOT_LOOKED_AT;
  g_autofree char *sentence = wm_finding_sentence (language, finding);
  const char *was = wm_words_severity (language, check->severity);
  double height;
  double line;

  wm_sheet_glyph (sheet, 4.4, y_mm + 5.5, WM_MARK_R_PAPER_PICTURE_MM, check->severity,
                  (int)MAX (check->number, 0));
  if (has_after)
    wm_sheet_glyph (sheet, WM_SHEET_WIDTH_MM - 4.4, y_mm + 5.5,
                    WM_MARK_R_PAPER_PICTURE_MM, check->after_severity,
                    (int)MAX (check->number, 0));
  wm_sheet_tag (sheet, "H2");
  height =
      wm_sheet_text (sheet, 11, y_mm, WM_SHEET_WIDTH_MM - 24, WM_TEXT_SENTENCE, sentence);
  wm_sheet_tag_end (sheet, "H2");
  wm_sheet_tag (sheet, "P");
  line = wm_sheet_text (sheet, 11, y_mm + height, 0, WM_TEXT_BODY, was);
  if (has_after)
    {
      double x = 11 + wm_sheet_text_width (sheet, WM_TEXT_BODY, was) + 2;

      wm_sheet_arrow (sheet, x, y_mm + height + line / 2, 6);
      wm_sheet_text (sheet, x + 8, y_mm + height, 0, WM_TEXT_STRONG,
                     wm_words_severity (language, check->after_severity));
    }
  wm_sheet_tag_end (sheet, "P");
  height += line + 2;
  height += place_close_ups (context, finding, y_mm + height);
  height += 2;
  height += place_story (context, finding, y_mm + height);
  height += wm_block_wear (context, finding, y_mm + height);
  return height + 9;
}
