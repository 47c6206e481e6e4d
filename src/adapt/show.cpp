// Everything a card shows of a recipe's amounts, in one system or two, rounded once.
#include <algorithm>

#include "adapt/pace.hpp"
#include "adapt/shower.hpp"
#include "adapt/ties.hpp"
#include "adapt/watch.hpp"
#include "adapt/works.hpp"

namespace qtn {
namespace {

const TakeLine& standing(const Recipe& recipe, const TakeLine& line) {
  return line.chosen != kNone ? recipe.lines[line.chosen] : line;
}

bool is_heat(const Term& term) {
  return !term.amount.is_lost() && term.amount.dimension() == Dimension::temperature;
}

// A place named in the clause rules over its verb.
bool is_oven(const Clause& clause, const Term& term) {
  if (term.role != TermRole::temperature) return false;
  if (clause.place != Takes::nothing) return clause.place == Takes::oven;
  const Verb& verb = clause.house_verb != nullptr ? *clause.house_verb : qtn::verb(clause.verb);
  return (verb.takes & static_cast<std::uint8_t>(Takes::oven)) != 0;
}

class Showing {
 public:
  Showing(const Recipe& recipe, const Reader& reader, Report* lacks)
      : recipe_(recipe), shower_(recipe, reader, lacks), unscaled_(recipe.factor == Fraction(1)) {}

  void lines(std::vector<Shown>& out) {
    out.reserve(recipe_.lines.size());
    const bool ratios = std::any_of(recipe_.lines.begin(), recipe_.lines.end(), is_ratio);
    roundings_.assign(ratios || !unscaled_ ? recipe_.lines.size() : 0, std::nullopt);
    for (std::size_t i = 0; i < recipe_.lines.size(); ++i) {
      out.push_back(shower_.line(standing(recipe_, recipe_.lines[i])));
      if (!roundings_.empty() && out.back().changed) roundings_[i] = shower_.last();
    }
    if (!ratios) return;
    for (const Part& part : recipe_.parts) tie(recipe_, part, roundings_, out);
  }

  void tails(std::vector<Shown>& out) {
    out.resize(recipe_.tails.size());
    for (const TakeLine& line : recipe_.lines)
      for (Index t = line.tails.first; t < line.tails.end(); ++t)
        if (recipe_.tails[t].amount) out[t] = tail(line, recipe_.tails[t]);
  }

  void terms(std::vector<Shown>& out) {
    out.resize(recipe_.terms.size());
    for (const Clause& clause : recipe_.clauses) {
      for (Index t = clause.terms.first; t < clause.terms.end(); ++t) {
        out[t] = term(clause, t);
        if (recipe_.terms[t].role == TermRole::equivalent && t > clause.terms.first) swap_restated(t, out);
      }
    }
  }

  void mentions(std::vector<Shown>& out) {
    out.resize(recipe_.mentions.size());
    for (std::size_t i = 0; i < recipe_.mentions.size(); ++i) {
      const Mention& mention = recipe_.mentions[i];
      if (!mention.takes || mention.whole || mention.target.kind != TargetKind::line) continue;
      if (mention.taking == Taking::amount || mention.taking == Taking::named) continue;  // the page says it itself
      const TakeLine& line = standing(recipe_, recipe_.lines[mention.target.index]);
      if (line.amount.is_lost() || !line.measured()) continue;
      Quantity part = line.amount;
      part.low *= mention.part_low, part.high *= mention.part_high;
      if (mention.about && part.manner == Manner::plain) part.manner = Manner::about;
      out[i] = shower_.part_of(line, part);
    }
  }

  // A log tells of the recipe as written, in the measures of the card.
  void changes(std::vector<std::pair<Shown, Shown>>& out) {
    for (const Log& log : recipe_.trials)
      for (const Change& change : log.changes) {
        const bool line = change.target.kind == TargetKind::line && change.target.index < recipe_.lines.size();
        const TakeLine* const of = line ? &recipe_.lines[change.target.index] : nullptr;
        Shown before = logged(of, change.before, change.before_span);
        Shown after = logged(of, change.after, change.after_span);
        if (before.text == after.text && change.before && change.after) {  // too near to tell apart when converted
          before = as_written(recipe_, change.before_span, *change.before);
          after = as_written(recipe_, change.after_span, *change.after);
        }
        out.emplace_back(std::move(before), std::move(after));
      }
  }

  Shower& shower() { return shower_; }

  // Jars of 330 g: a size that is the same for any number of them.
  Shown made_each(const Made& made) {
    if (!made.each) return {};
    if (shower_.stays(made.each->unit)) return from_text(write_plain(*made.each), *made.each);
    return shower_.amount(nullptr, *made.each, {}, Origin::worked_out);
  }

