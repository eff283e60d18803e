/* workers.c: the people who work here, from the archive
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/people/workers.h"

GPtrArray *
wm_workers_list (WmArchive *archive, gboolean retired)
{
  GPtrArray *people = wm_archive_list (archive, WM_KIND_PERSON, NULL, NULL, NULL);

  if (people == NULL)
    return g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = people->len; i > 0; i--)
    {
      WmPerson *person = people->pdata[i - 1];

      if (g_strcmp0 (person->role, WM_ROLE_WORKER) != 0 || (person->retired && !retired))
        g_ptr_array_remove_index (people, i - 1);
    }
  return people;
}

static gboolean
is_taken (GPtrArray *people, const char *initials)
{
  for (guint i = 0; i < people->len; i++)
    if (g_strcmp0 (((WmPerson *)people->pdata[i])->initials, initials) == 0)
      return TRUE;
  return FALSE;
}

char *
wm_workers_make_initials (WmArchive *archive, const char *name)
{
  g_autoptr (GPtrArray) people = wm_workers_list (archive, TRUE);
  g_auto (GStrv) words = g_strsplit (name, " ", -1);
  g_autoptr (GString) initials = g_string_new (NULL);
  g_autofree char *upper = NULL;

  for (guint i = 0; words[i] != NULL && g_utf8_strlen (initials->str, -1) < 3; i++)
    if (words[i][0] != '\0')
      g_string_append_unichar (initials, g_utf8_get_char (words[i]));
  upper = g_utf8_strup (initials->str, -1);

  for (int i = 1; i < 100; i++)
    {
      char *wanted = i == 1 ? g_strdup (upper) : g_strdup_printf ("%s%d", upper, i);

      if (!is_taken (people, wanted))
        return wanted;
      g_free (wanted);
    }
  return g_strdup (upper);
}
