#include "order/cost.hpp"

#include <algorithm>

#include "formula/price.hpp"

namespace qtn {
namespace {

constexpr int kYear = 365;  // days; a price of the same day a year ago still counts, and so does one of a leap year

class Coster {
 public:
  Coster(const Recipe& recipe, const Board& board, int today) : recipe_(recipe), board_(board), today_(today) {}

  Costing run() {
    const std::size_t count = board_.order.makings.size();
    needs_.reserve(count);
    for (Index m = 0; m < count; ++m) {
      const Making& making = board_.order.makings[m];
      needs_.push_back(needs_of(*making.recipe, making.part, m, board_.kitchen));
    }
    all_together();
    if (recipe_.kind == FileKind::menu) dishes();
    else parts();
    for (CostPart& part : out_.parts) {
      for (const CostLine& line : part.lines)
        if (!line.cost.is_lost()) part.cost += line.cost;
      out_.cost += part.cost;
    }
    serves();
    names();
    return std::move(out_);
  }

 private:
  CostLine priced(const Need& need) const {
    CostLine line;
    line.name = need.name, line.measure = need.measure;
    line.optional = need.optional, line.trimmed = need.trimmed, line.into = need.into, line.spoonful = need.spoonful;
    line.price = price_of(board_.kitchen, need.name);
    if (line.price == nullptr) return line;
    const Measure pack = pack_of(*line.price, board_.kitchen->dialect);
    line.cost = cost_of(in_measure(need, pack, &line.through), pack.amount, line.price->money);
    return line;
  }

  // Of each making, with all that it takes of others: what is taken is settled before whoever takes it.
  void all_together() {
    const std::size_t count = needs_.size();
    together_.assign(count, Fraction(0));
    std::vector<std::size_t> open(count, 0);  // makings that it takes and that are not settled yet
    for (std::size_t m = 0; m < count; ++m)
      for (const Taken& one : board_.taken[m]) ++open[one.by];
    std::vector<std::size_t> ready;
    for (std::size_t m = 0; m < count; ++m) {
      for (const Need& need : needs_[m].list)
        if (const Fraction cost = priced(need).cost; !cost.is_lost()) together_[m] += cost;
      if (open[m] == 0) ready.push_back(m);
    }
    for (std::size_t at = 0; at < ready.size(); ++at) {
      const std::size_t m = ready[at];
      for (const Taken& one : board_.taken[m]) {
        together_[one.by] += together_[m] * part_of(m, one);
        if (--open[one.by] == 0) ready.push_back(one.by);
      }
    }
  }

  Fraction part_of(std::size_t making, const Taken& taken) const {
    Fraction all(0);
    for (const Taken& one : board_.taken[making]) all += one.share;
    return taken.share / all;
  }

  void parts() {
    const Recipe& dish = *board_.order.makings.front().recipe;
    std::vector<CostPart> by_part(dish.parts.size());
    for (std::size_t p = 0; p < by_part.size(); ++p) by_part[p].name = dish.parts[p].name;
    const auto place = [&](Index line) -> CostPart& { return by_part[line < dish.lines.size() ? dish.lines[line].part : dish.dish]; };
    for (const Need& need : needs_.front().list) place(need.line).lines.push_back(priced(need));
    for (std::size_t m = board_.order.dishes; m < needs_.size(); ++m)
      for (const Taken& one : board_.taken[m])
        if (one.by == 0) place(one.line).lines.push_back(taken(m, one));
    for (CostPart& part : by_part)
      if (!part.lines.empty()) out_.parts.push_back(std::move(part));
  }

  CostLine taken(std::size_t making, const Taken& one) const {
    const Making& used = board_.order.makings[making];
    CostLine line;
    line.name = used.part != kNone ? used.recipe->parts[used.part].name : used.recipe->title;
    line.taken = true;
    line.cost = together_[making] * part_of(making, one);
    const Recipe& user = *board_.order.makings[one.by].recipe;
    if (one.line >= user.lines.size()) return line;
    const TakeLine& written = user.lines[one.line];
    line.optional = written.optional;
    line.measure = {in_base(written.amount, user.dialect).high, written.amount.dimension(), noun_of(written.amount)};
    for (Index t = written.tails.first; t < written.tails.end(); ++t)
      if (const Tail& tail = user.tails[t]; tail.kind == TailKind::trimmings && tail.amount && !tail.amount->is_lost())
        line.measure.amount *= Fraction(1) + in_base(*tail.amount, user.dialect).high;
    return line;
  }

  void dishes() {
    CostPart table;
    for (std::size_t d = 0; d < board_.order.dishes; ++d) {
      CostLine line;
      line.name = board_.order.makings[d].recipe->title;
      line.taken = true, line.cost = together_[d], line.measure.amount = Fraction::lost();
      table.lines.push_back(std::move(line));
    }
    out_.parts.push_back(std::move(table));
  }

  void serves() {
    if (recipe_.kind == FileKind::menu) {
      out_.serves = board_.serves;
      return;
    }
    const Recipe& whole = *board_.order.makings.front().recipe;
    out_.serves = whole.serves, out_.makes = whole.makes;
  }

  // What is left out, and what is old.
  void names() {
    const auto once = [](auto& list, const auto& one) {
      if (std::find(list.begin(), list.end(), one) == list.end()) list.push_back(one);
    };
    for (std::size_t m = 0; m < needs_.size(); ++m) {
      const std::string in = m < board_.order.dishes && recipe_.kind != FileKind::menu ? "" : " (" + std::string(board_.order.makings[m].recipe->title) + ")";
      for (const Need& need : needs_[m].list) {
        out_.untrimmed = out_.untrimmed || !need.trimmed;
        const CostLine line = priced(need);
        if (line.cost.is_lost()) {
          once(out_.no_price, need.name + in);
        } else if (!line.price->day) {
          once(out_.undated, line.price);
        } else if (today_ != 0 && *line.price->day + kYear < today_) {
          once(out_.stale, line.price);
        }
      }
      for (const Unmeasured& one : needs_[m].also) once(out_.unmeasured, one.name + in);
    }
  }

  const Recipe& recipe_;
  const Board& board_;
  int today_;
  std::vector<Needs> needs_;         // by making
  std::vector<Fraction> together_;   // cost of each making
  Costing out_;
};

}  // namespace

Costing costing_of(const Recipe& recipe, const Board& board, int today) { return Coster(recipe, board, today).run(); }

}  // namespace qtn
