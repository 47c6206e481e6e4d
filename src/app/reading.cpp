#include "app/reading.hpp"

#include <algorithm>

#include "diag/glyphs.hpp"
#include "recipe/history.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace {

std::string_view name_of(ClauseKind kind) {
  constexpr std::string_view kNames[] = {"use", "keep back", "take out", "discard", "strain out", "drain", "loss or gain", "reduce",
                                         "checkpoint", "time", "reading", "temperature", "measure", "pieces", "strength", "taste",
                                         "use within", "not understood"};
  return kNames[static_cast<std::size_t>(kind)];
}

std::string_view name_of(TermRole role) {
  constexpr std::string_view kNames[] = {"length", "at", "to", "reads", "holds for", "by", "per", "plus", "within", "every", "between",
                                         "at a time", "times", "amount", "share", "change", "weighs", "measure", "pieces", "of",
                                         "strength", "also stated as"};
  return kNames[static_cast<std::size_t>(role)];
}

std::string_view name_of(TailKind kind) {
  constexpr std::string_view kNames[] = {"preparation", "as bought", "taken up", "start with", "strength", "for trimmings", "served at",
                                         "each", "extra", "optional", "fixed", "gently", "unmeasured"};
  return kNames[static_cast<std::size_t>(kind)];
}

std::string_view name_of(Basis basis) {
  constexpr std::string_view kNames[] = {"amount", "percentage", "rate", "parts", "unmeasured"};
  return kNames[static_cast<std::size_t>(basis)];
}

class Table {
 public:
  explicit Table(std::string_view text) : text_(text), lines_(text) {}

  void row(Span span, std::string_view what, const std::string& meaning) {
    rows_.push_back({span.begin, std::string(what), meaning, flat(span)});
  }

  std::string print() {
    std::stable_sort(rows_.begin(), rows_.end(), [](const Row& a, const Row& b) { return a.begin < b.begin; });
    std::size_t widest = 8;
    for (const Row& row : rows_) widest = std::max(widest, std::min<std::size_t>(wide(row.text), 38));
    std::string out;
    for (const Row& row : rows_) {
      std::string number = std::to_string(lines_.place(row.begin).line);
      out += std::string(number.size() < 5 ? 5 - number.size() : 0, ' ') + number + "  ";
      const std::size_t size = wide(row.text);
      out += row.text + std::string(size < widest ? widest - size : 0, ' ') + "  ";
      out += row.what + ": " + row.meaning + "\n";
    }
    return out;
  }

 private:
  struct Row {
    std::uint32_t begin;
    std::string what, meaning, text;
  };

  // As it looks on the screen: 180 °C is six columns and seven bytes.
  static std::size_t wide(std::string_view text) { return static_cast<std::size_t>(columns_of(text)); }

  // On one line, cut where it grows long, so that the columns stand.
  std::string flat(Span span) const {
    std::string out;
    for (char c : text_.substr(span.begin, span.size())) {
      const bool blank = c == '\n' || c == '\r' || c == '\t' || c == ' ';
      if (blank && (out.empty() || out.back() == ' ')) continue;
      out += blank ? ' ' : static_cast<unsigned char>(c) < 0x20 ? '?' : c;
    }
    if (wide(out) <= 38) return out;
    std::size_t cut = 0;
    for (std::size_t columns_left = 37; cut < out.size();) {
      const Glyph glyph = glyph_at(out, cut);
      const auto size = static_cast<std::size_t>(columns(glyph.code));
      if (size > columns_left) break;
      columns_left -= size, cut += glyph.bytes;
    }
    return out.substr(0, cut) + "…";
  }

  std::string_view text_;
  Lines lines_;
  std::vector<Row> rows_;
};

class Reader {
 public:
  explicit Reader(const Recipe& recipe) : recipe_(recipe), table_(recipe.text), found_(recipe.clauses.size(), nullptr) {
    for (const FoundStrength& one : recipe.found_strengths) found_[one.clause] = &one;
  }

