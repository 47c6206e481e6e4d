// Phase 2: every mention, set and bracketed name to what it names; rings, unused parts, clashes of names.
#include <algorithm>

#include "diag/nearest.hpp"
#include "recipe/asked.hpp"
#include "recipe/builder.hpp"
#include "recipe/list_words.hpp"
#include "recipe/makes.hpp"
#include "recipe/names.hpp"
#include "recipe/phases.hpp"
#include "words/lexicon.hpp"

namespace qtn {
namespace {

bool has_digit(std::string_view text) {
  return std::any_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

class Resolver {
 public:
  Resolver(Recipe& recipe, Report& report) : recipe_(recipe), report_(report), names_(recipe) {}

  void run() {
    for (Target& member : recipe_.set_members) set_member(member);
    for (Index i = 0; i < recipe_.lines.size(); ++i) line(recipe_.lines[i]);
    for (Clause& clause : recipe_.clauses) this->clause(clause);
    widen_heads();
    limits();
    same_names();
    use_names();
    takes_.resize(recipe_.parts.size());
    for (Index p = 0; p < recipe_.parts.size(); ++p) taken_by(p, takes_[p]);
    rings();
    mark_used();
  }

 private:
  std::string_view inner(const Clause& clause) const { return trim(recipe_.slice({clause.span.begin + 1, clause.span.end - 1})); }

  void set_member(Target& member) {
    if (member.span.empty()) return;
    const std::string_view text = recipe_.slice(member.span);
    const Names::Answer answer = names_.ask(text, member.part);
    if (answer.found.size() == 1) {
      const Span span = member.span;
      member = answer.found[0];
      member.span = span;
    } else if (answer.found.empty()) {
      member.kind = TargetKind::none;
    }
  }

  // A head such as `% of flour` means every line that ends in it: several flours share the 100.
  void widen_heads() {
    for (Index p = 0; p < recipe_.parts.size(); ++p) {
      TakeHead& head = recipe_.parts[p].head;
      std::vector<Target> members;
      for (Index i = head.members.first; i < head.members.end(); ++i) {
        const Target member = recipe_.set_members[i];
        if (member.kind != TargetKind::none) {
          members.push_back(member);
          continue;
        }
        const Names::Answer answer = names_.ask(recipe_.slice(member.span), p);
        for (Target target : answer.found) target.span = member.span, members.push_back(target);
        if (answer.found.empty() && !head.all_flour) unknown(member.span, p, false);
      }
      if (head.members.empty() || members.size() == head.members.count) continue;
      head.members.first = static_cast<Index>(recipe_.set_members.size());
      head.members.count = static_cast<Index>(members.size());
      recipe_.set_members.insert(recipe_.set_members.end(), members.begin(), members.end());
    }
    for (const TakeLine& line : recipe_.lines)
      for (Index i = line.members.first; i < line.members.end(); ++i)
        if (recipe_.set_members[i].kind == TargetKind::none) unknown(recipe_.set_members[i].span, line.part, false);
  }

  void line(TakeLine& line) {
    if (line.target.span.empty()) return;
    const Span span = line.target.span;
    const std::string_view text = recipe_.slice(span);
    Target target;
    if (!part_named(text, line.part, target)) {
      std::vector<std::string_view> known;
      for (const Part& part : recipe_.parts) known.push_back(part.name);
      for (const Use& use : recipe_.uses) known.push_back(use.as);
      const auto near = nearest(text, known);
      auto& problem = report_.add(Code::unknown_part, span, "There is no part and no used recipe called " + quoted(text) + ". " + did_you_mean(near));
      problem.expect("the name of a part, or a line `use: " + std::string(text) + " from FILE` in the head");
      for (std::string_view one : near) problem.offer(span, std::string(one), "write " + quoted(one));
      line.target.kind = TargetKind::none;
      disturb(line.part);
      return;
    }
    line.target = target;
    line.target.span = span;
    counted_thing(line, span);
  }

  // 10 hand pies [Hand pies]: the word between is what the other one counts, or portions of what it serves (T3).
  void counted_thing(const TakeLine& line, Span name) {
    if (line.name_span.begin == name.begin || line.basis != Basis::amount || line.written.unit != kNoUnit || line.written.is_lost()) return;
    const Recipe* from = &recipe_;
    Index part = line.target.index;
    if (line.target.kind == TargetKind::use) {
      from = recipe_.uses[part].recipe;
      if (from == nullptr) return;
      part = recipe_.uses[part].part == kNone ? from->dish : recipe_.uses[part].part;
    }
    if (part >= from->parts.size()) return;
    const std::vector<std::string> asked = fold_name(line.name);
    const bool portions = asked.size() == 1 && asked[0] == "portion";
    if (portions && (recipe_.kind == FileKind::menu || (part == from->dish && from->serves))) return;
    std::string makes;
    for (const Made& made : makes_of(*from, part)) {
      if (made.damaged) return;
      const std::vector<std::string> thing = fold_name(made.thing);
      const auto said = [&](const std::string& word) { return std::find(asked.begin(), asked.end(), word) != asked.end(); };
      if (made.amount.dimension() == Dimension::count && std::all_of(thing.begin(), thing.end(), said)) return;
      makes += (makes.empty() ? "" : ", ") + std::string(from->slice(made.span));
    }
    const std::string what = quoted(recipe_.slice(name));
    report_.add(Code::not_what_it_makes, line.name_span, what + (makes.empty() ? " does not say that it makes " : " makes " + makes + ", not ") + std::string(line.name) + ".")
        .find(quoted(recipe_.slice({line.amount_span.begin, line.name_span.end})))
        .expect(makes.empty() ? "a line `makes: " + std::string(recipe_.slice({line.amount_span.begin, line.name_span.end})) + "` there, or an amount without the word"
                              : "an amount of what it makes, or a weight of it");
    disturb(line.part);
  }

  // at most: 1.5 kg oranges at a time: the thing stands in the list or is what is made.
  void limit(const std::optional<Batch>& batch, Index part) {
    if (!batch || batch->thing.empty() || !names_.ask(batch->thing, part).found.empty()) return;
    const std::vector<std::string> thing = fold_name(batch->thing);
    const auto made = [&](const std::vector<Made>& all) {
      return std::any_of(all.begin(), all.end(), [&](const Made& one) { return one.damaged || fold_name(one.thing) == thing; });
    };
    if (made(recipe_.makes) || same_letters(recipe_.title, batch->thing)) return;
    for (Index p = 0; p < recipe_.parts.size(); ++p)
      if (made(recipe_.parts[p].makes) || (part == kNone && !names_.ask(batch->thing, p).found.empty())) return;
    if (of_damaged_line(batch->thing)) return;
    const auto begin = static_cast<std::uint32_t>(batch->thing.data() - recipe_.text.data());
    const auto near = nearest(lower(batch->thing), names_.known(part));
    auto& problem = report_.add(Code::unknown_name, {begin, begin + static_cast<std::uint32_t>(batch->thing.size())},
                                quoted(batch->thing) + " is not in the list and is not what is made. " + did_you_mean(near));
    problem.find(quoted(batch->thing)).expect("a name from `take:` or `makes:`, or no name: `6 at a time`");
  }

  void limits() {
    limit(recipe_.batch, kNone);
    for (Index p = 0; p < recipe_.parts.size(); ++p) limit(recipe_.parts[p].batch, p);
  }

  bool part_named(std::string_view text, Index own, Target& out) {
    for (Index p = 0; p < recipe_.parts.size(); ++p)
      if (same_letters(recipe_.parts[p].name, text)) {
        out = {TargetKind::part, p, p, {}};
        return true;
      }
    for (Index u = 0; u < recipe_.uses.size(); ++u)
      if (same_letters(recipe_.uses[u].as, text)) {
        out = {TargetKind::use, u, kNone, {}};
        return true;
      }
    const Names::Answer answer = names_.ask(text, own);
    if (answer.found.size() == 1 && (answer.found[0].kind == TargetKind::part || answer.found[0].kind == TargetKind::use)) {
      out = answer.found[0];
      return true;
    }
    return false;
  }

  void clause(Clause& clause) {
    if (clause.explained) return disturb(clause.part);
    if (clause.own_verb || clause.kind == ClauseKind::pieces || clause.kind == ClauseKind::bad) {
      Target whole;
      if (names_.whole_name(inner(clause), clause.part, whole)) return as_name(clause, whole);
    }
    if (clause.kind == ClauseKind::bad) {
      if (unlisted_verb(clause)) return;
      clause.explained = true;
      disturb(clause.part);
      Reading in{*recipe_.source, report_, recipe_.dialect, {}};
      return explain_bad_clause(in, clause.span);
    }
    const bool amount = clause.terms.count != 0;  // [about 100 g of the milk] opens with no verb
    if (clause.kind == ClauseKind::use && clause.mentions.count >= 1 && !amount && unlisted_verb(clause)) return;
    for (Index i = clause.mentions.first; i < clause.mentions.end(); ++i) mention(clause, recipe_.mentions[i]);
    settle_asked(recipe_, clause, report_);
  }

  // A bracket that is a whole listed name, whatever verb or number it begins with.
  void as_name(Clause& clause, const Target& target) {
    clause.kind = ClauseKind::use;
    clause.own_verb = false;
    clause.verb = kNoVerb;
    clause.terms.count = 0;
    Mention mention;
    mention.span = {clause.span.begin + 1, clause.span.end - 1};
    mention.target = target;
    if (clause.mentions.count == 0) {
      clause.mentions.first = static_cast<Index>(recipe_.mentions.size());
      recipe_.mentions.push_back(mention);
    } else {
      recipe_.mentions[clause.mentions.first] = mention;
    }
    clause.mentions.count = 1;
  }

  // [frobble 10 min]: words that name nothing and go on with a number are meant as an action (T6).
  bool unlisted_verb(Clause& clause) {
    const std::string_view text = inner(clause);
    if (letter_at(text, 0) == 0) return false;  // a number is no verb
    const std::size_t blank = text.find(' ');
    const bool number = blank != std::string_view::npos && has_digit(text.substr(blank));
    const bool hint = number || text.find(" overnight") != std::string_view::npos || text.find(" at least ") != std::string_view::npos;
    const bool lone = blank == std::string_view::npos;
    if (!hint || (lone && !number)) return false;
    const std::string word = lower(text.substr(0, blank));
    if (word == "the" || Lexicon::standard().longest(word, kVerbWord)) return false;
    if (!names_.ask(text, clause.part).found.empty()) return false;
    std::vector<std::string_view> verbs;
    for (VerbId v = 1; v < verb_count(); ++v) verbs.push_back(verb(v).name);
    const auto near = nearest(word, verbs);
    const Span span{clause.span.begin + 1, clause.span.begin + 1 + static_cast<std::uint32_t>(std::min(blank, text.size()))};
    auto& problem = report_.add(Code::unknown_verb, span, quoted(word) + " is not a verb that the kitchen knows. " + did_you_mean(near));
    problem.expect("a listed verb, or a row under `verbs:` in the kitchen's file");
    for (std::string_view one : near) problem.offer(span, std::string(one), "write " + quoted(one));
    clause.kind = ClauseKind::bad;
    clause.explained = true;
    disturb(clause.part);
    return true;
  }

  void mention(Clause& clause, Mention& mention) {
    const std::string_view text = recipe_.slice(mention.span);
    const Names::Answer answer = names_.ask(text, clause.part);
    const bool pieces = clause.kind == ClauseKind::pieces;
    if (answer.found.size() == 1) {
      mention.target = answer.found[0];
      if (pieces) {
        if (answer.last_word_differs && recipe_.terms[mention.term].amount.dimension() == Dimension::count) {
          mention.target = {};
          clause.mentions.count = 0;
          return;
        }
        clause.kind = ClauseKind::use;
        recipe_.terms[mention.term].role = TermRole::use;
      }
      const bool remark = names_.name_of(mention.target).ends_with(')');  // mint (optional): told where it is listed
      if (answer.last_word_differs && !remark && (clause.part == kNone || !recipe_.parts[clause.part].disturbed))
        report_.add(Code::last_word_differs, mention.span, quoted(text) + " is taken to mean " + quoted(names_.name_of(mention.target)) + ".")
            .also(target_span(mention.target), "this line").expect("the last word of the listed name: " + quoted(names_.name_of(mention.target)))
            .find(quoted(text));
      return;
    }
    if (answer.found.size() > 1) return several(clause, mention, answer.found);
    if (pieces) {
      const Term& counted = recipe_.terms[mention.term];
      clause.mentions.count = 0;
      if (counted.amount.is_lost() || counted.amount.dimension() == Dimension::count) return;
      disturb(clause.part);
      if (of_damaged_line(text)) return;
      report_.add(Code::not_in_list, mention.span, quoted(text) + " is not in the list.")
          .expect("a line `" + std::string(recipe_.slice(counted.span)) + " " + std::string(text) + "` under `take:`; the list is where an ingredient begins");
      return;
    }
    unknown(mention.span, clause.part, true);
  }

  Span target_span(const Target& target) const {
    switch (target.kind) {
      case TargetKind::line:
      case TargetKind::aside: return recipe_.lines[target.index].name_span;
      case TargetKind::part: return recipe_.parts[target.index].span;
      case TargetKind::use: return recipe_.uses[target.index].span;
      default: return {};
    }
  }

  void several(const Clause& clause, const Mention& mention, const std::vector<Target>& found) {
    disturb(clause.part);
    if (same_name(found)) return;
    const auto two_things = [&](const Target& one) {  // reported where the line stands
      if (one.kind != TargetKind::line) return false;
      const std::string_view name = recipe_.lines[one.index].name;
      return has_number_word(name) || find_word(name, "or") != std::string::npos || find_word(name, "plus") != std::string::npos;
    };
    if (std::any_of(found.begin(), found.end(), two_things)) return;
    std::string names;
    for (const Target& target : found) names += (names.empty() ? "" : ", ") + quoted(names_.name_of(target));
    auto& problem = report_.add(Code::several_meant, mention.span, quoted(recipe_.slice(mention.span)) + " could be any of these: " + names + ".");
    problem.expect("enough words to tell them apart").find(quoted(recipe_.slice(mention.span)));
    for (const Target& target : found) {
      problem.also(target_span(target), "this one");
      problem.offer(mention.span, "the " + std::string(names_.name_of(target)), "write `the " + std::string(names_.name_of(target)) + "`");
    }
  }

  // Lines of one list, parts or uses that share a name: that was reported where they stand.
  bool same_name(const std::vector<Target>& found) const {
    return std::all_of(found.begin(), found.end(), [&](const Target& one) {
      const bool apart = one.kind == TargetKind::line && recipe_.lines[one.index].part != recipe_.lines[found[0].index].part;
      return one.kind == found[0].kind && one.kind != TargetKind::aside && !apart && lower(names_.name_of(one)) == lower(names_.name_of(found[0]));
    });
  }

  // Every word of a mention stands in a line that could not be read: that line was reported, the mention is no second fault.
  bool of_damaged_line(std::string_view text) const {
    std::vector<std::string> words = fold_name(text);
    for (const Span line : recipe_.damaged) {
      std::string words_of_line(recipe_.slice(line));  // "bay leaves: chopped" has the word "leaves"
      std::replace_if(words_of_line.begin(), words_of_line.end(), [](char c) { return c == ':' || c == ';' || c == '.'; }, ' ');
      const std::vector<std::string> there = fold_name(words_of_line);
      const auto holds = [&](const std::string& word) {
        return std::any_of(there.begin(), there.end(), [&](const std::string& one) { return one.find(word) != std::string::npos; });
      };
      if (!words.empty() && std::all_of(words.begin(), words.end(), holds)) return true;
    }
    return false;
  }

  void disturb(Index part) {
    if (part != kNone) recipe_.parts[part].disturbed = true;
  }

  // "all the ingredients", "the dry ingredients", "everything else": words for a group (T7).
  static bool names_all(std::string_view folded) {
    for (std::string_view group : {"rest", "all the rest", "all", "everything else", "rest of everything"})
      if (folded == group) return true;
    const std::size_t last = folded.rfind("ingredients");
    return last != std::string_view::npos && last + 11 == folded.size();
  }

  void unknown(Span span, Index part, bool in_method) {
    const std::string_view text = recipe_.slice(span);
    disturb(part);
    if (of_damaged_line(text)) return;
    const auto elsewhere = part == kNone ? std::vector<Index>{} : names_.parts_listing(text, part);
    if (in_method && !elsewhere.empty()) {
      const std::string_view other = recipe_.parts[elsewhere[0]].name;
      report_.add(Code::name_of_other_part, span, quoted(text) + " belongs to the part " + quoted(other) + ".")
          .also(recipe_.parts[elsewhere[0]].span, "that part").expect("`the " + std::string(other) + "`, which is what comes out of it")
          .find(quoted(text)).offer(span, "the " + std::string(other), "write `the " + std::string(other) + "`");
      return;
    }
    std::string folded = lower(text);
    if (folded.substr(0, 4) == "the ") folded.erase(0, 4);
    if (folded == "rest of it" || folded == "it") {
      report_.add(Code::unknown_name, span, "This does not say the rest of what.").expect("the name: `the rest of the milk`");
      return;
    }
    for (std::string_view vague : {"most of", "a little of", "some of", "a bit of", "little of"})
      if (folded.find(vague) != std::string::npos) {
        report_.add(Code::vague_share, span, quoted(text) + " does not say how much.").expect("a share or an amount, or the words without brackets");
        return;
      }
    if (names_all(folded)) {
      report_.add(Code::unknown_name, span, quoted(text) + " names nothing that is listed.").find(quoted(text))
          .expect("`everything`, which takes all that is left, or each thing by its name").offer(span, "everything", "write `everything`");
      return;
    }
    auto near = nearest(folded, names_.known(part));
    if (near.empty() && part != kNone) near = same_head(text, part);
    auto& problem = report_.add(Code::unknown_name, span, quoted(text) + " is not in the list and is no part of this recipe. " + did_you_mean(near));
    problem.find(quoted(text)).expect("a name from `take:`, or the words without brackets, or a `part:` of that name");
    for (std::string_view one : near) problem.offer(span, "the " + std::string(one), "write `the " + std::string(one) + "`");
    const std::string_view all = recipe_.text;
    if (in_method && span.begin > 0 && all[span.begin - 1] == '[' && span.end < all.size() && all[span.end] == ']')
      problem.offer({span.begin - 1, span.end + 1}, std::string(text), "leave the brackets out");
  }

  // "the soft butter" of a list with butter in it.
  std::vector<std::string_view> same_head(std::string_view text, Index part) const {
    std::vector<std::string_view> out;
    const std::vector<std::string> asked = fold_name(text);
    for (const TakeLine& line : recipe_.lines) {
      if (asked.empty() || line.part != part || out.size() == 3) continue;
      const std::vector<std::string> name = fold_name(line.name);
      if (!name.empty() && name.back() == asked.back()) out.push_back(line.name);
    }
    return out;
  }

  static bool stands_alone(const TakeLine& line) {
    return !line.alternative && !line.given && !line.name.empty() && line.target.span.empty();
  }

  // Two lines of one name in a part (T2), a part named like a line of its own list (H12).
  void same_names() {
    for (Index p = 0; p < recipe_.parts.size(); ++p) {
      const Slice lines = recipe_.parts[p].lines;
      for (Index i = lines.first; i < lines.end(); ++i) {
        const TakeLine& line = recipe_.lines[i];
        if (!stands_alone(line)) continue;
        for (Index at = lines.first; at < i && line.measured(); ++at) {
          const TakeLine& other = recipe_.lines[at];
          if (!stands_alone(other) || !other.measured() || !std::ranges::equal(recipe_.keys_of(other), recipe_.keys_of(line))) continue;
          report_.add(Code::same_line_name, line.name_span, "Two lines of this list are called " + quoted(line.name) + ".")
              .also(other.name_span, "the first is here").expect("a telling word in one of them, or a part of its own");
          break;
        }
        if (!recipe_.parts[p].unnamed && line.target.kind == TargetKind::none && same_letters(line.name, recipe_.parts[p].name))
          report_.add(Code::line_named_as_part, line.name_span, "This line has the name of its own part; in here the line is meant.")
              .also(recipe_.parts[p].span, "the part");
      }
    }
  }

  // Two used recipes of one name, or one named like a part of this file.
  void use_names() {
    for (std::size_t i = 0; i < recipe_.uses.size(); ++i) {
      const Use& use = recipe_.uses[i];
      for (std::size_t j = 0; j < i; ++j)
        if (same_letters(recipe_.uses[j].as, use.as))
          report_.add(Code::use_repeated, use.span, "Two used recipes are called " + quoted(use.as) + ".").also(recipe_.uses[j].span, "the first is here")
              .expect("another name for one of them: `as Sweet paste` behind its file");
      for (const Part& part : recipe_.parts)
        if (!part.unnamed && same_letters(part.name, use.as))
          report_.add(Code::use_name_of_own_part, use.span, "A part of this file is called " + quoted(use.as) + " too.").also(part.span, "the part")
              .expect("another name: `as Sweet paste` behind the file");
    }
  }

  bool last_batch(const TakeLine& line) const {
    for (Index t = line.tails.first; t < line.tails.end(); ++t)
      if (recipe_.tails[t].kind == TailKind::preparation && recipe_.slice(recipe_.tails[t].span).find("last batch") != std::string_view::npos) return true;
    return false;
  }

  // Which parts a part takes, each with the place that says so.
  void taken_by(Index p, std::vector<std::pair<Index, Span>>& out) const {
    const Part& part = recipe_.parts[p];
    for (Index i = part.lines.first; i < part.lines.end(); ++i)
      if (recipe_.lines[i].target.kind == TargetKind::part && !last_batch(recipe_.lines[i])) out.push_back({recipe_.lines[i].target.index, recipe_.lines[i].span});
    for (const Clause& clause : recipe_.clauses) {
      if (clause.part != p) continue;
      for (Index m = clause.mentions.first; m < clause.mentions.end(); ++m) {
        const Target& target = recipe_.mentions[m].target;
        if (target.kind == TargetKind::part && target.index != p) out.push_back({target.index, clause.span});
        if (target.kind == TargetKind::product && target.part != p) out.push_back({target.part, clause.span});
      }
    }
  }

  void rings() {
    const auto count = static_cast<Index>(recipe_.parts.size());
    const auto& takes = takes_;
    if (std::all_of(takes.begin(), takes.end(), [](const auto& one) { return one.empty(); })) return;
    std::vector<std::uint8_t> state(count, 0);
    std::vector<Index> path, next;
    for (Index start = 0; start < count; ++start) {
      if (state[start] != 0) continue;
      path.assign(1, start), next.assign(1, 0);
      state[start] = 1;
      while (!path.empty()) {
        const Index p = path.back();
        if (next.back() == takes[p].size()) {
          state[p] = 2;
          path.pop_back(), next.pop_back();
          continue;
        }
        const auto [to, span] = takes[p][next.back()++];
        if (state[to] == 0) {
          state[to] = 1;
          path.push_back(to), next.push_back(0);
        } else if (state[to] == 1) {
          report_ring(path, to, span);
        }
      }
    }
  }

  void report_ring(const std::vector<Index>& path, Index to, Span span) {
    std::string chain;
    for (auto at = std::find(path.begin(), path.end(), to); at != path.end(); ++at) {
      chain += std::string(recipe_.parts[*at].name) + " → ";
      recipe_.parts[*at].in_ring = true;
    }
    chain += std::string(recipe_.parts[to].name);
    const auto used = [&](const Use& use) { return same_letters(use.as, recipe_.parts[to].name); };
    if (path.back() == to && std::any_of(recipe_.uses.begin(), recipe_.uses.end(), used)) return;  // its `use:` is the fault
    report_.add(Code::part_ring, span, "These parts each need the other first: " + chain + ".")
        .also(recipe_.parts[to].span, "this part").expect("one of them made without the other");
  }

  void mark_used() {
    for (Index p = 0; p < recipe_.parts.size(); ++p)
      for (const auto& [to, span] : takes_[p]) recipe_.parts[to].used = true;
    for (Index p = 0; p < recipe_.parts.size(); ++p) {
      const Part& part = recipe_.parts[p];
      const bool twice = std::any_of(recipe_.parts.begin(), recipe_.parts.end(), [&](const Part& one) { return &one != &part && same_letters(one.name, part.name); });
      if (p != recipe_.dish && !part.used && !twice && !recipe_.parts[recipe_.dish].disturbed)
        report_.add(Code::unused_part, part.span, "Nothing in the recipe takes the part " + quoted(part.name) + ".")
            .expect("a step with `[the " + std::string(part.name) + "]`");
    }
  }

  Recipe& recipe_;
  Report& report_;
  Names names_;
  std::vector<std::vector<std::pair<Index, Span>>> takes_;  // by part: the parts it takes, and where it says so
};

}  // namespace

void resolve_names(Recipe& recipe, Report& report) { Resolver(recipe, report).run(); }

}  // namespace qtn
