/* photo-error.c: the sentences for what can go wrong with a photo
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "photo/photo-error.h"

#include "photo/source.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <string.h>

/* Long enough for any camera's name, short enough for one line of a message. */
#define LONGEST_NAME 80

G_DEFINE_QUARK (wm - photo - error - quark, wm_photo_error)

char *
wm_photo_display_name (const char *path)
{
  g_autofree char *base = g_path_get_basename (path);
  g_autofree char *valid = g_utf8_make_valid (base, -1);
  g_autoptr (GString) name = g_string_new (NULL);
  glong length = g_utf8_strlen (valid, -1);
  glong at = 0;

  for (const char *c = valid; *c != '\0'; c = g_utf8_next_char (c), at++)
    {
      gunichar letter = g_utf8_get_char (c);

      if (length > LONGEST_NAME && at == LONGEST_NAME / 2)
        g_string_append (name, "…");
      if (length > LONGEST_NAME && at >= LONGEST_NAME / 2
          && at < length - LONGEST_NAME / 2)
        continue;

      g_string_append_unichar (name, g_unichar_isprint (letter) ? letter : 0xFFFD);
    }

  return g_string_free (g_steal_pointer (&name), FALSE);
}

static const char *
describe_code (WmPhotoErrorCode code)
{
  switch (code)
    {
    case WM_PHOTO_ERROR_NOT_FOUND:
      return _ ("“%s” is not there. It may have been moved or renamed; choose it again.");
    case WM_PHOTO_ERROR_NO_PERMISSION:
      return _ ("“%s” may not be opened by you. Change its permissions, or copy it to a"
                " folder of your own and add that copy.");
    case WM_PHOTO_ERROR_EMPTY:
      return _ ("“%s” is empty: it has no bytes. Copy it from the camera again.");
    case WM_PHOTO_ERROR_WRONG_KIND:
      return _ ("“%s” is not a photo. Choose JPEG, PNG, TIFF, WebP or HEIC files.");
    case WM_PHOTO_ERROR_NOT_A_PICTURE:
      return _ ("“%s” is no picture that is known here. Choose JPEG, PNG, TIFF, WebP or"
                " HEIC files, or export it as JPEG first.");
    case WM_PHOTO_ERROR_NOT_READ_HERE:
      return _ ("“%s” is a picture of a kind that this computer can not read. Export it"
                " as JPEG and add that.");
    case WM_PHOTO_ERROR_TRUNCATED:
      return _ ("“%s” is cut off: the picture ends before its last row. Copy it from the"
                " camera again.");
    case WM_PHOTO_ERROR_LYING:
      return _ ("“%s” is damaged: its header does not agree with what is in it. Copy it"
                " from the camera again.");
    case WM_PHOTO_ERROR_TOO_LARGE:
      return _ ("“%s” is too large to be opened here. Save it with fewer pixels and add"
                " that.");
    case WM_PHOTO_ERROR_NO_MEMORY:
      return _ ("There is not enough memory to open “%s”. Close other programs and try"
                " again.");
    case WM_PHOTO_ERROR_NO_SPACE:
      return _ ("“%s” could not be written: the disk is full. What was there before is"
                " kept. Make room and try again.");
    case WM_PHOTO_ERROR_NO_PLACE:
      return _ ("“%s” could not be written there. What was there before is kept. Choose"
                " another place and try again.");
    case WM_PHOTO_ERROR_IO:
    default:
      return _ ("“%s” could not be read or written. Check the disk or card it is on and"
                " try again.");
    }
}

void
wm_photo_set_error (GError **error, WmPhotoErrorCode code, const char *name,
                    const char *detail)
{
  g_autofree char *sentence = NULL;

  if (error == NULL)
    return;

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral" /* every row above has one %s */
  sentence = g_strdup_printf (describe_code (code), name);
#pragma GCC diagnostic pop

  if (detail != NULL && *detail != '\0')
    g_set_error (error, WM_PHOTO_ERROR, code, "%s (%s)", sentence, detail);
  else
    g_set_error_literal (error, WM_PHOTO_ERROR, code, sentence);
}

void
wm_photo_set_errno (GError **error, int error_number, const char *name)
{
  WmPhotoErrorCode code = WM_PHOTO_ERROR_IO;

  if (error_number == ENOENT || error_number == ENOTDIR)
    code = WM_PHOTO_ERROR_NOT_FOUND;
  else if (error_number == EACCES || error_number == EPERM || error_number == EROFS)
    code = WM_PHOTO_ERROR_NO_PERMISSION;
  else if (error_number == EISDIR || error_number == ENXIO)
    code = WM_PHOTO_ERROR_WRONG_KIND;
  else if (error_number == ENOSPC || error_number == EDQUOT || error_number == EFBIG)
    code = WM_PHOTO_ERROR_NO_SPACE;
  else if (error_number == ENOMEM)
    code = WM_PHOTO_ERROR_NO_MEMORY;

  wm_photo_set_error (error, code, name,
                      code == WM_PHOTO_ERROR_IO ? g_strerror (error_number) : NULL);
}
