// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fabric/chart_picture.h"

#include <png.h>

#include <algorithm>
#include <map>
#include <numeric>

namespace skeinproof {
namespace {

using Pixel = std::uint32_t;  // 0xRRGGBB
constexpr Pixel transparent = 0x1000000;

struct Pixels {
  std::size_t width = 0, height = 0;
  std::vector<Pixel> at;
  Pixel of(std::size_t x, std::size_t y) const { return at[y * width + x]; }
};

// Frees what libpng holds however a function is left. The simplified interface keeps libpng's long jumps
// inside.
struct Image {
  png_image png{};
  Image() { png.version = PNG_IMAGE_VERSION; }
  Image(const Image&) = delete;
  Image& operator=(const Image&) = delete;
  ~Image() { png_image_free(&png); }
};

Error damaged(const Image& image) {
  return {ErrorKind::damaged,
          {},
          "a PNG picture that cannot be decoded (" + std::string(image.png.message) + ")",
          "a whole one"};
}

std::string size_words(std::size_t width, std::size_t height) {
  return std::to_string(width) + " × " + std::to_string(height) + " pixels";
}

Expected<Pixels> decode(std::span<const std::byte> bytes) {
  constexpr std::size_t signature_length = 8;
  const auto* data = reinterpret_cast<png_const_bytep>(bytes.data());
  if (bytes.size() < signature_length || png_sig_cmp(data, 0, signature_length) != 0)
    return failure(ErrorKind::wrong_format, "bytes that are no PNG picture", "an indexed PNG picture");
  Image image;
  if (!png_image_begin_read_from_memory(&image.png, bytes.data(), bytes.size()))
    return tl::unexpected(damaged(image));
  Pixels pixels{image.png.width, image.png.height, {}};
  if (pixels.width > most_chart_squares || pixels.height > most_chart_squares)
    return failure(ErrorKind::out_of_range, size_words(pixels.width, pixels.height),
                   "at most " + size_words(most_chart_squares, most_chart_squares));
  image.png.format = PNG_FORMAT_RGBA;
  std::vector<png_byte> raw(PNG_IMAGE_SIZE(image.png));
  if (!png_image_finish_read(&image.png, nullptr, raw.data(), 0, nullptr))
    return tl::unexpected(damaged(image));
  pixels.at.resize(pixels.width * pixels.height);
  for (std::size_t i = 0; i < pixels.at.size(); ++i) {
    const png_byte* p = &raw[i * 4];
    const Pixel colour = static_cast<Pixel>(p[0]) << 16 | static_cast<Pixel>(p[1]) << 8 | p[2];
    pixels.at[i] = p[3] < 128 ? transparent : colour;
  }
  return pixels;
}

// Every place where the colour changes, and the size itself, is a whole number of blocks from the corner.
std::size_t largest_block(const Pixels& pixels) {
  std::size_t block = std::gcd(pixels.width, pixels.height);
  for (std::size_t y = 0; y < pixels.height && block > 1; ++y)
    for (std::size_t x = 0; x < pixels.width; ++x) {
      if (x > 0 && pixels.of(x, y) != pixels.of(x - 1, y)) block = std::gcd(block, x);
      if (y > 0 && pixels.of(x, y) != pixels.of(x, y - 1)) block = std::gcd(block, y);
    }
  return block;
}

Expected<Pixels> one_pixel_a_stitch(const Pixels& pixels, std::size_t block) {
  if (pixels.width % block != 0 || pixels.height % block != 0)
    return failure(ErrorKind::wrong_shape, size_words(pixels.width, pixels.height),
                   "whole blocks of " + size_words(block, block));
  Pixels stitches{pixels.width / block, pixels.height / block, {}};
  stitches.at.reserve(stitches.width * stitches.height);
  for (std::size_t y = 0; y < pixels.height; y += block)
    for (std::size_t x = 0; x < pixels.width; x += block) stitches.at.push_back(pixels.of(x, y));
  for (std::size_t y = 0; y < pixels.height; ++y)
    for (std::size_t x = 0; x < pixels.width; ++x)
      if (pixels.of(x, y) != stitches.of(x / block, y / block))
        return failure(
            ErrorKind::wrong_shape,
            "two colours in the block at pixel " + std::to_string(x + 1) + ", " + std::to_string(y + 1),
            "blocks of " + size_words(block, block) + " in one colour each");
  return stitches;
}

struct ColourCount {
  Pixel pixel = 0;
  long stitches = 0;
};

// Most stitches first; equal ones by colour, so that a picture always gives the same letters.
std::vector<ColourCount> count_colours(const Pixels& stitches) {
  std::vector<Pixel> sorted = stitches.at;
  std::sort(sorted.begin(), sorted.end());
  std::vector<ColourCount> counts;
  for (const Pixel pixel : sorted) {
    if (pixel == transparent) break;
    if (counts.empty() || counts.back().pixel != pixel) counts.push_back({pixel, 0});
    ++counts.back().stitches;
  }
  std::stable_sort(counts.begin(), counts.end(),
                   [](const ColourCount& a, const ColourCount& b) { return a.stitches > b.stitches; });
  return counts;
}

Srgb srgb(Pixel pixel) {
  return {static_cast<std::uint8_t>(pixel >> 16), static_cast<std::uint8_t>(pixel >> 8),
          static_cast<std::uint8_t>(pixel)};
}

Expected<std::vector<std::byte>> encode(std::size_t width, std::size_t height,
                                        const std::vector<png_byte>& palette,
                                        const std::vector<png_byte>& indices) {
  Image image;
  image.png.width = static_cast<png_uint_32>(width);
  image.png.height = static_cast<png_uint_32>(height);
  image.png.format = PNG_FORMAT_RGBA_COLORMAP;
  image.png.colormap_entries = static_cast<png_uint_32>(palette.size() / 4);
  png_alloc_size_t size = PNG_IMAGE_PNG_SIZE_MAX(image.png);
  std::vector<std::byte> bytes(size);
  if (!png_image_write_to_memory(&image.png, bytes.data(), &size, 0, indices.data(), 0, palette.data()))
    return failure(ErrorKind::system, std::string("a picture that cannot be written: ") + image.png.message,
                   "a PNG");
  bytes.resize(size);
  return bytes;
}

}  // namespace

Expected<ChartPicture> read_chart_picture(std::span<const std::byte> bytes, const PictureOptions& options) {
  const auto pixels = decode(bytes);
  if (!pixels) return tl::unexpected(pixels.error());
  if (options.block_size < 0)
    return failure(ErrorKind::out_of_range, "a block of " + std::to_string(options.block_size),
                   "1 pixel or more");
  const std::size_t block = options.block_size == find_block_size
                                ? largest_block(*pixels)
                                : static_cast<std::size_t>(options.block_size);
  const auto stitches = one_pixel_a_stitch(*pixels, block);
  if (!stitches) return tl::unexpected(stitches.error());
  const auto counts = count_colours(*stitches);
  if (counts.size() > most_chart_symbols)
    return failure(ErrorKind::out_of_range, std::to_string(counts.size()) + " colours",
                   "at most " + std::to_string(most_chart_symbols));

  ChartPicture picture;
  picture.block_size = static_cast<int>(block);
  std::map<Pixel, char> symbols{{transparent, no_stitch}};
  for (const ColourCount& count : counts) {
    const char symbol = static_cast<char>('A' + picture.colours.size());
    symbols.emplace(count.pixel, symbol);
    picture.colours.push_back({symbol, srgb(count.pixel), count.stitches});
    picture.chart.colours.push_back({std::string(1, symbol), RoleId{}});
  }
  std::vector<std::string> rounds(stitches->height);
  for (std::size_t y = 0; y < stitches->height; ++y)
    for (std::size_t x = 0; x < stitches->width; ++x)
      rounds[stitches->height - 1 - y] += symbols.at(stitches->of(x, y));
  picture.chart.rounds = std::move(rounds);
  return picture;
}

Expected<std::vector<std::byte>> chart_picture(const Chart& chart, const std::vector<PictureColour>& colours,
                                               int block_size) {
  const auto& rounds = *chart.rounds;
  if (rounds.empty() || rounds.front().empty())
    return failure(ErrorKind::wrong_shape, "a chart without squares", "one stitch or more");
  if (colours.size() > most_chart_symbols)
    return failure(ErrorKind::out_of_range, std::to_string(colours.size()) + " colours",
                   "at most " + std::to_string(most_chart_symbols));
  const std::size_t block = static_cast<std::size_t>(std::max(block_size, 1));
  const std::size_t width = rounds.front().size() * block, height = rounds.size() * block;
  if (block > most_chart_squares || width > most_chart_squares || height > most_chart_squares)
    return failure(ErrorKind::out_of_range, size_words(width, height),
                   "at most " + size_words(most_chart_squares, most_chart_squares));

  std::vector<png_byte> palette(4, 0);  // entry 0 is transparent
  std::string symbols(1, no_stitch);
  for (const PictureColour& colour : colours) {
    palette.insert(palette.end(), {colour.colour.red, colour.colour.green, colour.colour.blue, 255});
    symbols += colour.symbol;
  }
  std::vector<png_byte> indices;
  indices.reserve(width * height);
  for (std::size_t y = 0; y < height; ++y) {
    const std::string& round = rounds[rounds.size() - 1 - y / block];
    for (std::size_t x = 0; x < width; ++x) {
      const auto index = x / block < round.size() ? symbols.find(round[x / block]) : 0;
      indices.push_back(index == std::string::npos ? png_byte{0} : static_cast<png_byte>(index));
    }
  }
  return encode(width, height, palette, indices);
}

}  // namespace skeinproof
