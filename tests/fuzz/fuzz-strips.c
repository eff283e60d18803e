/* fuzz-strips.c: strips made from any JPEG, and strips that are none
 *
 * The cache folder is never trusted: its checksum catches chance, not malice, so the
 * reader behind it has to bear any bytes too.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/photo-start.h"
#include "photo/strips.h"

int LLVMFuzzerTestOneInput (const guint8 *data, gsize size);

static void
decode (GBytes *bytes, int width, int height)
{
  g_autoptr (WmStrips) strips = wm_strips_new (bytes, width, height);

  for (int denom = 1; strips != NULL && denom <= 8; denom *= 8)
    {
      WmRect window = { 0, 0, (width - 1) / denom + 1,
                        MIN (40, (height - 1) / denom + 1) };
      g_autoptr (WmPixels) pixels = wm_strips_decode (strips, denom, &window, NULL, NULL);
    }
}

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autoptr (GBytes) bytes = g_bytes_new (data, size);
  g_autoptr (WmSource) source = wm_source_new_bytes (bytes, "fuzz", NULL);
  g_autoptr (GBytes) built = NULL;

  if (source == NULL)
    return 0;

  decode (bytes, 96, 80);
  built = wm_strips_build (source, NULL, NULL);
  if (built != NULL)
    decode (built, 96, 80);
  return 0;
}
