// Prints how well the table compiled in meets the evidence, and the order of all kinds at eight
// places. What stands here was used by the fit; with each place left out: bloom_fit.
//   bloom_figures [--order]
#include <cstring>

#include "figures.hpp"

int main(int argc, char** argv) {
  using namespace bulbwright;
  const Catalogue catalogue = builtin_catalogue();
  const BloomTable table = BloomTable::builtin();
  const auto parameters = [&](const std::string& id) { return table.of(catalogue.at(id)); };
  if (argc > 1 && !std::strcmp(argv[1], "--order")) {
    fit::print_order(parameters, catalogue);
    return 0;
  }
  const fit::Evidence evidence = fit::read_evidence();
  fit::print_figures(fit::judge(evidence, [&](const fit::Observation&,
                                              const std::string& id) { return parameters(id); }),
                     true);
}
