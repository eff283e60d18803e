/* take-in-facts.c: owner, piece, stones and wishes: the left column of the take-in
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "window/take-in/take-in-facts.h"

#include <glib/gi18n.h>

#include "trade/trade.h"
#include "window/form/form-choice.h"
#include "window/form/form-field.h"
#include "window/resource.h"
#include "window/take-in/owner-search.h"
#include "window/take-in/stone-card.h"
#include "window/take-in/take-in-edits.h"
#include "window/template.h"

#define N_OWNER_FIELDS 4
#define N_PIECE_FIELDS 9
#define N_VISIT_FIELDS 4

struct _WmTakeInFacts
{
  GtkWidget parent_instance;

  GtkWidget *other_owner;
  WmOwnerSearch *owner_search;
  GtkWidget *owner_card;
  WmFormField *owner_name;
  WmFormField *owner_phone;
  WmFormField *owner_email;
  WmFormField *owner_address;
  WmFormChoice *owner_letters;
  WmFormChoice *owner_language;
  WmFormChoice *type;
  WmFormField *worn;
  WmFormField *metal;
  WmFormField *fineness;
  WmFormChoice *fineness_basis;
  WmFormField *mass;
  WmFormField *length;
  WmFormField *size;
  WmFormField *declared;
  WmFormField *declared_basis;
  WmFormField *description;
  WmFormField *unlike;
  GtkWidget *add_stones;
  WmStoneCard *stones;
  WmFormField *wishes;
  WmFormField *promised;
  WmFormField *limit;

  WmSession *session;
  gboolean choices_made;
  gboolean asks_owner; /* another owner is wanted */
  gboolean took_owner; /* one was entered: go on with the telephone */
};

G_DEFINE_FINAL_TYPE (WmTakeInFacts, wm_take_in_facts, GTK_TYPE_WIDGET)

static void
list_fields (WmTakeInFacts *self, WmFormField *owner[N_OWNER_FIELDS],
             WmFormField *piece[N_PIECE_FIELDS], WmFormField *visit[N_VISIT_FIELDS])
{
  WmFormField *const of_owner[N_OWNER_FIELDS] = { self->owner_name, self->owner_phone,
                                                  self->owner_email,
                                                  self->owner_address };
  WmFormField *const of_piece[N_PIECE_FIELDS] = {
    self->worn,     self->metal,          self->fineness,    self->length, self->size,
    self->declared, self->declared_basis, self->description, self->unlike
  };
  WmFormField *const of_visit[N_VISIT_FIELDS] = { self->mass, self->wishes,
                                                  self->promised, self->limit };

  memcpy (owner, of_owner, sizeof of_owner);
  memcpy (piece, of_piece, sizeof of_piece);
  memcpy (visit, of_visit, sizeof of_visit);
}

/* ---- choices --------------------------------------------------------------------- */

static void
make_type_choices (WmTakeInFacts *self, WmTrade *trade)
{
  g_autoptr (GPtrArray) keys = g_ptr_array_new ();
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  g_autoptr (GPtrArray) metals = g_ptr_array_new ();

  for (const WmPieceType *const *row = wm_trade_list_piece_types (trade, NULL); *row;
       row++)
    {
      g_ptr_array_add (keys, (char *)(*row)->key);
      g_ptr_array_add (names, (char *)wm_trade_text ((*row)->name));
    }
  wm_form_choice_set_choices (self->type, (const char *const *)keys->pdata,
                              (const char *const *)names->pdata, keys->len);

  for (const WmMetal *const *row = wm_trade_list_metals (trade, NULL); *row; row++)
    g_ptr_array_add (metals, (char *)wm_trade_text ((*row)->name));
  g_ptr_array_add (metals, NULL);
  wm_form_field_set_suggestions (self->metal, (const char *const *)metals->pdata);
}

