/* record.c: properties, copying and comparing, made from a kind's field table
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "record/record.h"

#include <math.h>
#include <string.h>

#include "record/kinds.h"

typedef struct
{
  WmId id;
  gint64 changed_at_us;
  WmId changed_by;
  gint64 revision;
} WmRecordPrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (WmRecord, wm_record, G_TYPE_OBJECT)

static const WmField *
get_field (GObject *object, guint property_id)
{
  return &WM_RECORD_GET_CLASS (object)->info->fields[property_id - 1];
}

static void
on_get_property (GObject *object, guint property_id, GValue *value, GParamSpec *pspec)
{
  const WmField *field = get_field (object, property_id);
  gpointer member = wm_record_get_member (WM_RECORD (object), field);

  switch (field->type)
    {
    case WM_FIELD_TEXT:
    case WM_FIELD_DATE:
      g_value_set_string (value, *(char **)member);
      break;
    case WM_FIELD_INT:
    case WM_FIELD_NUMBER:
      g_value_set_int64 (value, *(gint64 *)member);
      break;
    case WM_FIELD_REAL:
      g_value_set_double (value, *(double *)member);
      break;
    case WM_FIELD_FLAG:
      g_value_set_boolean (value, *(gboolean *)member);
      break;
    case WM_FIELD_KEY:
      g_value_set_pointer (value, member);
      break;
    }
}

static void
on_set_property (GObject *object, guint property_id, const GValue *value,
                 GParamSpec *pspec)
{
  const WmField *field = get_field (object, property_id);
  gpointer member = wm_record_get_member (WM_RECORD (object), field);

  switch (field->type)
    {
    case WM_FIELD_TEXT:
    case WM_FIELD_DATE:
      {
        const char *text = g_value_get_string (value);
        g_autofree char *old = *(char **)member;

        /* One way to say nothing: "" is NULL. */
        *(char **)member = text != NULL && *text != '\0' ? g_strdup (text) : NULL;
        break;
      }
    case WM_FIELD_INT:
    case WM_FIELD_NUMBER:
      *(gint64 *)member = g_value_get_int64 (value);
      break;
    case WM_FIELD_REAL:
      *(double *)member = g_value_get_double (value);
      break;
    case WM_FIELD_FLAG:
      *(gboolean *)member = g_value_get_boolean (value);
      break;
    case WM_FIELD_KEY:
      {
        const WmId *id = g_value_get_pointer (value);

        *(WmId *)member = id != NULL ? *id : WM_ID_NONE;
        break;
      }
    }
}

static void
wm_record_finalize (GObject *object)
{
  const WmKindInfo *info = WM_RECORD_GET_CLASS (object)->info;

  for (guint i = 0; i < info->n_fields; i++)
    if (info->fields[i].type == WM_FIELD_TEXT || info->fields[i].type == WM_FIELD_DATE)
      g_free (*(char **)wm_record_get_member (WM_RECORD (object), &info->fields[i]));

  G_OBJECT_CLASS (wm_record_parent_class)->finalize (object);
}

static void
wm_record_constructed (GObject *object)
{
  WmRecord *self = WM_RECORD (object);
  WmRecordPrivate *priv = wm_record_get_instance_private (self);
  const WmKindInfo *info = WM_RECORD_GET_CLASS (self)->info;

  G_OBJECT_CLASS (wm_record_parent_class)->constructed (object);
  priv->id = wm_id_new ();
  for (guint i = 0; i < info->n_fields; i++)
    {
      gpointer member = wm_record_get_member (self, &info->fields[i]);

      if (info->fields[i].type == WM_FIELD_INT)
        *(gint64 *)member = WM_UNKNOWN;
      else if (info->fields[i].type == WM_FIELD_REAL)
        *(double *)member = NAN;
    }
}

static void
wm_record_class_init (WmRecordClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->constructed = wm_record_constructed;
  object_class->finalize = wm_record_finalize;
}

static void
wm_record_init (WmRecord *self)
{
}

static GParamSpec *
make_pspec (const WmField *field)
{
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;
  g_autofree char *hyphens = g_strdelimit (g_strdup (field->name), "_", '-');
  const char *name = g_intern_string (hyphens);

  switch (field->type)
    {
    case WM_FIELD_TEXT:
    case WM_FIELD_DATE:
      return g_param_spec_string (name, NULL, NULL, NULL, flags);
    case WM_FIELD_INT:
    case WM_FIELD_NUMBER:
      return g_param_spec_int64 (name, NULL, NULL, G_MININT64, G_MAXINT64,
                                 field->type == WM_FIELD_INT ? WM_UNKNOWN : 0, flags);
    case WM_FIELD_REAL:
      /* Lax, because NaN is how a real says nothing. */
      return g_param_spec_double (name, NULL, NULL, -G_MAXDOUBLE, G_MAXDOUBLE, 0,
                                  flags | G_PARAM_LAX_VALIDATION);
    case WM_FIELD_FLAG:
      return g_param_spec_boolean (name, NULL, NULL, FALSE, flags);
    case WM_FIELD_KEY:
      return g_param_spec_pointer (name, NULL, NULL, flags);
    }
  g_return_val_if_reached (NULL);
}

void
wm_record_class_take_info (WmRecordClass *klass, const WmKindInfo *info)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  /* Here, not in the base class: GObject clears both for every derived class. */
  object_class->get_property = on_get_property;
  object_class->set_property = on_set_property;
  klass->info = info;
  for (guint i = 0; i < info->n_fields; i++)
    g_object_class_install_property (object_class, i + 1, make_pspec (&info->fields[i]));
}

