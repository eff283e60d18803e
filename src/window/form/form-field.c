/* form-field.c: a label with a place to type under it, bound to one field of a record
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/form/form-field.h"

#include <glib/gi18n.h>

#include "window/resource.h"
#include "window/template.h"

struct _WmFormField
{
  GtkWidget parent_instance;

  GtkLabel *title_label;
  GtkEntry *entry;
  GtkTextView *text_view;
  GtkLabel *remark_label;

  char *field_name;
  WmFormKind kind;
  gboolean multiline;

  WmSession *session;
  WmRecord *record;
  char *shown;     /* the text of the kept value */
  gboolean typing; /* what is typed differs from it */
  gboolean filling;
};

enum
{
  PROP_0,
  PROP_TITLE,
  PROP_FIELD,
  PROP_KIND,
  PROP_MULTILINE,
  N_PROPS
};

enum
{
  ENTERED,
  KEEPING,
  N_SIGNALS
};

static GParamSpec *props[N_PROPS];
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (WmFormField, wm_form_field, GTK_TYPE_WIDGET)

/* ---- text -------------------------------------------------------------------- */

static GtkWidget *
get_input (WmFormField *self)
{
  return self->multiline ? GTK_WIDGET (self->text_view) : GTK_WIDGET (self->entry);
}

static char *
get_text (WmFormField *self)
{
  GtkTextBuffer *buffer;
  GtkTextIter start, end;

  if (!self->multiline)
    return g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry)));

  buffer = gtk_text_view_get_buffer (self->text_view);
  gtk_text_buffer_get_bounds (buffer, &start, &end);
  return gtk_text_buffer_get_text (buffer, &start, &end, FALSE);
}

/* A text view learns its height only when it has laid its lines out, later than it is
 * asked; the range of its scrolling tells that there is more than there is room for. */
static gboolean
measure_again (GtkWidget *text_view, GdkFrameClock *clock, gpointer unused)
{
  gtk_widget_queue_resize (text_view);
  return G_SOURCE_REMOVE;
}

static void
on_lines_laid_out (GtkAdjustment *range, GParamSpec *pspec, GtkWidget *text_view)
{
  if (gtk_adjustment_get_upper (range) > gtk_adjustment_get_page_size (range))
    gtk_widget_add_tick_callback (text_view, measure_again, NULL, NULL);
}

static void
set_text (WmFormField *self, const char *text)
{
  self->filling = TRUE;
  if (self->multiline)
    gtk_text_buffer_set_text (gtk_text_view_get_buffer (self->text_view), text, -1);
  else
    gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
  self->filling = FALSE;
  self->typing = FALSE;
}

static void
show_value (WmFormField *self, const char *text)
{
  g_free (self->shown);
  self->shown = g_strdup (text);
  set_text (self, text);
}

