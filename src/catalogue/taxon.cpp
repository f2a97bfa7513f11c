#include "catalogue/taxon.hpp"

#include <array>
#include <numbers>

#include "catalogue/taxon_words.hpp"

namespace bulbwright {
namespace {

using namespace std::string_view_literals;

constexpr std::array origin_words{"published"sv, "common practice"sv, "from memory"sv};
constexpr std::array cold_form_words{"dry-ok"sv, "moist-only"sv, "none"sv};
constexpr std::array rooting_words{"early"sv, "normal"sv, "late"sv};
constexpr std::array eaten_words{"eaten"sv, "occasionally eaten"sv, "rarely eaten"sv, "unknown"sv};
constexpr std::array toxicity_words{"none known"sv, "mild"sv, "moderate"sv, "severe"sv,
                                    "unverified"sv};
constexpr std::array light_words{"sun"sv, "sun to part shade"sv, "part shade"sv};
constexpr std::array moisture_words{"dry"sv, "normal"sv, "moist"sv};
constexpr std::array density_words{"sparse"sv, "normal"sv, "mat"sv};
constexpr std::array after_words{"discard"sv, "keep"sv, "dry off"sv};
constexpr std::array plant_by_words{"on arrival"sv, "October-November"sv,
                                    "November-December after cold"sv,
                                    "December-January after cold"sv};

template <class Enum>
const char* word(Enum value) {
  return words_of<Enum>()[static_cast<std::size_t>(value)].data();  // literals, NUL-terminated
}

}  // namespace

template <>
std::span<const std::string_view> words_of<Origin>() {
  return origin_words;
}
template <>
std::span<const std::string_view> words_of<ColdForm>() {
  return cold_form_words;
}
template <>
std::span<const std::string_view> words_of<RootingStart>() {
  return rooting_words;
}
template <>
std::span<const std::string_view> words_of<Eaten>() {
  return eaten_words;
}
template <>
std::span<const std::string_view> words_of<Toxicity>() {
  return toxicity_words;
}
template <>
std::span<const std::string_view> words_of<Light>() {
  return light_words;
}
template <>
std::span<const std::string_view> words_of<Moisture>() {
  return moisture_words;
}
template <>
std::span<const std::string_view> words_of<FoliageDensity>() {
  return density_words;
}
template <>
std::span<const std::string_view> words_of<AfterFlowering>() {
  return after_words;
}
template <>
std::span<const std::string_view> words_of<PlantBy>() {
  return plant_by_words;
}

const char* to_string(ColdForm form) {
  return word(form);
}
const char* to_string(RootingStart start) {
  return word(start);
}
const char* to_string(Eaten eaten) {
  return word(eaten);
}
const char* to_string(Toxicity toxicity) {
  return word(toxicity);
}
const char* to_string(Light light) {
  return word(light);
}
const char* to_string(Moisture moisture) {
  return word(moisture);
}
const char* to_string(FoliageDensity density) {
  return word(density);
}
const char* to_string(AfterFlowering after) {
  return word(after);
}
const char* to_string(PlantBy plant_by) {
  return word(plant_by);
}

std::string plain_name(std::string_view name) {
  std::string out{name};
  for (std::size_t open = out.find(" ("); open != std::string::npos; open = out.find(" (")) {
    const std::size_t close = out.find(')', open);
    if (close == std::string::npos) {
      out.erase(open);
    } else {
      out.erase(open, close - open + 1);
    }
  }
  if (const std::size_t comma = out.find(','); comma != std::string::npos) out.erase(comma);
  return out.empty() ? std::string{name} : out;
}

Millimetres diameter_of_circumference(double circumference_cm) {
  return Millimetres{10.0 * circumference_cm / std::numbers::pi};
}

}  // namespace bulbwright