GType
wm_kind_get_type (WmKind kind)
{
  static GType (*const get_type[WM_N_KINDS]) (void) = {
    [WM_KIND_SETTING] = wm_setting_get_type,
    [WM_KIND_PERSON] = wm_person_get_type,
    [WM_KIND_PIECE] = wm_piece_get_type,
    [WM_KIND_STONE_GROUP] = wm_stone_group_get_type,
    [WM_KIND_VISIT] = wm_visit_get_type,
    [WM_KIND_PHOTO] = wm_photo_get_type,
    [WM_KIND_PAIRING] = wm_pairing_get_type,
    [WM_KIND_CHECK] = wm_check_get_type,
    [WM_KIND_MARK] = wm_mark_get_type,
    [WM_KIND_MEASUREMENT] = wm_measurement_get_type,
    [WM_KIND_REMEDY] = wm_remedy_get_type,
    [WM_KIND_MATERIAL] = wm_material_get_type,
    [WM_KIND_PROOF] = wm_proof_get_type,
    [WM_KIND_REMINDER] = wm_reminder_get_type,
  };

  g_return_val_if_fail (kind < WM_N_KINDS, G_TYPE_INVALID);
  return get_type[kind]();
}

const WmKindInfo *
wm_kind_get_info (WmKind kind)
{
  /* Ours are static types: their classes, once made, stay. */
  WmRecordClass *klass = g_type_class_peek_static (wm_kind_get_type (kind));

  if (klass == NULL)
    klass = g_type_class_ref (wm_kind_get_type (kind));
  return klass->info;
}

const WmField *
wm_kind_find_field (WmKind kind, const char *name)
{
  const WmKindInfo *info = wm_kind_get_info (kind);

  for (guint i = 0; i < info->n_fields; i++)
    if (g_str_equal (info->fields[i].name, name))
      return &info->fields[i];
  return NULL;
}

WmRecord *
wm_record_new (WmKind kind)
{
  return g_object_new (wm_kind_get_type (kind), NULL);
}

const WmId *
wm_record_get_id (WmRecord *self)
{
  WmRecordPrivate *priv = wm_record_get_instance_private (self);

  return &priv->id;
}

void
wm_record_set_id (WmRecord *self, const WmId *id)
{
  WmRecordPrivate *priv = wm_record_get_instance_private (self);

  priv->id = *id;
}

const WmKindInfo *
wm_record_get_info (WmRecord *self)
{
  return WM_RECORD_GET_CLASS (self)->info;
}

WmKind
wm_record_get_kind (WmRecord *self)
{
  return wm_record_get_info (self)->kind;
}

gint64
wm_record_get_changed_at_us (WmRecord *self)
{
  WmRecordPrivate *priv = wm_record_get_instance_private (self);

  return priv->changed_at_us;
}

const WmId *
wm_record_get_changed_by (WmRecord *self)
{
  WmRecordPrivate *priv = wm_record_get_instance_private (self);

  return &priv->changed_by;
}

gint64
wm_record_get_revision (WmRecord *self)
{
  WmRecordPrivate *priv = wm_record_get_instance_private (self);

  return priv->revision;
}

void
wm_record_set_stamp (WmRecord *self, gint64 changed_at_us, const WmId *changed_by,
                     gint64 revision)
{
  WmRecordPrivate *priv = wm_record_get_instance_private (self);

  priv->changed_at_us = changed_at_us;
  priv->changed_by = *changed_by;
  priv->revision = revision;
}

gpointer
wm_record_get_member (WmRecord *self, const WmField *field)
{
  return (guint8 *)self + field->offset;
}

WmRecord *
wm_record_copy (WmRecord *self)
{
  const WmKindInfo *info = wm_record_get_info (self);
  WmRecord *copy = wm_record_new (info->kind);
  WmRecordPrivate *from = wm_record_get_instance_private (self);
  WmRecordPrivate *to = wm_record_get_instance_private (copy);

  *to = *from;
  for (guint i = 0; i < info->n_fields; i++)
    {
      g_auto (GValue) value = G_VALUE_INIT;
      g_autofree char *property =
          g_strdelimit (g_strdup (info->fields[i].name), "_", '-');

      g_object_get_property (G_OBJECT (self), property, &value);
      g_object_set_property (G_OBJECT (copy), property, &value);
    }
  return copy;
}

static gboolean
is_member_equal (const WmField *field, gconstpointer a, gconstpointer b)
{
  switch (field->type)
    {
    case WM_FIELD_TEXT:
    case WM_FIELD_DATE:
      return g_strcmp0 (*(char *const *)a, *(char *const *)b) == 0;
    case WM_FIELD_INT:
    case WM_FIELD_NUMBER:
      return *(const gint64 *)a == *(const gint64 *)b;
    case WM_FIELD_REAL:
      {
        double x = *(const double *)a;
        double y = *(const double *)b;

        return x == y || (isnan (x) && isnan (y));
      }
    case WM_FIELD_FLAG:
      return !*(const gboolean *)a == !*(const gboolean *)b;
    case WM_FIELD_KEY:
      return wm_id_equal (a, b);
    }
  g_return_val_if_reached (FALSE);
}

gboolean
wm_record_equal (WmRecord *a, WmRecord *b)
{
  const WmKindInfo *info = wm_record_get_info (a);

  if (info != wm_record_get_info (b)
      || !wm_id_equal (wm_record_get_id (a), wm_record_get_id (b)))
    return FALSE;

  for (guint i = 0; i < info->n_fields; i++)
    if (!is_member_equal (&info->fields[i], wm_record_get_member (a, &info->fields[i]),
                          wm_record_get_member (b, &info->fields[i])))
      return FALSE;
  return TRUE;
}

void
wm_record_set_text (WmRecord *self, const char *property, const char *text)
{
  g_object_set (self, property, text, NULL);
}
