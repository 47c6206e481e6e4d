// The file from top to bottom: heads, parts, blocks, and what may stand only once.
#include "diag/nearest.hpp"
#include "recipe/builder.hpp"
#include "recipe/logs.hpp"
#include "recipe/ounces.hpp"
#include "recipe/phases.hpp"

namespace qtn {
namespace {

// What recipes elsewhere call a field, and the field that says it here.
struct OtherWord {
  std::string_view theirs;
  Field ours;
};
constexpr OtherWord kOtherWords[] = {
    {"yield", Field::makes},         {"yields", Field::makes},      {"quantity", Field::makes},     {"servings", Field::serves},
    {"serving", Field::serves},      {"serve", Field::serves},      {"portions", Field::serves},    {"feeds", Field::serves},
    {"ingredients", Field::take},    {"ingredient", Field::take},   {"you need", Field::take},      {"directions", Field::method},
    {"instructions", Field::method}, {"steps", Field::method},      {"preparation", Field::method}, {"procedure", Field::method},
    {"from", Field::source},         {"author", Field::by},         {"storage", Field::keeps},      {"storing", Field::keeps},
    {"store", Field::keeps},         {"keep", Field::keeps},        {"equipment", Field::needs},    {"tools", Field::needs},
    {"description", Field::note},    {"introduction", Field::note}, {"warning", Field::caution},    {"pan", Field::tin},
    {"picture", Field::photo},       {"variation", Field::variant}, {"version", Field::variant},    {"tasting", Field::trial},
};

// "prep time", "cooking time", "total": what the steps add up to.
bool is_time_word(std::string_view word) {
  return word == "time" || word == "total" || word == "ready in" || (word.size() > 5 && word.substr(word.size() - 5) == " time");
}

}  // namespace

Builder::Builder(const Source& source, const Tree& tree, const Surroundings& around, Report& report,
                 Recipe&& spare)
    : in_{source, report, Dialect::unstated, {}}, tree_(tree), around_(around), report_(report),
      recipe_(std::move(spare).emptied()) {
  recipe_.source = &source;
  recipe_.text = source.text();
  recipe_.kind = tree.kind == FileKind::menu ? FileKind::menu : FileKind::recipe;
  recipe_.kitchen = around.kitchen;
  const auto guess = tree.lines.size();
  recipe_.lines.reserve(guess / 3 + 4);
  recipe_.name_keys.reserve(guess + 8);
  recipe_.tails.reserve(guess / 3 + 4);
  recipe_.pieces.reserve(guess * 2 + 8);
  recipe_.clauses.reserve(guess / 2 + 8);
  recipe_.terms.reserve(guess / 2 + 8);
  recipe_.mentions.reserve(guess / 2 + 8);
  recipe_.steps.reserve(guess / 4 + 4);
}

Recipe Recipe::emptied() && {
  Recipe out;
  const auto keep = [](auto& from, auto& to) {
    from.clear();
    to = std::move(from);
  };
  keep(makes, out.makes), keep(keeps, out.keeps), keep(facts, out.facts), keep(uses, out.uses), keep(parts, out.parts);
  keep(lines, out.lines), keep(name_keys, out.name_keys), keep(tails, out.tails), keep(stated, out.stated);
  keep(set_members, out.set_members), keep(steps, out.steps), keep(pieces, out.pieces), keep(clauses, out.clauses);
  keep(weighed, out.weighed), keep(terms, out.terms), keep(mentions, out.mentions), keep(after, out.after);
  keep(damaged, out.damaged), keep(trials, out.trials), keep(variants, out.variants), keep(film, out.film);
  return out;
}

Recipe Builder::run() {
  settle_dialect();
  for (View at : View(tree_, 0)) node(at);
  finish();
  return std::move(recipe_);
}

// `measures:` rules over the whole file, wherever it stands in the head.
void Builder::settle_dialect() {
  if (around_.kitchen) recipe_.dialect = around_.kitchen->dialect;
  for (View at : View(tree_, 0)) {
    if (at.kind() != Kind::field || field_of(at.value()) != Field::measures || !at.has(Kind::text)) continue;
    const std::string word = lower(trim(in_.slice(at.first(Kind::text).span())));
    if (word == "british") recipe_.dialect = Dialect::british;
    else if (word == "american") recipe_.dialect = Dialect::american;
    else if (word == "australian") recipe_.dialect = Dialect::australian;
    break;  // a second one is an error of its own and rules nothing
  }
  in_.dialect = recipe_.dialect;
}

void Builder::node(View at) {
  switch (at.kind()) {
    case Kind::field: return field(at);
    case Kind::block: return block(at);
    case Kind::unknown_field: return unknown_field(at);
    default: return bad_line(at);
  }
}

void Builder::misspelt(View at) {
  if ((at.value() & kMisspelt) == 0) return;
  const Span word = at.first(Kind::word).span();
  const std::string meant(row(field_of(at.value())).word);
  report_.add(Code::unknown_field, word, "`" + std::string(in_.slice(word)) + ":` is not a field; did you mean `" + meant + ":`?")
      .find("`" + std::string(in_.slice(word)) + ":`").expect("`" + meant + ":`")
      .fix(word, meant, "write `" + meant + ":`");
}

void Builder::once(Field which, Span span) {
  switch (which) {
    case Field::part: case Field::trial: case Field::variant: case Field::use: case Field::tin:
    case Field::note: case Field::caution: case Field::photo: return;
    default: break;
  }
  Span& first = seen_[static_cast<std::size_t>(which)];
  if (first.empty()) {
    first = span;
    return;
  }
  report_.add(Code::repeated_field, span, "`" + std::string(row(which).word) + ":` stands here a second time.")
      .also(first, "the first is here")
      .expect("one `" + std::string(row(which).word) + ":` in this place" +
              (which == Field::take || which == Field::method ? "; another part begins with `part: NAME`" : ""));
}

Part& Builder::part() {
  if (part_ == kNone) open_part(recipe_.title, {0, 0}, true);
  return recipe_.parts[part_];
}

void Builder::open_part(std::string_view name, Span span, bool unnamed) {
  Part made;
  made.name = name;
  made.span = span;
  made.unnamed = unnamed;
  made.lines.first = static_cast<Index>(recipe_.lines.size());
  made.steps.first = static_cast<Index>(recipe_.steps.size());
  part_ = static_cast<Index>(recipe_.parts.size());
  recipe_.parts.push_back(std::move(made));
}

void Builder::field(View at) {
  misspelt(at);
  const Field which = field_of(at.value());
  const Span word = at.first(Kind::word).span();
  if (which == Field::part) {
    seen_.fill({});
    in_after_ = false;
    std::string_view name;
    if (at.has(Kind::text)) name = trim(in_.slice(at.first(Kind::text).span()));
    if (name.empty())
      report_.add(Code::empty_field, word, "This part has no name.").expect("a name after `part:`, such as `part: Filling`");
    open_part(name, at.span(), false);
    return;
  }
  once(which, word);
  head_value(which, at);
}

void Builder::block(View at) {
  misspelt(at);
  const Field which = field_of(at.value());
  const Span word = at.first(Kind::word).span();
  switch (row(which).shape) {
    case Shape::list:
    case Shape::steps: {
      const bool after = which != Field::take && which != Field::method;
      if (!after) part();
      in_after_ = after;
      once(which, word);
      if (which == Field::take) take_block(at);
      else method_block(at);
      return;
    }
    case Shape::log: return build_log(*recipe_.source, at, recipe_, report_);
    default:
      once(which, word);
      return read_film(at);
  }
}

// The first line of a file that does not say what the file is.
bool Builder::tells_no_kind(Span field) const {
  return tree_.nodes.size() > 1 && View(tree_, 1).span().begin == field.begin && recipe_.title.empty();
}

bool Builder::other_word(Span word, const std::string& folded) {
  if (recipe_.kind == FileKind::menu) return false;
  const std::string found = "`" + std::string(in_.slice(word)) + ":`";
  if (is_time_word(folded)) {
    report_.add(Code::unknown_field, word, "How long it takes is added up from the steps.").find(found)
        .expect("no such field; each time in its step, in a bracket: `[bake 40 min at 180 °C]`");
    return true;
  }
  for (const OtherWord& one : kOtherWords) {
    if (one.theirs != folded) continue;
    const std::string ours(row(one.ours).word);
    report_.add(Code::unknown_field, word, "What " + found + " says is written `" + ours + ":` here.").find(found)
        .expect("`" + ours + ":`").fix(word, ours, "write `" + ours + ":`");
    return true;
  }
  return false;
}

void Builder::unknown_field(View at) {
  const Span word = at.first(Kind::word).span();
  const std::string text(in_.slice(word));
  const std::string folded = lower(text);
  if (part_ == kNone && tells_no_kind(at.span())) return;  // said of the file, once
  // What stands under it was read by nobody: that a step names it is no second fault.
  recipe_.damaged.push_back(at.span());
  if (other_word(word, folded)) return;
  const Field known = field_of(at.value());
  if (known != Field::none) {
    const bool in_part = part_ != kNone;
    auto& problem = report_.add(Code::field_out_of_place, word, "`" + text + ":` cannot stand here.");
    if (in_part && (row(known).where & kRecipe) != 0) problem.expect("it belongs in the head, before the first list or part");
    else if ((row(known).where & kKitchen) != 0) problem.expect("it belongs in the kitchen's own file");
    else if ((row(known).where & kMenu) != 0) problem.expect("it belongs in a menu");
    return;
  }
  const unsigned where = part_ != kNone ? unsigned{kPart} : recipe_.kind == FileKind::menu ? unsigned{kMenu} : unsigned{kRecipe};
  const auto words = field_words(where);
  const auto near = nearest(folded, words);
  auto& problem = report_.add(Code::unknown_field, word, "`" + text + ":` is not a field of this place." +
                              (near.empty() ? "" : " " + did_you_mean(near)));
  problem.find("`" + text + ":`").expect(near.empty() ? "one of the fields that the reference lists" : "a known field");
  for (std::string_view one : near) problem.offer(word, std::string(one), "write `" + std::string(one) + ":`");
}

void Builder::bad_line(View at) {
  report_.add(Code::stray_line, at.span(), "This line belongs to no field.")
      .find("`" + std::string(in_.slice(at.span())) + "`").expect("a field such as `makes:`, or `take:` before a list, or `note:` before a remark");
}

void Builder::finish() {
  if (tree_.kind == FileKind::unknown || recipe_.title.empty()) {
    const bool empty = tree_.nodes.size() == 1;
    const Span first = empty ? Span{0, 0} : View(tree_, 1).span();
    if (seen_[static_cast<std::size_t>(Field::recipe)].empty() && seen_[static_cast<std::size_t>(Field::menu)].empty() && recipe_.title.empty())
      no_kind(empty, first);
  }
  // The unnamed part is the dish wherever it stands, else the last part (L6).
  recipe_.dish = recipe_.parts.empty() ? 0 : static_cast<Index>(recipe_.parts.size() - 1);
  for (Index i = 0; i < recipe_.parts.size(); ++i)
    if (recipe_.parts[i].unnamed) recipe_.dish = i, recipe_.parts[i].name = recipe_.title;
  check_part_names();
  check_ounces(recipe_, report_);
}

void Builder::no_kind(bool empty, Span first) {
  Span place{first.begin, std::min(first.end, first.begin + 1)};
  const bool other = !empty && View(tree_, 1).kind() == Kind::unknown_field;  // cake: Lemon
  if (other) place = View(tree_, 1).first(Kind::word).span();
  auto& problem = report_.add(Code::no_kind, place, empty ? "There is nothing to cook in this file." : "This file does not say what it is.");
  problem.expect("a first line `recipe: NAME`, `menu: NAME` or `kitchen: NAME`");
  if (other) problem.find("`" + std::string(in_.slice(place)) + ":`").offer(place, "recipe", "write `recipe:`");
}

void Builder::check_part_names() {
  std::vector<std::string> names;
  for (const Part& one : recipe_.parts) {
    std::string name = lower(one.name);
    for (std::size_t i = 0; i < names.size(); ++i)
      if (names[i] == name && !name.empty() && !one.unnamed && !recipe_.parts[i].unnamed)
        report_.add(Code::same_part_name, one.span, "Two parts are called `" + std::string(one.name) + "`.")
            .also(recipe_.parts[i].span, "the first is here").expect("a name for each part that no other has");
    names.push_back(std::move(name));
  }
}

Recipe build(const Source& source, const Tree& tree, const Surroundings& around, Report& report, Recipe&& spare) {
  return Builder(source, tree, around, report, std::move(spare)).run();
}

}  // namespace qtn
