/* probe-source.h: probing what is already open
 *
 * Inside this room only: one open of a file for probing and decoding, so that
 * both speak of the same bytes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/probe.h"
#include "photo/source.h"

WmPhotoFacts *wm_photo_probe_source (WmSource *source, GError **error);
