#include "cli/pot_files.hpp"

#include <algorithm>
#include <filesystem>
#include <map>
#include <optional>

#include <fmt/core.h>

#include "base/text.hpp"
#include "input/place_resolver.hpp"
#include "input/pot_file_writer.hpp"

namespace bulbwright::cli {
namespace {

namespace fs = std::filesystem;

bool is_folder(const std::string& word) {
  std::error_code ignored;
  return word != "-" && fs::is_directory(word, ignored);
}

std::vector<std::string> files_in(const std::string& folder) {
  std::vector<std::string> files;
  std::error_code fault;
  for (fs::directory_iterator at{folder, fault}, end; !fault && at != end; at.increment(fault)) {
    std::error_code ignored;
    const std::string name = at->path().filename().string();
    if (name.starts_with(".") || !lower_case(name).ends_with(".json")) continue;
    if (at->is_directory(ignored)) continue;
    files.push_back(at->path().string());
  }
  if (fault) {
    throw InputError{{"", 0, 0},
                     fmt::format("cannot read {}: {}", path_in_quotes(folder), fault.message())};
  }
  if (files.empty()) {
    throw InputError{{"", 0, 0},
                     fmt::format("{} holds no pot file; expected names that end in .json",
                                 path_in_quotes(folder))};
  }
  std::sort(files.begin(), files.end());
  return files;
}

bool reads_standard_input(const input::LocatedRequest& asked) {
  return asked.request.place && asked.request.place->records_file == "-";
}

/// A fault that stands in a file and not in the flags, nor keeps the file from being opened.
bool stands_in_file(const InputFault& fault) {
  return !fault.place.file.empty() && !fault.place.file.starts_with("--");
}

/// All that a place's season depends on.
std::string place_key(const input::LocatedRequest& asked, int season) {
  Request place;
  place.place = asked.request.place;
  place.season = season;
  const bool records = place.place && place.place->records_file;
  return input::write_pot_file(place) + (records ? input::records_path(asked) : "");
}

/// Reads the files one after the other.
class Reading {
 public:
  Reading(const PotOptions& options, const input::Facts& facts, input::InputFiles& inputs,
          bool input_is_taken)
      : options_{options}, facts_{facts}, inputs_{inputs}, input_is_taken_{input_is_taken} {}

  PotFile read(const std::string& file) {
    PotFile pot;
    pot.file = file;
    input::Faults faults;
    pot.asked = pot_request(file, options_, inputs_, Need::all, faults);
    pot.group = pot.asked.request.pot.group;
    if (reads_standard_input(pot.asked)) {
      if (input_is_taken_) {
        faults.add({input::fault_at(pot.asked, "place.records", "standard input is read once")});
        pot.asked.request.place->records_file.reset();
      }
      input_is_taken_ = true;
    }
    PlaceSeason place_season = input::resolve(pot.asked, facts_, inputs_, std::move(faults));
    std::shared_ptr<const PlaceSeason>& known = places_[place_key(pot.asked, place_season.season)];
    if (!known) known = std::make_shared<const PlaceSeason>(std::move(place_season));
    pot.place_season = known;
    return pot;
  }

 private:
  const PotOptions& options_;
  const input::Facts& facts_;
  input::InputFiles& inputs_;
  bool input_is_taken_;
  std::map<std::string, std::shared_ptr<const PlaceSeason>> places_;
};

}  // namespace

std::vector<std::string> pot_files(const std::vector<std::string>& words) {
  std::vector<std::string> files;
  for (const std::string& word : words) {
    if (!is_folder(word)) {
      files.push_back(word);
      continue;
    }
    for (std::string& file : files_in(word)) files.push_back(std::move(file));
  }
  return files;
}

std::vector<PotFile> read_pot_files(const std::vector<std::string>& files,
                                    const PotOptions& options, const input::Facts& facts,
                                    input::InputFiles& inputs) {
  Reading reading{options, facts, inputs, std::count(files.begin(), files.end(), "-") > 0};
  std::vector<PotFile> pots;
  std::vector<InputFault> all;
  bool of_files_only = true, any_good = false;
  for (const std::string& file : files) {
    try {
      pots.push_back(reading.read(file));
      any_good = true;
    } catch (const InputError& error) {
      PotFile& pot = pots.emplace_back();
      pot.file = file;
      pot.faults = error.faults();
      all.insert(all.end(), pot.faults.begin(), pot.faults.end());
      of_files_only =
          of_files_only && std::all_of(pot.faults.begin(), pot.faults.end(), stands_in_file);
    }
  }
  if (!of_files_only || (!any_good && !all.empty())) throw InputError{std::move(all)};
  return pots;
}

void check_pot_files(const char* command, const std::vector<std::string>& files,
                     const char* expected) {
  if (files.empty()) throw InvalidValue{command, std::string{"no pot file; "} + expected};
  if (std::count(files.begin(), files.end(), "-") > 1)
    throw InvalidValue{command, "standard input is read once; give - once"};
}

std::string remarks_on(const PotFile& pot) {
  std::string text;
  for (const std::string& remark : pot.asked.remarks)
    text += "bulbwright: " + path_in_quotes(pot.file) + ": " + remark + "\n";
  return text;
}

void throw_if_any_fault(const std::vector<PotFile>& pots) {
  std::vector<InputFault> faults;
  for (const PotFile& pot : pots) faults.insert(faults.end(), pot.faults.begin(), pot.faults.end());
  if (!faults.empty()) throw InputError{std::move(faults)};
}

}  // namespace bulbwright::cli
