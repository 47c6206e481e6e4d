// The order of a card's blocks.
#include "card/make.hpp"

#include <algorithm>

#include "card/maker.hpp"

namespace qtn {

Maker::Maker(const Adapted& adapted)
    : adapted_(adapted), recipe_(*adapted.recipe), out_(card_), prose_(out_), words_(words_of(recipe_, adapted.words)), wording_(wants_wording(adapted)) {
  card_.text.reserve(recipe_.text.size() * 2 + 256);
  card_.runs.reserve(recipe_.pieces.size() * 3 + recipe_.lines.size() * 4 + 32);
  card_.rows.reserve(recipe_.lines.size());
  card_.steps.reserve(recipe_.steps.size());
  card_.exacts.reserve(recipe_.lines.size() + recipe_.terms.size());
}

Range32 Maker::plain(std::string_view text) {
  out_.begin();
  out_.put(text);
  return out_.end();
}

Range32 Maker::prose(std::string_view text) {
  out_.begin();
  prose_.write(text);
  return out_.end();
}

// A name of the list among other text.
std::string_view Maker::listed(std::string_view name) {
  if (!wording_) return name;
  return listed_ = name_in(name, adapted_);
}

void Maker::part(const Part& part) {
  Section section;
  const auto index = static_cast<std::size_t>(&part - recipe_.parts.data());
  const bool alone = recipe_.parts.size() == 1 && part.unnamed;
  if (!alone) section.title = plain(part.name);
  section.facts.first = static_cast<std::uint32_t>(card_.facts.size());
  if (!part.unnamed) {
    makes_fact(part.makes, adapted_.part_makes[index], adapted_.part_makes_each[index]);
    if (part.tin) tin_fact(*part.tin);
    part_time_fact(static_cast<Index>(index));
    keeps_fact(part.keeps);
    ready_fact(part.ready_after);
    batch_fact(part.batch, adapted_.part_batch[index], adapted_.part_rounds[index]);
  }
  section.facts.count = static_cast<std::uint32_t>(card_.facts.size()) - section.facts.first;
  section.rows.first = static_cast<std::uint32_t>(card_.rows.size());
  rows(part);
  section.rows.count = static_cast<std::uint32_t>(card_.rows.size()) - section.rows.first;
  section.steps.first = static_cast<std::uint32_t>(card_.steps.size());
  steps(part.steps);
  section.steps.count = static_cast<std::uint32_t>(card_.steps.size()) - section.steps.first;
  card_.parts.push_back(section);
}

void Maker::after() {
  for (const AfterBlock& block : recipe_.after) {
    Section section;
    section.title = plain(words_[caption_of(block.field)]);
    section.kind = block.field == Field::to_keep     ? AfterKind::keep
                   : block.field == Field::to_freeze ? AfterKind::freeze
                   : block.field == Field::to_reheat ? AfterKind::reheat
                                                     : AfterKind::finish;
    section.steps.first = static_cast<std::uint32_t>(card_.steps.size());
    steps(block.steps);
    section.steps.count = static_cast<std::uint32_t>(card_.steps.size()) - section.steps.first;
    card_.after.push_back(section);
  }
}

void Maker::change(const Change& change, const std::pair<Shown, Shown>& amounts) {
  if (!change.part.empty()) out_.put(change.part), out_.put(": ");
  out_.collapsed(change.name, Role::name);
  out_.put(" ");
  change.before ? out_.add(amounts.first.text, Role::amount) : out_.put(words_[Caption::none]);
  out_.put(" → ");
  change.after ? out_.add(amounts.second.text, Role::amount) : out_.put(words_[Caption::none]);
  if (!change.replacement.empty()) out_.put(" "), out_.put(change.replacement);
  const ChangeShare& share = change.share;
  if (share.of == ShareOf::nothing) return;
  out_.put(" (");
  out_.put(shares_in_words(share));
  out_.put(words_[share.of == ShareOf::meat ? Caption::of_the_meat : share.of == ShareOf::flour ? Caption::of_the_flour : Caption::of_the_whole]);
  out_.put(")");
}

// Newest first.
void Maker::trials() {
  std::vector<std::size_t> first;  // of adapted_.changes, by log
  std::size_t at = 0;
  for (const Log& log : recipe_.trials) {
    first.push_back(at);
    at += log.changes.size();
  }
  for (const Index i : newest_first(recipe_)) {
    const Log* const log = &recipe_.trials[i];
    TrialLine line;
    line.date = plain(log->name);
    out_.begin();
    std::size_t index = first[i];
    for (const Change& one : log->changes) {
      if (!out_.empty()) out_.put("; ");
      change(one, adapted_.changes[index++]);
    }
    if (log->changes.empty()) out_.put(words_[Caption::no_change]);
    for (const Span note : log->notes) {
      out_.put(". ");
      prose_.write(recipe_.slice(note));
    }
    line.runs = out_.end();
    card_.trials.push_back(line);
  }
}

// A note is prose and is not worked out anew: "water in all 680 g" is so at the size of the page alone.
bool Maker::notes_tell_amounts() const {
  if (recipe_.factor == Fraction(1)) return false;
  const auto tells = [&](const TextFact& fact) {
    const std::string_view text = recipe_.slice(fact.span);
    return fact.field == Field::note && text.find_first_of("0123456789") != std::string_view::npos;
  };
  const auto any = [&](const std::vector<TextFact>& facts) { return std::any_of(facts.begin(), facts.end(), tells); };
  return any(recipe_.facts) || std::any_of(recipe_.parts.begin(), recipe_.parts.end(), [&](const Part& part) { return any(part.notes); });
}

// The method is printed as it is today: what it takes that an earlier day did not have is said, and struck there.
void Maker::came_later() {
  out_.begin();
  for (Index i = 0; i < recipe_.lines.size(); ++i) {
    const TakeLine& line = recipe_.lines[i];
    const auto takes = [&](const Mention& mention) { return mention.target.kind == TargetKind::line && mention.target.index == i; };
    if (!recipe_.as_of || !line.struck || std::none_of(recipe_.mentions.begin(), recipe_.mentions.end(), takes)) continue;
    out_.put(out_.empty() ? words_[Caption::not_yet] : std::string_view(", "));
    out_.collapsed(line.name, Role::name);
  }
  if (out_.empty()) return;
  out_.put(words_[Caption::method_of_today]);
  card_.remarks.push_back({Remark::Kind::note, out_.end()});
}

void Maker::remarks() {
  for (const TextFact& fact : recipe_.facts) {
    if (fact.field == Field::caution) card_.remarks.push_back({Remark::Kind::caution, prose(recipe_.slice(fact.span))});
    if (fact.field == Field::note) card_.remarks.push_back({Remark::Kind::note, prose(recipe_.slice(fact.span))});
  }
  dish_cautions();
  came_later();
  for (const Part& part : recipe_.parts)
    for (const TextFact& note : part.notes) {
      out_.begin();  // away from its part, a note says what it is of
      if (recipe_.parts.size() > 1 && !part.name.empty()) out_.put(part.name), out_.put(": ");
      prose_.write(recipe_.slice(note.span));
      card_.remarks.push_back({Remark::Kind::note, out_.end()});
    }
  const auto& lacks = adapted_.lacks.list();
  for (std::size_t i = 0; i < lacks.size(); ++i) {
    bool said = false;  // two lines of one thing lack the same
    for (std::size_t j = 0; j < i && !said; ++j) said = lacks[j].message == lacks[i].message;
    if (said) continue;
    const bool lacking = lacks[i].code == Code::no_density || lacks[i].code == Code::weight_not_known;
    card_.remarks.push_back({lacking ? Remark::Kind::lacking : Remark::Kind::watch, plain(lacks[i].message)});
  }
}

Card Maker::run() {
  card_.language = words_.language;
  card_.title = prose(recipe_.title);
  card_.list_heading = plain(words_[Caption::you_need]);
  card_.method_heading = plain(words_[Caption::method]);
  if (!recipe_.after.empty()) card_.after_heading = plain(words_[Caption::after]);
  card_.trials_heading = plain(words_[Caption::tastings]);
  card_.notes_heading = plain(words_[notes_tell_amounts() ? Caption::notes_as_written : Caption::notes]);
  card_.second = adapted_.beside.has_value();
  const auto column = [&](System system) {
    return plain(words_[system == System::metric     ? Caption::metric
                        : system == System::imperial ? Caption::imperial
                        : system == System::american ? Caption::american
                                                     : Caption::as_written]);
  };
  card_.first_column = column(adapted_.units);
  if (adapted_.beside) card_.second_column = column(*adapted_.beside);
  cautions_ = cautions_of(recipe_);
  edition();
  head();
  for (const Part& one : recipe_.parts) part(one);
  after();
  trials();
  remarks();
  if (wording_) reword(card_, adapted_, checked_);
  clean(card_);
  return std::move(card_);
}

Card make_card(const Adapted& adapted) { return Maker(adapted).run(); }

void add_note(Card& card, std::string_view text) {
  const auto run = static_cast<std::uint32_t>(card.runs.size());
  card.runs.push_back({static_cast<std::uint32_t>(card.text.size()), static_cast<std::uint32_t>(text.size()), Role::text, 0, 0, 0});
  card.text += text;
  card.remarks.push_back({Remark::Kind::note, {run, 1}});
}

void add_taken(Card& card, std::string_view portion) { add_note(card, "Over and above this, the table needs " + std::string(portion) + "."); }

}  // namespace qtn
