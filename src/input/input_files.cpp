#include "input/input_files.hpp"

#include <sys/stat.h>

namespace bulbwright::input {

void InputFiles::note(int descriptor) {
  struct stat facts {};
  if (::fstat(descriptor, &facts) != 0 || !S_ISREG(facts.st_mode)) return;
  files_.emplace(facts.st_dev, facts.st_ino);
}

}  // namespace bulbwright::input
