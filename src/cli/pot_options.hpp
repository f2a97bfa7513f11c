#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cli/option.hpp"
#include "input/faults.hpp"
#include "input/input_files.hpp"
#include "input/located_request.hpp"

namespace bulbwright::cli {

/// What the flags of `plan` and its like say about a pot, as written; judged by merged(), after the
/// parse, so that --help and unknown words come first.
struct PotOptions {
  std::optional<std::string> name, shape, top, base, height, corner, thickness, headspace, material,
      last_crop;
  std::optional<std::string> zone, region, site, near, elevation, records, latitude, exposure;
  bool south = false;
  std::optional<std::string> season, plant, flower, order;
  bool spread = false;
  std::vector<std::string> layers;  ///< bottom first
  std::optional<std::string> gap, wall;
  std::optional<std::string> storage_temperature, storage_method, storage_weeks;
  std::vector<std::string> pests;
  bool wet_winter = false;
  std::optional<std::string> winter, offset;
};

/// Which groups of flags a command has.
struct PotOptionGroups {
  bool pot = true, place = true, dates = true, layers = true, storage = true, winter = true;
};

void declare_pot(std::vector<Option>& all, PotOptions& options, const PotOptionGroups& groups = {});

/// The request of a pot file, where there is one, with the flags laid over it:
/// - a flag wins over the same key; any --layer replaces all layers, any --pest all pests;
/// - --top, --base or --height replaces a profile;
/// - --zone, --site or --near replaces the file's zone, site, near, normals and records; --records
///   is laid beside the file's zone, site, near or normals, which then continue it;
/// - --plant or --flower replaces both, and the file's season unless --season is given too or the
///   day says no year; --season moves the file's own days into its season;
/// - --gap and --wall hold for every layer, --storage-weeks for every kind.
/// Every fault goes to `faults`, named as it was written: "--top: ..." or by the file's line;
/// contradictions of the whole included, and, with Need::all, what a plan lacks. A value that is
/// refused is absent.
enum class Need { all, all_but_layers, whatever_is_given };
input::LocatedRequest merged(std::optional<input::LocatedRequest> file, const PotOptions& options,
                             Need need, input::Faults& faults);

/// The request of a command: reads `path` where it is given ("-": standard input) and lays the
/// flags over it. Faults as merged(). @throws InputError for a file that cannot be read or is no
/// JSON.
input::LocatedRequest pot_request(const std::optional<std::string>& path, const PotOptions& options,
                                  input::InputFiles& inputs, Need need, input::Faults& faults);

}  // namespace bulbwright::cli
