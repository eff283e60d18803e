/* command.c: from arguments to a verb
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "command/command.h"

#include <errno.h>
#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

#include "command/call.h"
#include "wearmark-config.h"

static const WmVerbOption global_options[] = {
  { "archive", 0, N_ ("DIR"), N_ ("use the archive in DIR instead of your own") },
  { "json", 0, NULL, N_ ("print JSON with stable keys") },
  { "help", 'h', NULL, N_ ("show this help") },
  { "version", 0, NULL, N_ ("show the version") },
  { NULL },
};

static const WmVerb *
find_verb (const char *name)
{
  for (guint i = 0; i < wm_n_verbs; i++)
    if (g_str_equal (wm_verbs[i]->name, name))
      return wm_verbs[i];
  return NULL;
}

/* ---- help --------------------------------------------------------------- */

static void
print_options (WmCall *call, const WmVerbOption *options)
{
  for (; options != NULL && options->name != NULL; options++)
    {
      const char *value = options->value_name != NULL ? _ (options->value_name) : "";
      g_autofree char *letter =
          options->letter != 0 ? g_strdup_printf ("-%c, ", options->letter) : NULL;
      g_autofree char *usage =
          g_strdup_printf ("%s--%s%s%s", letter != NULL ? letter : "", options->name,
                           *value != '\0' ? " " : "", value);

      wm_call_print (call, "  %-28s %s\n", usage, _ (options->summary));
    }
}

static WmExit
print_verb_help (WmCall *call)
{
  const WmVerb *verb = call->verb;

  wm_call_print (call, "%s wearmark %s %s\n\n%s\n\n", _ ("Usage:"), verb->name,
                 *verb->operands != '\0' ? _ (verb->operands) : "", _ (verb->summary));
  print_options (call, verb->options);
  print_options (call, global_options);
  return WM_EXIT_DONE;
}

static WmExit
print_help (WmCall *call)
{
  if (call->verb != NULL)
    return print_verb_help (call);

  wm_call_print (call,
                 "%s wearmark [--archive DIR]\n       wearmark [--archive DIR]"
                 " [--json] %s\n\n%s\n\n%s\n",
                 _ ("Usage:"), _ ("VERB …"),
                 _ ("Without a verb the window opens. With one, no display is needed."),
                 _ ("Verbs:"));
  for (guint i = 0; i < wm_n_verbs; i++)
    {
      const char *operands =
          *wm_verbs[i]->operands != '\0' ? _ (wm_verbs[i]->operands) : "";
      g_autofree char *usage = g_strdup_printf ("%s %s", wm_verbs[i]->name, operands);

      wm_call_print (call, "  %-28s %s\n", usage, _ (wm_verbs[i]->summary));
    }
  wm_call_print (call, "\n%s\n", _ ("Options:"));
  print_options (call, global_options);
  wm_call_print (call, "\n%s\n%s\n", _ ("wearmark VERB --help tells more about a verb."),
                 _ ("Exit code: 0 done, 1 refused or failed, 2 wrong usage."));
  return WM_EXIT_DONE;
}

/* ---- arguments ---------------------------------------------------------- */

static const WmVerbOption *
find_in (const WmVerbOption *options, const char *name, gsize length, char letter)
{
  for (; options != NULL && options->name != NULL; options++)
    if (letter != 0 ? options->letter == letter
                    : strlen (options->name) == length
                          && strncmp (options->name, name, length) == 0)
      return options;
  return NULL;
}

static const WmVerbOption *
find_option (WmCall *call, const char *name, gsize length, char letter)
{
  const WmVerbOption *option = find_in (global_options, name, length, letter);

  if (option == NULL && call->verb != NULL)
    option = find_in (call->verb->options, name, length, letter);
  return option;
}

