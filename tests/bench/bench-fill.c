/* bench-fill.c: bench-fill FOLDER N: makes an archive of N pieces for other rows
 *
 * No row of its own: called without arguments it prints nothing.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <stdlib.h>

#include "fill.h"

int
main (int argc, char *argv[])
{
  g_autoptr (WmArchive) archive = NULL;
  g_autoptr (GError) error = NULL;

  if (argc != 3)
    return 0;
  archive = wm_archive_open (argv[1], WM_ARCHIVE_CREATE, &error);
  if (archive == NULL)
    g_error ("%s", error->message);
  bench_fill (archive, (guint)atoi (argv[2]));
  return 0;
}