  std::string run() {
    heads();
    for (Index p = 0; p < recipe_.parts.size(); ++p) part(p);
    for (const TakeLine& line : recipe_.lines) this->line(line);
    for (const Step& step : recipe_.steps) this->step(step);
    for (const Clause& clause : recipe_.clauses) this->clause(clause);
    for (const Log& log : recipe_.trials) this->log(log, "trial");
    for (const Log& log : recipe_.variants) this->log(log, "variant");
    for (const FilmMark& mark : recipe_.film) table_.row(mark.clock, "film mark", std::to_string(mark.seconds) + " s, " + std::string(trim(recipe_.slice(mark.title))));
    return table_.print();
  }

 private:
  std::string amount(const Quantity& quantity) const {
    if (quantity.is_lost()) return "not known";
    std::string out = write_plain(quantity);
    const Dimension dimension = quantity.dimension();
    if (dimension != Dimension::count) out += " (" + std::string(qtn::name_of(dimension)) + ")";
    return out;
  }

  void heads() {
    for (const TextFact& fact : recipe_.facts) table_.row(fact.span, row(fact.field).word, "as written");
    const auto whole = [&](const Made& made) { made_row(made); };
    std::for_each(recipe_.makes.begin(), recipe_.makes.end(), whole);
    if (recipe_.serves) table_.row(recipe_.serves_span, "serves", write_plain(*recipe_.serves));
    for (const Keep& keep : recipe_.keeps) keep_row(keep);
    if (recipe_.tin) tin_row(*recipe_.tin);
    if (recipe_.batch) table_.row(recipe_.batch->span, "at most", amount(recipe_.batch->amount) + " " + std::string(recipe_.batch->thing) + " at a time");
    if (recipe_.ready_after) table_.row({}, "ready", "after " + write_plain(*recipe_.ready_after));
    if (recipe_.scales) table_.row({}, "scales", "found to hold for " + write_plain(*recipe_.scales) + " times");
    for (const Use& use : recipe_.uses)
      table_.row(use.span, "use", std::string(use.as) + (use.recipe == nullptr ? ", not had" : ", the recipe " + std::string(use.recipe->title)) + " in " + std::string(use.path));
    table_.row({}, "read with", std::string(qtn::name_of(recipe_.dialect)) + " measures");
  }

  void made_row(const Made& made) {
    table_.row(made.span, made.by_product ? "makes as well" : "makes",
               amount(made.amount) + (made.thing.empty() ? "" : " of `" + std::string(made.thing) + "`") + (made.each ? ", each " + amount(*made.each) : ""));
  }

  void keep_row(const Keep& keep) {
    constexpr std::string_view kPlaces[] = {"", "chilled", "frozen", "in a cool place", "at room temperature", "sealed"};
    table_.row(keep.span, "keeps", write_plain(keep.length) + " " + std::string(kPlaces[static_cast<std::size_t>(keep.place)]) + (keep.once_open ? ", once open" : ""));
  }

  void tin_row(const Tin& tin) {
    constexpr std::string_view kShapes[] = {"", " round", " square", " oblong", " ring", " oval", " of its own shape"};
    const TinSize& size = tin.size;
    const auto mm = [](const Fraction& length) { return length.decimal(1) + " mm"; };
    std::string meaning = size.count == Fraction(1) ? "" : size.count.exact() + " of ";
    meaning += !size.volume.is_lost() ? size.volume.decimal(0) + " ml" : mm(size.across) + (size.along.is_lost() ? "" : " x " + mm(size.along));
    meaning += std::string(kShapes[static_cast<std::size_t>(size.shape)]);
    if (!size.hole.is_lost()) meaning += ", hole " + mm(size.hole);
    if (!size.base_across.is_lost()) meaning += ", " + mm(size.base_across) + (size.base_along.is_lost() ? "" : " x " + mm(size.base_along)) + " at the base";
    if (size.volume.is_lost()) meaning += size.deep.is_lost() ? ", depth not said" : ", " + mm(size.deep) + " deep";
    if (const Fraction held = held_by(size); !held.is_lost() && size.volume.is_lost()) meaning += ", holds " + held.decimal(0) + " ml to the brim";
    table_.row(tin.span, "tin", meaning);
  }

