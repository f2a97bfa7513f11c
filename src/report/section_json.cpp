#include "report/section_json.hpp"

namespace bulbwright::report {

double document_mm(Millimetres length) {
  return rounded(length.value(), 0.1);
}

Json section_json(const Section& section) {
  const double length = document_mm(section.length), width = document_mm(section.width);
  Json json{{"shape", word_of(section.shape)}};
  switch (section.shape) {
    case Shape::round:
      json["diameter_mm"] = length;
      break;
    case Shape::oval:
      json["length_mm"] = length;
      json["width_mm"] = width;
      break;
    case Shape::rectangle:
      json["length_mm"] = length;
      json["width_mm"] = width;
      json["corner_radius_mm"] = document_mm(section.corner);
      break;
    case Shape::half_round:
      json["width_mm"] = length;
      json["depth_mm"] = width;
      break;
  }
  return json;
}

}  // namespace bulbwright::report
