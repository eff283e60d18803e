/* reader-main.c: reads one foreign photo to its last row, and says whether it could
 *
 * A process of its own, so that a file that breaks a decoder breaks only this
 * (guard.h). Called by the program, not by people: wearmark-photo-reader FILE.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/guard.h"
#include "photo/photo-error.h"

#include "wearmark-config.h"

#include <libintl.h>
#include <locale.h>
#include <stdio.h>
#include <sys/prctl.h>
#include <sys/resource.h>

static void
set_limit (int what, guint64 most)
{
  struct rlimit limit = { (rlim_t)most, (rlim_t)most };

  setrlimit (what, &limit);
}

static void
limit_process (void)
{
  set_limit (RLIMIT_CPU, WM_GUARD_CPU_S);
  set_limit (RLIMIT_CORE, 0);
  set_limit (RLIMIT_FSIZE, WM_GUARD_BYTES);

  /* The address sanitizer reserves terabytes it never uses. */
#ifndef __SANITIZE_ADDRESS__
  set_limit (RLIMIT_AS, WM_GUARD_BYTES);
#endif

  /* Nothing this process starts can gain rights, and it goes when the program does. */
  prctl (PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0);
  prctl (PR_SET_PDEATHSIG, 9);
}

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;

  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, WM_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  if (argc != 2)
    return 2;

  limit_process ();
  if (wm_photo_check_whole_here (argv[1], NULL, &error))
    return 0;

  printf ("%d\n%s", error->code, error->message);
  return WM_GUARD_REFUSED;
}