  void part(Index p) {
    const Part& one = recipe_.parts[p];
    std::string meaning = p == recipe_.dish ? "the dish" : one.used ? "a part that another takes" : "a part that nothing takes";
    if (!one.weight_low.is_lost() && !one.weight_low.is_zero())
      meaning += ", its pot comes to " + one.weight_low.decimal(1) + (one.weight_low == one.weight_high ? "" : " to " + one.weight_high.decimal(1)) + " g";
    else
      meaning += ", its pot is not weighed";
    for (const Strength& strength : one.makeup.strengths) meaning += ", " + share(strength.share) + " " + std::string(strength.name);
    if (one.head.basis != Basis::amount) meaning += "; a list of " + std::string(name_of(one.head.basis)) + (one.head.basis == Basis::parts ? "" : "s");
    table_.row(one.span, "part", meaning);
    for (const Made& made : one.makes) made_row(made);
    for (const Keep& keep : one.keeps) keep_row(keep);
    if (one.tin) tin_row(*one.tin);
    if (one.ready_after) table_.row(one.span, "ready", "after " + write_plain(*one.ready_after));
    if (one.batch) table_.row(one.batch->span, "at most", amount(one.batch->amount) + " at a time");
  }

  std::string target(const Target& to) const {
    switch (to.kind) {
      case TargetKind::line: return "`" + std::string(recipe_.lines[to.index].name) + "`";
      case TargetKind::aside: return "the `" + std::string(recipe_.lines[to.index].name) + "` kept back";
      case TargetKind::part: return "the part `" + std::string(recipe_.parts[to.index].name) + "`";
      case TargetKind::product: return "`" + std::string(recipe_.parts[to.part].makes[to.index].thing) + "`, which a part makes as well";
      case TargetKind::use: return "`" + std::string(recipe_.uses[to.index].as) + "` from another file";
      case TargetKind::everything: return "all that is left of every line";
      default: return "nothing that is known";
    }
  }

  void line(const TakeLine& line) {
    std::string out = "`" + std::string(line.name) + "`, ";
    if (line.alternative && line.parent != kNone) out = "instead of `" + std::string(recipe_.lines[line.parent].name) + "`: " + out;
    if (line.given && line.parent != kNone) out = "out of `" + std::string(recipe_.lines[line.parent].name) + "`: " + out;
    out += line.measured() ? amount(line.written) : "unmeasured";
    if (line.basis != Basis::amount && line.measured()) out += " as " + std::string(name_of(line.basis)) + ", which comes to " + amount(line.amount);
    if (line.pack) out += " packs of " + amount(*line.pack) + ", together " + amount(line.amount);
    if (line.house_measure) out += " of the house's measure, together " + amount(line.amount);
    if (line.target.kind != TargetKind::none) out += ", which is " + target(line.target);
    const Dimension dimension = line.amount.dimension();
    if (line.measured() && !line.amount.is_lost() && (dimension == Dimension::volume || dimension == Dimension::count)) {
      const Ends grams = grams_of(recipe_, line, line.amount);
      const Known known = known_of(recipe_, line, line.amount, line.amount.unit);
      const bool volume = dimension == Dimension::volume;
      if (grams.low.is_lost()) out += "; no weight is known for it";
      else {
        const std::string source(volume ? known.density_source : known.each_source);
        const std::string_view as = taken_for(line, source);
        const bool marked = !known.remembered || source.find("from memory") != std::string::npos;
        out += "; weighs " + grams.low.decimal(1) + (grams.low == grams.high ? "" : " to " + grams.high.decimal(1)) + " g (" +
               (as.empty() ? "" : "as " + std::string(as) + ", ") + source + (marked ? "" : ", from memory") + ")";
      }
    }
    table_.row(line.span, "line", out);
    for (Index i = line.stated.first; i < line.stated.end(); ++i)
      table_.row(recipe_.stated[i].span, recipe_.stated[i].each ? "weight of each" : "also stated as", amount(recipe_.stated[i].amount));
    for (Index i = line.tails.first; i < line.tails.end(); ++i) {
      const Tail& tail = recipe_.tails[i];
      table_.row(tail.span, name_of(tail.kind), tail.amount ? amount(*tail.amount) + (tail.name.empty() ? "" : " of `" + std::string(tail.name) + "`") : "as written");
    }
  }

