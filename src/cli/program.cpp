#include "cli/program.hpp"

#include <algorithm>

#include <CLI/CLI.hpp>
#include <fmt/core.h>

#include "base/error.hpp"
#include "base/near_miss.hpp"

namespace bulbwright::cli {
namespace {

CommandResult usage_fault(const std::string& message) {
  CommandResult result;
  result.exit_code = exit_input;
  result.remarks = describe(InputError{{"", 0, 0}, message});
  return result;
}

const Command* chosen(const std::vector<Command>& commands) {
  for (const Command& command : commands) {
    if (command.app->parsed()) return &command;
  }
  return nullptr;
}

/// The innermost subcommand that was asked for, the root where none was.
const CLI::App& innermost(const CLI::App& app) {
  const auto chosen = app.get_subcommands();
  return chosen.empty() ? app : innermost(*chosen.front());
}

std::string command_name(const CLI::App& app, const CLI::App& root) {
  if (&app == &root) return {};
  const std::string outer =
      app.get_parent() == nullptr ? "" : command_name(*app.get_parent(), root);
  return outer.empty() ? app.get_name() + ": "
                       : outer.substr(0, outer.size() - 2) + " " + app.get_name() + ": ";
}

std::string unknown_words(const CLI::App& root, const std::vector<std::string>& words) {
  const CLI::App& app = innermost(root);
  const std::string& word = words.front();
  const std::string name = command_name(app, root);
  std::vector<std::string> known;
  if (word.starts_with("-")) {
    for (const CLI::Option* option : app.get_options()) {
      for (const std::string& spelling : option->get_lnames()) known.push_back("--" + spelling);
    }
  } else {
    for (const CLI::App* command : app.get_subcommands({})) known.push_back(command->get_name());
  }
  const std::vector<std::string_view> views{known.begin(), known.end()};
  const std::string_view bare = std::string_view{word}.substr(0, word.find('='));
  if (word.starts_with("-")) {
    return fmt::format("{}unknown option {}{}", name, bulbwright::in_quotes(bare),
                       did_you_mean(bare, views));
  }
  if (views.empty())
    return fmt::format("{}unexpected argument {}", name, bulbwright::in_quotes(word));
  return fmt::format("{}unknown command {}{}", name, bulbwright::in_quotes(word),
                     did_you_mean(word, views));
}

std::string cleaned(std::string text) {
  std::replace(text.begin(), text.end(), '\n', ' ');
  while (!text.empty() && text.back() == ' ') text.pop_back();
  return text;
}

/// CLI11's "--top: 1 required TEXT missing" and "At Most 1 required but received 2" in plain words.
std::string in_plain_words(const CLI::ParseError& error) {
  const std::string text = cleaned(error.what());
  if (dynamic_cast<const CLI::ArgumentMismatch*>(&error) == nullptr) return text;
  const std::string name = text.substr(0, text.find(':'));
  if (text.find("At Most") != std::string::npos) return name + " is given more than once";
  return text.find("missing") == std::string::npos ? text : name + " needs a value after it";
}

/// The first "--top=" without a value: CLI11 would take the next word for it.
std::string empty_option(const std::vector<std::string>& arguments) {
  for (const std::string& argument : arguments) {
    if (argument == "--") break;
    if (argument.size() > 3 && argument.starts_with("--") &&
        argument.find('=') + 1 == argument.size()) {
      return argument.substr(0, argument.size() - 1);
    }
  }
  return {};
}

std::string help_of(const CLI::App& root) {
  const CLI::App& app = innermost(root);
  return app.help(&app == &root ? "" : root.get_name());
}

CommandResult on_parse_error(const CLI::App& root, const CLI::ParseError& error) {
  if (error.get_exit_code() == 0) {  // --help and --version
    CommandResult result;
    result.document = dynamic_cast<const CLI::CallForVersion*>(&error) != nullptr
                          ? std::string{error.what()} + "\n"
                          : help_of(root);
    return result;
  }
  const std::vector<std::string> strange = root.remaining(true);
  if (!strange.empty()) return usage_fault(unknown_words(root, strange));
  const CLI::App& app = innermost(root);
  return usage_fault(command_name(app, root) + in_plain_words(error));
}

}  // namespace

CommandResult run_program(const std::vector<std::string>& arguments, const Terminal& terminal,
                          input::InputFiles& inputs) {
  CLI::App root{"Plans potted, layered spring bulbs: counts, depths, cold, dates, shopping.",
                "bulbwright"};
  root.set_version_flag("--version", std::string{"bulbwright "} + BULBWRIGHT_VERSION);
  root.require_subcommand(0, 1);
  root.get_formatter()->column_width(30);
  root.footer(
      "Example:\n  bulbwright plan --top \"380 mm\" --height \"360 mm\" --zone 9b --season 2026 "
      "\\\n"
      "      --layer tulip-triumph --layer narcissus-large-cupped --layer crocus-large\n\n"
      "Exit status: 0 done; 1 the plan cannot be carried out; 2 wrong input or usage;\n"
      "3 writing failed. `bulbwright COMMAND --help` tells more; see also bulbwright(1).");
  const std::vector<Command> commands = declare_commands(root);
  if (const std::string option = empty_option(arguments); !option.empty()) {
    return usage_fault(option + " needs a value after the \"=\"");
  }
  try {
    std::vector<std::string> reversed{arguments.rbegin(), arguments.rend()};
    root.parse(reversed);
  } catch (const CLI::ParseError& error) {
    return on_parse_error(root, error);
  }
  const Command* command = chosen(commands);
  if (command == nullptr) {
    CommandResult result;
    result.exit_code = exit_input;
    result.remarks = root.help();
    return result;
  }
  try {
    return command->run(terminal, inputs);
  } catch (const InputError& error) {
    CommandResult result;
    result.exit_code = exit_input;
    result.remarks = describe(error);
    return result;
  } catch (const InvalidValue& error) {
    return usage_fault(error.what());
  }
}

}  // namespace bulbwright::cli
