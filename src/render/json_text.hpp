// JSON as text, member by member: commas, indentation and escapes. The caller keeps brackets in pairs.
#pragma once
#include <string>
#include <string_view>

namespace qtn {

// `text` between quotation marks. Bytes that are no UTF-8 become U+FFFD, so that the output always is.
void append_json_string(std::string& out, std::string_view text);

class JsonText {
 public:
  explicit JsonText(std::string& out) : out_(out) {}

  void open(char bracket) {
    if (!after_key_) next();
    after_key_ = false;
    out_ += bracket;
    first_ = true;
    ++depth_;
  }
  void close(char bracket) {
    --depth_;
    if (!first_) new_line();
    out_ += bracket;
    first_ = false;
  }
  void key(std::string_view name) {
    next();
    append_json_string(out_, name);
    out_ += ": ";
    after_key_ = true;
  }
  void member(std::string_view name, std::string_view text) {
    key(name);
    append_json_string(out_, text);
    after_key_ = false;
  }
  void member(std::string_view name, const char*) = delete;  // would be taken for true
  void member(std::string_view name, bool value) {
    key(name);
    out_ += value ? "true" : "false";
    after_key_ = false;
  }
  void number(std::string_view name, long value) {
    key(name);
    out_ += std::to_string(value);
    after_key_ = false;
  }
  void text(std::string_view text) {  // an element of a list
    next();
    append_json_string(out_, text);
  }
  void end_line() { out_ += '\n'; }

 private:
  void next() {
    if (depth_ == 0) return;
    if (!first_) out_ += ',';
    new_line();
    first_ = false;
  }
  void new_line() {
    out_ += '\n';
    out_.append(2 * depth_, ' ');
  }

  std::string& out_;
  std::size_t depth_ = 0;
  bool first_ = true, after_key_ = false;
};

}  // namespace qtn
