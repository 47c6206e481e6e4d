#include "cli/files.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <filesystem>

#include "syntax/tree.hpp"
#include "words/fold.hpp"

namespace qtn {
namespace fs = std::filesystem;
namespace {

constexpr std::string_view kKitchenName = "kitchen.qtn";
constexpr int kFoldersUp = 8;
constexpr std::size_t kKitchenLook = 1 << 16;  // bytes of remarks that may stand before the first field

struct Handle {
  int fd;
  ~Handle() {
    if (fd >= 0) ::close(fd);
  }
};

std::string reason(int code) {
  switch (code) {
    case ENOENT: return "there is no such file";
    case EACCES: return "this user may not read it";
    case ENOTDIR: return "a part of its path is no folder";
    case EISDIR: return "it is a folder";
    case ENOSPC: return "the disk is full";
    case EROFS: return "the folder may only be read";
    default: return std::strerror(code);
  }
}

std::optional<std::string> read_all(int fd) {
  std::string text;
  struct stat info {};
  if (::fstat(fd, &info) == 0 && S_ISREG(info.st_mode)) text.reserve(static_cast<std::size_t>(info.st_size) + 32);
  char buffer[1 << 16];
  while (true) {
    const ssize_t got = ::read(fd, buffer, sizeof buffer);
    if (got == 0) return text;
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return std::nullopt;
    text.append(buffer, static_cast<std::size_t>(got));
  }
}

}  // namespace

ReadFile read_file(const std::string& path) {
  const Handle file{::open(path.c_str(), O_RDONLY | O_CLOEXEC)};
  if (file.fd < 0) return {std::nullopt, reason(errno)};
  struct stat info {};
  if (::fstat(file.fd, &info) == 0 && S_ISDIR(info.st_mode)) return {std::nullopt, reason(EISDIR)};
  auto text = read_all(file.fd);
  if (!text) return {std::nullopt, reason(errno)};
  return {std::move(text), {}};
}

ReadFile read_input() {
  auto text = read_all(STDIN_FILENO);
  if (!text) return {std::nullopt, reason(errno)};
  return {std::move(text), {}};
}

std::string write_file(const std::string& path, const std::string& text) {
  const std::string beside = path + ".part" + std::to_string(::getpid());
  {
    const Handle file{::open(beside.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644)};
    if (file.fd < 0) return reason(errno);
    for (std::size_t at = 0; at < text.size();) {
      const ssize_t put = ::write(file.fd, text.data() + at, text.size() - at);
      if (put < 0 && errno == EINTR) continue;
      if (put < 0) {
        const std::string why = reason(errno);
        ::unlink(beside.c_str());
        return why;
      }
      at += static_cast<std::size_t>(put);
    }
  }
  if (::rename(beside.c_str(), path.c_str()) == 0) return {};
  const std::string why = reason(errno);
  ::unlink(beside.c_str());
  return why;
}

namespace {

FileKind kind_of(std::string_view line) {
  Tree tree;
  parse(line, tree);
  return tree.kind;
}

// The first line that is neither blank nor a comment says which kind of file it is; no more of the file is read.
bool is_kitchen(const fs::path& path) {
  const Handle file{::open(path.c_str(), O_RDONLY | O_CLOEXEC)};
  if (file.fd < 0) return false;
  std::string text;
  char buffer[4096];
  for (std::size_t at = 0; text.size() < kKitchenLook;) {
    const ssize_t got = ::read(file.fd, buffer, sizeof buffer);
    if (got < 0 && errno == EINTR) continue;
    if (got > 0) text.append(buffer, static_cast<std::size_t>(got));
    if (at == 0 && text.starts_with("\xEF\xBB\xBF")) at = 3;
    for (std::size_t end = text.find('\n', at);; end = text.find('\n', at)) {
      if (end == std::string::npos && got > 0) break;
      const std::string_view line = trim(std::string_view(text).substr(at, end - at));
      const bool nothing = line.empty() || line == "\r" || line.front() == '#';
      if (!nothing) return kind_of(line) == FileKind::kitchen;
      if (end == std::string::npos) return false;
      at = end + 1;
    }
  }
  return false;
}

// The kitchens of one folder, by name; the one of the usual name first.
std::vector<std::string> kitchens_in(const fs::path& folder) {
  std::vector<std::string> found;
  std::error_code error;
  for (auto at = fs::directory_iterator(folder, error); !error && at != fs::directory_iterator(); at.increment(error)) {
    std::error_code none;
    if (at->path().extension() == ".qtn" && at->is_regular_file(none) && is_kitchen(at->path()))
      found.push_back(at->path().filename().string());
  }
  std::sort(found.begin(), found.end());
  const auto usual = std::find(found.begin(), found.end(), kKitchenName);
  if (usual != found.end()) std::rotate(found.begin(), usual, usual + 1);
  return found;
}

}  // namespace

Place place_of(const std::string& path) {
  Place place;
  std::error_code error;
  const fs::path given = fs::absolute(path, error).lexically_normal();
  const bool folder = fs::is_directory(given, error);
  fs::path root = folder ? given : given.parent_path();
  if (folder && root.filename().empty()) root = root.parent_path();
  const fs::path own = root;
  fs::path up = root;
  for (int i = 0; i < kFoldersUp; ++i) {
    place.kitchens = kitchens_in(up);
    if (!place.kitchens.empty()) {
      root = up;
      break;
    }
    if (up == up.parent_path()) break;
    up = up.parent_path();
  }
  place.root = root.string();
  if (!folder) {
    place.files.push_back(given.lexically_relative(root).generic_string());
    return place;
  }
  for (auto at = fs::recursive_directory_iterator(own, fs::directory_options::skip_permission_denied, error); !error && at != fs::recursive_directory_iterator(); at.increment(error))
    if (at->path().extension() == ".qtn" && at->is_regular_file(error)) place.files.push_back(at->path().lexically_relative(root).generic_string());
  std::sort(place.files.begin(), place.files.end());
  return place;
}

}  // namespace qtn
