"""Looks at the pages of a PDF as a reader would: words outside of the margins, words that lie on each other, words of
which nothing is seen, ink near the sheet's edge. Prints what it finds, one fault a line; exit code 1 when there is any.

    look.py FILE.pdf... [--margin MM] [--edge MM]

Needs poppler's pdftotext and pdftoppm and nothing beyond Python's own library."""

import argparse
import html
import re
import subprocess
import sys

MARGIN, EDGE = 17.0, 15.0  # mm: no word, and no ink at all, lies nearer to the sheet's edge
MM = 72 / 25.4
DPI = 72  # one dot is one point
SHARE = 0.12  # of the smaller word's area that two words may have in common
INK, CONTRAST = 200, 24  # grey below which a dot is ink; least difference of light and dark within a word

PAGE = re.compile(r'<page width="([\d.]+)" height="([\d.]+)">(.*?)</page>', re.DOTALL)
WORD = re.compile(r'<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">(.*?)</word>', re.DOTALL)


class Word:
    def __init__(self, match):
        self.left, self.top, self.right, self.bottom = map(float, match.groups()[:4])
        self.text = html.unescape(match.group(5))

    def core(self):
        """The part of the box in which letters stand: boxes of neighbouring lines may touch, letters may not."""
        width, height = self.right - self.left, self.bottom - self.top
        if width >= 0.6 * height or len(self.text) < 3:
            return self.left, self.top + 0.22 * height, self.right, self.bottom - 0.2 * height
        return self.left + 0.2 * width, self.top, self.right - 0.2 * width, self.bottom  # it stands upright


    def parts(self):
        """The whole, and both its ends where it is long enough for letters in each."""
        left, top, right, bottom = self.left, self.top, self.right, self.bottom
        yield "all of", (left, top, right, bottom)
        if len(self.text) < 6 or not (self.text[:3] + self.text[-3:]).isalnum():
            return
        across, down = (right - left) / 3, (bottom - top) / 3
        if across >= down:
            yield "the left of", (left, top, left + across, bottom)
            yield "the right of", (right - across, top, right, bottom)
        else:
            yield "the top of", (left, top, right, top + down)
            yield "the bottom of", (left, bottom - down, right, bottom)


def pages(file):
    """[(width, height, words)] in points."""
    text = subprocess.run(["pdftotext", "-bbox", file, "-"], capture_output=True, check=True).stdout
    return [(float(width), float(height), [Word(match) for match in WORD.finditer(body)])
            for width, height, body in PAGE.findall(text.decode("utf-8", "replace"))]


def pictures(file):
    """[(width, height, grey dots)], one a page."""
    data = subprocess.run(["pdftoppm", "-gray", "-r", str(DPI), file], capture_output=True, check=True).stdout
    found, at = [], 0
    while at < len(data):
        head = re.compile(rb"P5\s+(\d+)\s+(\d+)\s+255\s").match(data, at)
        width, height = int(head.group(1)), int(head.group(2))
        at = head.end() + width * height
        found.append((width, height, data[head.end():at]))
    return found


def outside(page, margin):
    width, height, words = page
    for word in words:
        if (word.left < margin or word.top < margin or word.right > width - margin or word.bottom > height - margin):
            yield f"'{word.text}' stands outside of the margins at ({word.left:.0f}, {word.top:.0f})"


def on_each_other(page):
    boxes = sorted(((word.core(), word.text) for word in page[2]), key=lambda item: item[0][1])
    for i, (a, text) in enumerate(boxes):
        for b, other in boxes[i + 1:]:
            if b[1] >= a[3]:
                break
            common = max(min(a[2], b[2]) - max(a[0], b[0]), 0) * max(min(a[3], b[3]) - max(a[1], b[1]), 0)
            areas = [(box[2] - box[0]) * (box[3] - box[1]) for box in (a, b)]
            if common > SHARE * min(areas):
                yield f"'{text}' and '{other}' lie on each other at ({a[0]:.0f}, {a[1]:.0f})"


def unseen(page, picture):
    width, height, dots = picture
    for word in page[2]:
        if not any(char.isalnum() for char in word.text):
            continue
        for part, (left, top, right, bottom) in word.parts():
            seen = b"".join(dots[y * width + max(int(left), 0):y * width + min(int(right) + 2, width)]
                            for y in range(max(int(top), 0), min(int(bottom) + 2, height)))
            if not seen or max(seen) - min(seen) < CONTRAST:
                yield f"nothing is seen of {part} '{word.text}' at ({word.left:.0f}, {word.top:.0f})"
                break


def at_the_edge(picture, edge):
    width, height, dots = picture
    edge = int(edge * DPI / 72)
    light = bytes(range(256)).translate(None, bytes(range(INK)))
    for name, rows, start, end in (("top", range(edge), 0, width), ("bottom", range(height - edge, height), 0, width),
                                   ("left", range(height), 0, edge), ("right", range(height), width - edge, width)):
        if any(dots[y * width + start:y * width + end].translate(None, light) for y in rows):
            yield f"there is ink within {edge} points of the {name} edge"


def look(file, margin=MARGIN, edge=EDGE):
    """What is wrong with the pages, as text, with the page's number."""
    faults = []
    for number, (page, picture) in enumerate(zip(pages(file), pictures(file), strict=True), 1):
        found = [*outside(page, margin * MM), *on_each_other(page), *unseen(page, picture),
                 *at_the_edge(picture, edge * MM)]
        faults += [f"page {number}: {fault}" for fault in found]
    return faults


def main():
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("files", nargs="+")
    options.add_argument("--margin", type=float, default=MARGIN)
    options.add_argument("--edge", type=float, default=EDGE)
    chosen = options.parse_args()
    faults = [f"{file}: {fault}" for file in chosen.files for fault in look(file, chosen.margin, chosen.edge)]
    print("\n".join(faults) or "no fault found")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