static void
make_choices (WmTakeInFacts *self)
{
  static const char *const basis_keys[] = { "said", "stamped", "tested", "assumed" };
  const char *basis_names[] = { _ ("customer says"), _ ("stamped"), _ ("tested"),
                                _ ("assumed") };
  static const char *const letter_keys[] = { "post", "email", "phone", "none" };
  const char *letter_names[] = { _ ("post"), _ ("e-mail"), _ ("telephone"),
                                 _ ("no letters") };
  static const char *const language_keys[] = { "en", "de" };
  /* Each language by its own name, so that the customer can point at it. */
  static const char *const language_names[] = { "English", "Deutsch" };
  WmTrade *trade = wm_session_get_trade (self->session);

  if (self->choices_made)
    return;
  self->choices_made = TRUE;
  wm_form_choice_set_choices (self->fineness_basis, basis_keys, basis_names,
                              G_N_ELEMENTS (basis_keys));
  wm_form_choice_set_choices (self->owner_letters, letter_keys, letter_names,
                              G_N_ELEMENTS (letter_keys));
  wm_form_choice_set_choices (self->owner_language, language_keys, language_names,
                              G_N_ELEMENTS (language_keys));
  if (trade != NULL)
    make_type_choices (self, trade);
}

/* ---- owner ------------------------------------------------------------------------- */

static WmPerson *
load_owner (WmTakeInFacts *self, WmPiece *piece)
{
  if (piece == NULL || wm_id_is_none (&piece->owner_id))
    return NULL;
  return wm_archive_get (wm_session_get_archive (self->session), WM_KIND_PERSON,
                         &piece->owner_id, NULL);
}

static void
show_owner (WmTakeInFacts *self, WmPerson *owner)
{
  gboolean ask = owner == NULL || self->asks_owner;

  gtk_widget_set_visible (GTK_WIDGET (self->owner_search), ask);
  gtk_widget_set_visible (self->owner_card, !ask);
  gtk_widget_set_visible (self->other_owner,
                          !ask && !wm_session_is_read_only (self->session));
  wm_form_choice_bind (self->owner_letters, self->session, owner);
  wm_form_choice_bind (self->owner_language, self->session, owner);
}

static void
on_owner_chosen (WmOwnerSearch *search, WmPerson *owner, WmTakeInFacts *self)
{
  self->asks_owner = FALSE;
  self->took_owner = TRUE;
  wm_take_in_set_owner (self->session, owner);
}

static void
on_owner_named (WmOwnerSearch *search, const char *name, WmTakeInFacts *self)
{
  self->asks_owner = FALSE;
  self->took_owner = TRUE;
  wm_take_in_new_owner (self->session, name);
}

void
wm_take_in_facts_ask_owner (WmTakeInFacts *self)
{
  self->asks_owner = TRUE;
  wm_take_in_facts_show (self, self->session);
  gtk_widget_grab_focus (GTK_WIDGET (self->owner_search));
}

void
wm_take_in_facts_add_stones (WmTakeInFacts *self)
{
  wm_stone_card_add (self->stones);
}

static gboolean
on_type_chosen (WmFormChoice *choice, const char *key, WmTakeInFacts *self)
{
  wm_take_in_set_type (self->session, key);
  return TRUE;
}

/* ---- overrides ------------------------------------------------------------------------
 */

static void
wm_take_in_facts_dispose (GObject *object)
{
  WmTakeInFacts *self = WM_TAKE_IN_FACTS (object);

  wm_template_dispose (GTK_WIDGET (self), WM_TYPE_TAKE_IN_FACTS);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (wm_take_in_facts_parent_class)->dispose (object);
}

#define BIND(name)                                                                       \
  gtk_widget_class_bind_template_child (widget_class, WmTakeInFacts, name)

static void
bind_children (GtkWidgetClass *widget_class)
{
  BIND (other_owner);
  BIND (owner_search);
  BIND (owner_card);
  BIND (owner_name);
  BIND (owner_phone);
  BIND (owner_email);
  BIND (owner_address);
  BIND (owner_letters);
  BIND (owner_language);
  BIND (type);
  BIND (worn);
  BIND (metal);
  BIND (fineness);
  BIND (fineness_basis);
  BIND (mass);
  BIND (length);
  BIND (size);
  BIND (declared);
  BIND (declared_basis);
  BIND (description);
  BIND (unlike);
  BIND (add_stones);
  BIND (stones);
  BIND (wishes);
  BIND (promised);
  BIND (limit);
}