  // Counts of what is made and of who is fed round down, so that nobody goes short.
  Shown made(const Quantity& amount, Span span) {
    if (unscaled_ && (amount.dimension() == Dimension::count || shower_.stays(amount.unit)))
      return as_written(recipe_, span, amount);
    if (amount.dimension() != Dimension::count)
      return shower_.amount(nullptr, amount, span, unscaled_ ? Origin::page : Origin::worked_out);
    const auto down = [](const Fraction& count) {
      if (count < Fraction(1)) return write(round_on(Ladder::things, count, Fraction::of(1, 20), Dialect::british));
      return write_number(Fraction::of(count.floor(), 1), true, false);
    };
    std::string text = down(amount.low);
    if (const std::string high = down(amount.high); high != text) text += " to " + high;
    return from_text(std::move(text), amount);
  }

  const Roundings& roundings() const { return roundings_; }

 private:
  Shown logged(const TakeLine* line, const std::optional<Quantity>& amount, Span span) {
    if (!amount || amount->is_lost()) return {};
    const Dimension dimension = amount->dimension();
    if (dimension != Dimension::mass && dimension != Dimension::volume) return as_written(recipe_, span, *amount);
    return shower_.amount(line, *amount, span, Origin::page);
  }

  Shown tail(const TakeLine& line, const Tail& tail) {
    const bool grows =
        tail.kind == TailKind::from || tail.kind == TailKind::taking_up || tail.kind == TailKind::start_with;
    const bool page = unscaled_ || !grows || pace_of(recipe_, line) == Pace::still;
    if (tail.kind == TailKind::preparation) {
      if (tail.amount->dimension() == Dimension::temperature) return shower_.heat({TermRole::temperature, *tail.amount, tail.amount_span}, false, false);
      return shower_.amount(nullptr, *tail.amount, tail.amount_span, Origin::page);
    }
    if (!grows && tail.kind != TailKind::each) return as_written(recipe_, tail.amount_span, *tail.amount);
    // From 2 lemons: those are no pieces of the line, and what one of it weighs says nothing of them.
    const TakeLine* const of = tail.name.empty() ? &line : nullptr;
    Shown shown = shower_.amount(of, *tail.amount, tail.amount_span, page ? Origin::page : Origin::worked_out);
    const std::optional<Rounded>& rounded = shower_.last();
    if (tail.kind != TailKind::from || !shown.changed || !rounded || tail.amount->is_range()) return shown;
    const Rounded enough = rounded_up(*rounded);  // what is bought must do: S4-60
    return enough.shown == rounded->shown ? shown : from_rounded(*tail.amount, enough, enough);
  }

  Shown term(const Clause& clause, Index index) {
    const Term& term = recipe_.terms[index];
    Shown shown = unchanged_or(clause, index);
    if (term.changed) shown.changed = true;  // by a version: what stands in its clause is not this
    return shown;
  }

  Shown unchanged_or(const Clause& clause, Index index) {
    const Term& term = recipe_.terms[index];
    if (term.role == TermRole::equivalent) return restated(clause, index);
    if (is_heat(term)) {
      if (term.role == TermRole::by) return shower_.difference(term);
      return shower_.heat(term, is_oven(clause, term), page_restates(clause, term));
    }
    const bool page = unscaled_ || pace_of(recipe_, clause, index) == Pace::still;
    const Origin origin = page ? Origin::page : Origin::worked_out;
    switch (term.role) {
      case TermRole::use:
      case TermRole::checkpoint:
      case TermRole::change:
      case TermRole::to:
        return shower_.amount(line_of(recipe_, clause, index), term.amount, term.span, origin);
      case TermRole::piece_weight:
        if (const auto evened = unscaled_ ? std::nullopt : evened_out(clause, term)) return shower_.amount(nullptr, *evened, term.span, Origin::worked_out);
        return shower_.amount(nullptr, term.amount, term.span, Origin::page);
      case TermRole::load:
      case TermRole::per:
      case TermRole::measure:
        return shower_.amount(nullptr, term.amount, term.span, Origin::page);
      case TermRole::pieces:
        return page ? as_written(recipe_, term.span, term.amount) : pieces(term.amount);
      default:
        return as_written(recipe_, term.span, term.amount);
    }
  }

  // A stated equivalent keeps its own unit, whatever is asked for.
  Shown restated(const Clause& clause, Index index) {
    const Term& term = recipe_.terms[index];
    if (is_heat(term) && term.amount.unit == common().gas && !shower_.heat_stays(term.amount.unit)) return shower_.heat(term, true, true);
    const bool page = unscaled_ || pace_of(recipe_, clause, index) == Pace::still;
    Shower own(recipe_, {System::written, recipe_.dialect}, nullptr);
    return own.amount(line_of(recipe_, clause, index), term.amount, term.span,
                      page ? Origin::page : Origin::worked_out);
  }

  // 180 °C (350 °F) on an American card is 350 °F (180 °C): the page's own figures, the reader's first.
  void swap_restated(Index at, std::vector<Shown>& out) {
    const Term &first = recipe_.terms[at - 1], &second = recipe_.terms[at];
    if (first.amount.is_lost() || second.amount.is_lost() || first.role == TermRole::equivalent) return;
    if (reads(first) || !reads(second)) return;
    out[at - 1] = out[at];
    Shower own(recipe_, {System::written, recipe_.dialect}, nullptr);
    out[at] = is_heat(first)
                  ? own.heat(first, false, true)
                  : own.amount(nullptr, first.amount, first.span, unscaled_ ? Origin::page : Origin::worked_out);
    out[at - 1].changed = out[at].changed = true;
  }

