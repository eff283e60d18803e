/* run.c: open the window
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/run.h"

#include <glib/gi18n.h>

#include "wearmark-config.h"
#include "window/application.h"
#include "wm-ui.h"

int
wm_window_run (int argc, char **argv, const char *archive_folder)
{
  g_autoptr (WmApplication) application = NULL;

  g_set_prgname (WM_APP_ID);
  g_set_application_name ("Wearmark");
  wm_ui_register_resource ();

  application = wm_application_new (archive_folder);
  return g_application_run (G_APPLICATION (application), argc, argv);
}
