/* language.h: texts in the customer's language, whatever the program speaks
 *
 * Papers go out in the language of the person they are for, so they can not use
 * the process's own gettext language. A WmLanguage is one compiled catalogue
 * (GNU gettext MO file) of ours, read once; safe to read on any thread.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

typedef struct _WmLanguage WmLanguage;

/**
 * wm_language_new:
 * @tag: (nullable): BCP 47: "de", "de-AT", "en"; NULL for English
 *
 * Never fails: a language without a catalogue speaks English, the language of the
 * sources. Looked for in the environment's WEARMARK_LOCALE_DIR, then where the
 * program was installed.
 *
 * Returns: (transfer full)
 */
WmLanguage *wm_language_new (const char *tag);

/* The same with the catalogue's bytes; damaged bytes speak English. For tests. */
WmLanguage *wm_language_new_from_bytes (const char *tag, GBytes *catalogue);

WmLanguage *wm_language_ref (WmLanguage *self);
void wm_language_unref (WmLanguage *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmLanguage, wm_language_unref)

const char *wm_language_get_tag (WmLanguage *self);

/* @text in the language, or @text itself. NULL gives "". Not to be freed; valid as
 * long as both. xgettext knows this word. */
const char *wm_say (WmLanguage *self, const char *text) G_GNUC_FORMAT (2);

/* By number: languages whose rule is "one and the rest" (English, German and most
 * around them). */
const char *wm_say_n (WmLanguage *self, const char *one, const char *many, gint64 n)
    G_GNUC_FORMAT (2) G_GNUC_FORMAT (3);
