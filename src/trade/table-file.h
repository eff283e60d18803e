/* table-file.h: one table file, read into sections that know their lines
 *
 * The format, for people:
 *
 *   # a comment
 *   [check bx08]
 *   name = End ring
 *   look = Ring between box and row, measured
 *          with the gauge        (a line that begins with a blank goes on)
 *
 * UTF-8, any line ends. Nothing here knows what kinds or fields there are.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

#include "trade/error.h"

G_BEGIN_DECLS

typedef struct
{
  char *field;
  char *value;      /* trimmed; lines that go on are joined with one blank */
  GRefString *file; /* differs from the section's when a shop's file replaced it */
  guint line;       /* from 1 */
} WmTableEntry;

typedef struct
{
  GRefString *file;
  guint line;
  char *kind;
  char *key;
  GPtrArray *entries; /* of WmTableEntry */
} WmTableSection;

void wm_table_section_free (WmTableSection *section);
WmTableSection *wm_table_section_copy (const WmTableSection *section);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (WmTableSection, wm_table_section_free)

/* NULL when the section has no such field. */
WmTableEntry *wm_table_section_find (const WmTableSection *section, const char *field);

/* Fields of @from replace or join those of @section. */
void wm_table_section_merge (WmTableSection *section, const WmTableSection *from);

/**
 * wm_table_file_read:
 * @path: the file
 *
 * Returns: (transfer full): array of WmTableSection in the file's order
 */
GPtrArray *wm_table_file_read (const char *path, GError **error);

/* The same from memory; @name stands in messages. */
GPtrArray *
wm_table_file_parse (const char *name, const char *text, gssize length, GError **error);

G_END_DECLS
