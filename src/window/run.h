/* run.h: open the window
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

/**
 * wm_window_run:
 * @archive_folder: (nullable): NULL opens the user's own archive
 *
 * Runs until the last window is closed. Returns: the exit code
 */
int wm_window_run (int argc, char **argv, const char *archive_folder);
