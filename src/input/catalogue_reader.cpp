#include "input/catalogue_reader.hpp"

#include <filesystem>

#include "input/file_reader.hpp"

namespace bulbwright::input {

Catalogue load_catalogue(const std::string& data_folder) {
  Catalogue catalogue = builtin_catalogue();
  if (data_folder.empty()) return catalogue;
  const std::string path = (std::filesystem::path{data_folder} / "taxa.csv").string();
  const InputText file = read_text(path, catalogue_file_limit);
  return merged(catalogue, file.text, file.name);
}

}  // namespace bulbwright::input
