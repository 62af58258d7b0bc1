"""Sets a terminal answer as an SVG, for the README: text in, picture out. set_picture beside it, called by
./run derive, pipes the answer through.

Only what Holdback prints is known: UTF-8, one column a character, and the colours 1 and 30-37 of ANSI."""

import re
import sys
from html import escape

WIDTH, LINE, TOP = 8.4, 18, 40
INK = {"31": "#b3261e", "32": "#1e6b3a", "33": "#8a5a00", "34": "#1f4e8c", "35": "#6b3a8c", "36": "#0b6570"}
PIECE = re.compile(r"\x1b\[([0-9;]*)m")


def spans(line):
    """Pieces of a line with their style: (column, text, colour, bold)."""
    column, colour, bold, at = 0, None, False, 0
    for code in list(PIECE.finditer(line)) + [None]:
        text = line[at:code.start() if code else len(line)]
        if text.strip():
            yield column, text, colour, bold
        column += len(text)
        if code is None:
            return
        at = code.end()
        for word in code.group(1).split(";"):
            if word in ("", "0"):
                colour, bold = None, False
            elif word == "1":
                bold = True
            elif word in INK:
                colour = INK[word]


def piece(x, y, text, colour, bold):
    style = (f' fill="{colour}"' if colour else "") + (' font-weight="bold"' if bold else "")
    width = f' textLength="{len(text) * WIDTH:.1f}" lengthAdjust="spacingAndGlyphs"'
    return f'<text x="{x:.1f}" y="{y}" xml:space="preserve"{width}{style}>{escape(text)}</text>'


def svg(text, command):
    lines = text.rstrip("\n").split("\n")
    columns = max(len(PIECE.sub("", line)) for line in lines)
    width, height = columns * WIDTH + 40, len(lines) * LINE + TOP + 24
    body = [piece(20 + column * WIDTH, TOP + 20 + i * LINE, text, colour, bold)
            for i, line in enumerate(lines) for column, text, colour, bold in spans(line)]
    return "\n".join([
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width:.0f} {height}" width="{width:.0f}" role="img"',
        '  font-family="DejaVu Sans Mono, Menlo, Consolas, monospace" font-size="14" fill="#1b1f24">',
        f'<title>{escape(command)}</title>',
        f'<rect width="100%" height="100%" rx="6" fill="#fbfaf7" stroke="#d8d4c8"/>',
        f'<text x="20" y="26" fill="#6b6a64">$ {escape(command)}</text>', *body, "</svg>", ""])


if __name__ == "__main__":
    sys.stdout.write(svg(sys.stdin.read(), sys.argv[1]))
