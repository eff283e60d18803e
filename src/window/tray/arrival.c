/* arrival.c: one file of the watched folder on its way to being a photo
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/tray/arrival.h"

#include "photo/load.h"
#include "photo/photo-error.h"
#include "photo/probe.h"

/* Between two readings of a file that ended too early, s. */
#define RETRY_S 3

/* Px of the small picture: a tile of the tray at twice the scale, and likeness. */
#define SMALL_SIDE 240

WmArrival *
wm_arrival_new (const char *path, gint64 size, gint64 changed_us, gint64 now_us)
{
  WmArrival *self = g_new0 (WmArrival, 1);

  self->path = g_strdup (path);
  self->name = wm_photo_display_name (path);
  self->size = size;
  self->changed_us = changed_us;
  self->still_since_us = now_us;
  return self;
}

void
wm_arrival_free (WmArrival *self)
{
  g_free (self->path);
  g_free (self->name);
  g_free (self->reason);
  g_clear_pointer (&self->pixels, wm_pixels_unref);
  g_free (self);
}

gboolean
wm_arrival_look (WmArrival *self, gint64 size, gint64 changed_us, gint64 now_us)
{
  if (size != self->size || changed_us != self->changed_us)
    {
      self->size = size;
      self->changed_us = changed_us;
      self->still_since_us = now_us;
      self->retry_at_us = 0;
      /* A ready one that is written again was not whole after all. */
      if (self->state != WM_ARRIVAL_READING)
        self->state = WM_ARRIVAL_WAITING;
      return FALSE;
    }
  if (self->state != WM_ARRIVAL_WAITING || self->aside || size == 0
      || now_us - self->still_since_us < WM_ARRIVAL_STILL_S * G_USEC_PER_SEC
      || now_us < self->retry_at_us)
    return FALSE;
  self->state = WM_ARRIVAL_READING;
  return TRUE;
}

/* ---- reading ----------------------------------------------------------------- */

WmArrivalFacts *
wm_arrival_read (const char *path, GCancellable *cancellable, GError **error)
{
  g_autoptr (WmPhotoFacts) photo = NULL;
  WmArrivalFacts *facts;
  WmPixels *pixels;

  if (!wm_photo_check_whole (path, cancellable, error)
      || (photo = wm_photo_probe_file (path, error)) == NULL)
    return NULL;
  pixels = wm_photo_load_fit (path, SMALL_SIDE, SMALL_SIDE, cancellable, error);
  if (pixels == NULL)
    return NULL;

  facts = g_new0 (WmArrivalFacts, 1);
  facts->pixels = pixels;
  facts->taken_at_us = photo->has_taken_at ? photo->taken_at_us : 0;
  wm_likeness_take (pixels, &facts->likeness);
  if (wm_photo_judge (path, &facts->judgement, cancellable, error))
    return facts;
  wm_arrival_facts_free (facts);
  return NULL;
}

void
wm_arrival_facts_free (WmArrivalFacts *facts)
{
  g_clear_pointer (&facts->pixels, wm_pixels_unref);
  g_free (facts);
}

static gboolean
is_no_picture (const GError *error)
{
  return g_error_matches (error, WM_PHOTO_ERROR, WM_PHOTO_ERROR_NOT_A_PICTURE)
         || g_error_matches (error, WM_PHOTO_ERROR, WM_PHOTO_ERROR_WRONG_KIND);
}

void
wm_arrival_take (WmArrival *self, const WmArrivalFacts *facts, const GError *error,
                 gint64 now_us)
{
  if (self->state != WM_ARRIVAL_READING)
    return;
  g_clear_pointer (&self->reason, g_free);
  if (facts != NULL)
    {
      self->state = WM_ARRIVAL_READY;
      self->taken_at_us = facts->taken_at_us != 0 ? facts->taken_at_us : self->changed_us;
      g_clear_pointer (&self->pixels, wm_pixels_unref);
      self->pixels = wm_pixels_ref (facts->pixels);
      self->likeness = facts->likeness;
      self->judgement = facts->judgement;
      return;
    }
  /* Even "no picture at all" may be a file whose beginning comes last. */
  self->state = WM_ARRIVAL_WAITING;
  self->retry_at_us = now_us + RETRY_S * G_USEC_PER_SEC;
  if (now_us - self->still_since_us < WM_ARRIVAL_PATIENCE_S * G_USEC_PER_SEC)
    return;
  self->state = is_no_picture (error) ? WM_ARRIVAL_IGNORED : WM_ARRIVAL_BROKEN;
  self->reason = g_strdup (error->message);
}
