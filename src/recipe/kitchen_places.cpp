// Ovens, hobs, fridges and tins of the kitchen: what takes room and heat.
#include <algorithm>

#include "recipe/kitchen_reader.hpp"
#include "recipe/phases.hpp"
#include "recipe/tins.hpp"
#include "words/lexicon.hpp"

namespace qtn {
namespace {

bool any_of(std::string_view word, std::initializer_list<std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

}  // namespace

OvenKind oven_named(std::string_view word) {
  if (word == "conventional") return OvenKind::conventional;
  if (word == "fan" || word == "convection") return OvenKind::fan;
  return word == "gas" ? OvenKind::gas : OvenKind::unstated;
}

void KitchenReader::oven(const Cell& cell, HouseOven& mine) {
  constexpr Code kCode = Code::kitchen_oven_fact;
  if (const OvenKind kind = oven_named(cell.word); kind != OvenKind::unstated) {
    said("kind", cell.span);
    mine.kind = kind;
    return;
  }
  if (of_these(cell, &mine.count)) return;
  if (cell.word.starts_with("heats in ")) {
    said("heats", cell.span);
    if (const auto time = figure(kCode, Field::ovens, {cell.span.begin + 9, cell.span.end}, {Dimension::duration}))
      mine.heats_in = in_base(*time, kitchen_.dialect).low;
    return;
  }
  if (cell.word.starts_with("runs ")) {
    said("runs", cell.span);
    const std::size_t last = cell.word.rfind(' ');
    if (!any_of(std::string_view(cell.word).substr(last + 1), {"hot", "cool", "cold"}) || last <= 5) return wrong(kCode, Field::ovens, cell.span);
    figure(kCode, Field::ovens, {cell.span.begin + 5, cell.span.begin + static_cast<std::uint32_t>(last)}, {Dimension::temperature, Dimension::difference});
    return;
  }
  const auto read = counted(cell.span);
  if (!read || !any_of(read->rest, {"shelf", "shelves"})) return wrong(kCode, Field::ovens, cell.span);
  said("shelves", cell.span);
  if (read->read.damaged) return;
  const Fraction& shelves = read->read.amount.low;
  if (!shelves.is_whole() || shelves.sign() <= 0) return wrong(kCode, Field::ovens, cell.span);
  mine.shelves = small_number(shelves);
}

void KitchenReader::hob(const Cell& cell, HouseHob& mine) {
  constexpr Code kCode = Code::kitchen_hob_fact;
  if (any_of(cell.word, {"gas", "electric", "ceramic", "induction"})) return said("kind", cell.span);
  if (of_these(cell, &mine.count)) return;
  const auto read = counted(cell.span);
  if (!read || !any_of(read->rest, {"ring", "rings", "burner", "burners", "plate", "plates"})) return wrong(kCode, Field::hobs, cell.span);
  said("rings", cell.span);
  if (read->read.damaged) return;
  const Fraction& rings = read->read.amount.low;
  if (!rings.is_whole() || rings.sign() <= 0) return wrong(kCode, Field::hobs, cell.span);
  mine.rings = small_number(rings);
}

void KitchenReader::fridge(const Cell& cell, HouseFridge& mine) {
  constexpr Code kCode = Code::kitchen_fridge_fact;
  if (of_these(cell)) return;
  const auto read = counted(cell.span);
  if (!read) return wrong(kCode, Field::fridges, cell.span);
  if (read->read.damaged) return;
  const Quantity& amount = read->read.amount;
  if (any_of(read->rest, {"shelf", "shelves", "drawer", "drawers"})) {
    said("shelves", cell.span);
    if (!amount.low.is_whole() || amount.low.sign() <= 0) wrong(kCode, Field::fridges, cell.span);
    return;
  }
  if (!read->rest.empty()) return wrong(kCode, Field::fridges, cell.span);
  if (!expect_dimension(in_, amount, read->read.span, {Dimension::temperature, Dimension::volume}, "`fridges:` wants")) return;
  said(name_of(amount.dimension()), cell.span);
  if (amount.dimension() == Dimension::temperature) mine.temperature = amount;
}

// A book's bare temperatures are meant for the house's oven, where all of its ovens are of one kind.
void KitchenReader::choose_oven() {
  bool any = false;
  for (const HouseOven& oven : kitchen_.ovens) {
    if (oven.kind == OvenKind::unstated) continue;
    if (any && oven.kind != kitchen_.oven) {
      kitchen_.oven = OvenKind::unstated;
      return;
    }
    kitchen_.oven = oven.kind, any = true;
  }
}

void KitchenReader::tin(Span name, const std::vector<Cell>& cells) {
  std::size_t last = cells.size();
  while (last > 0 && of_these(cells[last - 1])) --last;
  if (last == 0) {
    if (!cells.empty()) wrong(Code::kitchen_tin_fact, Field::tins, cells.front().span);
    return;
  }
  const Span size{cells.front().span.begin, cells[last - 1].span.end};
  if (!parse_value(Field::tin, in_.source.text(), size, scratch_)) return wrong(Code::kitchen_tin_fact, Field::tins, size);
  Report unsaid;  // one form for whatever is wrong with a fact
  Reading in{in_.source, unsaid, in_.dialect, {}};
  std::optional<Tin> tin = read_tin(in, View(scratch_, 0));
  if (!tin) return wrong(Code::kitchen_tin_fact, Field::tins, size);
  tin->span = size;
  kitchen_.tins.push_back({in_.slice(name), *tin});
}

}  // namespace qtn