static void
say_invalid (WmFormField *self, gboolean wrong)
{
  gtk_accessible_update_state (
      GTK_ACCESSIBLE (get_input (self)), GTK_ACCESSIBLE_STATE_INVALID,
      wrong ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}

void
wm_form_field_set_remark (WmFormField *self, WmFieldVerdict verdict, const char *remark)
{
  const char *title = gtk_label_get_label (self->title_label);

  gtk_widget_set_visible (GTK_WIDGET (self->remark_label), remark != NULL);
  gtk_label_set_label (self->remark_label, remark == NULL ? "" : remark);
  gtk_widget_remove_css_class (GTK_WIDGET (self), "wrong");
  if (verdict == WM_FIELD_WRONG)
    gtk_widget_add_css_class (GTK_WIDGET (self), "wrong");
  say_invalid (self, verdict == WM_FIELD_WRONG);
  gtk_accessible_update_property (
      GTK_ACCESSIBLE (get_input (self)), GTK_ACCESSIBLE_PROPERTY_LABEL, title,
      GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, remark == NULL ? "" : remark, -1);
}

/* ---- committing ---------------------------------------------------------------- */

static void
commit_bound (WmFormField *self, const char *text)
{
  g_autoptr (WmRecord) copy = wm_session_copy (self->session, self->record);
  g_autoptr (WmRecord) before = wm_record_copy (copy);
  const WmField *field = wm_kind_find_field (wm_record_get_kind (copy), self->field_name);
  g_autofree char *remark = NULL, *kept = NULL;
  WmFieldVerdict verdict =
      wm_form_value_parse (self->session, self->kind, text, copy, field, &remark);

  wm_form_field_set_remark (self, verdict, remark);
  if (verdict == WM_FIELD_WRONG)
    return;

  kept = wm_form_value_format (self->session, self->kind, copy, field);
  show_value (self, kept);
  if (!wm_record_equal (copy, before))
    {
      g_signal_emit (self, signals[KEEPING], 0, copy);
      g_set_object (&self->record, copy);
      wm_session_keep (self->session, wm_form_edit_label (copy, field), copy);
    }
}

static void
commit (WmFormField *self)
{
  g_autofree char *text = NULL;

  if (!self->typing)
    return;
  text = get_text (self);
  if (g_strcmp0 (text, self->shown) == 0)
    {
      self->typing = FALSE;
      wm_form_field_set_remark (self, WM_FIELD_OK, NULL);
      return;
    }

  if (self->record != NULL)
    commit_bound (self, text);
  else
    g_signal_emit (self, signals[ENTERED], 0, text);
}

static void
on_activate (GtkEntry *entry, WmFormField *self)
{
  commit (self);
  if (!gtk_widget_has_css_class (GTK_WIDGET (self), "wrong"))
    gtk_widget_child_focus (GTK_WIDGET (gtk_widget_get_root (GTK_WIDGET (self))),
                            GTK_DIR_TAB_FORWARD);
}

static void
on_left (GtkEventControllerFocus *controller, WmFormField *self)
{
  commit (self);
}

static void
on_typed (gpointer input, WmFormField *self)
{
  if (!self->filling)
    self->typing = TRUE;
}

/* Escape brings the kept value back; a second one is the window's. */
static gboolean
on_key_pressed (GtkEventControllerKey *controller, guint keyval, guint keycode,
                GdkModifierType state, WmFormField *self)
{
  if (keyval != GDK_KEY_Escape || !self->typing)
    return GDK_EVENT_PROPAGATE;

  set_text (self, self->shown == NULL ? "" : self->shown);
  wm_form_field_set_remark (self, WM_FIELD_OK, NULL);
  return GDK_EVENT_STOP;
}

/* ---- overrides -------------------------------------------------------------------- */

static void
wm_form_field_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  WmFormField *self = WM_FORM_FIELD (object);

  switch (id)
    {
    case PROP_TITLE:
      g_value_set_string (value, gtk_label_get_label (self->title_label));
      break;
    case PROP_FIELD:
      g_value_set_string (value, self->field_name);
      break;
    case PROP_KIND:
      g_value_set_enum (value, self->kind);
      break;
    case PROP_MULTILINE:
      g_value_set_boolean (value, self->multiline);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
wm_form_field_set_property (GObject *object, guint id, const GValue *value,
                            GParamSpec *pspec)
{
  WmFormField *self = WM_FORM_FIELD (object);

  switch (id)
    {
    case PROP_TITLE:
      gtk_label_set_label (self->title_label, g_value_get_string (value));
      gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry),
                                      GTK_ACCESSIBLE_PROPERTY_LABEL,
                                      g_value_get_string (value), -1);
      gtk_accessible_update_property (GTK_ACCESSIBLE (self->text_view),
                                      GTK_ACCESSIBLE_PROPERTY_LABEL,
                                      g_value_get_string (value), -1);
      break;
    case PROP_FIELD:
      g_free (self->field_name);
      self->field_name = g_value_dup_string (value);
      break;
    case PROP_KIND:
      self->kind = g_value_get_enum (value);
      break;
    case PROP_MULTILINE:
      self->multiline = g_value_get_boolean (value);
      gtk_widget_set_visible (GTK_WIDGET (self->entry), !self->multiline);
      gtk_widget_set_visible (GTK_WIDGET (self->text_view), self->multiline);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static gboolean
wm_form_field_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (get_input (WM_FORM_FIELD (widget)));
}

static void
wm_form_field_dispose (GObject *object)
{
  WmFormField *self = WM_FORM_FIELD (object);

  wm_template_dispose (GTK_WIDGET (self), WM_TYPE_FORM_FIELD);
  g_clear_object (&self->record);
  g_clear_object (&self->session);
  g_clear_pointer (&self->field_name, g_free);
  g_clear_pointer (&self->shown, g_free);

  G_OBJECT_CLASS (wm_form_field_parent_class)->dispose (object);
}

static void
install_properties (GObjectClass *object_class)
{
  props[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, NULL,
                                           G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  props[PROP_FIELD] = g_param_spec_string ("field", NULL, NULL, NULL,
                                           G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  props[PROP_KIND] =
      g_param_spec_enum ("kind", NULL, NULL, WM_TYPE_FORM_KIND, WM_FORM_TEXT,
                         G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  props[PROP_MULTILINE] = g_param_spec_boolean (
      "multiline", NULL, NULL, FALSE, G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
wm_form_field_class_init (WmFormFieldClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = wm_form_field_dispose;
  object_class->get_property = wm_form_field_get_property;
  object_class->set_property = wm_form_field_set_property;
  widget_class->grab_focus = wm_form_field_grab_focus;
  install_properties (object_class);

  signals[ENTERED] = g_signal_new ("entered", WM_TYPE_FORM_FIELD, G_SIGNAL_RUN_LAST, 0,
                                   NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[KEEPING] = g_signal_new ("keeping", WM_TYPE_FORM_FIELD, G_SIGNAL_RUN_LAST, 0,
                                   NULL, NULL, NULL, G_TYPE_NONE, 1, WM_TYPE_RECORD);

  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "form-field.ui");
  gtk_widget_class_bind_template_child (widget_class, WmFormField, title_label);
  gtk_widget_class_bind_template_child (widget_class, WmFormField, entry);
  gtk_widget_class_bind_template_child (widget_class, WmFormField, text_view);
  gtk_widget_class_bind_template_child (widget_class, WmFormField, remark_label);
  gtk_widget_class_bind_template_callback (widget_class, on_activate);
  gtk_widget_class_bind_template_callback (widget_class, on_left);
  gtk_widget_class_bind_template_callback (widget_class, on_typed);
  gtk_widget_class_bind_template_callback (widget_class, on_key_pressed);
}

static void
wm_form_field_init (WmFormField *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect (gtk_text_view_get_buffer (self->text_view), "changed",
                    G_CALLBACK (on_typed), self);
  g_signal_connect (gtk_scrollable_get_vadjustment (GTK_SCROLLABLE (self->text_view)),
                    "notify::upper", G_CALLBACK (on_lines_laid_out), self->text_view);
}

/* ---- public ------------------------------------------------------------------------ */

void
wm_form_field_bind (WmFormField *self, WmSession *session, gpointer record)
{
  const WmField *field;
  g_autofree char *text = NULL;
  gboolean other =
      record == NULL || self->record == NULL
      || !wm_id_equal (wm_record_get_id (record), wm_record_get_id (self->record));

  g_set_object (&self->session, session);
  g_set_object (&self->record, record);
  gtk_widget_set_sensitive (GTK_WIDGET (self),
                            record != NULL && !wm_session_is_read_only (session));
  if (record == NULL)
    {
      show_value (self, "");
      wm_form_field_set_remark (self, WM_FIELD_OK, NULL);
      return;
    }

  field = wm_kind_find_field (wm_record_get_kind (record), self->field_name);
  g_return_if_fail (field != NULL);
  if (self->typing && !other)
    return;
  text = wm_form_value_format (session, self->kind, record, field);
  if (g_strcmp0 (text, self->shown) != 0 || other)
    wm_form_field_set_remark (self, WM_FIELD_OK, NULL);
  if (g_strcmp0 (text, self->shown) != 0 || self->typing)
    show_value (self, text);
}

void
wm_form_field_leave (WmFormField *self)
{
  commit (self);
}

void
wm_form_field_set_suggestions (WmFormField *self, const char *const *names)
{
  g_autoptr (GtkListStore) store = gtk_list_store_new (1, G_TYPE_STRING);
  g_autoptr (GtkEntryCompletion) completion = gtk_entry_completion_new ();

  for (guint i = 0; names[i] != NULL; i++)
    gtk_list_store_insert_with_values (store, NULL, -1, 0, names[i], -1);
  gtk_entry_completion_set_model (completion, GTK_TREE_MODEL (store));
  gtk_entry_completion_set_text_column (completion, 0);
  gtk_entry_set_completion (self->entry, completion);
}

void
wm_form_field_set_text (WmFormField *self, const char *text)
{
  show_value (self, text == NULL ? "" : text);
}

const char *
wm_form_field_get_text (WmFormField *self)
{
  return self->shown;
}

GtkEntry *
wm_form_field_get_entry (WmFormField *self)
{
  return self->entry;
}

gboolean
wm_form_field_undo_typing (GtkWidget *focus, gboolean redo)
{
  GtkWidget *field =
      focus == NULL ? NULL : gtk_widget_get_ancestor (focus, WM_TYPE_FORM_FIELD);

  if (field == NULL || !WM_FORM_FIELD (field)->typing)
    return FALSE;
  gtk_widget_activate_action (focus, redo ? "text.redo" : "text.undo", NULL);
  return TRUE;
}
