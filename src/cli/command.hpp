#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "cli/option.hpp"
#include "cli/progress.hpp"
#include "input/input_files.hpp"

namespace bulbwright::cli {

/// Exit codes of the program, in one place. See docs/man/bulbwright.1, EXIT STATUS.
enum ExitCode { exit_done = 0, exit_cannot = 1, exit_input = 2, exit_output = 3 };

/// What the terminal and the environment say; read once in main(), so that a command is a function
/// of its arguments.
struct Terminal {
  bool is_terminal = false;  ///< standard output
  int columns = 80;          ///< 80 for a pipe, so that a file is the same everywhere
  bool utf8 = true;
  bool colour = false;  ///< allowed by NO_COLOR and TERM on a terminal
  std::shared_ptr<Progress> progress = std::make_shared<Progress>();
};

/// A file to be written beside the document; its folder is made where it is missing.
struct OutputFile {
  std::string path;
  std::string text;
  bool may_replace = false;  ///< else a file that is there already, with another text, is kept
};

/// What a command answers: main() prints it. Nothing is written before the whole document is there.
struct CommandResult {
  int exit_code = exit_done;
  std::string document;           ///< for --out or standard output
  std::string remarks;            ///< for standard error, whole lines
  std::string out = "-";          ///< --out
  std::vector<OutputFile> files;  ///< written together with the document, all or none
};

/// One subcommand: what it takes, and what it does after a good parse, noting the files that it
/// reads. Its options write to what `run` reads, which both keep alive.
struct Command {
  std::string name, summary;
  std::vector<Option> options;
  std::string footer;  ///< behind the options in its help
  std::function<CommandResult(const Terminal&, input::InputFiles&)> run;
};

/// All commands in the order of the help. A new command: one line there.
std::vector<Command> all_commands();

}  // namespace bulbwright::cli
