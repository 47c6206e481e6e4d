// A clash of times, told: what takes so long, what leaves no more, and by how much they miss.
#include <algorithm>

#include "base/source.hpp"
#include "day/check.hpp"
#include "day/say.hpp"

namespace qtn {
namespace {

std::string joined(const std::vector<std::string>& items) {
  std::string out;
  for (std::size_t i = 0; i < items.size(); ++i)
    out += (i == 0 ? "" : i + 1 == items.size() ? " and " : ", ") + items[i];
  return out;
}

class Teller {
 public:
  Teller(const Clock& clock, const plan::Clash& clash, const Source* source) : clock_(clock), clash_(clash), source_(source) {}

  void tell(Report& report) {
    for (const Number label : clash_.labels) this->label(label);
    std::string sentence = joined(takes_);
    if (!leaves_.empty()) sentence += (takes_.empty() ? "" : ", but ") + joined(leaves_);
    if (!chances_.empty()) {
      const std::string unsure = "nobody knows beforehand how long " + joined(chances_) + (chances_.size() == 1 ? " takes" : " take");
      sentence += sentence.empty() ? unsure : " (and " + unsure + ")";
    }
    sentence += ": " + say_length(clash_.excess, clock_.per_minute) + " too many.";
    if (sentence[0] >= 'a' && sentence[0] <= 'z') sentence[0] = static_cast<char>(sentence[0] - 'a' + 'A');
    const Span place = spans_.empty() ? Span{} : spans_.back();
    Diagnostic& told = report.add(Code::times_clash, place, sentence);
    for (std::size_t i = 0; i + 1 < spans_.size(); ++i) told.also(spans_[i], "this takes part in it");
    told.expect("times that fit into one another: change one of these");
  }

 private:
  // Is it the longest of a length that clashes, rather than its least?
  bool by_longest(Number label) const {
    plan::Network loose = clock_.network;
    std::vector<char> kept(loose.labels, 0);
    for (const Number one : clash_.labels) kept[one] = 1;
    for (plan::Activity& activity : loose.activities) {
      if (activity.label != label) continue;
      activity.length.most = plan::kNever, activity.length.chance = false;
    }
    std::erase_if(loose.rules, [&](const plan::Rule& rule) { return rule.label == label && rule.least < 0; });
    return plan::holds(plan::place(loose, kept));
  }

  bool is_chance(Number label) const {
    return std::any_of(clock_.network.activities.begin(), clock_.network.activities.end(),
                       [&](const plan::Activity& one) { return one.label == label && one.length.chance; });
  }

  Ticks longest_of(Number label) const {
    Ticks most = plan::kNever;
    for (const plan::Activity& activity : clock_.network.activities)
      if (activity.label == label) most = std::min(most, activity.length.most);
    for (const plan::Rule& rule : clock_.network.rules)
      if (rule.label == label && rule.least < 0) most = std::min(most, -rule.least);
    return most;
  }

  // As many of them as there are, one after another: so many turns, so many batches.
  Ticks least_of(Number label) const {
    Ticks least = 0;
    for (const plan::Activity& activity : clock_.network.activities)
      if (activity.label == label) least = std::max(least, activity.length.chance ? activity.length.most : activity.length.least);
    for (const plan::Rule& rule : clock_.network.rules)
      if (rule.label == label) least = std::max(least, rule.least);
    return least;
  }

  std::string part_of(const Said& said) const {
    const Recipe& recipe = *clock_.makings[said.making].recipe;
    if (said.part != kNone && said.part < recipe.parts.size() && !recipe.parts[said.part].name.empty())
      return "the " + std::string(recipe.parts[said.part].name);
    return recipe.title.empty() ? "the dish" : std::string(recipe.title);
  }

  void label(Number index) {
    const Said& said = clock_.said[index];
    const Recipe& recipe = *clock_.makings[said.making].recipe;
    const bool here = recipe.source == source_;
    if (here) spans_.push_back(said.span);
    const std::string words = "`" + words_of(recipe, said.span) + "`" + (here ? "" : " (" + std::string(recipe.title) + ")");
    const auto length = [&](Ticks ticks) { return say_length(ticks, clock_.per_minute); };
    switch (said.what) {
      case Said::What::within: leaves_.push_back(words + " leaves no more than " + length(longest_of(index))); return;
      case Said::What::keeps: leaves_.push_back(words + " keeps it no longer than " + length(longest_of(index))); return;
      case Said::What::ready: takes_.push_back(part_of(said) + " is ready only after " + length(least_of(index))); return;
      case Said::What::every:
      case Said::What::length: break;
    }
    if (is_chance(index)) chances_.push_back(words);
    else if (by_longest(index)) leaves_.push_back(words + " may take no longer than " + length(longest_of(index)));
    else takes_.push_back(words + " takes at least " + length(least_of(index)));
  }

  const Clock& clock_;
  const plan::Clash& clash_;
  const Source* source_;
  std::vector<std::string> takes_, leaves_, chances_;
  std::vector<Span> spans_;
};

}  // namespace

void tell_clash(const Clock& clock, const plan::Clash& clash, const Source* source, Report& report) {
  Teller(clock, clash, source).tell(report);
}

}  // namespace qtn
