#include "cli/write_result.hpp"

#include <cstdio>

#include <fcntl.h>
#include <unistd.h>

#include "base/error.hpp"
#include "cli/output_target.hpp"
#include "cli/staged_files.hpp"

namespace bulbwright::cli {
namespace {

void write_standard_output(const std::string& text) {
  if (text.empty()) return;
  if (std::fwrite(text.data(), 1, text.size(), stdout) != text.size() || std::fflush(stdout) != 0 ||
      std::ferror(stdout) != 0) {
    cannot_write("standard output");
  }
}

/// A descriptor that is closed at the end.
class Opened {
 public:
  explicit Opened(const OutputTarget& target)
      : name_{target.name}, number_{::open(target.path.c_str(), O_WRONLY | O_CLOEXEC)} {
    if (number_ < 0) cannot_write(name_);
  }
  Opened(const Opened&) = delete;
  Opened& operator=(const Opened&) = delete;
  ~Opened() {
    if (number_ >= 0) ::close(number_);
  }
  void write_and_close(const std::string& text) {
    write_all(number_, text, name_);
    const int number = number_;
    number_ = -1;
    if (::close(number) != 0) cannot_write(name_);
  }

 private:
  std::string name_;
  int number_;
};

}  // namespace

void write_result(const CommandResult& result, const input::InputFiles& inputs) {
  std::vector<OutputFile> files = result.files;
  const bool to_file = result.out != "-" && !result.document.empty();
  if (to_file) files.push_back({result.out, result.document, true});
  const std::vector<OutputTarget> targets = output_targets(files, inputs);
  if (!to_file) check_standard_output(inputs);

  StagedFiles staged;
  for (const OutputTarget& target : targets) {
    if (target.kind == OutputTarget::Kind::file) staged.add(target);
  }
  for (const OutputTarget& target : targets) {
    if (target.kind == OutputTarget::Kind::device) {
      Opened{target}.write_and_close(target.output->text);
    } else if (target.kind == OutputTarget::Kind::descriptor) {
      write_all(target.descriptor, target.output->text, target.name);
    }
  }
  if (!to_file) write_standard_output(result.document);
  staged.commit();
}

}  // namespace bulbwright::cli
