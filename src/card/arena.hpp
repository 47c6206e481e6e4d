// Memory for one parse of prose: taken in a row, given back all at once. One a thread, since what asks for it (a C
// library) brings nothing along but sizes.
#pragma once
#include <cstddef>
#include <vector>

namespace qtn {

class Arena {
 public:
  ~Arena();
  Arena() = default;
  Arena(const Arena&) = delete;
  Arena& operator=(const Arena&) = delete;

  static Arena& here();
  void* take(std::size_t count, std::size_t size);      // zeroed
  void* resize(void* block, std::size_t size);          // the old block is left where it is
  void reset();                                         // keeps one chunk for the next parse

 private:
  void* take_bytes(std::size_t size);
  struct Chunk {
    char* bytes;
    std::size_t size;
  };
  std::vector<Chunk> chunks_;
  std::size_t used_ = 0;  // of the last chunk
};

}  // namespace qtn