/* Takes the option at argv[*at], and its value if that is the next argument. */
static gboolean
take_option (WmCall *call, char **argv, int argc, int *at)
{
  const char *argument = argv[*at];
  gboolean is_long = argument[1] == '-';
  const char *name = argument + (is_long ? 2 : 1);
  gsize length = is_long ? strcspn (name, "=") : 1;
  const WmVerbOption *option = find_option (call, name, length, is_long ? 0 : *name);
  const char *value = name[length] == '\0' ? NULL
                      : is_long            ? name + length + 1
                                           : name + length;

  if (option == NULL)
    {
      g_autofree char *shown = wm_shown_path (argument);

      wm_call_misused (call, _ ("There is no option %s."), shown);
      return FALSE;
    }
  if (option->value_name == NULL && value != NULL)
    {
      wm_call_misused (call, _ ("The option --%s takes no value."), option->name);
      return FALSE;
    }
  if (option->value_name != NULL && value == NULL && *at + 1 < argc)
    value = argv[++*at];
  /* An empty one is a variable of a script that was not set. */
  if (option->value_name != NULL && (value == NULL || *value == '\0'))
    {
      wm_call_misused (call, _ ("The option --%s needs a value: %s."), option->name,
                       _ (option->value_name));
      return FALSE;
    }
  g_hash_table_insert (call->values, (gpointer)option->name,
                       g_strdup (value != NULL ? value : ""));
  return TRUE;
}

static gboolean
take_argument (WmCall *call, const char *argument)
{
  if (call->verb == NULL)
    {
      g_autofree char *shown = wm_shown_path (argument);

      call->verb = find_verb (argument);
      if (call->verb == NULL)
        wm_call_misused (call, _ ("There is no verb “%s”."), shown);
      return call->verb != NULL;
    }
  g_ptr_array_add (call->operands, g_strdup (argument));
  return TRUE;
}

static gboolean
take_arguments (WmCall *call, int argc, char **argv)
{
  gboolean options_ended = FALSE;

  for (int i = 1; i < argc; i++)
    {
      if (!options_ended && g_str_equal (argv[i], "--"))
        options_ended = TRUE;
      /* "-" alone is a file name by custom. */
      else if (!options_ended && argv[i][0] == '-' && argv[i][1] != '\0'
                   ? !take_option (call, argv, argc, &i)
                   : !take_argument (call, argv[i]))
        return FALSE;
    }
  return TRUE;
}

static WmExit
run_verb (WmCall *call)
{
  const WmVerb *verb = call->verb;

  if (call->operands->len < verb->min_operands)
    return wm_call_misused (call, _ ("Something is missing: wearmark %s %s"), verb->name,
                            _ (verb->operands));
  if (call->operands->len > verb->max_operands)
    {
      g_autofree char *shown = wm_shown_path (call->operands->pdata[verb->max_operands]);

      return wm_call_misused (call, _ ("“%s” is one argument too many."), shown);
    }
  return verb->run (call);
}

/* What a full disk did not take was not told: the verb has not done its work. */
static WmExit
end_output (WmCall *call, WmExit exit)
{
  if (fflush (stdout) == 0 && !ferror (stdout))
    return exit;
  return wm_call_fail (call,
                       _ ("The answer could not be written whole. Make room, or send it"
                          " to another file, and call again. (%s)"),
                       g_strerror (errno));
}

int
wm_command_run (int argc, char **argv, char **out_folder)
{
  g_auto (WmCall) call = { NULL };

  wm_call_init (&call);
  if (!take_arguments (&call, argc, argv))
    return WM_EXIT_USAGE;
  if (wm_call_get_option (&call, "help") != NULL)
    return end_output (&call, print_help (&call));
  if (wm_call_get_option (&call, "version") != NULL)
    {
      wm_call_print (&call, "wearmark %s\n", WM_VERSION);
      return end_output (&call, WM_EXIT_DONE);
    }
  if (call.verb != NULL)
    return end_output (&call, run_verb (&call));
  if (out_folder != NULL)
    *out_folder = g_strdup (wm_call_get_option (&call, "archive"));
  return -1;
}
