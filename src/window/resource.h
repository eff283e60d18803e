/* resource.h: where the window's own files are inside the program
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

/* Templates: WM_UI "main-window.ui". */
#define WM_UI "/org/wearmark/Wearmark/ui/"
