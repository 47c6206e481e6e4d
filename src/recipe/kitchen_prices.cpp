// What things cost: `1.95 per 250 g, 2026-01-05`, `0.35 each`. One currency for the whole house.
#include "measure/money.hpp"
#include "recipe/dates.hpp"
#include "recipe/kitchen_reader.hpp"
#include "words/lexicon.hpp"

namespace qtn {
namespace {

bool starts_number(std::string_view text) { return !text.empty() && text[0] >= '0' && text[0] <= '9'; }
bool is_capital(char c) { return c >= 'A' && c <= 'Z'; }
bool is_code(std::string_view text) { return text.size() == 3 && is_capital(text[0]) && is_capital(text[1]) && is_capital(text[2]); }

}  // namespace

// `currency:` rules over the whole file, wherever it stands.
void KitchenReader::settle_currency() {
  for (View at : View(tree_, 0)) {
    if (at.kind() != Kind::field || field_of(at.value()) != Field::currency || !at.has(Kind::text)) continue;
    currency_ = at.first(Kind::text).span();
    currency_word_ = std::string(trim(in_.slice(currency_)));
  }
}

// Is that sign or code another money than the house's, or than the one that was met first? Then it is said.
bool KitchenReader::other_currency(std::string_view found, Span span) {
  if (currency_word_.empty()) {
    currency_word_ = std::string(found), currency_ = span;
    return false;
  }
  if (lower(found) == lower(currency_word_) || is_sign_of(found, currency_word_) || is_sign_of(currency_word_, found)) return false;
  report_.add(Code::two_currencies, span, "This price is in " + quoted(found) + ", the others are in " + quoted(currency_word_) + ".")
      .find(quoted(found)).also(currency_, "said here").expect("all prices in one currency, this one worked out at the day's rate");
  return true;
}

void KitchenReader::price(Span name, const std::vector<Cell>& cells) {
  HousePrice mine;
  mine.name = in_.slice(name), mine.span = name;
  bool priced = false;
  for (const Cell& cell : cells) {
    const bool amount = cell.word.find(" per ") != std::string::npos || cell.word.ends_with(" each");
    if (amount) {
      said("price", cell.span);
      money(cell, mine);
      priced = true;
    } else if (priced && (starts_number(cell.text) || cell.text.find(' ') != std::string_view::npos)) {
      said("date", cell.span);
      mine.day = read_date(cell.text, cell.span, report_);
      if (mine.day && today_ != 0 && *mine.day > today_)
        report_.add(Code::price_to_come, cell.span, "This price is dated after today.").find(quoted(cell.text))
            .expect("the day it was asked, " + quoted(write_date(today_)) + " at the latest");
    } else {
      wrong(Code::kitchen_price_fact, Field::prices, cell.span);
      priced = true;  // said already that the price cannot be read
    }
  }
  if (!mine.money.is_lost() && !mine.pack.is_lost() && mine.pack.low.sign() > 0) kitchen_.prices.push_back(mine);
}

// The number in front of `per`, without a sign or a code.
std::optional<Fraction> KitchenReader::sum_of_money(Span span) {
  for (std::string_view sign : {"£", "$", "€", "¥"}) {
    if (!in_.slice(span).starts_with(sign)) continue;
    const Span at{span.begin, span.begin + static_cast<std::uint32_t>(sign.size())};
    if (other_currency(sign, at)) return std::nullopt;
    report_.add(Code::kitchen_price_fact, at, "Prices carry no sign: `currency:` says it once for all.").find(quoted(sign))
        .expect("the number alone").fix(at, "", "leave the sign out");
    return std::nullopt;
  }
  const std::string_view text = trim(in_.slice(span));
  const std::size_t blank = text.rfind(' ');
  if (blank != std::string_view::npos && is_code(text.substr(blank + 1))) {
    const auto begin = span.begin + static_cast<std::uint32_t>(text.data() - in_.slice(span).data() + static_cast<std::ptrdiff_t>(blank));
    const Span at{begin, begin + 4};
    const Span code{begin + 1, begin + 4};
    if (other_currency(in_.slice(code), code)) return std::nullopt;
    report_.add(Code::kitchen_price_fact, code, "Prices carry no currency: `currency:` says it once for all.").find(quoted(in_.slice(code)))
        .expect("the number alone").fix(at, "", "leave the currency out");
    return std::nullopt;
  }
  const auto found = figure(Code::kitchen_price_fact, Field::prices, span, {Dimension::count});
  if (!found) return std::nullopt;
  return found->low;
}

void KitchenReader::money(const Cell& cell, HousePrice& mine) {
  const std::size_t at = cell.word.find(" per ");
  if (at == std::string::npos) {  // 0.35 each
    if (const auto sum = sum_of_money({cell.span.begin, cell.span.end - 5}))
      mine.money = *sum, mine.pack = {Fraction(1), Fraction(1), kNoUnit, Manner::plain, false}, mine.loose = true;
    return;
  }
  const auto cut = cell.span.begin + static_cast<std::uint32_t>(at);
  const auto sum = sum_of_money({cell.span.begin, cut});
  if (!sum) return;
  const Span behind{cut + 5, cell.span.end};
  const std::string_view words = in_.slice(behind);
  if (const auto read = counted(behind); read && !read->read.damaged && read->rest.empty() && read->read.amount.low.is_zero()) {
    report_.add(Code::pack_of_nothing, behind, "This is a price for a pack of nothing.").find(quoted(words))
        .expect("what the pack holds: `250 g`, `12`");
    return;
  }
  const auto pack = per(Code::kitchen_price_fact, Field::prices, behind, {Dimension::mass, Dimension::volume, Dimension::count, Dimension::length});
  if (!pack) return;
  mine.money = *sum, mine.pack = *pack;
  // "per kg" is sold by weight; "per 1 kg" and "per punnet" are packs.
  mine.loose = !starts_number(words) && pack->dimension() != Dimension::count;
}

}  // namespace qtn
