/* form-choice.c: a label with a list to choose from under it, bound to one field
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/form/form-choice.h"

#include <glib/gi18n.h>

#include "window/form/form-value.h"
#include "window/resource.h"
#include "window/template.h"

struct _WmFormChoice
{
  GtkWidget parent_instance;

  GtkLabel *title_label;
  GtkDropDown *list;

  char *field_name;
  GPtrArray *keys; /* char *, in the order of the list; the first is NULL */
  guint n_choices; /* without a foreign key at the end */
  WmSession *session;
  WmRecord *record;
  gboolean filling;
};

enum
{
  PROP_0,
  PROP_TITLE,
  PROP_FIELD,
  N_PROPS
};

enum
{
  CHOSEN,
  N_SIGNALS
};

static GParamSpec *props[N_PROPS];
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmFormChoice, wm_form_choice, GTK_TYPE_WIDGET)

static GtkStringList *
get_model (WmFormChoice *self)
{
  return GTK_STRING_LIST (gtk_drop_down_get_model (self->list));
}

static void
keep_choice (WmFormChoice *self, const char *key)
{
  const WmField *field =
      wm_kind_find_field (wm_record_get_kind (self->record), self->field_name);

  wm_session_change (self->session, wm_form_edit_label (self->record, field),
                     self->record, self->field_name, key, NULL);
}

static void
on_selected (GtkDropDown *list, GParamSpec *pspec, WmFormChoice *self)
{
  guint selected = gtk_drop_down_get_selected (list);
  gboolean made = FALSE;

  if (self->filling || self->record == NULL || selected >= self->keys->len)
    return;

  g_signal_emit (self, signals[CHOSEN], 0, self->keys->pdata[selected], &made);
  if (!made)
    keep_choice (self, self->keys->pdata[selected]);
}

static void
select_key (WmFormChoice *self, const char *key)
{
  guint i = 0;

  self->filling = TRUE;
  if (self->keys->len > self->n_choices)
    {
      g_ptr_array_set_size (self->keys, self->n_choices);
      gtk_string_list_splice (get_model (self), self->n_choices, 1, NULL);
    }
  while (i < self->keys->len && g_strcmp0 (self->keys->pdata[i], key) != 0)
    i++;
  if (i == self->keys->len)
    {
      g_ptr_array_add (self->keys, g_strdup (key));
      gtk_string_list_append (get_model (self), key);
    }
  gtk_drop_down_set_selected (self->list, i);
  self->filling = FALSE;
}

static void
wm_form_choice_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  WmFormChoice *self = WM_FORM_CHOICE (object);

  if (id == PROP_TITLE)
    g_value_set_string (value, gtk_label_get_label (self->title_label));
  else if (id == PROP_FIELD)
    g_value_set_string (value, self->field_name);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
wm_form_choice_set_property (GObject *object, guint id, const GValue *value,
                             GParamSpec *pspec)
{
  WmFormChoice *self = WM_FORM_CHOICE (object);

  if (id == PROP_TITLE)
    {
      gtk_label_set_label (self->title_label, g_value_get_string (value));
      gtk_accessible_update_property (GTK_ACCESSIBLE (self->list),
                                      GTK_ACCESSIBLE_PROPERTY_LABEL,
                                      g_value_get_string (value), -1);
    }
  else if (id == PROP_FIELD)
    {
      g_free (self->field_name);
      self->field_name = g_value_dup_string (value);
    }
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
wm_form_choice_dispose (GObject *object)
{
  WmFormChoice *self = WM_FORM_CHOICE (object);

  wm_template_dispose (GTK_WIDGET (self), WM_TYPE_FORM_CHOICE);
  g_clear_object (&self->record);
  g_clear_object (&self->session);
  g_clear_pointer (&self->field_name, g_free);
  g_clear_pointer (&self->keys, g_ptr_array_unref);

  G_OBJECT_CLASS (wm_form_choice_parent_class)->dispose (object);
}

static void
wm_form_choice_class_init (WmFormChoiceClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = wm_form_choice_dispose;
  object_class->get_property = wm_form_choice_get_property;
  object_class->set_property = wm_form_choice_set_property;

  props[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, NULL,
                                           G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  props[PROP_FIELD] = g_param_spec_string ("field", NULL, NULL, NULL,
                                           G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  signals[CHOSEN] = g_signal_new ("chosen", WM_TYPE_FORM_CHOICE, G_SIGNAL_RUN_LAST, 0,
                                  g_signal_accumulator_true_handled, NULL, NULL,
                                  G_TYPE_BOOLEAN, 1, G_TYPE_STRING);

  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "form-choice.ui");
  gtk_widget_class_bind_template_child (widget_class, WmFormChoice, title_label);
  gtk_widget_class_bind_template_child (widget_class, WmFormChoice, list);
  gtk_widget_class_bind_template_callback (widget_class, on_selected);
}

static void
wm_form_choice_init (WmFormChoice *self)
{
  self->keys = g_ptr_array_new_with_free_func (g_free);
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
wm_form_choice_set_choices (WmFormChoice *self, const char *const *keys,
                            const char *const *names, guint n)
{
  g_autoptr (GtkStringList) model = gtk_string_list_new (NULL);

  self->filling = TRUE;
  g_ptr_array_set_size (self->keys, 0);
  g_ptr_array_add (self->keys, NULL);
  gtk_string_list_append (model, _ ("not said"));
  for (guint i = 0; i < n; i++)
    {
      g_ptr_array_add (self->keys, g_strdup (keys[i]));
      gtk_string_list_append (model, names[i]);
    }
  self->n_choices = n + 1;
  gtk_drop_down_set_model (self->list, G_LIST_MODEL (model));
  self->filling = FALSE;
}

void
wm_form_choice_bind (WmFormChoice *self, WmSession *session, gpointer record)
{
  const WmField *field;

  g_set_object (&self->session, session);
  g_set_object (&self->record, record);
  gtk_widget_set_sensitive (GTK_WIDGET (self),
                            record != NULL && !wm_session_is_read_only (session));
  if (record == NULL)
    {
      select_key (self, NULL);
      return;
    }

  field = wm_kind_find_field (wm_record_get_kind (record), self->field_name);
  g_return_if_fail (field != NULL);
  select_key (self, *(char **)wm_record_get_member (record, field));
}