  void step(const Step& step) {
    constexpr std::string_view kKinds[] = {"step", "step beside the one before", "step that ends when the next begins", "step by hand", "step by machine", "note"};
    table_.row(step.span, kKinds[static_cast<std::size_t>(step.kind)], std::to_string(step.clauses.count) + (step.clauses.count == 1 ? " clause" : " clauses"));
  }

  void clause(const Clause& clause) {
    std::string out;
    const auto add = [&](const std::string& text) { out += (out.empty() ? "" : "; ") + text; };
    const Verb& verb = clause.house_verb != nullptr ? *clause.house_verb : qtn::verb(clause.verb);
    if (clause.kind == ClauseKind::time || clause.kind == ClauseKind::temperature)
      add("verb `" + std::string(verb.name) + "`" + (verb.wait ? ", a wait" : "") + (verb.range == Range::cook ? ", the cook's range" : ", the food's range"));
    for (Index i = clause.terms.first; i < clause.terms.end(); ++i) {
      const Term& term = recipe_.terms[i];
      add(std::string(name_of(term.role)) + " " + (term.overnight ? "overnight, " : "") + amount(term.amount));
    }
    for (Index i = clause.mentions.first; i < clause.mentions.end(); ++i) {
      const Mention& mention = recipe_.mentions[i];
      std::string text = target(mention.target);
      if (mention.takes && mention.whole) text += ", all of it";
      else if (mention.takes) text += ", " + (mention.part_low * Fraction(100)).decimal(1) + " % of it";
      else if (mention.taking != Taking::named) text += ", named only";
      add(text);
    }
    if (const FoundStrength* const found = found_[static_cast<std::size_t>(&clause - recipe_.clauses.data())]; found != nullptr) add(strength(*found));
    if (!clause.thing.empty() && clause.mentions.count == 0) add("of `" + std::string(clause.thing) + "`");
    if (!clause.of.empty()) add("counted from the " + std::string(clause.of));
    if (!clause.until.empty()) add(std::string(clause.until) + ", not checked");
    if (clause.each_side) add("each side");
    if (clause.if_needed) add("if needed, so 0 or more");
    if (clause.the_rest) add("all that is in the pot");
    if (clause.place != Takes::nothing) add("in its own place");
    table_.row(clause.span, name_of(clause.kind), out.empty() ? "as written" : out);
  }

  static std::string share(const Ends& share) {
    const bool small = share.high < Fraction::of(1, 1000);
    const Fraction by(small ? 1'000'000 : 100);
    const std::string low = (share.low * by).decimal(small ? 0 : 2), high = (share.high * by).decimal(small ? 0 : 2);
    return (low == high ? low : low + " to " + high) + (small ? " ppm" : " %");
  }

  std::string strength(const FoundStrength& found) const {
    const bool thinned = found.unweighed != kNone;
    return "the pot has " + std::string(thinned ? "at most " : "") + share(found.share) + (thinned ? ", since something in it has no weight" : "");
  }

  static std::string share(const ChangeShare& share) {
    return share.of == ShareOf::nothing ? std::string() : "; " + shares_in_words(share) + " " + std::string(words_of(share.of));
  }

  void log(const Log& log, std::string_view what) {
    table_.row(log.span, what, std::string(log.name) + ", " + std::to_string(log.changes.size()) + (log.changes.size() == 1 ? " change" : " changes"));
    const auto side = [&](const std::optional<Quantity>& quantity, Counted as) {
      if (!quantity) return std::string("none");
      return amount(*quantity) + (as == Counted::parts ? " as parts" : as == Counted::house ? " by the house's measure" : "");
    };
    for (const Change& change : log.changes)
      table_.row(change.span, "change", "`" + std::string(change.name) + "` from " + side(change.before, change.before_as) + " to " + side(change.after, change.after_as) + share(change.share));
    for (const Span note : log.notes) table_.row(note, "note", "as written");
  }

  const Recipe& recipe_;
  Table table_;
  std::vector<const FoundStrength*> found_;  // by clause
};

}  // namespace

std::string read_table(const Recipe& recipe) { return Reader(recipe).run(); }

std::string read_table(const Source& source, const Kitchen& kitchen) {
  Table table(source.text());
  for (const Kitchen::Fact& fact : kitchen.facts) table.row(fact.name, row(fact.block).word, std::string(source.text(fact.value)));
  return table.print();
}

}  // namespace qtn
