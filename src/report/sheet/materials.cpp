#include <fmt/core.h>

#include "report/sheet/parts.hpp"
#include "report/sheet/words.hpp"
#include "report/text_units.hpp"

namespace bulbwright::report {
namespace {

std::string lifting_text(const PlanMaterials& materials, const TextStyle& style) {
  if (materials.filled_weight <= Kilograms{0.0}) return "";
  std::string text = fmt::format("Weighs {}", weight_text(materials.filled_weight, style));
  if (materials.filled_weight_high > materials.filled_weight) {
    text += fmt::format(
        " ({})", weights_text(materials.filled_weight_low, materials.filled_weight_high, style));
  }
  text += " filled and watered";
  if (materials.lifting == LiftVerdict::one_person) {
    text += fmt::format(": one person may lift {}", weight_text(materials.lift_one, style));
  } else if (materials.lifting == LiftVerdict::two_people) {
    text += fmt::format(": two people may lift {}", weight_text(materials.lift_two, style));
  } else {
    text += ": do not lift it";
  }
  return text + ".";
}

}  // namespace

Lines material_lines(const Plan& plan, const SheetLayout& layout) {
  const TextStyle& style = layout.style;
  const PlanMaterials& materials = plan.materials;
  std::string text;
  const auto say = [&](const std::string& part) { text += (text.empty() ? "" : " ") + part; };
  if (materials.mix_loose > Litres{0.0}) {
    std::string mix = volume_text(materials.mix_loose, style) + ", loose";
    if (materials.perlite > Litres{0.0}) {
      mix += fmt::format(", {} of it perlite", volume_text(materials.perlite, style));
    }
    say(mix + ".");
  }
  if (materials.mesh_disc > Millimetres{0.0}) {
    const std::string length = length_text(materials.mesh_disc, style);
    const std::string width = length_text(materials.mesh_width, style);
    std::string mesh = length == width ? fmt::format("Wire mesh {} across", length)
                                       : fmt::format("Wire mesh {} by {}", length, width);
    if (materials.mesh_opening > Millimetres{0.0}) {
      mesh += fmt::format(", holes {} at most", length_text(materials.mesh_opening, style));
    }
    if (materials.pins > 0) mesh += "; " + counted(materials.pins, "pin", "pins");
    say(mesh + ".");
  }
  if (materials.mesh_beneath > Millimetres{0.0}) {
    say(fmt::format("Wire mesh for the floor: {}, holes {} at most.",
                    length_text(materials.mesh_beneath, style) +
                        (materials.mesh_beneath_width == materials.mesh_beneath
                             ? " across"
                             : " by " + length_text(materials.mesh_beneath_width, style)),
                    length_text(materials.mesh_beneath_opening, style)));
  }
  if (materials.labels > 0) say(counted(materials.labels, "label", "labels") + ".");
  if (const std::string lifting = lifting_text(materials, style); !lifting.empty()) say(lifting);
  return labelled("Mix", text, layout);
}

}  // namespace bulbwright::report
