// The only file that knows CLI11: it is slow to compile.
#include "cli/parser.hpp"

#include <algorithm>

#include <CLI/CLI.hpp>
#include <fmt/core.h>

#include "base/error.hpp"
#include "base/near_miss.hpp"

namespace bulbwright::cli {
namespace {

CLI::Option* add_value(CLI::App& app, const Option& option, bool* value) {
  return app.add_flag(option.spelling, *value, option.help);
}

template <class Text>
CLI::Option* add_value(CLI::App& app, const Option& option, Text* value) {
  return app.add_option_function<std::string>(
      option.spelling, [value](const std::string& written) { *value = written; }, option.help);
}

CLI::Option* add_value(CLI::App& app, const Option& option, std::vector<std::string>* value) {
  CLI::Option* added = app.add_option(option.spelling, *value, option.help);
  // "--layer A file": one word for each --layer.
  if (option.spelling.starts_with("-")) added->allow_extra_args(false);
  return added;
}

void add_option(CLI::App& app, const Option& option) {
  CLI::Option* added =
      std::visit([&](auto* value) { return add_value(app, option, value); }, option.value);
  if (!option.form.empty()) added->option_text(option.form);
  if (!option.words.empty()) added->check(CLI::IsMember(option.words));
  if (!option.heading.empty()) added->group(option.heading);
}

void add_command(CLI::App& root, const Command& command) {
  CLI::App* app = root.add_subcommand(command.name, command.summary);
  for (const Option& option : command.options) add_option(*app, option);
  app->footer(command.footer);
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

CommandResult usage_fault(const std::string& message) {
  CommandResult result;
  result.exit_code = exit_input;
  result.remarks = describe(InputError{{"", 0, 0}, message});
  return result;
}

std::variant<const Command*, CommandResult> parse(const ProgramWords& program,
                                                  const std::vector<Command>& commands,
                                                  const std::vector<std::string>& arguments) {
  CLI::App root{program.summary, program.name};
  root.set_version_flag("--version", program.name + " " + program.version + "\n" + program.data);
  root.require_subcommand(0, 1);
  root.get_formatter()->column_width(30);
  root.footer(program.footer);
  for (const Command& command : commands) add_command(root, command);
  if (const std::string option = empty_option(arguments); !option.empty()) {
    return usage_fault(option + " needs a value after the \"=\"");
  }
  try {
    std::vector<std::string> reversed{arguments.rbegin(), arguments.rend()};
    root.parse(reversed);
  } catch (const CLI::ParseError& error) {
    return on_parse_error(root, error);
  }
  for (const Command& command : commands) {
    if (root.get_subcommand(command.name)->parsed()) return &command;
  }
  CommandResult result;
  result.exit_code = exit_input;
  result.remarks = root.help();
  return result;
}

}  // namespace bulbwright::cli
