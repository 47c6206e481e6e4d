#include "book/path.hpp"

#include <vector>

namespace qtn {
namespace {

std::vector<std::string_view> cut(std::string_view path) {
  std::vector<std::string_view> parts;
  while (!path.empty()) {
    const std::size_t slash = path.find('/');
    parts.push_back(path.substr(0, slash));
    path = slash == std::string_view::npos ? std::string_view() : path.substr(slash + 1);
  }
  return parts;
}

}  // namespace

bool is_plain_path(std::string_view path) {
  if (path.empty() || path.front() == '/' || path.back() == '/') return false;
  for (const char c : path)
    if (c == '\\' || c == ':' || static_cast<unsigned char>(c) < 0x20) return false;
  return true;
}

std::optional<std::string> resolve_path(std::string_view from, std::string_view path) {
  if (!is_plain_path(path)) return std::nullopt;
  std::vector<std::string_view> parts = cut(from);
  if (!parts.empty()) parts.pop_back();
  for (std::string_view part : cut(path)) {
    if (part.empty() || part == ".") continue;
    if (part != "..") parts.push_back(part);
    else if (parts.empty()) return std::nullopt;
    else parts.pop_back();
  }
  if (parts.empty()) return std::nullopt;
  std::string out;
  for (std::string_view part : parts) (out += out.empty() ? "" : "/") += part;
  return out;
}

std::string path_from(std::string_view from, std::string_view target) {
  std::vector<std::string_view> here = cut(from), there = cut(target);
  if (!here.empty()) here.pop_back();
  std::size_t shared = 0;
  while (shared < here.size() && shared + 1 < there.size() && here[shared] == there[shared]) ++shared;
  std::string out;
  for (std::size_t i = shared; i < here.size(); ++i) out += "../";
  for (std::size_t i = shared; i < there.size(); ++i) (out += i == shared ? "" : "/") += there[i];
  return out;
}

std::string_view folder_of(std::string_view path) {
  const std::size_t slash = path.rfind('/');
  return slash == std::string_view::npos ? std::string_view() : path.substr(0, slash);
}

}  // namespace qtn
