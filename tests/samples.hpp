// Samples of the documents: fenced texts whose info string begins with qtn. What may follow it:
//   bad CODE     gets that code, on the line above each mark `# ^ CODE`; nothing else is said. More codes may follow where
//                a card says them of no line
//   good         nothing is said (so are samples that say neither, unless they only lend a file to the sample before)
//   file=NAME    the file's name in a book that it makes with the samples after it
//   card OPTIONS a card is made of it, with options of the command `card`; last in the string
#pragma once
#include <sstream>

#include "files.hpp"

namespace qtn::tests {

struct Sample {
  std::string info, text;

  std::string file() const { return after("file=", "sample.qtn"); }
  std::string code() const { return after("bad ", ""); }
  bool says(const std::string& word) const { return (info + " ").find(" " + word + " ") != std::string::npos; }
  std::string card() const {
    const std::size_t at = info.find(" card ");
    return at == std::string::npos ? "" : info.substr(at + 6);
  }

 private:
  std::string after(const std::string& word, const std::string& otherwise) const {
    const std::size_t at = info.find(" " + word);
    if (at == std::string::npos) return otherwise;
    const std::size_t begin = at + 1 + word.size();
    return info.substr(begin, info.find(' ', begin) - begin);
  }
};

inline std::vector<Sample> samples_of(const std::string& page) {
  std::vector<Sample> out;
  std::istringstream in(page);
  bool inside = false, ours = false;
  for (std::string line; std::getline(in, line);) {
    const bool fence = line.rfind("```", 0) == 0;
    if (fence && !inside) {
      ours = line.rfind("```qtn", 0) == 0;
      if (ours) out.push_back({line.substr(6), ""});
    } else if (!fence && inside && ours) {
      out.back().text += line + "\n";
    }
    if (fence) inside = !inside;
  }
  return out;
}

// Samples that make one book: a bad or good one begins it, those that only name a file join it.
inline std::vector<std::vector<Sample>> books_of(const std::string& page) {
  std::vector<std::vector<Sample>> out;
  for (const Sample& one : samples_of(page)) {
    const bool joins = !out.empty() && !one.says("bad") && !one.says("good") && one.info.find("file=") != std::string::npos;
    if (!joins) out.emplace_back();
    out.back().push_back(one);
  }
  return out;
}

// Every document that may hold samples.
inline std::vector<std::filesystem::path> documents() {
  auto out = below("docs", ".md");
  for (const char* name : {"README.md", "DEVELOPERS.md", "grammar/README.md", "examples/README.md"}) out.push_back(root() / name);
  return out;
}

}  // namespace qtn::tests
