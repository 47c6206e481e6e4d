// Which bytes a rule of the grammar may begin with, worked out when the program is built: a rule is not begun where its
// first byte rules it out. Private to read.cpp, which includes the grammar first.
#pragma once
#include <array>

namespace qtn::syntax {

struct FirstBytes {
  std::array<bool, 256> may{};
  bool nothing = false;  // it may match without a byte, or nobody knows: then every byte may stand there
  constexpr FirstBytes& add(unsigned char byte) {
    may[byte] = true;
    return *this;
  }
  constexpr FirstBytes& add(unsigned from, unsigned to) {
    for (unsigned byte = from; byte <= to; ++byte) may[byte] = true;
    return *this;
  }
  constexpr FirstBytes& add(const FirstBytes& other) {
    for (unsigned byte = 0; byte < 256; ++byte) may[byte] = may[byte] || other.may[byte];
    return *this;
  }
  constexpr bool tells() const {
    if (nothing) return false;
    for (bool one : may)
      if (!one) return true;
    return false;
  }
};

constexpr FirstBytes unknown_first() {
  FirstBytes out;
  out.add(0, 255).nothing = true;
  return out;
}
constexpr FirstBytes first_letters() { return FirstBytes().add('a', 'z').add('A', 'Z').add(0x80, 0xFF); }
constexpr FirstBytes first_blanks() { return FirstBytes().add(' ').add('\t').add('\r').add('\n').add(0xC2).add(0xE2); }

// A rule that was given a name begins as what it is made of does; what is not listed below may begin with anything.
template <typename Rule>
struct First {
  static constexpr FirstBytes make() {
    using Made = typename Rule::rule_t;
    if constexpr (std::is_same_v<Made, Rule>) return unknown_first();
    else return First<Made>::make();
  }
};
template <typename Rule>
inline constexpr FirstBytes kFirst = First<Rule>::make();

namespace parts = tao::pegtl::internal;

template <typename... Rules>
struct First<parts::seq<Rules...>> {
  static constexpr FirstBytes make() {
    FirstBytes out;
    out.nothing = true;
    ((out.nothing ? void((out.nothing = kFirst<Rules>.nothing, out.add(kFirst<Rules>))) : void()), ...);
    return out;
  }
};
template <typename... Rules>
struct First<parts::sor<Rules...>> {
  static constexpr FirstBytes make() {
    FirstBytes out;
    ((out.add(kFirst<Rules>).nothing |= kFirst<Rules>.nothing), ...);
    return out;
  }
};
template <typename Rule>
struct First<parts::plus<Rule>> : First<Rule> {};
// What must be ahead begins what follows it, too.
template <typename Rule>
struct First<parts::at<Rule>> : First<Rule> {};
template <typename Rule>
struct MayBeLeftOut {
  static constexpr FirstBytes make() {
    FirstBytes out = kFirst<Rule>;
    out.nothing = true;
    return out;
  }
};
template <typename Rule>
struct First<parts::opt<Rule>> : MayBeLeftOut<Rule> {};
template <typename Rule>
struct First<parts::star<Rule>> : MayBeLeftOut<Rule> {};
// What must not be ahead says nothing of what is.
template <typename Rule>
struct First<parts::not_at<Rule>> {
  static constexpr FirstBytes make() {
    FirstBytes out;
    out.nothing = true;
    return out;
  }
};
template <typename Peek, char... Cs>
struct First<parts::one<parts::result_on_found::success, Peek, Cs...>> {
  static constexpr FirstBytes make() {
    FirstBytes out;
    (out.add(static_cast<unsigned char>(Cs)), ...);
    return out;
  }
};
template <typename Peek, char Low, char High>
struct First<parts::range<parts::result_on_found::success, Peek, Low, High>> {
  static constexpr FirstBytes make() {
    return FirstBytes().add(static_cast<unsigned char>(Low), static_cast<unsigned char>(High));
  }
};
template <char C, char... Cs>
struct First<parts::string<C, Cs...>> {
  static constexpr FirstBytes make() { return FirstBytes().add(static_cast<unsigned char>(C)); }
};
template <char C, char... Cs>
struct First<parts::istring<C, Cs...>> {
  static constexpr FirstBytes make() {
    return FirstBytes().add(static_cast<unsigned char>(C | 0x20)).add(static_cast<unsigned char>(C & ~0x20));
  }
};

// The grammar's own rules that are written as functions.
template <>
struct First<grammar::gap> {
  static constexpr FirstBytes make() { return first_blanks(); }
};
template <>
struct First<grammar::ogap> {
  static constexpr FirstBytes make() {
    FirstBytes out = first_blanks();
    out.nothing = true;
    return out;
  }
};
template <>
struct First<grammar::letter> {
  static constexpr FirstBytes make() { return first_letters(); }
};
template <unsigned Classes>
struct First<grammar::known<Classes>> {
  static constexpr FirstBytes make() { return first_letters(); }
};
template <char... Stops>
struct First<grammar::word_run<Stops...>> {
  static constexpr FirstBytes make() {
    FirstBytes out;
    out.add(0, 255);
    ((out.may[static_cast<unsigned char>(Stops)] = false), ...);
    return out;
  }
};

}  // namespace qtn::syntax
