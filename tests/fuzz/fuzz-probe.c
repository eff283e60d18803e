/* fuzz-probe.c: what a file says about itself, whatever its bytes are
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/photo-start.h"
#include "photo/probe.h"

int LLVMFuzzerTestOneInput (const guint8 *data, gsize size);

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autoptr (GBytes) bytes = g_bytes_new (data, size);
  g_autoptr (GError) error = NULL;
  g_autoptr (WmPhotoFacts) facts = NULL;

  wm_photo_start ();
  facts = wm_photo_probe_bytes (bytes, "fuzz", &error);

  /* Either facts within the limits, or a reason; never both, never neither. */
  if ((facts == NULL) == (error == NULL))
    g_abort ();
  if (facts != NULL
      && (facts->width < 1 || facts->height < 1 || facts->width > WM_PHOTO_MAX_SIDE
          || facts->height > WM_PHOTO_MAX_SIDE || facts->orientation < 1
          || facts->orientation > 8))
    g_abort ();
  return 0;
}
