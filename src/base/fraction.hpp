// Exact fractions: every amount from the text to the card is one of these.
// Overflow is a value, not an exception: a fraction that does not fit becomes `Fraction::lost()`, spreads through
// every sum it enters, and is reported once as a diagnostic by whoever first sees it.
#pragma once
#include <cstdint>
#include <string>

namespace qtn {

__extension__ typedef __int128 Wide;  // GCC and Clang both have it; pedantic C++ has no name for it

class Fraction {
 public:
  constexpr Fraction() = default;
  constexpr Fraction(std::int64_t whole) : over_(whole) {}  // NOLINT: a whole number is a fraction
  // over/under, reduced; under == 0 gives lost().
  static Fraction of(Wide over, Wide under);
  static constexpr Fraction lost() { return Fraction(Raw{}, 0, 0); }

  constexpr bool is_lost() const { return under_ == 0; }
  constexpr Wide over() const { return over_; }
  constexpr Wide under() const { return under_; }  // > 0 unless lost
  constexpr bool is_whole() const { return under_ == 1; }
  constexpr bool is_zero() const { return over_ == 0 && under_ != 0; }
  constexpr int sign() const { return over_ > 0 ? 1 : over_ < 0 ? -1 : 0; }

  Fraction operator-() const { return Fraction(Raw{}, -over_, under_); }
  Fraction& operator+=(const Fraction& b) { return *this = *this + b; }
  Fraction& operator-=(const Fraction& b) { return *this = *this - b; }
  Fraction& operator*=(const Fraction& b) { return *this = *this * b; }
  Fraction& operator/=(const Fraction& b) { return *this = *this / b; }

  // Nearly every amount is a short whole number; those are summed and compared on the spot.
  friend Fraction operator+(const Fraction& a, const Fraction& b) {
    if (a.is_short() && b.is_short()) return Fraction(Raw{}, a.over_ + b.over_, 1);
    return added(a, b);
  }
  friend Fraction operator-(const Fraction& a, const Fraction& b) { return a + -b; }
  friend Fraction operator*(const Fraction& a, const Fraction& b) {
    if (a.is_short() && b.is_short()) return Fraction(Raw{}, a.over_ * b.over_, 1);
    return multiplied(a, b);
  }
  friend Fraction operator/(const Fraction& a, const Fraction& b);  // by zero: lost
  // Lost is equal to nothing but lost, and neither above nor below anything.
  friend bool operator==(const Fraction& a, const Fraction& b) { return a.over_ == b.over_ && a.under_ == b.under_; }
  friend bool operator<(const Fraction& a, const Fraction& b) { return compare(a, b) < 0; }
  friend bool operator>(const Fraction& a, const Fraction& b) { return compare(a, b) == 1; }
  friend bool operator<=(const Fraction& a, const Fraction& b) { return a < b || a == b; }
  friend bool operator>=(const Fraction& a, const Fraction& b) { return a > b || a == b; }

  Fraction abs() const { return sign() < 0 ? -*this : *this; }
  Wide floor() const;    // towards minus infinity; 0 when lost
  Wide ceil() const;     // towards plus infinity; 0 when lost
  Wide nearest() const;  // ties up; 0 when lost
  double approx() const;  // for display and estimates only

  // "3", "3/4", "-7/2"; "?" when lost. What JSON and `read` show as the exact value.
  std::string exact() const;
  // Decimal with at most `places` digits, rounded half up, no trailing zeros: "0.25", "28.35".
  std::string decimal(int places) const;

 private:
  struct Raw {};
  constexpr Fraction(Raw, Wide over, Wide under) : over_(over), under_(under) {}
  constexpr bool is_short() const { return under_ == 1 && over_ == static_cast<std::int64_t>(over_); }
  static int compare(const Fraction& a, const Fraction& b) {  // -1, 0, 1; 2 when either is lost
    if (a.under_ == 0 || b.under_ == 0) return 2;
    if (a.under_ == b.under_) return a.over_ < b.over_ ? -1 : a.over_ > b.over_ ? 1 : 0;
    return compared(a, b);
  }
  // The same for any fractions.
  static Fraction added(const Fraction& a, const Fraction& b);
  static Fraction multiplied(const Fraction& a, const Fraction& b);
  static int compared(const Fraction& a, const Fraction& b);

  Wide over_ = 0;
  Wide under_ = 1;
};

std::string to_text(Wide number);

}  // namespace qtn