  bool reads(const Term& term) const {
    return is_heat(term) ? shower_.heat_stays(term.amount.unit) : shower_.stays(term.amount.unit);
  }

  // In parentheses right behind it: the page gives the other setting itself.
  bool page_restates(const Clause& clause, const Term& term) const {
    const std::size_t end = std::min<std::size_t>(clause.span.end, recipe_.text.size());
    std::size_t at = term.span.end;
    while (at < end && (recipe_.text[at] == ' ' || recipe_.text[at] == '\n')) ++at;
    return at < end && recipe_.text[at] == '(';
  }

  static Wide so_many(const Fraction& count) { return std::max<Wide>(count.nearest(), 1); }

  static Shown pieces(const Quantity& amount) {
    if (amount.is_lost()) return from_text("?", amount);
    return from_text(join_range(to_text(so_many(amount.low)), to_text(so_many(amount.high))), amount);
  }

  // Two thirds of a piece of 850 g is made as one piece, which cannot weigh 850 g: what there is, shared out.
  std::optional<Quantity> evened_out(const Clause& clause, const Term& weight) const {
    for (Index t = clause.terms.first; t < clause.terms.end(); ++t) {
      const Quantity& count = recipe_.terms[t].amount;
      if (recipe_.terms[t].role != TermRole::pieces || count.is_lost() || count.is_range() || count.low.sign() <= 0) continue;
      const Fraction by = count.low / Fraction::of(so_many(count.low), 1);
      if ((by - Fraction(1)).abs() <= tolerance(weight.amount.manner, recipe_.tolerance())) return std::nullopt;
      Quantity evened = weight.amount;
      evened.low *= by, evened.high *= by;
      return evened;
    }
    return std::nullopt;
  }

  const Recipe& recipe_;
  Shower shower_;
  bool unscaled_;
  Roundings roundings_;  // of the list, by line; empty where nothing was rounded
};

void made(const Recipe& recipe, Showing& showing, Adapted& out) {
  const auto all = [&](const std::vector<Made>& makes, std::vector<Shown>& amounts, std::vector<Shown>& each) {
    for (const Made& made : makes) {
      amounts.push_back(showing.made(made.amount, made.amount_span));
      each.push_back(showing.made_each(made));
    }
  };
  all(recipe.makes, out.makes, out.makes_each);
  out.part_makes.resize(recipe.parts.size());
  out.part_makes_each.resize(recipe.parts.size());
  for (std::size_t p = 0; p < recipe.parts.size(); ++p)
    all(recipe.parts[p].makes, out.part_makes[p], out.part_makes_each[p]);
}

void batches(const Recipe& recipe, Showing& showing, Adapted& out) {
  out.batch = limit_of(recipe.batch, showing.shower());
  out.rounds = rounds_of(recipe, recipe.batch, kNone, showing.shower());
  out.part_batch.resize(recipe.parts.size());
  out.part_rounds.resize(recipe.parts.size());
  for (Index p = 0; p < recipe.parts.size(); ++p) {
    out.part_batch[p] = limit_of(recipe.parts[p].batch, showing.shower());
    out.part_rounds[p] = rounds_of(recipe, recipe.parts[p].batch, p, showing.shower());
  }
  out.loads = loads_of(recipe, showing.shower());
}

}  // namespace

Adapted show(const Recipe& recipe, const Request& request) {
  Adapted out;
  out.recipe = &recipe;
  out.units = request.units;
  out.beside = request.beside;
  out.words = request.words;
  const Reader reader = reader_of(recipe, request);
  out.spoons = reader.dialect;
  Showing first(recipe, reader, &out.lacks);
  first.lines(out.lines);
  first.tails(out.tails);
  first.terms(out.terms);
  first.mentions(out.mentions);
  made(recipe, first, out);
  batches(recipe, first, out);
  if (recipe.serves) out.serves = first.made(*recipe.serves, recipe.serves_span);
  Showing(recipe, reader, nullptr).changes(out.changes);
  if (!request.beside) out.by_weight = by_weight(recipe, first.shower(), nullptr, out.lacks);
  if (request.beside) {
    out.spoons_beside = reader_of(recipe, *request.beside, request.spoons).dialect;
    Showing second(recipe, reader_of(recipe, *request.beside, request.spoons), nullptr);
    second.lines(out.lines_beside);
    second.terms(out.terms_beside);
    second.mentions(out.mentions_beside);
    out.by_weight = by_weight(recipe, first.shower(), &second.shower(), out.lacks);
  }
  watch_size(recipe, request, first.roundings(), out.lacks);
  out.tin = request.tin_text;
  out.way = request.way ? request.way : recipe.kitchen ? recipe.kitchen->way : std::nullopt;
  return out;
}

}  // namespace qtn
