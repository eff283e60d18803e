/* close-up-picture.h: a finding's matched close-ups as one PNG
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "report/language.h"
#include "report/visit-data.h"

/**
 * wm_close_up_picture_write:
 * @finding: of @data; marked on a photo of before or after
 * @dest: where to; replaced whole or not at all
 *
 * The same place before and after beside each other, at one scale where that is known,
 * with marks, scale bar and the customer's sentence above. May take some tenths of a
 * second.
 *
 * Returns: FALSE with G_IO_ERROR_NOT_FOUND when no photo shows the finding, or the error
 *   of reading or writing
 */
gboolean
wm_close_up_picture_write (WmVisitData *data, const WmFinding *finding,
                           WmLanguage *language, const char *dest, GError **error);
