/* field-contact.c: telephone numbers and e-mail addresses as a person types them
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/form/field-check.h"

#include <glib/gi18n.h>
#include <string.h>

/* ITU-T E.164: 15 digits at most in an international number. The least is common
 * practice, no source: short numbers of a house exchange. */
#define MAX_PHONE_DIGITS 15
#define MIN_PHONE_DIGITS 3

/* RFC 5321, 4.5.3.1: local part 64, domain 255 octets; RFC 1035, 2.3.4: label 63. */
#define MAX_LOCAL 64
#define MAX_DOMAIN 255
#define MAX_LABEL 63

static WmFieldVerdict
say_wrong (char **out_remark, const char *remark)
{
  *out_remark = g_strdup (remark);
  return WM_FIELD_WRONG;
}

WmFieldVerdict
wm_field_check_phone (const char *text, char **out_remark)
{
  g_autofree char *own = g_strstrip (g_strdup (text));
  g_autofree char *lower = g_ascii_strdown (own, -1);
  char *extension;
  int n_digits = 0;

  *out_remark = NULL;
  if (own[0] == '\0')
    return WM_FIELD_OK;

  extension = strstr (lower, "ext");
  if (extension == NULL)
    extension = strchr (lower, 'x');
  if (extension != NULL)
    {
      gsize behind = strcspn (extension, "0123456789");

      if (extension[behind] == '\0'
          || strspn (extension + behind, "0123456789") != strlen (extension + behind))
        return say_wrong (out_remark,
                          _ ("Write the extension as digits: 0170 555 014 ext 12."));
      *extension = '\0';
    }

  for (const char *p = lower; *p != '\0'; p++)
    {
      if (g_ascii_isdigit (*p))
        n_digits++;
      else if (*p == '+' && p != lower)
        return say_wrong (out_remark, _ ("A + stands only at the beginning."));
      else if (strchr ("+ ()/-.", *p) == NULL)
        return say_wrong (
            out_remark, _ ("A telephone number has only digits, blanks and + ( ) / -."));
    }

  if (n_digits < MIN_PHONE_DIGITS)
    return say_wrong (out_remark, _ ("There are digits missing."));
  if (n_digits > MAX_PHONE_DIGITS)
    return say_wrong (out_remark, _ ("A telephone number has 15 digits at most."));
  return WM_FIELD_OK;
}

static gboolean
is_label (const char *label)
{
  gsize length = strlen (label);

  if (length == 0 || length > MAX_LABEL || label[0] == '-' || label[length - 1] == '-')
    return FALSE;
  for (const char *p = label; *p != '\0'; p++)
    if (!g_ascii_isalnum (*p) && *p != '-' && (guchar)*p < 0x80)
      return FALSE;
  return TRUE;
}

static gboolean
is_domain (const char *domain)
{
  g_auto (GStrv) labels = g_strsplit (domain, ".", -1);
  guint n = g_strv_length (labels);

  if (n < 2 || strlen (domain) > MAX_DOMAIN || strlen (labels[n - 1]) < 2)
    return FALSE;
  for (guint i = 0; i < n; i++)
    if (!is_label (labels[i]))
      return FALSE;
  return TRUE;
}

/* RFC 5321 dot-string; letters beyond ASCII as in RFC 6531. Quoted local parts exist
 * but nobody has one. */
static gboolean
is_local (const char *local)
{
  gsize length = strlen (local);

  if (length == 0 || length > MAX_LOCAL || local[0] == '.' || local[length - 1] == '.'
      || strstr (local, "..") != NULL)
    return FALSE;
  for (const char *p = local; *p != '\0'; p++)
    if (!g_ascii_isalnum (*p) && (guchar)*p < 0x80
        && strchr (".!#$%&'*+-/=?^_`{|}~", *p) == NULL)
      return FALSE;
  return TRUE;
}

WmFieldVerdict
wm_field_check_email (const char *text, char **out_remark)
{
  g_autofree char *own = g_strstrip (g_strdup (text));
  char *at;

  *out_remark = NULL;
  if (own[0] == '\0')
    return WM_FIELD_OK;

  at = strchr (own, '@');
  if (at == NULL || strchr (at + 1, '@') != NULL)
    return say_wrong (out_remark, _ ("An e-mail address has one @: name@example.org."));
  *at = '\0';
  if (!is_local (own))
    return say_wrong (out_remark, _ ("The part before the @ is not a mailbox name."));
  if (!is_domain (at + 1))
    return say_wrong (out_remark,
                      _ ("The part after the @ is not a domain: name@example.org."));
  return WM_FIELD_OK;
}
