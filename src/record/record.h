/* record.h: what all records share: a key, who changed it when, a field table
 *
 * A record is one row of the archive as an object: plain members to read,
 * properties to write and bind. Every kind describes its members once, in a
 * table of fields; properties, copying, comparing, the archive's columns and the
 * edit log are all made from that table.
 *
 * A record knows nothing of where it is kept. It belongs to the thread that has
 * it; a record given to another thread is copied first.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib-object.h>

#include "record/id.h"

/* The order is the order in which rows may be inserted: a kind refers only to
 * kinds before it. The numbers are not stored. */
typedef enum
{
  WM_KIND_SETTING,
  WM_KIND_PERSON,
  WM_KIND_PIECE,
  WM_KIND_STONE_GROUP,
  WM_KIND_VISIT,
  WM_KIND_PHOTO,
  WM_KIND_PAIRING,
  WM_KIND_CHECK,
  WM_KIND_MARK,
  WM_KIND_MEASUREMENT,
  WM_KIND_REMEDY,
  WM_KIND_MATERIAL,
  WM_KIND_PROOF,
  WM_KIND_REMINDER,
  WM_N_KINDS
} WmKind;

typedef enum
{
  WM_FIELD_TEXT,   /* char *, UTF-8; NULL = nothing said */
  WM_FIELD_DATE,   /* char *, "2026-11-25" (ISO 8601); NULL = none */
  WM_FIELD_INT,    /* gint64; WM_UNKNOWN = nothing said */
  WM_FIELD_NUMBER, /* gint64; starts at 0, never unknown */
  WM_FIELD_REAL,   /* double; NaN = nothing said */
  WM_FIELD_FLAG,   /* gboolean */
  WM_FIELD_KEY     /* WmId; none = refers to nothing */
} WmFieldType;

#define WM_UNKNOWN G_MININT64

typedef struct
{
  const char *name; /* with underscores: the column; with hyphens: the property */
  WmFieldType type;
  gsize offset;           /* of the member in the kind's struct */
  const char *plain_name; /* N_() marked, for messages and the history */
  WmKind refers_to;       /* for a key: the kind of record it names */
} WmField;

typedef struct
{
  WmKind kind;
  const char *name;       /* the table */
  const char *plain_name; /* N_() marked */
  const WmField *fields;
  guint n_fields;
} WmKindInfo;

#define WM_TYPE_RECORD (wm_record_get_type ())
G_DECLARE_DERIVABLE_TYPE (WmRecord, wm_record, WM, RECORD, GObject)

struct _WmRecordClass
{
  GObjectClass parent_class;
  const WmKindInfo *info;
};

/* These describe a kind without an object of it. */
GType wm_kind_get_type (WmKind kind);
const WmKindInfo *wm_kind_get_info (WmKind kind);
const WmField *wm_kind_find_field (WmKind kind, const char *name);

/* A new record has a new key and every field saying nothing. */
WmRecord *wm_record_new (WmKind kind);

const WmId *wm_record_get_id (WmRecord *self);
void wm_record_set_id (WmRecord *self, const WmId *id);
WmKind wm_record_get_kind (WmRecord *self);
const WmKindInfo *wm_record_get_info (WmRecord *self);

/* Kept by the archive at every edit: UTC microseconds, never running back;
 * @revision counts edits of this record from 1 (0: not in an archive yet). */
gint64 wm_record_get_changed_at_us (WmRecord *self);
const WmId *wm_record_get_changed_by (WmRecord *self);
gint64 wm_record_get_revision (WmRecord *self);
void wm_record_set_stamp (WmRecord *self, gint64 changed_at_us, const WmId *changed_by,
                          gint64 revision);

/* A pointer to the member that @field describes: char **, gint64 *, double *,
 * gboolean * or WmId *. */
gpointer wm_record_get_member (WmRecord *self, const WmField *field);

/* Same key, same fields, same stamp. Returns: (transfer full) */
WmRecord *wm_record_copy (WmRecord *self);

/* Whether key and all fields (not the stamp) are the same. */
gboolean wm_record_equal (WmRecord *a, WmRecord *b);

/* Sets a text member and notifies; "" is kept as NULL, so that there is one way
 * to say nothing. For the other types use g_object_set (). */
void wm_record_set_text (WmRecord *self, const char *property, const char *text);

/* For the kinds' own files only. */
void wm_record_class_take_info (WmRecordClass *klass, const WmKindInfo *info);

#define WM_DEFINE_RECORD(TypeName, type_name, info)                                      \
  G_DEFINE_FINAL_TYPE (TypeName, type_name, WM_TYPE_RECORD)                              \
  static void type_name##_init (TypeName *self) {}                                       \
  static void type_name##_class_init (TypeName##Class *klass)                            \
  {                                                                                      \
    wm_record_class_take_info (WM_RECORD_CLASS (klass), info);                           \
  }                                                                                      \
  TypeName *type_name##_new (void)                                                       \
  {                                                                                      \
    return g_object_new (type_name##_get_type (), NULL);                                 \
  }
