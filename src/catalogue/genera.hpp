#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bulbwright {

/// What the program knows of a genus as a whole.
struct Genus {
  std::string name;                ///< "Narcissus"
  std::string plural;              ///< in a gardener's words: "daffodils"
  std::vector<std::string> names;  ///< common names, singular, lower case: "daffodil"
  std::optional<double>
      shape_factor;  ///< volume of a bulb over that of the sphere round its widest
                     ///< place; none: it follows from each kind's own shape

  bool operator==(const Genus&) const = default;
};

/// The genera of a catalogue.
class Genera {
 public:
  Genera() = default;
  explicit Genera(std::vector<Genus> genera) : genera_{std::move(genera)} {}

  /// The genus of that name (any case); of one that is not listed the name and nothing more.
  [[nodiscard]] Genus of(std::string_view name) const;

  /// These with those of `own` in place of the same names, the others after them.
  [[nodiscard]] Genera with(const Genera& own) const;

  [[nodiscard]] const std::vector<Genus>& all() const { return genera_; }

 private:
  std::vector<Genus> genera_;
};

/// Reads genus,plural,names,shape_factor,origin,source; names with "|" between, shape_factor 0.1 to
/// 3 or empty.
/// @throws InputError with every fault: an empty or repeated genus, a name that two genera share, a
/// number out of range, an unknown origin, a published row without a source.
Genera parse_genera(std::string_view csv, std::string file);

/// The table compiled into the program (data/genera.csv).
Genera builtin_genera();

/// Whether `crop` means the genus: its botanical name or a common one, one or several of them, in
/// any case, with hyphens or without: "Hyacinthus", "hyacinths", "grape-hyacinth".
bool is_crop_of(const Genus& genus, std::string_view crop);

}  // namespace bulbwright
