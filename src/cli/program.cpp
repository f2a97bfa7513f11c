#include "cli/program.hpp"

#include "base/error.hpp"
#include "cli/parser.hpp"

namespace bulbwright::cli {
namespace {

ProgramWords program_words() {
  return {
      "bulbwright", "Plans potted, layered spring bulbs: counts, depths, cold, dates, shopping.",
      BULBWRIGHT_VERSION,
      "Example:\n  bulbwright plan --top \"380 mm\" --height \"360 mm\" --zone 9b --season 2026 "
      "\\\n"
      "      --layer tulip-triumph --layer narcissus-large-cupped --layer crocus-large\n\n"
      "Exit status: 0 done; 1 the plan cannot be carried out; 2 wrong input or usage;\n"
      "3 writing failed. `bulbwright COMMAND --help` tells more; see also bulbwright(1).",
      "Climate data: WorldClim 1.4 at stations of the NOAA network, CC BY-SA 4.0; Met Office,\n"
      "Open Government Licence v3.0. Terms and changes: bulbwright(1), COPYRIGHT."};
}

}  // namespace

CommandResult run_program(const std::vector<std::string>& arguments, const Terminal& terminal,
                          input::InputFiles& inputs) {
  const std::vector<Command> commands = all_commands();
  const auto parsed = parse(program_words(), commands, arguments);
  if (const auto* answer = std::get_if<CommandResult>(&parsed)) return *answer;
  try {
    return std::get<const Command*>(parsed)->run(terminal, inputs);
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
