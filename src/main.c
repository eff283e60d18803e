/* main.c: one program: a verb works without a display, no verb opens the window
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <glib/gi18n.h>
#include <locale.h>
#include <signal.h>

#include "command/command.h"
#include "wearmark-config.h"
#include "window/run.h"

/* A program run from its build folder finds its translations by the environment, as it
 * finds its tables. */
static void
set_language (void)
{
  const char *folder = g_getenv ("WEARMARK_LOCALE_DIR");

  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, folder != NULL ? folder : WM_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
}

int
main (int argc, char *argv[])
{
  g_autofree char *folder = NULL;
  int status;

  set_language ();
  /* A limit on the size of files is an error to be told of, not a reason to die. */
  signal (SIGXFSZ, SIG_IGN);
  status = wm_command_run (argc, argv, &folder);
  if (status >= 0)
    return status;

  /* The words of the command line are used up; what is left is the program's name. */
  return wm_window_run (1, argv, folder);
}
