/* take-photo.c: from a file somewhere to a photo of a visit
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "report/take-photo.h"

#include "photo/judge.h"
#include "photo/load.h"
#include "photo/probe.h"
#include "photo/thumbnail.h"

/* What can be had again from the file: a failure leaves it unsaid. */
static void
judge (WmPhoto *photo, const char *path, GCancellable *cancellable)
{
  WmJudgement judgement;
  g_autofree const char **codes = NULL;
  g_autofree char *reasons = NULL;

  if (!wm_photo_judge (path, &judgement, cancellable, NULL))
    return;
  codes = wm_judgement_reason_codes (&judgement);
  reasons = g_strjoinv (" ", (char **)codes);
  g_object_set (photo, "verdict", wm_verdict_code (judgement.verdict), "verdict-reasons",
                reasons, NULL);
}

static WmPhoto *
make_record (const WmPhotoFacts *facts, const char *path, const WmId *visit_id,
             const char *moment)
{
  WmPhoto *photo = wm_photo_new ();
  g_autofree char *name = wm_photo_display_name (path);

  g_object_set (photo, "visit-id", visit_id, "moment", moment, "original-name", name,
                "format", wm_photo_format_name (facts->format), "width",
                (gint64)facts->width, "height", (gint64)facts->height, "orientation",
                (gint64)facts->orientation, NULL);
  if (facts->has_taken_at)
    g_object_set (photo, "taken-at-s", facts->taken_at_us / G_USEC_PER_SEC, NULL);
  return photo;
}

WmPhoto *
wm_take_photo (WmArchive *archive, const char *path, const WmId *visit_id,
               const char *moment, GCancellable *cancellable, GError **error)
{
  g_autoptr (WmPhotoFacts) facts = NULL;
  g_autoptr (WmPixels) preview = NULL;
  g_autoptr (WmPhoto) photo = NULL;
  g_autofree char *sha256 = NULL;
  g_autofree char *stored = NULL;
  gint64 byte_size;

  /* Read whole first, in a process of its own: no byte of a stranger's file is looked
   * at here before. */
  if (!wm_photo_check_whole (path, cancellable, error)
      || (facts = wm_photo_probe_file (path, error)) == NULL
      || !wm_archive_store_photo (archive, path, wm_photo_format_name (facts->format),
                                  cancellable, &sha256, &byte_size, error))
    return NULL;

  photo = make_record (facts, path, visit_id, moment);
  g_object_set (photo, "sha256", sha256, "byte-size", byte_size, NULL);
  stored = wm_archive_photo_path (archive, photo);
  judge (photo, stored, cancellable);
  preview = wm_thumbnail_make_all (wm_archive_get_cache_folder (archive), sha256, stored,
                                   cancellable, NULL);
  if (g_cancellable_set_error_if_cancelled (cancellable, error))
    return NULL;
  return g_steal_pointer (&photo);
}
