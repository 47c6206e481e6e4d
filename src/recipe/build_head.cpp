// Values of head fields and of part heads.
#include <algorithm>

#include "diag/nearest.hpp"
#include "recipe/builder.hpp"
#include "recipe/dates.hpp"
#include "recipe/phases.hpp"
#include "recipe/tins.hpp"
#include "words/lexicon.hpp"

namespace qtn {
namespace {

struct Form {
  Field field;
  std::string_view looks;
};
// What a value of each field looks like, for when it does not.
constexpr Form kForms[] = {
    {Field::makes, "an amount or a count: `1 tart`, `2.5 l`, `10 jars of 330 g`"},
    {Field::serves, "a number or a range: `6 to 8`"},
    {Field::keeps, "a time and a place: `2 days chilled, 3 months frozen`"},
    {Field::ready, "`after` and a time: `after 2 weeks`"},
    {Field::scales, "a range of times the recipe: `1/2 to 4`"},
    {Field::at_most, "an amount and `at a time`: `1.5 kg oranges at a time`"},
    {Field::tin, "a size and a shape: `23 cm round, 3 cm deep`, `20 x 30 cm`, `12 x 7 cm holes, 3 cm deep`, `1.2 l basin`"},
    {Field::use, "a name, `from`, and a file: `Shortcrust from pastry/shortcrust.qtn`"},
    {Field::measures, "`British`, `American` or `Australian`"},
    {Field::words, "`British` or `American`"},
    {Field::oven, "`conventional`, `fan` or `gas`"},
};

std::string_view form_of(Field field) {
  for (const Form& form : kForms)
    if (form.field == field) return form.looks;
  return "a value after the colon";
}

KeepPlace keep_place(std::string_view word) {
  if (word == "chilled" || word == "in the fridge") return KeepPlace::chilled;
  if (word == "frozen" || word == "in the freezer") return KeepPlace::frozen;
  if (word == "cool" || word == "in the larder") return KeepPlace::cool;
  if (word == "sealed") return KeepPlace::sealed;
  return KeepPlace::room;
}

Use use_of(const Source& source, View at) {
  Use use;
  use.span = at.span();
  use.name_span = at.first(Kind::use_name).span();
  use.name = source.text(use.name_span);
  use.path_span = at.first(Kind::path).span();
  use.path = source.text(use.path_span);
  use.as = at.has(Kind::use_as) ? source.text(at.first(Kind::use_as).span()) : use.name;
  return use;
}

}  // namespace

void Builder::bad_value(Field field, Span span) {
  report_.add(Code::unreadable_value, span, "`" + std::string(row(field).word) + ":` cannot read this value.")
      .find("`" + std::string(in_.slice(span)) + "`").expect(std::string(form_of(field)));
}

void Builder::head_value(Field field, View at) {
  if (at.has(Kind::bad_value)) return bad_value(field, at.first(Kind::bad_value).span());
  if (at.has(Kind::text)) return text_value(field, at.first(Kind::text).span());
  if (at->size == 2) {  // only the word
    report_.add(Code::empty_field, at.first(Kind::word).span(), "`" + std::string(row(field).word) + ":` says nothing.")
        .expect(std::string(form_of(field)));
    return;
  }
  const bool in_part = part_ != kNone && !recipe_.parts[part_].unnamed;
  Part* const own = in_part ? &recipe_.parts[part_] : nullptr;
  switch (field) {
    case Field::makes: return read_makes(at, own != nullptr ? own->makes : recipe_.makes);
    case Field::keeps: return read_keeps(at, own != nullptr ? own->keeps : recipe_.keeps);
    case Field::tin: {
      std::optional<Tin>& tin = own != nullptr ? own->tin : recipe_.tin;
      if (!tin) tin = read_tin(in_, at);
      return;
    }
    case Field::at_most: return read_batch(at, own != nullptr ? own->batch : recipe_.batch);
    case Field::use: return read_use(at);
    case Field::ready:
    case Field::scales:
    case Field::serves: {
      const ReadAmount read = read_amount(in_, at.first(Kind::amt), Place::head);
      if (read.damaged) return;
      const Dimension want = field == Field::ready ? Dimension::duration : Dimension::count;
      const std::string where = "`" + std::string(row(field).word) + ":` wants";
      if (!expect_dimension(in_, read.amount, read.span, {want}, where)) return;
      if (field == Field::serves && is_nothing(field, read.amount, read.span)) return;
      if (field == Field::ready) (own != nullptr ? own->ready_after : recipe_.ready_after) = read.amount;
      else if (field == Field::scales) recipe_.scales = read.amount;
      else recipe_.serves = read.amount, recipe_.serves_span = read.span;
      return;
    }
    default: recipe_.facts.push_back({field, at.span()});
  }
}

void Builder::text_value(Field field, Span value) {
  const std::string_view text = trim(in_.slice(value));
  const bool choice = field == Field::measures || field == Field::words || field == Field::oven;
  const std::string word = choice ? lower(text) : std::string();
  const auto wrong = [&](std::initializer_list<std::string_view> known) {
    const std::vector<std::string_view> list(known);
    const auto near = nearest(word, list);
    auto& problem = report_.add(Code::unknown_choice, value, "`" + std::string(row(field).word) + ": " + std::string(text) +
                                "` is not known. " + did_you_mean(near));
    problem.expect(std::string(form_of(field))).find("`" + std::string(text) + "`");
    if (near.size() == 1) problem.offer(value, std::string(near[0]), "write `" + std::string(near[0]) + "`");
  };
  switch (field) {
    case Field::recipe:
    case Field::menu: recipe_.title = text; break;
    case Field::measures:
      if (word != "british" && word != "american" && word != "australian") wrong({"British", "American", "Australian"});
      break;
    case Field::words:
      if (word == "british") recipe_.words = WordsOf::british;
      else if (word == "american") recipe_.words = WordsOf::american;
      else wrong({"British", "American"});
      break;
    case Field::oven:
      recipe_.oven = oven_named(word);
      if (recipe_.oven == OvenKind::unstated) wrong({"conventional", "fan", "gas"});
      break;
    case Field::date:
      read_date(text, value, report_);
      break;
    case Field::photo: photo_path(text, value); break;
    default: break;
  }
  if (part_ != kNone && field == Field::note) recipe_.parts[part_].notes.push_back({field, value});
  else recipe_.facts.push_back({field, value});
}

// A picture is handed on with the book, so its path stays inside it, as that of a used recipe does.
void Builder::photo_path(std::string_view text, Span span) {
  const bool plain = text.find('\\') == std::string_view::npos && text.find("://") == std::string_view::npos;
  if (!plain)
    report_.add(Code::use_path_form, span, "This is no path inside the book.").find("`" + std::string(text) + "`").expect("a path with `/`: `photos/tart.jpg`");
  else if (text.front() == '/' || text.find("..") != std::string_view::npos)
    report_.add(Code::use_outside_book, span, "This picture lies outside the book.").find("`" + std::string(text) + "`").expect("a path inside it: `photos/tart.jpg`");
}

// A yield of nothing: no amount can be worked out from it, and nothing can be made to another size.
bool Builder::is_nothing(Field field, const Quantity& amount, Span span) {
  if (!amount.low.is_zero()) return false;
  report_.add(Code::zero_amount, Severity::error, span, "`" + std::string(row(field).word) + ":` must be more than nothing.")
      .find("`" + std::string(in_.slice(span)) + "`").expect("an amount above 0, or no `" + std::string(row(field).word) + ":`");
  return true;
}

void Builder::read_makes(View at, std::vector<Made>& out) {
  for (View one : at) {
    if (one.kind() != Kind::made && one.kind() != Kind::by_product) continue;
    Made made;
    made.by_product = one.kind() == Kind::by_product;
    made.span = one.span();
    bool first = true, damaged = false;
    for (View child : one) {
      if (child.kind() == Kind::name) made.thing = in_.slice(child.span());
      if (child.kind() != Kind::amt) continue;
      const ReadAmount read = read_amount(in_, child, Place::head);
      damaged = damaged || read.damaged;
      if (damaged) break;
      if (first) {
        made.amount = read.amount, made.amount_span = read.span;
        damaged = !expect_dimension(in_, read.amount, read.span, {Dimension::count, Dimension::mass, Dimension::volume}, "`makes:` wants") ||
                  is_nothing(Field::makes, read.amount, read.span);
      } else {
        made.each = read.amount;
        damaged = !expect_dimension(in_, read.amount, read.span, {Dimension::mass, Dimension::volume}, "what each weighs is") ||
                  is_nothing(Field::makes, read.amount, read.span);
      }
      first = false;
    }
    if (lower(made.thing.substr(0, 2)) == "x " || made.thing.substr(0, 2) == "×") {
      bad_value(Field::makes, made.span);  // 4 x 50 g buns: written `4 buns of 50 g`
      damaged = true;
    }
    if (damaged) {
      made.damaged = true;
      made.amount = {Fraction::lost(), Fraction::lost(), common().gram, Manner::plain, false};
      made.each.reset();
    }
    out.push_back(made);
  }
}

void Builder::read_keeps(View at, std::vector<Keep>& out) {
  for (View one : at) {
    if (one.kind() != Kind::kept) continue;
    Keep keep;
    keep.span = one.span();
    const ReadAmount read = read_amount(in_, one.first(Kind::amt), Place::head);
    if (read.damaged || !expect_dimension(in_, read.amount, read.span, {Dimension::duration}, "`keeps:` wants")) continue;
    keep.length = read.amount, keep.length_span = read.span;
    keep.once_open = one.has(Kind::once_open);
    if (one.has(Kind::keep_place)) {
      keep.place = keep_place(Lexicon::standard().row(one.first(Kind::keep_place).value()).text);
    } else if (!keep.once_open) {
      report_.add(Code::keeps_without_place, one.span(), "How long it keeps hangs on where.")
          .find("`" + std::string(in_.slice(one.span())) + "`").expect("a place after the time: chilled, frozen, cool, room or sealed");
      continue;
    }
    out.push_back(keep);
  }
}

void Builder::read_batch(View at, std::optional<Batch>& out) {
  const ReadAmount read = read_amount(in_, at.first(Kind::amt), Place::head);
  if (read.damaged || !expect_dimension(in_, read.amount, read.span, {Dimension::count, Dimension::mass, Dimension::volume}, "`at most:` wants")) return;
  Batch batch{read.amount, {}, at.span()};
  if (at.has(Kind::name)) batch.thing = in_.slice(at.first(Kind::name).span());
  out = batch;
}

void Builder::read_use(View at) {
  Use use = use_of(*recipe_.source, at);
  const std::size_t index = recipe_.uses.size();
  if (index < around_.uses.size()) use.recipe = around_.uses[index];
  if (use.recipe != nullptr && lower(use.recipe->title) != lower(use.name))
    for (Index i = 0; i < use.recipe->parts.size(); ++i)
      if (lower(use.recipe->parts[i].name) == lower(use.name)) use.part = i;
  recipe_.uses.push_back(use);
}

void Builder::read_film(View block) {
  for (View line : block) {
    if (line.kind() == Kind::bad_line) {
      report_.add(Code::unreadable_line, line.span(), "This is no mark of a film.")
          .find("`" + std::string(in_.slice(line.span())) + "`").expect("a clock time and a title: `0:00  Pastry`");
      continue;
    }
    if (line.kind() != Kind::fact) continue;
    const Span clock = line.first(Kind::clock).span();
    const std::string_view text = in_.slice(clock);
    int seconds = 0, part = 0;
    for (char c : text) {
      if (c == ':') seconds = (seconds + part) * 60, part = 0;
      else part = part * 10 + (c - '0');
    }
    seconds += part;
    const Span title{clock.end, line->end};
    if (recipe_.film.empty() && seconds != 0)
      report_.add(Code::film_order, clock, "The first mark of a film is at its start.").find("`" + std::string(text) + "`").expect("`0:00`");
    if (!recipe_.film.empty() && seconds <= recipe_.film.back().seconds)
      report_.add(Code::film_order, clock, "The marks of a film run forward in time.").find("`" + std::string(text) + "`")
          .expect("a time after the mark above").also(recipe_.film.back().clock, "the mark above");
    recipe_.film.push_back({seconds, clock, title});
  }
}

std::vector<Use> uses_of(const Source& source, const Tree& tree) {
  std::vector<Use> uses;
  for (View at : View(tree, 0))
    if (at.kind() == Kind::field && field_of(at.value()) == Field::use && at.has(Kind::path)) uses.push_back(use_of(source, at));
  return uses;
}

}  // namespace qtn
