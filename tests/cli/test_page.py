"""The page out of the program: whole, and only where it was built in."""

import harness


class Page(harness.Case):
    def test_the_page_is_written_whole_or_told_how_to_get(self):
        place = self.folder / "holdback.html"
        done = harness.run("page", "--out", place)
        if done.returncode == 2:
            self.assertIn("./run page", done.stderr)
            self.assertFalse(place.exists())
            return
        text = place.read_text(encoding="utf-8")
        self.assertTrue(text.lower().startswith("<!doctype html"), text[:60])
        self.assertIn("</html>", text[-200:].lower())
        self.assertIn("--force", self.refused("page", "--out", place))
        self.assertEqual(harness.run("page").stdout, text)


if __name__ == "__main__":
    harness.main()
