#include "base/fraction.hpp"

#include <algorithm>

namespace qtn {
namespace {

__extension__ typedef unsigned __int128 UWide;
using Narrow = std::int64_t;

constexpr bool fits(Wide w) { return static_cast<Wide>(static_cast<Narrow>(w)) == w; }
constexpr std::uint64_t magnitude(Narrow n) { return n < 0 ? 0 - static_cast<std::uint64_t>(n) : static_cast<std::uint64_t>(n); }

std::uint64_t common(std::uint64_t a, std::uint64_t b) {
  if (a == 0 || b == 0) return a | b;
  const int shift = __builtin_ctzll(a | b);
  a >>= __builtin_ctzll(a);
  while (b != 0) {  // without a branch on which is larger, since nobody can guess it
    b >>= __builtin_ctzll(b);
    const std::uint64_t less = std::min(a, b);
    b = std::max(a, b) - less;
    a = less;
  }
  return a << shift;
}

// Greatest common divisor of magnitudes; the 64-bit road is the one nearly every amount takes.
Wide common(Wide a, Wide b) {
  a = a < 0 ? -a : a;
  b = b < 0 ? -b : b;
  while (!fits(a) || !fits(b)) {
    if (b == 0) return a;
    const Wide rest = a % b;
    a = b;
    b = rest;
  }
  return static_cast<Wide>(common(static_cast<std::uint64_t>(a), static_cast<std::uint64_t>(b)));
}

bool multiply(Wide a, Wide b, Wide& out) {
  if (fits(a) && fits(b)) {
    out = a * b;
    return true;
  }
  return !__builtin_mul_overflow(a, b, &out);
}

// The most negative value has no magnitude; keeping it out lets every other step negate freely.
constexpr Wide kMost = static_cast<Wide>((static_cast<UWide>(1) << 127) - 1);
bool in_range(Wide w) { return w >= -kMost; }

}  // namespace

Fraction Fraction::of(Wide over, Wide under) {
  if (under == 0 || !in_range(over) || !in_range(under)) return lost();
  if (under < 0) over = -over, under = -under;
  if (under == 1) return Fraction(Raw{}, over, 1);
  if (fits(over) && fits(under)) {  // 64-bit division: the road of nearly every amount
    const auto top = static_cast<Narrow>(over), bottom = static_cast<Narrow>(under);
    const std::uint64_t shared = common(magnitude(top), magnitude(bottom));
    if (shared == 1) return Fraction(Raw{}, over, under);
    const auto small = static_cast<Narrow>(shared);
    return Fraction(Raw{}, top / small, bottom / small);
  }
  const Wide g = common(over, under);
  return Fraction(Raw{}, over / g, under / g);
}

Fraction Fraction::added(const Fraction& a, const Fraction& b) {
  if (a.is_lost() || b.is_lost()) return lost();
  Wide sum;
  if (a.under_ == b.under_) {
    if (__builtin_add_overflow(a.over_, b.over_, &sum)) return lost();
    return of(sum, a.under_);
  }
  if (fits(a.over_) && fits(a.under_) && fits(b.over_) && fits(b.under_)) {
    // Nothing overflows, and without a common divisor below, the sum has none either.
    const auto left = static_cast<Narrow>(a.under_), right = static_cast<Narrow>(b.under_);
    const auto shared = left == 1 || right == 1 ? Narrow{1} : static_cast<Narrow>(common(magnitude(left), magnitude(right)));
    if (shared == 1) return Fraction(Raw{}, a.over_ * right + b.over_ * left, a.under_ * right);
    return of(a.over_ * (right / shared) + b.over_ * (left / shared), a.under_ * (right / shared));
  }
  const Wide g = common(a.under_, b.under_);
  Wide left, right, under;
  if (!multiply(a.over_, b.under_ / g, left) || !multiply(b.over_, a.under_ / g, right) ||
      !multiply(a.under_, b.under_ / g, under) || __builtin_add_overflow(left, right, &sum))
    return lost();
  return of(sum, under);
}

Fraction Fraction::multiplied(const Fraction& a, const Fraction& b) {
  if (a.is_lost() || b.is_lost()) return lost();
  if (b.over_ == 1 && b.under_ == 1) return a;
  if (a.over_ == 1 && a.under_ == 1) return b;
  // Reduced crosswise first, so that the product is in lowest terms and as small as it can be.
  if (fits(a.over_) && fits(a.under_) && fits(b.over_) && fits(b.under_)) {
    if (a.over_ == 0 || b.over_ == 0) return Fraction(0);
    auto top = static_cast<Narrow>(a.over_), bottom = static_cast<Narrow>(a.under_);
    auto over = static_cast<Narrow>(b.over_), under = static_cast<Narrow>(b.under_);
    const auto reduce = [](Narrow& one, Narrow& other) {
      if (other == 1) return;
      const auto shared = static_cast<Narrow>(common(magnitude(one), magnitude(other)));
      if (shared != 1) one /= shared, other /= shared;
    };
    reduce(top, under), reduce(over, bottom);
    return Fraction(Raw{}, static_cast<Wide>(top) * over, static_cast<Wide>(bottom) * under);
  }
  const Wide g = common(a.over_, b.under_), h = common(b.over_, a.under_);
  if (g == 0 || h == 0) return Fraction(0);
  Wide over, under;
  if (!multiply(a.over_ / g, b.over_ / h, over) || !multiply(a.under_ / h, b.under_ / g, under) || !in_range(over))
    return lost();
  return Fraction(Raw{}, over, under);
}

Fraction operator/(const Fraction& a, const Fraction& b) {
  if (b.is_lost() || b.is_zero()) return Fraction::lost();
  return a * (b.over_ < 0 ? Fraction(Fraction::Raw{}, -b.under_, -b.over_) : Fraction(Fraction::Raw{}, b.under_, b.over_));
}

int Fraction::compared(const Fraction& a, const Fraction& b) {
  Wide left, right;
  if (multiply(a.over_, b.under_, left) && multiply(b.over_, a.under_, right))
    return left < right ? -1 : left > right ? 1 : 0;
  // Too wide to cross-multiply: compare whole parts, then the turned-over remainders (a continued fraction).
  Fraction x = a, y = b;
  bool turned = false;
  while (true) {
    const Wide wx = x.floor(), wy = y.floor();
    if (wx != wy) return (wx < wy) != turned ? -1 : 1;
    const Wide rx = x.over_ - wx * x.under_, ry = y.over_ - wy * y.under_;
    if (rx == 0 || ry == 0) {
      if (rx == ry) return 0;
      return (rx == 0) != turned ? -1 : 1;
    }
    x = Fraction(Raw{}, x.under_, rx), y = Fraction(Raw{}, y.under_, ry);
    turned = !turned;
  }
}

Wide Fraction::floor() const {
  if (is_lost()) return 0;
  if (under_ == 1) return over_;
  if (fits(over_) && fits(under_)) {
    const auto top = static_cast<Narrow>(over_), bottom = static_cast<Narrow>(under_);
    return top / bottom - (top % bottom < 0 ? 1 : 0);
  }
  const Wide whole = over_ / under_;
  return over_ % under_ < 0 ? whole - 1 : whole;
}

Wide Fraction::ceil() const {
  if (is_lost()) return 0;
  return -(-*this).floor();
}

Wide Fraction::nearest() const {
  if (under_ == 1) return over_;
  if (fits(over_) && fits(under_)) {  // half the divisor more, and down
    const Wide twice = 2 * over_ + under_, divisor = 2 * under_;
    if (fits(twice) && fits(divisor)) {
      const auto top = static_cast<Narrow>(twice), bottom = static_cast<Narrow>(divisor);
      return bottom == 0 ? 0 : top / bottom - (top % bottom < 0 ? 1 : 0);
    }
  }
  return (*this + Fraction(Raw{}, 1, 2)).floor();
}

double Fraction::approx() const {
  return is_lost() ? 0.0 : static_cast<double>(over_) / static_cast<double>(under_);
}

std::string to_text(Wide number) {
  if (number == 0) return "0";
  const bool minus = number < 0;
  if (fits(number)) return std::to_string(static_cast<Narrow>(number));
  std::string digits;
  for (Wide rest = number; rest != 0; rest /= 10) {
    const int digit = static_cast<int>(rest % 10);
    digits.push_back(static_cast<char>('0' + (digit < 0 ? -digit : digit)));
  }
  if (minus) digits.push_back('-');
  std::reverse(digits.begin(), digits.end());
  return digits;
}

std::string Fraction::exact() const {
  if (is_lost()) return "?";
  return is_whole() ? to_text(over_) : to_text(over_) + "/" + to_text(under_);
}

std::string Fraction::decimal(int places) const {
  if (is_lost()) return "?";
  const bool minus = sign() < 0;
  const Fraction size = abs();
  Wide tens = 1;
  for (int i = 0; i < places; ++i) tens *= 10;
  const Fraction shifted = size * of(tens, 1);
  if (shifted.is_lost()) return to_text(over_ / under_);  // a number this long has no use for its decimals
  const Wide rounded = shifted.nearest();
  std::string text = to_text(rounded / tens);
  if (Wide rest = rounded % tens; rest != 0) {
    std::string tail = to_text(rest);
    tail.insert(0, static_cast<std::size_t>(places) - tail.size(), '0');
    while (tail.back() == '0') tail.pop_back();
    text += "." + tail;
  }
  return minus && rounded != 0 ? "-" + text : text;
}

}  // namespace qtn
