// The kitchen's single fields, and the file as a whole.
#include <algorithm>

#include "diag/nearest.hpp"
#include "recipe/kitchen_reader.hpp"
#include "recipe/phases.hpp"

namespace qtn {
namespace {

// "22:00" as minutes of the day; -1 when the clock has no such time.
int clock(std::string_view text) {
  if (text.size() != 5 || text[2] != ':') return -1;
  for (std::size_t i : {0u, 1u, 3u, 4u})
    if (text[i] < '0' || text[i] > '9') return -1;
  const int hour = (text[0] - '0') * 10 + text[1] - '0', minute = (text[3] - '0') * 10 + text[4] - '0';
  return hour < 24 && minute < 60 ? hour * 60 + minute : -1;
}

bool is_letter(char c) { return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z'); }

}  // namespace

KitchenReader::KitchenReader(const Source& source, const Tree& tree, int today, Report& report)
    : in_{source, report, Dialect::unstated, {}}, tree_(tree), report_(report), today_(today) {
  kitchen_.work = {Fraction(5), Fraction(5), common().minute, Manner::plain, false};
}

Kitchen KitchenReader::run() {
  settle_dialect();
  settle_currency();
  for (View at : View(tree_, 0)) {
    if (at.kind() == Kind::field) field(at);
    else if (at.kind() == Kind::block) block(at);
    else if (at.kind() == Kind::unknown_field) unknown(at);
    else
      report_.add(Code::stray_line, at.span(), "This line belongs to no field.")
          .find(quoted(in_.slice(at.span()))).expect("a field of the kitchen, such as `ovens:`");
  }
  choose_oven();
  house_words();
  return std::move(kitchen_);
}

// `measures:` rules over the whole file, wherever it stands.
void KitchenReader::settle_dialect() {
  for (View at : View(tree_, 0)) {
    if (at.kind() != Kind::field || field_of(at.value()) != Field::measures || !at.has(Kind::text)) continue;
    const std::string word = lower(trim(in_.slice(at.first(Kind::text).span())));
    for (Dialect dialect : {Dialect::british, Dialect::american, Dialect::australian})
      if (word == lower(name_of(dialect))) kitchen_.dialect = in_.dialect = dialect;
  }
}

void KitchenReader::unknown(View at) {
  const Span word = at.first(Kind::word).span();
  const std::string_view text = in_.slice(word);
  const Field known = field_of(at.value());
  if (known != Field::none) {
    report_.add(Code::field_out_of_place, word, quoted(std::string(text) + ":") + " cannot stand in a kitchen's file.")
        .expect("it belongs in a recipe or a menu");
    return;
  }
  const auto words = field_words(kKitchen);
  const auto near = nearest(lower(text), words);
  auto& problem = report_.add(Code::unknown_field, word,
                              quoted(std::string(text) + ":") + " is not a field of a kitchen." +
                                  (near.empty() ? "" : " " + did_you_mean(near)));
  problem.find(quoted(std::string(text) + ":")).expect("a field of the kitchen, such as `ovens:`");
  for (std::string_view one : near) problem.offer(word, std::string(one), "write " + quoted(std::string(one) + ":"));
}

void KitchenReader::misspelt(View at) {
  if ((at.value() & kMisspelt) == 0) return;
  const Span word = at.first(Kind::word).span();
  const std::string meant(row(field_of(at.value())).word);
  report_.add(Code::unknown_field, word, quoted(in_.slice(word)) + " is not a field; did you mean " + quoted(meant) + "?")
      .find(quoted(in_.slice(word))).expect(quoted(meant)).fix(word, meant, "write " + quoted(meant));
}

void KitchenReader::once(Field which, Span word) {
  for (const auto& [field, span] : seen_)
    if (field == which) {
      report_.add(Code::repeated_field, word, quoted(std::string(row(which).word) + ":") + " stands here a second time.")
          .also(span, "the first is here").expect("one " + quoted(std::string(row(which).word) + ":") + " in this file");
      return;
    }
  seen_.push_back({which, word});
}

void KitchenReader::no_value(Field which, Span span) {
  report_.add(Code::unreadable_value, span, quoted(std::string(row(which).word) + ":") + " cannot read this value.")
      .find(quoted(in_.slice(span))).expect(std::string(kitchen_form(which)));
}

void KitchenReader::field(View at) {
  const Field which = field_of(at.value());
  const Span word = at.first(Kind::word).span();
  misspelt(at);
  once(which, word);
  if (at->size == 2) {  // only the word
    report_.add(Code::empty_field, word, quoted(std::string(row(which).word) + ":") + " says nothing.")
        .expect(std::string(kitchen_form(which)));
    return;
  }
  const Span span{(*++at.begin())->begin, at->end};
  kitchen_.facts.push_back({which, word, span});
  if (at.has(Kind::bad_value)) return no_value(which, span);
  if (at.has(Kind::text)) text_field(which, span);
  else value_field(which, at, span);
}

void KitchenReader::choose(Field which, Span span, std::initializer_list<std::string_view> known) {
  const std::vector<std::string_view> words(known);
  const auto near = nearest(in_.slice(span), words);
  auto& problem = report_.add(Code::unknown_choice, span,
                              quoted(std::string(row(which).word) + ": " + std::string(in_.slice(span))) + " is not known." +
                                  (near.empty() ? "" : " " + did_you_mean(near)));
  problem.find(quoted(in_.slice(span))).expect(std::string(kitchen_form(which)));
  for (std::string_view one : near) problem.offer(span, std::string(one), "write " + quoted(one));
}

void KitchenReader::text_field(Field which, Span span) {
  const std::string_view text = trim(in_.slice(span));
  const std::string word = lower(text);
  switch (which) {
    case Field::kitchen: kitchen_.name = text; break;
    case Field::measures:
      if (kitchen_.dialect == Dialect::unstated) choose(which, span, {"British", "American", "Australian"});
      break;
    case Field::words:
      if (word == "british") kitchen_.words = WordsOf::british;
      else if (word == "american") kitchen_.words = WordsOf::american;
      else choose(which, span, {"British", "American"});
      break;
    case Field::law:
      if (word == "uk" || word == "eu" || word == "us") kitchen_.law = text;
      else choose(which, span, {"UK", "EU", "US"});
      break;
    case Field::seasoning:
      kitchen_.gentle_seasoning = word == "gently";
      if (word != "gently" && word != "in proportion") choose(which, span, {"gently", "in proportion"});
      break;
    case Field::currency:
      if (text.size() == 3 && std::all_of(text.begin(), text.end(), is_letter)) kitchen_.currency = text;
      else
        report_.add(Code::kitchen_currency, span, quoted(text) + " is no currency.").find(quoted(text))
            .expect(std::string(kitchen_form(which)));
      break;
    case Field::way:
      if (word == "hand") kitchen_.way = StepWay::by_hand;
      else if (word == "machine") kitchen_.way = StepWay::by_machine;
      else choose(which, span, {"hand", "machine"});
      break;
    case Field::night: night(span); break;
    case Field::zone: kitchen_.zone = text; break;
    default:
      report_.add(Code::field_out_of_place, span, quoted(std::string(row(which).word) + ":") + " cannot stand in a kitchen's file.")
          .expect("it belongs in a recipe or a menu");
      break;
  }
}

void KitchenReader::night(Span span) {
  const std::string text = lower(trim(in_.slice(span)));
  const std::size_t to = text.find(" to ");
  const int from = to == std::string::npos ? -1 : clock(trim(std::string_view(text).substr(0, to)));
  const int until = to == std::string::npos ? -1 : clock(trim(std::string_view(text).substr(to + 4)));
  if (from < 0 || until < 0) {
    report_.add(Code::kitchen_not_a_clock, span, "This is no pair of clock times.").find(quoted(in_.slice(span)))
        .expect(std::string(kitchen_form(Field::night)));
  } else if (from == until) {
    report_.add(Code::kitchen_night, span, "This night has no length.").find(quoted(in_.slice(span)))
        .expect(std::string(kitchen_form(Field::night)));
  } else {
    kitchen_.night_from = from, kitchen_.night_to = until;
  }
}

void KitchenReader::value_field(Field which, View at, Span span) {
  if (at.has(Kind::by_guide)) {
    kitchen_.standardized = true;
    return;
  }
  const ReadAmount read = read_amount(in_, at.first(Kind::amt), Place::head);
  if (read.damaged) return;
  const std::string rest = at.has(Kind::name) ? lower(in_.slice(at.first(Kind::name).span())) : std::string();
  const bool cooks = which == Field::cooks && (rest == "cooks" || rest == "cook" || rest == "people");
  if (!rest.empty() && !cooks) return no_value(which, span);
  const Dimension wanted = which == Field::cooks      ? Dimension::count
                           : which == Field::rounding ? Dimension::ratio
                           : which == Field::work     ? Dimension::duration
                                                      : Dimension::mass;
  if (!expect_dimension(in_, read.amount, read.span, {wanted}, quoted(std::string(row(which).word) + ":") + " wants")) return;
  const Fraction size = in_base(read.amount, in_.dialect).low;
  if (which == Field::cooks) {
    if (read.amount.is_range() || !size.is_whole() || size < Fraction(1) || size > Fraction(99))
      report_.add(Code::kitchen_cooks, span, "This is no number of cooks.").find(quoted(in_.slice(span)))
          .expect("a whole number from 1 to 99");
    else kitchen_.cooks = static_cast<int>(size.over());
    return;
  }
  if (which == Field::rounding) {
    if (read.amount.is_range() || size < Fraction::of(1, 100) || size > Fraction::of(1, 10))
      report_.add(Code::kitchen_rounding, span, "Cards are rounded to between 1 and 10 %.").find(quoted(in_.slice(span)))
          .expect("`5 %`, or another from 1 to 10 %");
    else kitchen_.tolerance = size;
    return;
  }
  if (read.amount.is_range()) return no_value(which, span);
  if (size.sign() <= 0) {
    report_.add(Code::zero_amount, Severity::error, read.span, quoted(std::string(row(which).word) + ":") + " must be more than nothing.")
        .find(quoted(in_.slice(read.span))).expect(std::string(kitchen_form(which)));
    return;
  }
  if (which == Field::work) kitchen_.work = read.amount;
  else kitchen_.finest = size;
}

Kitchen check_kitchen(const Source& source, const Tree& tree, Report& report, int today) {
  check_text(source, report);
  return KitchenReader(source, tree, today, report).run();
}

}  // namespace qtn