static void
wm_take_in_facts_class_init (WmTakeInFactsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = wm_take_in_facts_dispose;

  g_type_ensure (WM_TYPE_FORM_CHOICE);
  g_type_ensure (WM_TYPE_FORM_FIELD);
  g_type_ensure (WM_TYPE_OWNER_SEARCH);
  g_type_ensure (WM_TYPE_STONE_CARD);
  gtk_widget_class_set_template_from_resource (widget_class, WM_UI "take-in-facts.ui");
  bind_children (widget_class);
}

static void
wm_take_in_facts_init (WmTakeInFacts *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect (self->owner_search, "owner-chosen", G_CALLBACK (on_owner_chosen),
                    self);
  g_signal_connect (self->owner_search, "owner-named", G_CALLBACK (on_owner_named), self);
  g_signal_connect (self->type, "chosen", G_CALLBACK (on_type_chosen), self);
}

/* ---- public
 * ----------------------------------------------------------------------------- */

void
wm_take_in_facts_show (WmTakeInFacts *self, WmSession *session)
{
  WmPiece *piece = wm_session_get_piece (session);
  WmVisit *visit = wm_session_get_visit (session);
  WmFormField *owner_fields[N_OWNER_FIELDS], *piece_fields[N_PIECE_FIELDS];
  WmFormField *visit_fields[N_VISIT_FIELDS];
  g_autoptr (WmPerson) owner = NULL;

  g_set_object (&self->session, session);
  make_choices (self);
  owner = load_owner (self, piece);
  wm_owner_search_show (self->owner_search, session);
  show_owner (self, owner);

  list_fields (self, owner_fields, piece_fields, visit_fields);
  for (int i = 0; i < N_OWNER_FIELDS; i++)
    wm_form_field_bind (owner_fields[i], session, owner);
  for (int i = 0; i < N_PIECE_FIELDS; i++)
    wm_form_field_bind (piece_fields[i], session, piece);
  for (int i = 0; i < N_VISIT_FIELDS; i++)
    wm_form_field_bind (visit_fields[i], session, visit);
  wm_form_choice_bind (self->type, session, piece);
  wm_form_choice_bind (self->fineness_basis, session, piece);
  wm_stone_card_show (self->stones, session);
  gtk_widget_set_visible (self->add_stones, !wm_session_is_read_only (session));

  if (self->took_owner && owner != NULL)
    {
      self->took_owner = FALSE;
      gtk_widget_grab_focus (owner->phone == NULL ? GTK_WIDGET (self->owner_phone)
                                                  : GTK_WIDGET (self->worn));
    }
}

void
wm_take_in_facts_leave (WmTakeInFacts *self)
{
  WmFormField *owner_fields[N_OWNER_FIELDS], *piece_fields[N_PIECE_FIELDS];
  WmFormField *visit_fields[N_VISIT_FIELDS];

  list_fields (self, owner_fields, piece_fields, visit_fields);
  for (int i = 0; i < N_OWNER_FIELDS; i++)
    wm_form_field_leave (owner_fields[i]);
  for (int i = 0; i < N_PIECE_FIELDS; i++)
    wm_form_field_leave (piece_fields[i]);
  for (int i = 0; i < N_VISIT_FIELDS; i++)
    wm_form_field_leave (visit_fields[i]);
  wm_stone_card_leave (self->stones);
  self->asks_owner = FALSE;
}

void
wm_take_in_facts_begin (WmTakeInFacts *self)
{
  WmPiece *piece = wm_session_get_piece (self->session);

  if (piece != NULL && wm_id_is_none (&piece->owner_id))
    gtk_widget_grab_focus (GTK_WIDGET (self->owner_search));
}
