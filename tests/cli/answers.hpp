#pragma once

#include <filesystem>
#include <fstream>
#include <set>
#include <stdexcept>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>
#include <unistd.h>

#include "cli/program.hpp"

/// The program's answers to command lines as people type them, run inside the test.
namespace bulbwright::fixture {

/// The words of a command line; double quotes hold a word together.
inline std::vector<std::string> words_of(const std::string& line) {
  std::vector<std::string> words;
  bool quoted = false, inside = false;
  for (const char c : line) {
    if (c == '"') {
      quoted = !quoted;
      if (!inside) words.emplace_back();
      inside = true;
    } else if (c == ' ' && !quoted) {
      inside = false;
    } else {
      if (!inside) words.emplace_back();
      inside = true;
      words.back() += c;
    }
  }
  return words;
}

/// The codes of the notices in the JSON answer to a command.
/// @throws std::runtime_error where the program finds the command wrong.
inline std::multiset<std::string> codes_of(const std::string& line) {
  std::vector<std::string> words = words_of(line);
  words.insert(words.end(), {"--format", "json"});
  input::InputFiles inputs;
  const cli::CommandResult result = cli::run_program(words, {}, inputs);
  if (result.exit_code != cli::exit_done && result.exit_code != cli::exit_cannot)
    throw std::runtime_error{line + "\n" + result.remarks};
  std::multiset<std::string> codes;
  const nlohmann::json answer = nlohmann::json::parse(result.document);
  for (const auto& notice : answer.at("notices")) codes.insert(notice.at("code"));
  return codes;
}

/// A folder of files for one test, gone with it.
class Folder {
 public:
  explicit Folder(const std::string& name)
      : path_{std::filesystem::temp_directory_path() / (name + std::to_string(::getpid()))} {
    std::filesystem::create_directories(path_);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  [[nodiscard]] std::string path() const { return path_.string(); }
  void write(const std::string& name, const std::string& text) const {
    const std::filesystem::path file = path_ / name;
    std::filesystem::create_directories(file.parent_path());
    std::ofstream{file, std::ios::binary} << text;
  }

 private:
  std::filesystem::path path_;
};

}  // namespace bulbwright::fixture
