/* severity-words.h: the levels in words and as stable codes
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

#include "reckon/severity.h"

/* "not-looked-at", "sound", "watch", "repair", "do-not-wear", "not-present": for
 * --json; never change. NULL outside the levels. */
const char *wm_severity_code (gint64 severity);

/* Translated; static. */
const char *wm_severity_words (gint64 severity);
