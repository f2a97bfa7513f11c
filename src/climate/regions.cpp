#include "climate/regions.hpp"

#include "base/csv.hpp"

namespace bulbwright::embedded {
extern const std::string_view regions_csv;
}

namespace bulbwright {

Regions Regions::builtin() {
  const CsvTable table = read_csv(embedded::regions_csv, "regions.csv");
  const std::size_t code = table.column("code"), name = table.column("name");
  Regions regions;
  for (const CsvRecord& record : table.records) {
    regions.names_.emplace(record.fields[code], record.fields[name]);
  }
  return regions;
}

std::string_view Regions::name(std::string_view code) const {
  const auto found = names_.find(code);
  return found == names_.end() ? std::string_view{} : std::string_view{found->second};
}

std::string_view Regions::name(std::string_view country, std::string_view region) const {
  if (region.empty()) return {};
  std::string code{country};
  code += '-';
  code += region;
  return name(code);
}

std::string_view Regions::behind_town(std::string_view country, std::string_view region) const {
  const std::string_view within = name(country, region);
  return within.empty() ? name(country) : within;
}

}  // namespace bulbwright
