/*
 * Preloaded into a bench, it writes down in order every write, truncation, sync, creation, removal and renaming below a folder, and all
 * that goes to standard output, so that what a power cut would have left at any instant can be worked out afterwards. Shared memory of
 * SQLite is not followed: it does not outlive a power cut.
 *
 * DISK_LOG_ROOT names the folder, DISK_LOG_FILE the log. A record of the log is five numbers of eight bytes in the machine's order
 * (kind, file, offset, length, number of bytes that follow) and those bytes.
 *
 * Built by: cc -shared -fPIC -O1 -o disk-log.so disk-log.c -ldl -lpthread
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <fcntl.h>
#include <limits.h>
#include <pthread.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <sys/types.h>
#include <unistd.h>

enum { MOST_FDS = 65536, MOST_FILES = 4096, STDOUT = 1 };

static pthread_mutex_t turn = PTHREAD_MUTEX_INITIALIZER;
static int log_fd = -1;
static char root[PATH_MAX];
static char *names[MOST_FILES];
static int files;
static int file_of[MOST_FDS]; /* a file's number plus one, or zero for what is not followed */

static void put(char kind, int64_t file, int64_t offset, int64_t length, const void *bytes, int64_t count) {
  int64_t head[5] = {kind, file, offset, length, count};
  if (log_fd < 0) return;
  if (syscall(SYS_write, log_fd, head, sizeof head) != (long)sizeof head) abort();
  for (const char *at = bytes; count > 0;) {
    long done = syscall(SYS_write, log_fd, at, count);
    if (done <= 0) abort();
    at += done;
    count -= done;
  }
}

static int number(const char *name) {
  for (int i = 0; i < files; i++)
    if (strcmp(names[i], name) == 0) return i;
  if (files == MOST_FILES) abort();
  names[files] = strdup(name);
  put('N', files, 0, 0, name, strlen(name));
  return files++;
}

/* The name below the root, or NULL for what is not followed. A name is made whole by its folder, which is there. */
static const char *below(const char *path, char *whole) {
  char folder[PATH_MAX];
  if (root[0] == 0 || strlen(path) >= PATH_MAX) return NULL;
  if (realpath(path, whole) == NULL) {
    strcpy(folder, path);
    char *slash = strrchr(folder, '/');
    if (slash == NULL) return NULL;
    *slash = 0;
    if (realpath(folder, whole) == NULL) return NULL;
    if (strlen(whole) + strlen(slash + 1) + 2 > PATH_MAX) return NULL;
    strcat(whole, "/");
    strcat(whole, slash + 1);
  }
  size_t n = strlen(root);
  if (strncmp(whole, root, n) != 0 || (whole[n] != '/' && whole[n] != 0)) return NULL;
  size_t length = strlen(whole);
  if (length > 4 && strcmp(whole + length - 4, "-shm") == 0) return NULL;
  return whole[n] == 0 ? "." : whole + n + 1;
}

