#include "words/irregular.hpp"

#include "data/tables.hpp"
#include "words/rows.hpp"

namespace qtn {

const Irregulars& Irregulars::table() {
  static const Irregulars only;
  return only;
}

Irregulars::Irregulars() {
  for (Rows rows(data::plurals()); rows.next();) {
    add(rows[0], {rows[0], rows[1]});
    if (rows[1] != rows[0]) add(rows[1], {rows[0], rows[1]});
  }
}

void Irregulars::add(std::string_view form, Irregular row) {
  char room[64];
  if (form.size() + kSlack > sizeof room) return;
  std::memcpy(room, form.data(), form.size());
  close_word(room, form.size());
  const WordKey key = key_of(room, form.size());
  std::size_t at = key >> kShift;
  while (keys_[at] != 0 && keys_[at] != key) at = (at + 1) % kSlots;
  if (keys_[at] == key) return;  // the first row of a form stands
  keys_[at] = key;
  rows_[at] = row;
}

}  // namespace qtn
