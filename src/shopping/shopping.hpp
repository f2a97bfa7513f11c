#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/enum_words.hpp"
#include "base/notice.hpp"
#include "base/quantity.hpp"
#include "shopping/pack_sizes.hpp"
#include "shopping/spares.hpp"

namespace bulbwright {

/// Bulbs of one kind in one layer of one pot.
struct BulbNeed {
  std::string taxon;  ///< id
  std::string genus;
  std::string name;   ///< for people
  std::string grade;  ///< circumference to ask for, cm: "12", that the plan packs
  std::string label;  ///< the grower's own name for the lot, may be empty
  int layer = 1;      ///< from the bottom, 1 first
  int count = 0;
  bool own = false;  ///< the grower has them already
};

/// What one pot needs.
struct PotNeeds {
  std::string pot;               ///< its name, may be empty
  std::string file;              ///< where it was read
  bool ok = true;                ///< its plan can be carried out
  std::optional<Notice> reason;  ///< why not
  int layers = 0;
  std::vector<BulbNeed> bulbs;  ///< bottom layer first
  Litres mix_loose;             ///< to buy, before settling, perlite included
  Litres mix;                   ///< the same without perlite
  Litres perlite;
  Millimetres mesh;          ///< length of the piece, 0: none
  Millimetres mesh_width;    ///< as mesh for a round pot
  Millimetres mesh_opening;  ///< at most
  Millimetres mesh_beneath, mesh_beneath_width, mesh_beneath_opening;  ///< likewise, on the floor
  int pins = 0;
  int labels = 0;
};

/// A line of the shopping list. Bulbs and pieces are whole, litres are rounded to 0.1.
struct ShoppingItem {
  ItemKind kind = ItemKind::bulb;
  std::string item;                 ///< stable name: "tulip-triumph 12 cm", "potting mix"
  std::string unit;                 ///< "bulb", "l" or "piece"
  double need = 0.0;                ///< what the pots take
  int own = 0;                      ///< of which the grower has them
  int spares = 0;                   ///< for bulbs that are lost; on what is to be bought
  int buy = 0;                      ///< whole units: need less own, plus spares
  std::optional<double> loss_rate;  ///< bulbs only
  std::string loss_origin;          ///< "flat rate"; empty where there is no loss rate
  std::vector<Pack> packs;          ///< covers `buy`; empty where it is not sold in packs

  std::string taxon, name, grade, label;       ///< bulbs only
  Millimetres mesh, mesh_width, mesh_opening;  ///< mesh only: length, width, opening
  struct Share {
    std::size_t pot = 0;  ///< index into ShoppingList::pots
    int layer = 0;        ///< 0: the whole pot
    double need = 0.0;
    bool own = false;
  };
  std::vector<Share> shares;  ///< what each pot and layer takes of it, in the order of the pots
};

struct ShoppingList {
  double flat_rate = 0.0;
  std::vector<PotNeeds> pots;
  std::vector<ShoppingItem> items;  ///< bulbs by taxon id, grade and label, then the rest by kind
};

/// One list for any number of pots: bulbs summed per taxon, grade and label, spares on each sum,
/// then mix, perlite, mesh (per size and opening), pins and labels. Own bulbs are not bought and
/// get no spares. Pots that cannot be carried out are listed with what is known of them.
ShoppingList shopping_list(std::vector<PotNeeds> pots, std::span<const PackSizes> packs,
                           double rate = flat_loss_rate);

}  // namespace bulbwright