__attribute__((constructor)) static void begin(void) {
  const char *folder = getenv("DISK_LOG_ROOT");
  const char *file = getenv("DISK_LOG_FILE");
  if (folder == NULL || file == NULL || realpath(folder, root) == NULL) return;
  log_fd = syscall(SYS_openat, AT_FDCWD, file, O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
  if (log_fd < 0) abort();
}

#define REAL(type, name) ((type)dlsym(RTLD_NEXT, name))

static int opened(int fd, const char *path, int flags, int existed) {
  char whole[PATH_MAX];
  struct stat about;
  if (fd < 0 || fd >= MOST_FDS) return fd;
  const char *name = below(path, whole);
  file_of[fd] = 0;
  if (name == NULL || fstat(fd, &about) != 0) return fd;
  file_of[fd] = number(name) + 1;
  if (!existed) put('C', file_of[fd] - 1, 0, 0, "", 0);
  else if ((flags & O_TRUNC) && S_ISREG(about.st_mode)) put('T', file_of[fd] - 1, 0, 0, "", 0);
  return fd;
}

static int opening(const char *how, const char *path, int flags, mode_t mode) {
  typedef int (*real)(const char *, int, ...);
  pthread_mutex_lock(&turn);
  int existed = access(path, F_OK) == 0;
  int fd = opened(REAL(real, how)(path, flags, mode), path, flags, existed);
  pthread_mutex_unlock(&turn);
  return fd;
}

#define MODE_OF(flags)                         \
  mode_t mode = 0;                             \
  if (flags & (O_CREAT | __O_TMPFILE)) {       \
    va_list more;                              \
    va_start(more, flags);                     \
    mode = va_arg(more, mode_t);               \
    va_end(more);                              \
  }

int open(const char *path, int flags, ...) {
  MODE_OF(flags)
  return opening("open", path, flags, mode);
}

int open64(const char *path, int flags, ...) {
  MODE_OF(flags)
  return opening("open64", path, flags, mode);
}

int close(int fd) {
  typedef int (*real)(int);
  pthread_mutex_lock(&turn);
  if (fd >= 0 && fd < MOST_FDS) file_of[fd] = 0;
  int done = REAL(real, "close")(fd);
  pthread_mutex_unlock(&turn);
  return done;
}

static int followed(int fd) {
  return fd >= 0 && fd < MOST_FDS ? file_of[fd] : 0;
}

ssize_t write(int fd, const void *bytes, size_t count) {
  typedef ssize_t (*real)(int, const void *, size_t);
  if (!followed(fd) && fd != STDOUT) return REAL(real, "write")(fd, bytes, count);
  pthread_mutex_lock(&turn);
  off_t offset = fd == STDOUT ? 0 : lseek(fd, 0, SEEK_CUR);
  if (fd != STDOUT && (fcntl(fd, F_GETFL) & O_APPEND)) offset = lseek(fd, 0, SEEK_END);
  ssize_t done = REAL(real, "write")(fd, bytes, count);
  if (done > 0) {
    if (fd == STDOUT) put('M', 0, 0, 0, bytes, done);
    else put('W', followed(fd) - 1, offset, 0, bytes, done);
  }
  pthread_mutex_unlock(&turn);
  return done;
}

static ssize_t writing(const char *how, int fd, const void *bytes, size_t count, off_t offset) {
  typedef ssize_t (*real)(int, const void *, size_t, off_t);
  pthread_mutex_lock(&turn);
  ssize_t done = REAL(real, how)(fd, bytes, count, offset);
  if (done > 0 && followed(fd)) put('W', followed(fd) - 1, offset, 0, bytes, done);
  pthread_mutex_unlock(&turn);
  return done;
}

ssize_t pwrite(int fd, const void *bytes, size_t count, off_t offset) {
  return writing("pwrite", fd, bytes, count, offset);
}

ssize_t pwrite64(int fd, const void *bytes, size_t count, off64_t offset) {
  return writing("pwrite64", fd, bytes, count, offset);
}

static int cutting(const char *how, int fd, off_t length) {
  typedef int (*real)(int, off_t);
  pthread_mutex_lock(&turn);
  int done = REAL(real, how)(fd, length);
  if (done == 0 && followed(fd)) put('T', followed(fd) - 1, 0, length, "", 0);
  pthread_mutex_unlock(&turn);
  return done;
}

int ftruncate(int fd, off_t length) {
  return cutting("ftruncate", fd, length);
}

int ftruncate64(int fd, off64_t length) {
  return cutting("ftruncate64", fd, length);
}

static int syncing(const char *how, int fd) {
  typedef int (*real)(int);
  pthread_mutex_lock(&turn);
  int done = REAL(real, how)(fd);
  if (done == 0 && followed(fd)) put('S', followed(fd) - 1, 0, 0, "", 0);
  pthread_mutex_unlock(&turn);
  return done;
}

int fsync(int fd) {
  return syncing("fsync", fd);
}

int fdatasync(int fd) {
  return syncing("fdatasync", fd);
}

int unlink(const char *path) {
  typedef int (*real)(const char *);
  char whole[PATH_MAX];
  pthread_mutex_lock(&turn);
  const char *name = below(path, whole);
  int done = REAL(real, "unlink")(path);
  if (done == 0 && name != NULL) put('U', number(name), 0, 0, "", 0);
  pthread_mutex_unlock(&turn);
  return done;
}

int rename(const char *from, const char *to) {
  typedef int (*real)(const char *, const char *);
  char whole_from[PATH_MAX];
  char whole_to[PATH_MAX];
  pthread_mutex_lock(&turn);
  const char *old = below(from, whole_from);
  const char *new = below(to, whole_to);
  int done = REAL(real, "rename")(from, to);
  if (done == 0 && old != NULL && new != NULL) put('R', number(old), number(new), 0, "", 0);
  pthread_mutex_unlock(&turn);
  return done;
}
