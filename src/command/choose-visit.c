/* choose-visit.c: which visit of a piece a verb is about, and its photos in order
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "command/choose-visit.h"

#include <glib/gi18n.h>

WmVisit *
wm_call_choose_visit (WmCall *call, WmArchive *archive, WmPiece *piece, WmExit *out_exit)
{
  const char *nth = wm_call_get_option (call, "visit");
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) visits = wm_archive_list (
      archive, WM_KIND_VISIT, "piece_id", wm_record_get_id (WM_RECORD (piece)), &error);
  guint64 number;

  if (visits == NULL)
    {
      *out_exit = wm_call_fail_with (call, error);
      return NULL;
    }
  number = visits->len;
  if (nth != NULL && !g_ascii_string_to_unsigned (nth, 10, 1, G_MAXUINT32, &number, NULL))
    {
      *out_exit = wm_call_misused (call, _ ("--visit takes a number, 1 for the first"));
      return NULL;
    }
  if (number < 1 || number > visits->len)
    {
      *out_exit = wm_call_fail (call, _ ("%s has %u visits. Nothing was written."),
                                piece->number, visits->len);
      return NULL;
    }
  return g_object_ref (g_ptr_array_index (visits, number - 1));
}

static int
get_rank (const WmPhoto *photo)
{
  if (g_strcmp0 (photo->moment, WM_PHOTO_BEFORE) == 0)
    return 0;
  return g_strcmp0 (photo->moment, WM_PHOTO_DURING) == 0 ? 1 : 2;
}

static int
compare_photos (gconstpointer a, gconstpointer b)
{
  const WmPhoto *first = *(WmPhoto *const *)a;
  const WmPhoto *second = *(WmPhoto *const *)b;

  if (get_rank (first) != get_rank (second))
    return get_rank (first) - get_rank (second);
  if (first->position != second->position)
    return first->position < second->position ? -1 : 1;
  return wm_id_compare (wm_record_get_id (WM_RECORD ((gpointer)first)),
                        wm_record_get_id (WM_RECORD ((gpointer)second)));
}

GPtrArray *
wm_list_photos (WmArchive *archive, const WmId *visit_id, GError **error)
{
  GPtrArray *photos = wm_archive_list_of_visit (archive, WM_KIND_PHOTO, visit_id, error);

  if (photos != NULL)
    g_ptr_array_sort (photos, compare_photos);
  return photos;
}
