/* words.h: marks English text for translators
 *
 * This room has no gettext: it marks, the rooms above translate.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#ifndef N_
#  define N_(text) (text)
#endif
