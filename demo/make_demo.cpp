// Makes the demo album: paints its pictures and lays book.xml beside them, and a finished PDF that shows some
// of them, postcards.pdf.
//   make_demo BOOK.XML FOLDER [NAME]    NAME: only the pictures and the PDF whose name holds it
// It asks nothing of the project but the book; the book is demo/book.xml.
#include "demo/album.h"
#include "demo/postcards/postcards.h"

#include <atomic>
#include <cstdio>
#include <exception>
#include <fstream>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

namespace fs = std::filesystem;
using namespace stoneproof::demo;

namespace {

void write_in_disguise(const fs::path &file) {
  std::ofstream(file)
      << "Dear cousin,\nthe picture of the fair would not go through, so here is how it looked:\n"
         "a band, four swings, and Margery on the tall grey horse.\n";
}

void make(const AlbumPicture &picture, const fs::path &file) {
  if (picture.mishap == Mishap::text_in_disguise) return write_in_disguise(file);
  Canvas canvas = painted(picture);
  if (picture.storage.enlarged != 1) canvas = resized(canvas, picture.width, picture.height);
  if (picture.storage.before > 0) pass_through_jpeg(canvas, picture.storage.before);
  const fs::path kind = file.extension();
  const auto write = kind == ".tif" ? write_tiff : kind == ".png" ? write_png : write_jpeg;
  write(file, canvas, picture.storage);
  if (picture.mishap == Mishap::broke_off_early) break_off(file, 0.0005);
  if (picture.mishap == Mishap::broke_off_halfway) break_off(file, 0.45);
}

/// Each picture has its own seeds, so the workers may take them in any order.
void make_pictures(const fs::path &folder, const std::string &only) {
  std::atomic<std::size_t> next = 0;
  std::mutex lock;
  std::exception_ptr fault;
  const auto work = [&] {
    try {
      for (std::size_t i = next++; i < album().size(); i = next++)
        if (const AlbumPicture &picture = album()[i]; picture.file.find(only) != std::string::npos)
          make(picture, folder / picture.file);
    } catch (...) {
      const std::lock_guard hold(lock);
      fault = std::current_exception();
    }
  };
  {
    std::vector<std::jthread> workers(std::max(1U, std::min(4U, std::thread::hardware_concurrency())));
    for (std::jthread &worker : workers) worker = std::jthread(work);
  }
  if (fault) std::rethrow_exception(fault);
}

} // namespace

int main(int count, char **words) {
  if (count < 3) {
    std::fputs("usage: make_demo BOOK.XML FOLDER [NAME]\n", stderr);
    return 2;
  }
  try {
    const fs::path folder = words[2];
    fs::create_directories(folder / "pictures");
    const std::string only = count > 3 ? words[3] : "", postcards = "postcards.pdf";
    make_pictures(folder / "pictures", only);
    if (postcards.find(only) != std::string::npos) write_postcards(folder / postcards);
    fs::copy_file(words[1], folder / "book.xml", fs::copy_options::overwrite_existing);
  } catch (const std::exception &fault) {
    std::fprintf(stderr, "make_demo: %s\n", fault.what());
    return 4;
  }
  return 0;
}
