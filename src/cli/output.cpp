#include "cli/output.hpp"

#include "cli/files.hpp"

#include <sys/ioctl.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <string_view>

namespace qtn {
namespace {

int lost_output = 0;  // why an answer could not be written; 0: it was

void write_all(int fd, std::string_view text) {
  while (!text.empty()) {
    const ssize_t put = ::write(fd, text.data(), text.size());
    if (put < 0 && errno == EINTR) continue;
    if (put < 0 && errno != EPIPE && fd == STDOUT_FILENO) lost_output = errno;
    if (put <= 0) return;  // a pipe that nobody reads any more is no fault
    text.remove_prefix(static_cast<std::size_t>(put));
  }
}

PrintStyle style_of(int fd) {
  PrintStyle style;
  const char* const none = std::getenv("NO_COLOR");
  const char* const term = std::getenv("TERM");
  const bool dumb = term != nullptr && std::string_view(term) == "dumb";
  const bool terminal = ::isatty(fd) != 0;
  style.colour = terminal && !dumb && (none == nullptr || *none == '\0');
  winsize size{};
  if (terminal && ::ioctl(fd, TIOCGWINSZ, &size) == 0 && size.ws_col >= 40) style.width = size.ws_col;
  if (const char* columns = std::getenv("COLUMNS"); columns != nullptr && std::atoi(columns) >= 40) style.width = std::atoi(columns);
  return style;
}

}  // namespace

void put(const std::string& text) { write_all(STDOUT_FILENO, text); }

bool all_put() {
  if (lost_output == 0) return true;
  complain(std::string("the answer could not be written: ") + std::strerror(lost_output));
  return false;
}

bool wrong(const std::string& what, const std::string& value, const std::string& known) {
  complain(what + " " + value + " is not known; it is " + known);
  return false;
}

bool deliver(const std::string& path, const std::string& text) {
  if (path.empty()) return put(text), true;
  const std::string why = write_file(path, text);
  if (!why.empty()) complain(path + " could not be written: " + why);
  return why.empty();
}

void complain(const std::string& text) { write_all(STDERR_FILENO, "quartern: " + text + "\n"); }

void show_problems(const std::vector<Judged>& files, bool to_output) {
  const int fd = to_output ? STDOUT_FILENO : STDERR_FILENO;
  write_all(fd, print_text(files, style_of(fd)));
}

}  // namespace qtn
