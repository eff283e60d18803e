/* bench-archive.c: an edit against a bare sync, search against FTS5 alone, hashing
 * against OpenSSL
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include <fcntl.h>
#include <glib/gstdio.h>
#include <openssl/evp.h>
#include <sqlite3.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "archive/photo-file.h"
#include "bench.h"
#include "fill.h"

#define N_PIECES 100000
#define PAGE_ROWS 50

static double
now_s (void)
{
  return 1e-6 * (double)g_get_monotonic_time ();
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double x = *(const double *)a;
  double y = *(const double *)b;

  return x < y ? -1 : x > y;
}

static double
get_median (GArray *values)
{
  g_array_sort (values, compare_doubles);
  return g_array_index (values, double, values->len / 2);
}

/* ---- one committed edit ------------------------------------------------- */

#define N_COMMITS 300
/* As large as SQLite lets its log grow before it begins again. */
#define FILE_BYTES (1000 * 4096)

static double
time_commit (WmArchive *archive, WmMark *mark, int nth)
{
  g_autoptr (WmEdit) edit = wm_edit_new ("Move mark", NULL, NULL);
  g_autofree char *points = g_strdup_printf ("%d,300", nth);
  double start = now_s ();

  g_object_set (mark, "points", points, NULL);
  wm_edit_put (edit, mark);
  if (!wm_archive_commit (archive, edit, NULL))
    g_error ("an edit was refused");
  return now_s () - start;
}

/* As many bytes as an edit's log entry has, and the same kind of sync. */
static double
time_sync (int fd, int nth)
{
  static const char bytes[6 * 4096];
  double start = now_s ();

  if (pwrite (fd, bytes, sizeof bytes, nth * (off_t)sizeof bytes % FILE_BYTES) < 0
      || fdatasync (fd) != 0)
    g_error ("the peer's file");
  return now_s () - start;
}

static WmMark *
put_first_mark (WmArchive *archive)
{
  g_autoptr (WmPiece) piece = wm_piece_new ();
  g_autoptr (WmVisit) visit = wm_visit_new ();
  g_autoptr (WmPhoto) photo = wm_photo_new ();
  g_autoptr (WmEdit) edit = wm_edit_new ("Piece", NULL, NULL);
  g_autofree char *sha256 = g_strnfill (64, '0');
  WmMark *mark = wm_mark_new ();

  g_object_set (visit, "piece-id", wm_record_get_id (WM_RECORD (piece)), NULL);
  g_object_set (photo, "visit-id", wm_record_get_id (WM_RECORD (visit)), "sha256", sha256,
                "format", "jpeg", NULL);
  g_object_set (mark, "photo-id", wm_record_get_id (WM_RECORD (photo)), "shape",
                WM_MARK_SPOT, "points", "0,0", NULL);
  wm_edit_put (edit, piece);
  wm_edit_put (edit, visit);
  wm_edit_put (edit, photo);
  wm_edit_put (edit, mark);
  if (!wm_archive_commit (archive, edit, NULL))
    g_error ("the first edit was refused");
  return mark;
}

static void
measure_commit (const char *folder)
{
  g_autofree char *archive_folder = g_build_filename (folder, "small", NULL);
  g_autofree char *file = g_build_filename (folder, "peer", NULL);
  g_autoptr (WmArchive) archive =
      wm_archive_open (archive_folder, WM_ARCHIVE_CREATE, NULL);
  g_autoptr (WmMark) mark = put_first_mark (archive);
  g_autoptr (GArray) ours = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GArray) peer = g_array_new (FALSE, FALSE, sizeof (double));
  int fd = open (file, O_RDWR | O_CREAT | O_CLOEXEC, 0600);

  for (int i = 0; i < N_COMMITS; i++)
    {
      double seconds = time_commit (archive, mark, i);

      g_array_append_val (ours, seconds);
      seconds = time_sync (fd, i);
      g_array_append_val (peer, seconds);
    }
  close (fd);
  bench_print_ms ("one committed edit, against fdatasync (median)", get_median (ours),
                  get_median (peer), "at most 1.3");
}

/* ---- search ------------------------------------------------------------- */

typedef struct
{
  WmArchive *archive;
  sqlite3 *db;
  const char *words;
  guint n_rows;
} Search;

static void
search_ours (gpointer data)
{
  Search *search = data;
  g_autoptr (GPtrArray) rows = wm_archive_search (
      search->archive, search->words, WM_PIECES_ALL, NULL, 0, PAGE_ROWS, NULL);

  search->n_rows = rows->len;
}

static sqlite3_stmt *
prepare (sqlite3 *db, const char *sql, const char *match)
{
  sqlite3_stmt *stmt;

  if (sqlite3_prepare_v2 (db, sql, -1, &stmt, NULL) != SQLITE_OK)
    g_error ("%s", sqlite3_errmsg (db));
  sqlite3_bind_text (stmt, 1, match, -1, SQLITE_STATIC);
  return stmt;
}

/* The form that measured best with FTS5 alone: prefix index, newest first, ranked when
 * there are at most 2,000; the same columns read, nothing made of them. */
