#pragma once

#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include "base/csv.hpp"
#include "source_paths.hpp"

/// tests/vectors/materials_vectors.csv: worked numbers from a plain independent script (Python
/// standard library, arithmetic only; the volumes were recomputed by numerical integration).
/// Lengths mm, volumes litres, masses kg.
struct MaterialsVector {
  std::string function, inputs, quantity;
  double expected = 0.0, tolerance = 0.0;

  /// `inputs` written as "top=380;base=290".
  [[nodiscard]] double in(const std::string& name) const {
    std::istringstream stream{inputs};
    for (std::string part; std::getline(stream, part, ';');) {
      if (part.starts_with(name + "=")) return std::stod(part.substr(name.size() + 1));
    }
    throw std::runtime_error{"no input " + name + " in " + inputs};
  }
  [[nodiscard]] std::string word(const std::string& name) const {
    std::istringstream stream{inputs};
    for (std::string part; std::getline(stream, part, ';');) {
      if (part.starts_with(name + "=")) return part.substr(name.size() + 1);
    }
    throw std::runtime_error{"no input " + name + " in " + inputs};
  }
};

inline std::string file_text(const std::string& path) {
  std::ifstream stream{path, std::ios::binary};
  if (!stream) throw std::runtime_error{"cannot read " + path};
  std::ostringstream text;
  text << stream.rdbuf();
  return text.str();
}

/// The rows of one function; throws where there is none, so that a test cannot pass empty.
inline std::vector<MaterialsVector> materials_vectors(const std::string& function) {
  const std::string path = bulbwright::fixture::source_path("tests/vectors/materials_vectors.csv");
  const bulbwright::CsvTable table = bulbwright::read_csv(file_text(path), path);
  std::vector<MaterialsVector> rows;
  for (const bulbwright::CsvRecord& record : table.records) {
    if (record.fields[table.column("function")] != function) continue;
    rows.push_back({function, record.fields[table.column("inputs")],
                    record.fields[table.column("quantity")],
                    std::stod(record.fields[table.column("expected")]),
                    std::stod(record.fields[table.column("abs_tol")])});
  }
  if (rows.empty()) throw std::runtime_error{"no vector for " + function};
  return rows;
}
