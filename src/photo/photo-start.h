/* photo-start.h: the picture library made ready, and made safe
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

/**
 * wm_photo_start:
 *
 * Starts the picture library once: every loader but those of JPEG, PNG, TIFF,
 * WebP and HEIC/AVIF is switched off, its operation cache is kept small and its
 * threads few. Safe to call again and from any thread; every reading function of
 * this room calls it itself, so a program calls it only to choose the moment
 * (about 20 ms).
 */
void wm_photo_start (void);

/**
 * wm_photo_stop:
 *
 * Gives the picture library's memory back. For tests that look for leaks; after
 * it nothing of this room may be called.
 */
void wm_photo_stop (void);
