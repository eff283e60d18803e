/* verb-picture.c: picture NUMBER --photo N -o FILE.png: a photo with its marks
 *
 * With --finding N in place of --photo: the finding's place before and after.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>

#include "command/choose-visit.h"
#include "command/verbs.h"
#include "report/close-up-picture.h"
#include "report/marked-picture.h"

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

  if (!wm_marked_picture_write (archive, piece, photo, dest, 0, FALSE, NULL, &error))
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
  .summary = N_ ("write a photo with its marks as PNG, or as JPEG for mail"),
  .options = verb_options,
  .run = run,
};
