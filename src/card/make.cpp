// The order of a card's blocks.
#include "card/make.hpp"

#include "card/maker.hpp"

namespace qtn {

Maker::Maker(const Adapted& adapted, Card& card)
    : adapted_(adapted),
      recipe_(*adapted.recipe),
      card_(card),
      words_(words_of(*adapted.recipe)),
      scaled_(!(adapted.recipe->factor == Fraction(1))),
      out_(card),
      prose_(out_) {}

void Maker::make() {
  reserve();
  card_.language = words_.language;
  title();
  edition();
  head_facts();
  card_.list_heading = words(Label::you_need, Role::name);
  card_.method_heading = words(Label::method, Role::name);
  columns();
  parts();
  after_blocks();
  remarks();
  trials();
  clean(card_);
}

void Maker::reserve() {
  const Recipe& r = recipe_;
  card_.text.reserve(r.text.size() + r.text.size() / 2 + 256);
  card_.runs.reserve(32 + 4 * r.lines.size() + 2 * r.pieces.size() + 3 * r.terms.size() + 2 * r.mentions.size());
  card_.exacts.reserve(8 + r.lines.size() + r.terms.size());
  card_.rows.reserve(r.lines.size());
  card_.steps.reserve(r.steps.size() + 2);
  card_.facts.reserve(12 + r.parts.size());
  card_.parts.reserve(r.parts.size());
}

Range32 Maker::words(Label label, Role role) {
  out_.begin();
  out_.add(words_[label], role);
  return out_.end();
}

Range32 Maker::prose(std::string_view text) {
  out_.begin();
  prose_.write(text);
  return out_.end();
}

void Maker::columns() {
  if (!adapted_.beside) return;
  const auto head = [&](System system) {
    switch (system) {
      case System::metric: return words(Label::metric);
      case System::imperial: return words(Label::imperial);
      case System::american: return words(Label::american);
      case System::written: break;
    }
    return words(Label::as_written);
  };
  card_.second = true;
  card_.first_column = head(adapted_.units);
  card_.second_column = head(*adapted_.beside);
}

void Maker::parts() {
  const bool plain = recipe_.parts.size() == 1 && recipe_.parts[0].unnamed;
  for (Index i = 0; i < recipe_.parts.size(); ++i) {
    const Part& part = recipe_.parts[i];
    Section section;
    if (!plain) section.title = prose(part.name);
    section.facts = part_facts(part);
    section.rows = rows(i);
    section.steps = steps(part.steps, &part.notes);
    card_.parts.push_back(section);
  }
}

void Maker::after_blocks() {
  const auto title_of = [](Field field) {
    switch (field) {
      case Field::to_freeze: return Label::to_freeze;
      case Field::to_reheat: return Label::to_reheat;
      case Field::to_finish: return Label::to_finish;
      default: return Label::to_keep;
    }
  };
  for (const AfterBlock& block : recipe_.after) {
    Section section;
    section.title = words(title_of(block.field), Role::name);
    section.steps = steps(block.steps, nullptr);
    card_.after.push_back(section);
  }
}

Card make_card(const Adapted& adapted) {
  Card card;
  if (adapted.recipe != nullptr) Maker(adapted, card).make();
  return card;
}

}  // namespace qtn
