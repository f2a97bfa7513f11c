// The words that docs/schema/pot.schema.json lists are those the program knows.
#include <fstream>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <catch2/catch.hpp>
#include <fmt/core.h>
#include <nlohmann/json.hpp>

#include "input/pot_file_keys.hpp"
#include "plan/request.hpp"
#include "pot/pot_material.hpp"
#include "source_paths.hpp"

using namespace bulbwright;

namespace {

using WordList = std::vector<std::string>;

WordList word_list(std::span<const std::string_view> words) {
  return {words.begin(), words.end()};
}

}  // namespace

TEST_CASE("the schema of the pot file lists the words that are read", "[pot_file][schema]") {
  std::ifstream file{bulbwright::fixture::source_path("docs/schema/pot.schema.json")};
  const nlohmann::json schema = nlohmann::json::parse(file);
  const auto words = [&](const char* pointer) {
    return schema.at(nlohmann::json::json_pointer{pointer}).at("enum").get<WordList>();
  };
  WordList materials;
  for (const PotMaterial& material : known_materials()) materials.emplace_back(material.name);
  CHECK(words("/properties/pot/properties/material") == materials);
  CHECK(words("/properties/pot/properties/shape") == word_list(words_of<Shape>()));
  CHECK(words("/properties/pot/properties/mix") == word_list(input::mix_words));
  CHECK(words("/properties/place/properties/exposure") == word_list(words_of<Exposure>()));
  CHECK(words("/properties/pests/items") == word_list(words_of<Pest>()));
  CHECK(words("/properties/winter") == word_list(words_of<WinterRain>()));
  CHECK(words("/properties/layers/items/properties/arrange") == word_list(words_of<Arrange>()));
  CHECK(words("/properties/layers/items/properties/use") == word_list(words_of<Use>()));
  CHECK(words("/properties/layers/items/properties/state") == word_list(words_of<BulbState>()));
}
