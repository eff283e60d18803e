/* problem.c: an archive's failure as a sentence with the next step
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "command/problem.h"

#include <glib/gi18n.h>

#include "archive/archive-error.h"

static const char *const sentences[] = {
  [WM_ARCHIVE_ERROR_NOT_THERE] =
      N_ ("There is no archive in this folder. Name another with --archive, or make one"
          " by opening the window, or with “wearmark sample”."),
  [WM_ARCHIVE_ERROR_FOREIGN] =
      N_ ("This folder belongs to another program; nothing in it was touched. Name an"
          " empty folder or one with an archive."),
  [WM_ARCHIVE_ERROR_NEWER] =
      N_ ("A newer Wearmark made this archive; it was left as it is. Install the newer"
          " version here too."),
  [WM_ARCHIVE_ERROR_DAMAGED] =
      N_ ("The database is damaged; nothing was changed. Copy the whole folder to a safe"
          " place first, then see “wearmark verify” and your last backup."),
  [WM_ARCHIVE_ERROR_READ_ONLY] =
      N_ ("The archive can not be written here; nothing was changed. Check the rights of"
          " the folder, or whether the disk is mounted read-only."),
  [WM_ARCHIVE_ERROR_FULL] =
      N_ ("The disk is full; all earlier edits are kept, this one was not. Make room and"
          " try again."),
  [WM_ARCHIVE_ERROR_OPEN_ELSEWHERE] =
      N_ ("Another Wearmark has this archive open. Close it there and try again."),
  [WM_ARCHIVE_ERROR_BUSY] =
      N_ ("Another program holds the database; nothing was changed. Try again."),
  [WM_ARCHIVE_ERROR_NOT_FOUND] = N_ ("There is no such record in this archive."),
  [WM_ARCHIVE_ERROR_CONFLICT] =
      N_ ("The record was changed meanwhile; nothing was written. Try again."),
  [WM_ARCHIVE_ERROR_REFUSED] =
      N_ ("The record breaks a rule of the archive; nothing was written."),
  [WM_ARCHIVE_ERROR_NOTHING] = N_ ("There is nothing to undo or redo."),
  [WM_ARCHIVE_ERROR_PHOTO_MISSING] =
      N_ ("The file of a photo is missing. Bring it back from a backup; the record itself"
          " is kept."),
  [WM_ARCHIVE_ERROR_PHOTO_CHANGED] =
      N_ ("The file of a photo is not what was stored. Bring it back from a backup; the"
          " record itself is kept."),
  [WM_ARCHIVE_ERROR_NOT_EMPTY] =
      N_ ("This archive already has pieces; nothing was changed. Name an empty or new"
          " folder with --archive."),
  [WM_ARCHIVE_ERROR_IO] = N_ ("The system reported a failure; nothing was changed."),
};

char *
wm_problem_sentence (const GError *error)
{
  /* Other rooms' messages are whole sentences already. */
  if (error->domain != WM_ARCHIVE_ERROR || error->code < 0
      || error->code >= (int)G_N_ELEMENTS (sentences))
    return g_strdup (error->message);
  return g_strdup_printf ("%s [%s]", _ (sentences[error->code]), error->message);
}
