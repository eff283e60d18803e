/* corpus.c: files for the photo tests
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "corpus.h"

#include <glib/gstdio.h>
#include <stdlib.h>
#include <string.h>

static char *folder;
static GStringChunk *names;

/* Warnings are fatal in tests (G_DEBUG), but not those of libvips about what is odd
 * in a foreign file. */
static void
set_fatal_warnings (void)
{
  static const char *const domains[] = { "wearmark", "GLib", "GLib-GObject", "GLib-GIO",
                                         "Pango" };

  g_log_set_always_fatal (G_LOG_LEVEL_ERROR | G_LOG_LEVEL_CRITICAL);
  for (gsize i = 0; i < G_N_ELEMENTS (domains); i++)
    g_log_set_fatal_mask (domains[i], G_LOG_LEVEL_CRITICAL | G_LOG_LEVEL_WARNING);
}

void
corpus_begin (void)
{
  set_fatal_warnings ();
  folder = g_dir_make_tmp ("wearmark-photo-XXXXXX", NULL);
  g_assert_nonnull (folder);
  names = g_string_chunk_new (4096);
}

void
corpus_end (void)
{
  corpus_run ("chmod -R u+rwx . && rm -rf \"$PWD\"");
  g_clear_pointer (&folder, g_free);
  g_clear_pointer (&names, g_string_chunk_free);
}

const char *
corpus_path (const char *name)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);

  return g_string_chunk_insert_const (names, path);
}

/* ImageMagick, exiftool and the shell are not ours: the sanitizer's settings for
 * our own programs are not for them. */
static int
run (const char *command, char **out, char **problem)
{
  const char *argv[] = { "/bin/sh", "-c", command, NULL };
  g_auto (GStrv) env = g_environ_unsetenv (g_get_environ (), "LD_PRELOAD");
  int status = -1;

  if (!g_spawn_sync (folder, (char **)argv, env, G_SPAWN_DEFAULT, NULL, NULL, out,
                     problem, &status, NULL))
    return -1;

  return status;
}

void
corpus_run (const char *format, ...)
{
  g_autofree char *command = NULL;
  g_autofree char *out = NULL;
  g_autofree char *problem = NULL;
  va_list arguments;
  int status;

  va_start (arguments, format);
  command = g_strdup_vprintf (format, arguments);
  va_end (arguments);

  status = run (command, &out, &problem);
  if (status != 0)
    g_error ("this command failed: %s\n%s%s", command, out, problem);
}

char *
corpus_read (const char *format, ...)
{
  g_autofree char *command = NULL;
  g_autofree char *problem = NULL;
  char *out = NULL;
  va_list arguments;

  va_start (arguments, format);
  command = g_strdup_vprintf (format, arguments);
  va_end (arguments);

  if (run (command, &out, &problem) != 0)
    g_error ("this command failed: %s\n%s%s", command, out, problem);
  return out;
}

gboolean
corpus_can (const char *command)
{
  g_autofree char *out = NULL;
  g_autofree char *problem = NULL;

  return run (command, &out, &problem) == 0;
}

WmPixels *
corpus_magick_pixels (const char *name, const char *options)
{
  g_autofree char *ppm = NULL;
  gsize length = 0;
  int width = 0, height = 0, used = 0;
  const guint8 *from;
  WmPixels *pixels;

  corpus_run ("convert '%s[0]' %s -depth 8 -colorspace sRGB -strip ppm:magick.ppm", name,
              options);
  g_assert_true (g_file_get_contents (corpus_path ("magick.ppm"), &ppm, &length, NULL));
  g_assert_cmpint (sscanf (ppm, "P6 %d %d 255%n", &width, &height, &used), ==, 2);
  g_assert_cmpuint (length, ==, used + 1 + (gsize)width * height * 3);

  pixels = wm_pixels_new (width, height);
  from = (const guint8 *)ppm + used + 1;
  for (gsize i = 0; i < (gsize)width * height; i++, from += 3)
    {
      pixels->data[4 * i] = from[2];
      pixels->data[4 * i + 1] = from[1];
      pixels->data[4 * i + 2] = from[0];
      pixels->data[4 * i + 3] = 255;
    }

  return pixels;
}

int
corpus_difference (WmPixels *a, WmPixels *b, double *mean)
{
  int most = 0;
  double sum = 0;

  g_assert_cmpint (a->width, ==, b->width);
  g_assert_cmpint (a->height, ==, b->height);

  for (int y = 0; y < a->height; y++)
    for (int x = 0; x < a->width; x++)
      for (int c = 0; c < 3; c++)
        {
          gsize at = y * a->stride + (gsize)x * 4 + c;
          int d = abs (a->data[at] - b->data[at]);

          most = MAX (most, d);
          sum += d;
        }

  if (mean != NULL)
    *mean = sum / (3.0 * a->width * a->height);
  return most;
}

void
corpus_make_scene (const char *name, int width, int height, const char *options)
{
  corpus_run ("convert -size %dx%d -seed 7 plasma:tan-navy -fill '#e0b030' "
              "-draw 'circle %d,%d %d,%d' -fill none -stroke white -strokewidth 3 "
              "-draw 'line 0,0 %d,%d' -draw 'rectangle %d,%d %d,%d' %s '%s'",
              width, height, width / 3, height / 3, width / 3, height / 8, width / 2,
              height, width / 8, height / 2, width / 4, height - 3, options, name);
}

void
corpus_make_orientations (const char *name)
{
  g_autoptr (GString) command = g_string_new ("exiftool");

  /* One start of exiftool for all eight. */
  for (int o = 1; o <= 8; o++)
    {
      corpus_run ("cp %s %d-%s", name, o, name);
      g_string_append_printf (command,
                              "%s -q -n -overwrite_original -EXIF:Orientation=%d %d-%s",
                              o > 1 ? " -execute" : "", o, o, name);
    }
  corpus_run ("%s", command->str);
}

void
corpus_write (const char *name, const void *bytes, gsize length)
{
  g_assert_true (g_file_set_contents (corpus_path (name), bytes, (gssize)length, NULL));
}

guint8 *
corpus_load (const char *name, gsize *length)
{
  char *bytes = NULL;

  g_assert_true (g_file_get_contents (corpus_path (name), &bytes, length, NULL));
  return (guint8 *)bytes;
}
