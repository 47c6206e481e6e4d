// Exact fractions: identities, order, the road to lost, and text.
#include "base/fraction.hpp"

#include <doctest/doctest.h>

#include <array>
#include <random>

using namespace qtn;

namespace {

const Wide kMost = (Wide{1} << 126) - 1 + (Wide{1} << 126);
Fraction f(Wide over, Wide under = 1) {
  return Fraction::of(over, under);
}

std::mt19937_64& dice() {
  static std::mt19937_64 made(42);
  return made;
}
// Up to `bits` bits, either sign.
Wide random_wide(int bits) {
  Wide value = 0;
  for (int i = 0; i < 4; ++i) value = (value << 31) ^ static_cast<Wide>(dice()() >> 33);
  value &= (Wide{1} << bits) - 1;
  return (dice()() & 1u) != 0 ? -value : value;
}
Fraction random_fraction(int bits) {
  const Wide under = random_wide(bits);
  return f(random_wide(bits), under == 0 ? 1 : under);
}

// a * b as four 64-bit limbs, schoolbook: an order that owes nothing to the one under test.
using Limbs = std::array<std::uint32_t, 8>;
Limbs product(Wide a, Wide b) {
  Limbs made{};
  const auto limb = [](Wide w, int i) { return static_cast<std::uint64_t>((w >> (32 * i)) & 0xffffffff); };
  for (int i = 0; i < 4; ++i) {
    std::uint64_t carry = 0;
    for (int j = 0; j < 4; ++j) {
      const auto at = static_cast<std::size_t>(i + j);
      const std::uint64_t sum = limb(a, i) * limb(b, j) + made[at] + carry;
      made[at] = static_cast<std::uint32_t>(sum);
      carry = sum >> 32;
    }
    made[static_cast<std::size_t>(i + 4)] = static_cast<std::uint32_t>(carry);
  }
  return made;
}
bool below(const Fraction& a, const Fraction& b) {  // both above nothing
  const Limbs left = product(a.over(), b.under()), right = product(b.over(), a.under());
  for (std::size_t i = 8; i-- > 0;)
    if (left[i] != right[i]) return left[i] < right[i];
  return false;
}

}  // namespace

TEST_CASE("fractions are in lowest terms, with the sign above") {
  CHECK(f(6, 4).exact() == "3/2");
  CHECK(f(6, -4).exact() == "-3/2");
  CHECK(f(-6, -4).exact() == "3/2");
  CHECK(f(0, -7) == Fraction(0));
  CHECK(f(0, 7).is_whole());
  CHECK(f(3, 2) == f(15, 10));
  CHECK(f(3, 2) == Fraction(1) + f(1, 2));
  CHECK(f(3, 2) != f(11, 2));
}

TEST_CASE("a division by nothing is lost, and stays lost") {
  const Fraction lost = f(1, 0);
  CHECK(lost.is_lost());
  CHECK((Fraction(1) / Fraction(0)).is_lost());
  for (const Fraction& sum :
       {lost + Fraction(1), Fraction(1) - lost, lost * Fraction(0), Fraction(0) / lost, -lost, lost.abs()})
    CHECK(sum.is_lost());
  CHECK(lost == Fraction::lost());
  CHECK(!(lost == Fraction(0)));
  CHECK(!(lost < Fraction(1)));
  CHECK(!(lost > Fraction(1)));
  CHECK(!(Fraction(1) < lost));
  CHECK(!(Fraction(1) <= lost));
  CHECK(lost.exact() == "?");
  CHECK(lost.decimal(2) == "?");
  CHECK(!lost.is_zero());
}

TEST_CASE("what does not fit is lost") {
  const Fraction most = f(kMost);
  CHECK(!most.is_lost());
  CHECK((most + Fraction(1)).is_lost());
  CHECK((-most - Fraction(1)).is_lost());
  CHECK((most * Fraction(2)).is_lost());
  CHECK((f(1, kMost) / Fraction(2)).is_lost());
  CHECK((f(1, kMost) + f(1, kMost - 1)).is_lost());
  CHECK((most - most) == Fraction(0));
  CHECK((most / most) == Fraction(1));
  CHECK((f(kMost, 3) * f(3, kMost)) == Fraction(1));
  CHECK(f(-kMost - 1).is_lost());
  CHECK(f(1, -kMost - 1).is_lost());
  Fraction grown(3);
  for (int i = 0; i < 100; ++i) grown *= Fraction(3);
  CHECK(grown.is_lost());
}

