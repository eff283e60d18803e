/* fuzz-load.c: pixels out of any bytes, in bounded time and memory
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/load.h"
#include "photo/photo-start.h"

/* A picture larger than this is refused by the limits already tested elsewhere; here
 * it would only slow the fuzzer down. */
#define MOST_PIXELS 2000000

int LLVMFuzzerTestOneInput (const guint8 *data, gsize size);

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autoptr (GBytes) bytes = g_bytes_new (data, size);
  g_autoptr (GError) error = NULL;
  g_autoptr (WmPhotoFacts) facts = NULL;
  g_autoptr (WmPixels) pixels = NULL;

  wm_photo_start ();
  facts = wm_photo_probe_bytes (bytes, "fuzz", NULL);
  if (facts == NULL || (gint64)facts->width * facts->height > MOST_PIXELS)
    return 0;

  pixels = wm_photo_load_bytes_fit (bytes, "fuzz", 300, 300, NULL, &error);
  if ((pixels == NULL) == (error == NULL))
    g_abort ();
  if (pixels != NULL && (pixels->width > 300 || pixels->height > 300))
    g_abort ();
  return 0;
}
