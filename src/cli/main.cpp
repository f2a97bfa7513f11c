// The only place with exit codes, streams and the environment.
#include <algorithm>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <new>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <sys/ioctl.h>
#include <unistd.h>

#include "base/error.hpp"
#include "cli/program.hpp"
#include "cli/progress_line.hpp"
#include "cli/write_result.hpp"

namespace {

using namespace bulbwright;

std::string_view environment(const char* name) {
  const char* value = std::getenv(name);
  return value == nullptr ? std::string_view{} : std::string_view{value};
}

/// The first non-empty of LC_ALL, LC_CTYPE, LANG, read as text: setlocale() would change numbers.
bool locale_is_utf8() {
  for (const char* name : {"LC_ALL", "LC_CTYPE", "LANG"}) {
    const std::string_view value = environment(name);
    if (value.empty()) continue;
    for (const std::string_view mark : {"UTF-8", "utf8", "utf-8", "UTF8"}) {
      if (value.find(mark) != std::string_view::npos) return true;
    }
    return false;
  }
  return true;  // nothing said: files and pipes are UTF-8
}

int terminal_columns() {
  winsize size{};
  if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0) return size.ws_col;
  const int columns = std::atoi(std::string{environment("COLUMNS")}.c_str());
  return columns > 0 ? columns : 80;
}

cli::Terminal terminal_facts() {
  cli::Terminal terminal;
  terminal.is_terminal = isatty(STDOUT_FILENO) == 1;
  terminal.utf8 = locale_is_utf8();
  if (terminal.is_terminal) {
    terminal.columns = std::clamp(terminal_columns(), 40, 400);
    terminal.colour = environment("NO_COLOR").empty() && environment("TERM") != "dumb";
  }
  return terminal;
}

int fault(const char* text) {
  std::fprintf(stderr, "bulbwright: error: %s\n", text);
  return cli::exit_output;
}

cli::CommandResult answer(const std::vector<std::string>& arguments, const cli::Terminal& terminal,
                          input::InputFiles& inputs) {
  std::optional<cli::ProgressLine> line;
  const bool quiet = std::find(arguments.begin(), arguments.end(), "--quiet") != arguments.end();
  if (isatty(STDERR_FILENO) == 1 && !quiet && environment("TERM") != "dumb")
    line.emplace(*terminal.progress);
  return cli::run_program(arguments, terminal, inputs);
}

int run(int argc, char** argv) {
  const std::vector<std::string> arguments(argv + std::min(argc, 1), argv + argc);
  input::InputFiles inputs;
  const cli::CommandResult result = answer(arguments, terminal_facts(), inputs);
  std::fwrite(result.remarks.data(), 1, result.remarks.size(), stderr);
  cli::write_result(result, inputs);
  return result.exit_code;
}

}  // namespace

int main(int argc, char** argv) {
  std::signal(SIGXFSZ, SIG_IGN);  // a file grown too large is a fault of writing, not an end
  try {
    return run(argc, argv);
  } catch (const std::bad_alloc&) {
    return fault("out of memory");
  } catch (const std::exception& error) {
    return fault(error.what());
  }
}