TEST_CASE("sums and products keep the laws") {
  for (int i = 0; i < 20'000; ++i) {
    const Fraction a = random_fraction(20), b = random_fraction(20), c = random_fraction(20);
    CHECK(a + b == b + a);
    CHECK(a * b == b * a);
    CHECK((a + b) + c == a + (b + c));
    CHECK(a * (b + c) == a * b + a * c);
    CHECK(a - a == Fraction(0));
    if (!b.is_zero()) CHECK(a / b * b == a);
    CHECK(((a < b) == (a - b < Fraction(0))));
    CHECK((a < b || a == b || a > b));
  }
}

TEST_CASE("a sum that overflows is lost and never another number") {
  // Either lost, or what comes back by undoing it.
  for (int i = 0; i < 20'000; ++i) {
    const Fraction a = random_fraction(70), b = random_fraction(70);
    const Fraction sum = a + b, times = a * b;
    if (const Fraction back = sum - b; !back.is_lost()) CHECK(back == a);
    if (!b.is_zero()) {
      if (const Fraction back = times / b; !back.is_lost()) CHECK(back == a);
    }
  }
}

TEST_CASE("order holds where the cross products do not fit") {
  int tried = 0;
  for (int i = 0; i < 20'000; ++i) {
    const Fraction a = random_fraction(i % 2 == 0 ? 123 : 90).abs(), b = random_fraction(123).abs();
    if (a.is_zero() || b.is_zero()) continue;
    ++tried;
    CHECK((a < b) == below(a, b));
    CHECK((a > b) == below(b, a));
    CHECK((-a < -b) == below(b, a));
    CHECK(-a < b);
  }
  CHECK(tried > 19'000);
  // Neighbours: n/(n+1) is below (n+1)/(n+2) however large n is.
  for (int bits = 2; bits < 125; ++bits) {
    const Wide n = Wide{1} << bits;
    CHECK(f(n, n + 1) < f(n + 1, n + 2));
    CHECK(f(n + 2, n + 1) < f(n + 1, n));
    CHECK(!(f(n, n + 1) < f(n, n + 1)));
  }
}

TEST_CASE("whole numbers near a fraction") {
  CHECK(f(7, 2).floor() == 3);
  CHECK(f(-7, 2).floor() == -4);
  CHECK(f(7, 2).ceil() == 4);
  CHECK(f(-7, 2).ceil() == -3);
  CHECK(f(7, 2).nearest() == 4);
  CHECK(f(-7, 2).nearest() == -3);  // ties go up
  CHECK(f(10, 3).nearest() == 3);
  CHECK(Fraction(5).floor() == 5);
  CHECK(Fraction(5).ceil() == 5);
  for (int i = 0; i < 5'000; ++i) {
    const Fraction a = random_fraction(40);
    CHECK(f(a.floor()) <= a);
    CHECK(a < f(a.floor() + 1));
    CHECK(f(a.ceil()) >= a);
    CHECK((f(a.nearest()) - a).abs() <= f(1, 2));
  }
}

TEST_CASE("decimals are rounded half up and carry no idle zeros") {
  CHECK(f(1, 4).decimal(2) == "0.25");
  CHECK(f(2835, 100).decimal(2) == "28.35");
  CHECK(f(1, 3).decimal(3) == "0.333");
  CHECK(f(2, 3).decimal(3) == "0.667");
  CHECK(f(5, 2).decimal(0) == "3");
  CHECK(f(25, 1000).decimal(2) == "0.03");
  CHECK(f(1, 100).decimal(1) == "0");
  CHECK(f(-1, 100).decimal(1) == "0");
  CHECK(f(-5, 4).decimal(2) == "-1.25");
  CHECK(f(1001, 1000).decimal(3) == "1.001");
  CHECK(f(1999, 1000).decimal(2) == "2");
  CHECK(Fraction(120).decimal(2) == "120");
  CHECK(f(1, 1000000).decimal(6) == "0.000001");
  CHECK(f(kMost).decimal(6) == to_text(kMost));
}

TEST_CASE("numbers of any width as text") {
  CHECK(to_text(0) == "0");
  CHECK(to_text(-42) == "-42");
  CHECK(to_text(kMost) == "170141183460469231731687303715884105727");
  CHECK(to_text(-kMost - 1) == "-170141183460469231731687303715884105728");
  CHECK(f(1, 3).approx() == doctest::Approx(0.3333333333));
  CHECK(Fraction::lost().approx() == 0.0);
}
