/* main.c: one program: a verb works without a display, no verb opens the window
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <locale.h>

int
main (int argc, char *argv[])
{
  setlocale (LC_ALL, "");
  return argc > 1 ? 2 : 0;
}
