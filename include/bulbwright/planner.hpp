#pragma once

#include <memory>
#include <string>
#include <string_view>

#include "bulbwright/effort.hpp"

namespace bulbwright::library {

/// From a pot file to a plan. Needs no files of its own: catalogue, places and tables are compiled
/// in. The only file it may read is a temperature record that the pot file names.
///
///   bulbwright::library::Planner planner;
///   const auto plan = planner.plan(R"({ "pot": { "top": "380 mm" }, "place": { "zone": "9b" },
///                                       "season": 2026, "layers": [ { "taxon": "muscari" } ] })");
///   std::cout << plan.json;
///
/// One Planner serves one thread at a time; several may live side by side. It remembers packings,
/// so that a second pot of the same size costs less; answers do not depend on what came before.
class Planner {
 public:
  Planner();
  /// Own tables in `data_folder` (taxa.csv, places.csv ... as of --data) are laid over the built-in
  /// ones. @throws BadInput where they cannot be read or do not hold together.
  explicit Planner(const std::string& data_folder);
  ~Planner();
  Planner(Planner&&) noexcept;
  Planner& operator=(Planner&&) noexcept;

  struct Answer {
    /// False where the plan cannot be carried out; the document says why and what is known.
    bool can_be_carried_out = false;
    /// "bulbwright.plan/1" as docs/schema/plan.schema.json describes it: UTF-8, final newline.
    std::string json;
  };

  /// `pot_file`: JSON text of at most a megabyte, as docs/pot-file.md describes it. `name` is its
  /// name in messages; a relative path of a temperature record starts at the folder of `name`.
  /// @throws BadInput for text that is no pot file.
  Answer plan(std::string_view pot_file, const std::string& name = "pot file",
              Effort effort = Effort::quick);

  struct SheetStyle {
    bool inches = false;
    bool ascii = false;  ///< no character beyond ASCII but those of names given
    int width = 80;      ///< columns, 40 to 99
  };
  /// The same plan as the text that the command line prints. @throws BadInput as plan().
  std::string sheet(std::string_view pot_file, const SheetStyle& style,
                    const std::string& name = "pot file", Effort effort = Effort::quick);

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace bulbwright::library
