/* problem.c: what went wrong, in the jeweller's words, and what to do next
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/problem.h"

#include <glib/gi18n.h>

#include "archive/archive-error.h"

static const WmProblemWords table[] = {
  { WM_ARCHIVE_ERROR_NOT_THERE, N_ ("No archive here"),
    N_ ("This folder holds no Wearmark archive."),
    N_ ("Choose the folder that holds it, or let Wearmark make a new one."),
    "folder-symbolic", FALSE, TRUE },
  { WM_ARCHIVE_ERROR_FOREIGN, N_ ("Not a Wearmark archive"),
    N_ ("The folder holds records of another program. They were left as they are."),
    N_ ("Choose another folder."), "dialog-question-symbolic", FALSE, TRUE },
  { WM_ARCHIVE_ERROR_NEWER, N_ ("Made by a newer Wearmark"),
    N_ ("A newer version of the program wrote this archive. It was left as it is."),
    N_ ("Update Wearmark, then open the archive again."),
    "software-update-available-symbolic", FALSE, TRUE },
  { WM_ARCHIVE_ERROR_DAMAGED, N_ ("The archive is damaged"),
    N_ ("Some records cannot be read. Nothing was overwritten."),
    N_ ("Copy the folder to another disk first. Then bring back the last backup, or"
        " open it only to look."),
    "dialog-warning-symbolic", TRUE, TRUE },
  { WM_ARCHIVE_ERROR_READ_ONLY, N_ ("The archive can only be read"),
    N_ ("Wearmark may not write to this folder. Nothing was changed."),
    N_ ("Allow writing to the folder, or open it only to look."),
    "changes-prevent-symbolic", TRUE, TRUE },
  { WM_ARCHIVE_ERROR_FULL, N_ ("The disk is full"),
    N_ ("There is no room left, so this change was not kept. Everything before it is"
        " safe."),
    N_ ("Make room on the disk, then try again."), "drive-harddisk-symbolic", TRUE,
    TRUE },
  { WM_ARCHIVE_ERROR_OPEN_ELSEWHERE, N_ ("Already open"),
    N_ ("Another Wearmark window is using this archive."),
    N_ ("Close it there and try again, or open it here only to look."), "window-symbolic",
    TRUE, TRUE },
  { WM_ARCHIVE_ERROR_BUSY, N_ ("The archive is busy"),
    N_ ("Another program held the archive too long. The change was not kept."),
    N_ ("Wait a moment and try again."), "content-loading-symbolic", TRUE, TRUE },
  { WM_ARCHIVE_ERROR_NOT_FOUND, N_ ("No longer there"),
    N_ ("This record is no longer in the archive."),
    N_ ("Look for it by number, or undo its removal."), "edit-find-symbolic", FALSE,
    FALSE },
  { WM_ARCHIVE_ERROR_CONFLICT, N_ ("Changed in the meantime"),
    N_ ("Somebody changed the same thing since. Nothing was written."),
    N_ ("Look at what it says now and decide again."), "dialog-warning-symbolic", FALSE,
    FALSE },
  { WM_ARCHIVE_ERROR_REFUSED, N_ ("Not accepted"),
    N_ ("This does not fit the rules of the record, so it was not kept."),
    N_ ("Check what was entered."), "dialog-warning-symbolic", FALSE, FALSE },
  { WM_ARCHIVE_ERROR_NOTHING, N_ ("Nothing left"),
    N_ ("There is nothing to undo or redo here."), N_ ("Carry on."), "edit-undo-symbolic",
    FALSE, FALSE },
  { WM_ARCHIVE_ERROR_PHOTO_MISSING, N_ ("A photo is missing"),
    N_ ("The file of this photo is not in the archive. Its marks and notes are kept."),
    N_ ("Bring the photos folder back from the last backup."), "image-missing-symbolic",
    FALSE, FALSE },
  { WM_ARCHIVE_ERROR_PHOTO_CHANGED, N_ ("A photo is not what was stored"),
    N_ ("The file of this photo was changed from outside. It was left as it is."),
    N_ ("Bring it back from the last backup."), "image-missing-symbolic", FALSE, FALSE },
  { WM_ARCHIVE_ERROR_NOT_EMPTY, N_ ("The archive is not empty"),
    N_ ("This is only done to an empty archive. Nothing was changed."),
    N_ ("Choose an empty folder."), "folder-symbolic", FALSE, FALSE },
  { WM_ARCHIVE_ERROR_IO, N_ ("The disk did not answer"),
    N_ ("Reading or writing failed, so this change was not kept. Everything before it"
        " is safe."),
    N_ ("Check the disk and its cable, then try again."), "drive-harddisk-symbolic", TRUE,
    TRUE },
};

const WmProblemWords *
wm_problem_table (guint *n_rows)
{
  *n_rows = G_N_ELEMENTS (table);
  return table;
}

const WmProblemWords *
wm_problem_words (const GError *error)
{
  int code = WM_ARCHIVE_ERROR_IO;
  guint i;

  if (error != NULL && error->domain == WM_ARCHIVE_ERROR)
    code = error->code;

  for (i = 0; i < G_N_ELEMENTS (table) - 1; i++)
    if (table[i].code == code)
      break;

  return &table[i];
}

char *
wm_problem_line (const GError *error)
{
  const WmProblemWords *words = wm_problem_words (error);

  return g_strdup_printf ("%s %s", _ (words->sentence), _ (words->next_step));
}
