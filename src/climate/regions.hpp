#pragma once

#include <map>
#include <string>
#include <string_view>

namespace bulbwright {

/// English names of countries, states of the US and provinces of Canada, by their ISO 3166 codes
/// ("FR", "US-CA"). A value: building it parses a small file, so build it once and hand it on.
class Regions {
 public:
  static Regions builtin();

  /// Name of a country or of a region "US-CA"; empty for an unknown code. Case matters.
  [[nodiscard]] std::string_view name(std::string_view code) const;
  /// Name of a region within a country, or empty.
  [[nodiscard]] std::string_view name(std::string_view country, std::string_view region) const;
  /// "California" for US and CA, "Austria" for AT alone: what follows a town's name.
  [[nodiscard]] std::string_view behind_town(std::string_view country,
                                             std::string_view region) const;

 private:
  std::map<std::string, std::string, std::less<>> names_;
};

}  // namespace bulbwright
