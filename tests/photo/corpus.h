/* corpus.h: files for the photo tests, made on the spot by other programs
 *
 * ImageMagick, exiftool, pngcheck and libjpeg's own tools are the outside judges:
 * none of their code is in the program.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "photo/pixels.h"

/* One folder a test program, removed at its end. */
void corpus_begin (void);
void corpus_end (void);

/* A name in the folder; valid until corpus_end (). */
const char *corpus_path (const char *name);

/* Runs a command in the folder (printf-like, by the shell); it must succeed. */
void corpus_run (const char *format, ...) G_GNUC_PRINTF (1, 2);

/* What a command prints; it must succeed. */
char *corpus_read (const char *format, ...) G_GNUC_PRINTF (1, 2);

/* Whether a command succeeds: for programs that may be missing. */
gboolean corpus_can (const char *command);

/* ImageMagick's reading of a file as pixels; @options are put after the file's name
 * ("-auto-orient" ...). */
WmPixels *corpus_magick_pixels (const char *name, const char *options);

/* The largest and the mean difference of any channel. */
int corpus_difference (WmPixels *a, WmPixels *b, double *mean);

/* A photo-like test picture (ImageMagick's plasma, edges and text) as @name. */
void corpus_make_scene (const char *name, int width, int height, const char *options);

/* Copies of @name with EXIF orientation 1 to 8, named "1-" and so on. */
void corpus_make_orientations (const char *name);

void corpus_write (const char *name, const void *bytes, gsize length);
guint8 *corpus_load (const char *name, gsize *length);
