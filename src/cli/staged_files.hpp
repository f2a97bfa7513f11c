#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "cli/output_target.hpp"
#include "cli/removed_on_signal.hpp"

namespace bulbwright::cli {

/// Files that wait, whole and flushed, beside the places that they are to take: all take them with
/// commit(), or none. Without commit() nothing is left of them, nor of folders made for them.
class StagedFiles {
 public:
  StagedFiles();
  StagedFiles(const StagedFiles&) = delete;
  StagedFiles& operator=(const StagedFiles&) = delete;
  ~StagedFiles();

  /// Writes the text of a Kind::file to a temporary file in the folder of its target, which is made
  /// where it is missing. It gets the mode of the file that it will replace. @throws OutputError
  void add(const OutputTarget& target);

  /// Puts all in their places. Where one cannot be put, those before it are taken back: former
  /// files return. @throws OutputError
  void commit();

 private:
  class Staged;
  void make_folder(const std::string& folder, const std::string& name);

  std::vector<std::unique_ptr<RemovedOnSignal>> made_folders_;
  std::vector<std::unique_ptr<Staged>> files_;
};

/// @throws OutputError "cannot write `name`: ..."
void write_all(int descriptor, std::string_view text, const std::string& name);

}  // namespace bulbwright::cli
