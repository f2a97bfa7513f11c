// Preloaded into the program by tests/cli/no_loss.sh: lets the Nth call of a function of the system
// fail. FAIL_CALL=rename:2:18 fails the second rename() with errno 18.
#include <cerrno>
#include <cstdlib>
#include <cstring>

#include <dlfcn.h>
#include <sys/types.h>

namespace {

/// Counts the calls of `name`; true, with errno set, for the one that shall fail.
bool shall_fail(const char* name) {
  static int calls = 0;
  const char* order = std::getenv("FAIL_CALL");
  const std::size_t length = std::strlen(name);
  if (order == nullptr || std::strncmp(order, name, length) != 0 || order[length] != ':') {
    return false;
  }
  char* end = nullptr;
  const long wanted = std::strtol(order + length + 1, &end, 10);
  if (++calls != wanted) return false;
  errno = static_cast<int>(std::strtol(end + 1, nullptr, 10));
  return true;
}

template <class Function>
Function next(const char* name) {
  void* found = ::dlsym(RTLD_NEXT, name);
  Function function = nullptr;
  std::memcpy(&function, &found, sizeof function);
  return function;
}

}  // namespace

extern "C" {

int rename(const char* from, const char* to) noexcept {
  if (shall_fail("rename")) return -1;
  return next<int (*)(const char*, const char*)>("rename")(from, to);
}

int link(const char* from, const char* to) noexcept {
  if (shall_fail("link")) return -1;
  return next<int (*)(const char*, const char*)>("link")(from, to);
}

int fsync(int descriptor) {
  if (shall_fail("fsync")) return -1;
  return next<int (*)(int)>("fsync")(descriptor);
}

ssize_t write(int descriptor, const void* bytes, std::size_t count) {
  if (shall_fail("write")) return -1;
  return next<ssize_t (*)(int, const void*, std::size_t)>("write")(descriptor, bytes, count);
}

}  // extern "C"
