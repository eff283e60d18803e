/* write-table-strings.c: writes po/table-strings.h
 *
 * Built, not installed; run by "meson compile table-strings" after a text of
 * the tables has changed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "trade/table-strings.h"

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *strings = NULL;

  if (argc != 3)
    {
      g_printerr ("usage: %s TABLES-FOLDER OUTPUT\n", argv[0]);
      return 2;
    }

  strings = wm_table_strings_make (argv[1], &error);
  if (strings == NULL || !g_file_set_contents (argv[2], strings, -1, &error))
    {
      g_printerr ("%s\n", error->message);
      return 1;
    }
  return 0;
}
