#include "larder/figures.hpp"

namespace qtn {
namespace {

// Cuts "12.5" off the front; lost() where no number stands there.
Fraction take_number(std::string_view& text) {
  Wide over = 0, under = 1;
  std::size_t at = 0;
  bool point = false;
  for (; at < text.size() && at < 15; ++at) {
    const char c = text[at];
    if (c == '.' && !point) {
      point = true;
    } else if (c >= '0' && c <= '9') {
      over = over * 10 + (c - '0');
      if (point) under *= 10;
    } else {
      break;
    }
  }
  text.remove_prefix(at);
  return at == 0 ? Fraction::lost() : Fraction::of(over, under);
}

bool skip(std::string_view& text, std::string_view word) {
  if (!text.starts_with(word)) return false;
  text.remove_prefix(word.size());
  return true;
}

// American level measures in millilitres: a cup is 236.5882365 ml exactly, half a US pint.
Fraction measure_size(std::string_view text) {
  const Wide cup = 473176473, millionths = 2000000;
  if (text.starts_with(" cup")) return Fraction::of(cup, millionths);
  if (text.starts_with(" fl oz")) return Fraction::of(cup, millionths * 8);
  if (text.starts_with(" tbsp") || text.starts_with(" tablespoon")) return Fraction::of(cup, millionths * 16);
  if (text.starts_with(" tsp") || text.starts_with(" teaspoon")) return Fraction::of(cup, millionths * 48);
  return Fraction::lost();
}

// The weight behind the equals sign, in grams.
Fraction grams_of(std::string_view text) {
  const std::size_t equals = text.find(" = ");
  if (equals == std::string_view::npos) return Fraction::lost();
  text.remove_prefix(equals + 3);
  const Fraction weight = take_number(text);
  if (text.starts_with(" oz")) return weight * size_of(common().ounce, Dialect::british);
  return text.starts_with(" g") ? weight : Fraction::lost();
}

Figure with_source(std::string_view cell) {
  Figure figure;
  figure.source = cell;
  figure.remembered = cell.starts_with("from memory");
  return figure;
}

// What stands behind the source's colon.
std::string_view body_of(std::string_view cell) {
  const std::size_t colon = cell.find(": ");
  return colon == std::string_view::npos ? std::string_view{} : cell.substr(colon + 2);
}

}  // namespace

Fraction plain_number(std::string_view cell) {
  const Fraction value = take_number(cell);
  return cell.empty() ? value : Fraction::lost();
}

Figure density_figure(std::string_view cell) {
  Figure figure = with_source(cell);
  std::string_view body = body_of(cell);
  const Fraction amount = take_number(body);
  if (body == " g per ml")
    figure.value = amount;
  else
    figure.value = grams_of(body) / (amount * measure_size(body));
  return figure;
}

Figure each_figure(std::string_view cell) {
  Figure figure = with_source(cell);
  std::string_view body = body_of(cell);
  const Fraction amount = take_number(body);
  figure.value = grams_of(body) / amount;
  return figure;
}

Figure egg_figure(std::string_view cell) {
  Figure figure = with_source(cell);
  std::string_view text = cell;
  if (skip(text, "band ")) {
    const Fraction low = take_number(text);
    const Fraction high = skip(text, " to ") ? take_number(text) : Fraction::lost();
    figure.value = (low + high) * Fraction::of(1, 2) * Fraction::of(87, 100);
  } else {
    figure.value = grams_of(cell);
  }
  return figure;
}

}  // namespace qtn
