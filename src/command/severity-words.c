/* severity-words.c: the levels in words and as stable codes
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "command/severity-words.h"

#include <glib/gi18n.h>

static const struct
{
  const char *code;
  const char *words;
} levels[] = {
  [WM_SEVERITY_NOT_LOOKED_AT] = { "not-looked-at", N_ ("not looked at") },
  [WM_SEVERITY_SOUND] = { "sound", N_ ("sound") },
  [WM_SEVERITY_WATCH] = { "watch", N_ ("watch") },
  [WM_SEVERITY_REPAIR] = { "repair", N_ ("repair") },
  [WM_SEVERITY_NO_WEAR] = { "do-not-wear", N_ ("do not wear") },
  [WM_SEVERITY_NOT_PRESENT] = { "not-present", N_ ("not present") },
};

static gboolean
is_level (gint64 severity)
{
  return severity >= 0 && severity < (gint64)G_N_ELEMENTS (levels);
}

const char *
wm_severity_code (gint64 severity)
{
  return is_level (severity) ? levels[severity].code : NULL;
}

const char *
wm_severity_words (gint64 severity)
{
  return is_level (severity) ? _ (levels[severity].words) : "?";
}