static void
search_peer (gpointer data)
{
  Search *search = data;
  g_autofree char *match = g_strdup_printf ("\"%s\"*", search->words);
  sqlite3_stmt *few = prepare (search->db,
                               "SELECT count (*) FROM (SELECT 1 FROM piece_word"
                               " WHERE piece_word MATCH ?1 LIMIT 2001)",
                               match);
  g_autofree char *sql = NULL;
  sqlite3_stmt *rows;

  sqlite3_step (few);
  sql = g_strdup_printf (
      "SELECT l.* FROM (SELECT rowid AS place FROM piece_word WHERE piece_word MATCH ?1"
      " ORDER BY %s LIMIT 50) AS w CROSS JOIN piece_line AS l ON l.place = w.place",
      sqlite3_column_int (few, 0) <= 2000 ? "rank" : "rowid DESC");
  sqlite3_finalize (few);
  rows = prepare (search->db, sql, match);
  for (search->n_rows = 0; sqlite3_step (rows) == SQLITE_ROW; search->n_rows++)
    for (int i = 0; i < sqlite3_column_count (rows); i++)
      sqlite3_column_text (rows, i);
  sqlite3_finalize (rows);
}

static void
measure_search (Search *search)
{
  double ours_sum = 0;
  double peer_sum = 0;
  double slowest_s = 0;
  g_autofree char *slowest = NULL;
  guint n = 0;

  for (guint i = 0; bench_words[i] != NULL; i++)
    for (const char *end = g_utf8_next_char (bench_words[i]);;
         end = g_utf8_next_char (end))
      {
        g_autofree char *prefix =
            g_strndup (bench_words[i], (gsize)(end - bench_words[i]));
        double ours_s;
        double peer_s;

        search->words = prefix;
        bench_in_turn (search_ours, search_peer, search, 7, TRUE, &ours_s, &peer_s);
        ours_sum += ours_s;
        peer_sum += peer_s;
        n++;
        if (ours_s > slowest_s)
          {
            slowest_s = ours_s;
            g_free (slowest);
            slowest = g_strdup_printf ("slowest of these prefixes, \"%s\"", prefix);
          }
        if (*end == '\0')
          break;
      }
  bench_print_ms ("search of 100,000 pieces, every prefix (mean)", ours_sum / n,
                  peer_sum / n, "at most 1.2");
  g_print ("%s\t%.2f ms\t\t\t\n", slowest, 1e3 * slowest_s);
}

static void
measure_searches (void)
{
  /* Kept beside the programs for the next time, as the row of starting does. */
  g_autofree char *folder = g_build_filename (
      g_getenv ("WM_BENCH_PROGRAMS") != NULL ? g_getenv ("WM_BENCH_PROGRAMS") : ".",
      "archive-100000", NULL);
  g_autofree char *path = g_build_filename (folder, "records.sqlite", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (WmArchive) archive = wm_archive_open (folder, WM_ARCHIVE_CREATE, &error);
  Search search = { .archive = archive };

  if (archive == NULL)
    g_error ("%s", error->message);
  if (wm_archive_count (archive, WM_PIECES_ALL, NULL) == 0)
    bench_fill (archive, N_PIECES);
  if (sqlite3_open_v2 (path, &search.db, SQLITE_OPEN_READONLY, NULL) != SQLITE_OK)
    g_error ("the peer's connection");
  measure_search (&search);
  sqlite3_close (search.db);
}

/* ---- hashing ------------------------------------------------------------ */

#define PHOTO_BYTES (64 * 1024 * 1024)

static void
hash_ours (gpointer path)
{
  gint64 byte_size;
  g_autofree char *sha256 = wm_photo_file_hash (path, &byte_size, NULL, NULL);

  g_assert_nonnull (sha256);
}

static void
hash_peer (gpointer path)
{
  static unsigned char chunk[256 * 1024];
  unsigned char digest[EVP_MAX_MD_SIZE];
  EVP_MD_CTX *context = EVP_MD_CTX_new ();
  int fd = open (path, O_RDONLY | O_CLOEXEC);
  gssize n;

  EVP_DigestInit_ex (context, EVP_sha256 (), NULL);
  while ((n = read (fd, chunk, sizeof chunk)) > 0)
    EVP_DigestUpdate (context, chunk, (size_t)n);
  EVP_DigestFinal_ex (context, digest, NULL);
  EVP_MD_CTX_free (context);
  close (fd);
}

static void
measure_hash (const char *folder)
{
  g_autofree char *path = g_build_filename (folder, "photo", NULL);
  g_autofree char *bytes = g_malloc (PHOTO_BYTES);
  double ours_s;
  double peer_s;

  memset (bytes, 'x', PHOTO_BYTES);
  g_assert_true (g_file_set_contents (path, bytes, PHOTO_BYTES, NULL));
  bench_in_turn (hash_ours, hash_peer, path, 7, FALSE, &ours_s, &peer_s);
  bench_print_ms ("hashing a photo of 64 MB, against OpenSSL", ours_s, peer_s,
                  "at most 1.1");
}

int
main (void)
{
  g_autofree char *folder = g_dir_make_tmp ("wm-bench-XXXXXX", NULL);
  g_autofree char *remove = g_strdup_printf ("rm -rf '%s'", folder);

  measure_commit (folder);
  measure_hash (folder);
  if (system (remove) != 0)
    g_printerr ("%s is left\n", folder);
  measure_searches ();
  return 0;
}
