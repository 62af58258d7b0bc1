"""Histories as the program keeps them: added, shown, corrected; wrong calls and wrong files refused and left alone; two who
write at once, and one who is killed while writing. Python's sqlite3 looks at the file from outside."""

import csv
import io
import json
import shutil
import signal
import sqlite3
import subprocess
import time

import harness

VERSION1 = harness.PROJECT / "tests/cli/history/version1.sql"
SEED = harness.PROJECT / "tests/fuzz/seeds/fuzz_history/years.csv"
NAME = "Slitter 2"


class History(harness.Case):
    def setUp(self):
        super().setUp()
        self.db = self.folder / "stands.db"

    def call(self, *words, date="2026-05-03", name=NAME):
        return ("history", "add", self.db, "--stand-name", name, "--date", date, *words)

    def add(self, *words, **how):
        return self.answered(*self.call(*words, **how), codes=(0,))

    def show(self, *words, codes=(0,)):
        return self.answered("history", "show", self.db, *words, codes=codes)

    def shown(self, *words, codes=(0,)):
        return json.loads(self.show(*words, "--json", codes=codes))["history"]

    def a_year(self):
        """New pads, and every month work and what is left of them."""
        self.add("pads", "depth=12mm", date="2025-01-01")
        for month, depth in enumerate(("11.2", "10.5", "9.6", "8.9", "8.1"), 2):
            self.add("energy", "energy=90GJ", "running_time=160h", date=f"2025-{month:02}-01")
            self.add("wear", f"depth={depth} mm", date=f"2025-{month:02}-01")

    def sound(self):
        with sqlite3.connect(self.db) as file:
            self.assertEqual(file.execute("PRAGMA integrity_check").fetchall(), [("ok",)])
            self.assertEqual(file.execute("PRAGMA foreign_key_check").fetchall(), [])
            return file.execute("SELECT count(*) FROM entry").fetchone()[0]


class Entries(History):
    def test_an_entry_is_kept_and_shown_with_what_was_given(self):
        self.assertEqual(self.add("wear", "brake=front", "pair=2", "depth=0.4in", "hottest=yes"),
                         "kept as entry 1 of Slitter 2: wear, 2026-05-03\n")
        entry = self.shown()["entries"][0]
        self.assertAlmostEqual(entry["depth"], 0.01016, 12)
        self.assertEqual((entry["brake"], entry["pair"], entry["hottest"], entry["date"]), ("front", "2", True, "2026-05-03"))
        self.assertIn("depth 0.400 in", self.show("--units", "us"))

    def test_every_kind_is_taken(self):
        for words in (("reading", "tension=150N", "pressure=2 bar", "diameter=600mm", "pairs=2", "temperature=140 degF"),
                      ("pads", "thickness=14mm", "limit=2mm", "reason=glazed", "grade=M"), ("wear", "thickness=13 mm"),
                      ("energy", "energy=3e6 ft*lbf", "rolls=12", "since=2026-04-01"),
                      ("fit", "torque_per_pressure=40 N*m/bar", "threshold=0.1bar", "drag=2N*m", "friction=0.38"),
                      ("note", "text=a loud day")):
            self.add(*words)
        self.assertEqual([each["kind"] for each in self.shown()["entries"]],
                         ["reading", "pads", "wear", "energy", "fit", "note"])

    def test_the_title_of_a_stand_file_names_the_stand(self):
        stand = harness.EXAMPLES[0]
        self.answered("history", "add", self.db, "--stand", stand, "--date", "2026-05-03", "note", "text=x", codes=(0,))
        self.assertIn('title = "' + self.shown()["stand"] + '"', stand.read_text(encoding="utf-8"))

    def test_the_constants_of_a_fit_come_out_of_its_answer(self):
        answer = self.file("answer.json", json.dumps({"fit": {"torque_per_pressure": 4.2e-4, "drag": {"value": 1.5}, "more": 3}}))
        self.add("fit", "--fit", answer)
        entry = self.shown()["entries"][0]
        self.assertEqual((entry["torque_per_pressure"], entry["drag"]), (4.2e-4, 1.5))
        for text in ("{", "[]", "{}", '{"fit": {"verdict": "fine"}}'):
            self.assertIn("fit", self.refused(*self.call("fit", "--fit", self.file("wrong.json", text))))

    def test_a_correction_takes_the_place_and_nothing_is_lost(self):
        self.add("wear", "depth=9mm")
        self.add("wear", "depth=8mm", "--corrects", "1")
        first, second = self.shown()["entries"]
        self.assertEqual((first["corrected_by"], second["corrects"], first["depth"]), (2, 1, 0.009))
        self.assertIn("corrected by 2", self.show())
        self.assertIn("corrected already", self.refused(*self.call("wear", "depth=7mm", "--corrects", "1")))
        self.assertIn("no earlier entry", self.refused(*self.call("wear", "depth=7mm", "--corrects", "9")))
        self.assertIn("no earlier entry", self.refused(*self.call("wear", "depth=7mm", "--corrects", "2", name="Other")))
        self.assertIn("number of an entry", self.refused(*self.call("wear", "depth=7mm", "--corrects", "first")))
        self.assertEqual(self.sound(), 2)

    def test_several_stands_live_in_one_file(self):
        self.add("note", "text=a", name="A")
        self.add("note", "text=b", name="B")
        told = self.refused("history", "show", self.db)
        self.assertIn("one of: A, B", told)
        self.assertEqual(self.shown("B")["entries"][0]["text"], "b")
        self.assertIn("one of: A, B", self.refused("history", "show", self.db, "C"))
        self.assertEqual(len(self.show("--csv").splitlines()), 3)


class Forecasts(History):
    def test_the_next_change_has_an_interval(self):
        self.a_year()
        forecast = self.shown()["forecast"]
        self.assertEqual((forecast["basis"], forecast["unit"]), ("energy", "J"))
        self.assertLess(forecast["date"]["low"], forecast["date"]["middle"])
        self.assertLess(forecast["date"]["middle"], forecast["date"]["high"])
        # 450 GJ wore 3.9 mm: 8.1 mm take about 930 GJ, ten months at 90 GJ a month.
        self.assertAlmostEqual(forecast["remaining"]["middle"] / 930e9, 1, delta=0.04)
        self.assertRegex(forecast["date"]["middle"], r"^2026-0[34]-")
        text = self.show()
        for part in ("Next change of pads: about 2026-0", "90 %: ", "What to measure next", "Cautions", "release the air"):
            self.assertIn(part, text)

    def test_the_table_has_every_entry_in_the_readers_units(self):
        self.a_year()
        for words, head, depth in (((), "depth [mm]", 12.0), (("--units", "us"), "depth [in]", 12 / 25.4)):
            rows = list(csv.DictReader(io.StringIO(self.show("--csv", *words))))
            self.assertEqual(len(rows), 11)
            self.assertEqual([rows[0][key] for key in ("number", "stand", "date", "kind")],
                             ["1", NAME, "2025-01-01", "pads"])
            self.assertAlmostEqual(float(rows[0][head]), depth, 8)

    def test_a_stand_file_helps_while_little_is_measured(self):
        self.add("pads", date="2025-01-01")
        self.add("energy", "energy=90GJ", date="2025-02-01")
        self.assertNotIn("forecast", self.shown())
        history = self.shown("--stand", harness.EXAMPLES[0])
        self.assertIn("forecast", history)
        self.assertGreater(history["expected"]["life"], 0)
        self.assertEqual(history["forecast"]["pads"][0]["rate_from_prior"], 1)

    def test_a_worn_pad_fails(self):
        self.add("pads", "depth=12mm", date="2025-01-01")
        self.add("wear", "depth=0mm", date="2025-04-01")
        self.assertIn("Change the pads now", self.show(codes=(1,)))

    def test_the_picture_is_drawn(self):
        self.a_year()
        self.show("--svg", self.folder / "figures")
        text = (self.folder / "figures/history-slitter-2.svg").read_text(encoding="utf-8")
        for part in ("Depth of the pads", "worn out", "pads changed", "2025"):
            self.assertIn(part, text)


class WrongCalls(History):
    def test_wrong_values_are_named_and_nothing_is_kept(self):
        for words, part in ((("wear", "depth=-3mm"), "cannot be negative"), (("wear", "depth=3bar"), "depth"),
                            (("wear", "dpeth=3mm"), "did you mean depth?"), (("waer", "depth=3mm"), "did you mean wear?"),
                            (("wear", "depth"), "KEY=VALUE"), (("wear",), "at least one of"), ((), "kind"),
                            (("energy", "tension=3N"), "an entry `energy` has no tension"),
                            (("wear", "depth=3mm", "depth=3mm"), "a second time")):
            told = self.refused(*self.call(*words))
            self.assertIn(part, told)
            self.assertIn("accepted", told)
        for date in ("2026-02-30", "3.5.2026", "today", "26-05-03"):
            self.assertIn(date, self.refused(*self.call("note", "text=x", date=date)))
        self.assertFalse(self.db.exists())

    def test_a_stand_must_be_named(self):
        self.assertIn("--stand-name", self.refused("history", "add", self.db, "note", "text=x"))
        self.assertIn("one line", self.refused(*self.call("note", "text=x", name="a\nb")))
        self.assertFalse(self.db.exists())

    def test_problems_are_in_the_json_too(self):
        done = harness.run(*self.call("wear", "depth=-3mm"), "--json")
        self.assertEqual(done.returncode, 2)
        self.assertEqual(json.loads(done.stdout)["problems"][0]["field"], "depth")

    def test_a_pad_that_grew_is_kept_with_a_warning(self):
        self.add("wear", "depth=8mm", date="2026-04-01")
        done = harness.run(*self.call("wear", "depth=9mm"))
        self.assertEqual(done.returncode, 0)
        self.assertIn("warning", done.stderr)
        self.assertIn("no change of pads", done.stderr)
        self.assertEqual(self.sound(), 2)

    def test_a_date_in_the_future_is_doubted(self):
        self.assertIn("future", harness.run(*self.call("note", "text=x", date="2199-01-01")).stderr)

    def test_values_are_never_part_of_a_statement(self):
        name = "x'); DROP TABLE entry; --"
        self.add("note", "text='; DELETE FROM value; --", name=name)
        self.assertEqual(self.shown(name)["entries"][0]["text"], "'; DELETE FROM value; --")


class WrongFiles(History):
    def left_alone(self, part, *more):
        before = self.db.read_bytes()
        for call in (("history", "show", self.db), self.call("note", "text=x"), *more):
            told = self.refused(*call)
            self.assertIn(part, told)
            self.assertIn(str(self.db), told)
        self.assertEqual(self.db.read_bytes(), before)
        self.assertEqual([path.name for path in self.folder.iterdir()], [self.db.name])

    def test_a_file_that_is_no_database(self):
        self.db.write_bytes(b"these are my notes\n" * 100)
        self.left_alone("no history")

    def test_a_database_of_another_program(self):
        with sqlite3.connect(self.db) as file:
            file.execute("CREATE TABLE stand (id INTEGER)")
        file.close()
        self.left_alone("another program")

    def test_a_newer_version(self):
        self.add("note", "text=x")
        with sqlite3.connect(self.db) as file:
            file.execute("PRAGMA user_version = 3")
        file.close()
        self.left_alone("newer program")

    def test_a_damaged_file(self):
        self.a_year()
        content = bytearray(self.db.read_bytes())
        for at in range(4096 + 8, len(content), 61):
            content[at] ^= 0x5A
        self.db.write_bytes(content)
        self.left_alone("damaged")

    def test_a_folder_and_a_file_that_is_not_there(self):
        self.assertIn("no such file", self.refused("history", "show", self.folder / "none.db"))
        self.assertFalse((self.folder / "none.db").exists())
        self.assertIn("folder", self.refused("history", "show", self.folder))

    def test_an_empty_file_is_a_new_history(self):
        self.db.write_bytes(b"")
        self.assertIn("empty", self.refused("history", "show", self.db))
        self.add("note", "text=x")
        self.assertEqual(self.sound(), 1)

    def test_out_never_replaces_the_file(self):
        self.add("note", "text=x")
        self.assertIn("would replace", self.refused("history", "show", self.db, "--out", self.db))


class Versions(History):
    def test_version_1_is_brought_up_to_date_and_keeps_everything(self):
        with sqlite3.connect(self.db) as file:
            file.executescript(VERSION1.read_text(encoding="utf-8"))
        file.close()
        entries = self.shown("Old slitter")["entries"]
        self.assertEqual([(each["number"], each["kind"]) for each in entries], [(1, "pads"), (2, "energy"), (3, "wear")])
        self.assertEqual((entries[1]["energy"], entries[2]["depth"], entries[2]["brake"]), (1.8e11, 0.0101, "front"))
        self.add("wear", "depth=10mm", "--corrects", "3", name="Old slitter")
        self.assertEqual(self.shown("Old slitter")["entries"][2]["corrected_by"], 5)
        with sqlite3.connect(self.db) as file:
            self.assertEqual(file.execute("PRAGMA user_version").fetchone(), (2,))
        file.close()
        self.assertEqual(self.sound(), 5)

    def test_entries_cannot_be_changed_or_deleted(self):
        self.add("wear", "depth=10mm")
        file = sqlite3.connect(self.db)
        for statement in ("UPDATE entry SET date = '2020-01-01'", "DELETE FROM entry", "UPDATE value SET number = 1",
                          "DELETE FROM value"):
            with self.assertRaises(sqlite3.IntegrityError):
                file.execute(statement)
        file.close()


class Together(History):
    def test_two_who_add_at_once_lose_nothing(self):
        count = 50
        script = 'for i in $(seq "$1"); do "$2" history add "$3" --stand-name "$4" --date 2026-05-03 note text="$5 $i" || exit 1; done'
        both = [subprocess.Popen(["sh", "-c", script, "sh", str(count), harness.PROGRAM, str(self.db), NAME, who],
                                 stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, env=harness.ENVIRONMENT)
                for who in ("first", "second")]
        for each in both:
            _, said = each.communicate(timeout=100)
            self.assertEqual(each.returncode, 0, said)
        self.assertEqual(self.sound(), 2 * count)
        texts = {each["text"] for each in self.shown()["entries"]}
        self.assertEqual(texts, {f"{who} {i}" for who in ("first", "second") for i in range(1, count + 1)})

    def test_one_who_is_killed_while_adding_leaves_a_sound_file(self):
        self.add("note", "text=before")
        told = 0
        for i in range(25):
            adding = subprocess.Popen([harness.PROGRAM, *map(str, self.call("note", f"text={i}"))],
                                      stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, env=harness.ENVIRONMENT)
            time.sleep(0.0006 * i)  # somewhere between its start and its end; where, is no matter
            adding.send_signal(signal.SIGKILL)
            told += b"kept" in adding.communicate()[0]
            self.assertGreaterEqual(self.sound(), 1 + told)  # what was told to be kept is kept
        self.assertGreaterEqual(len(self.shown()["entries"]), 1 + told)
        self.add("note", "text=after")

    def test_a_crash_in_the_middle_of_a_write_is_undone(self):
        """A file with its journal as a crash leaves them: pages half written, the old ones beside them."""
        self.a_year()
        before = self.shown()["entries"]
        crashed = self.folder / "crashed.db"
        file = sqlite3.connect(self.db, isolation_level=None)
        file.execute("PRAGMA cache_size = 1")
        file.execute("BEGIN IMMEDIATE")
        for i in range(400):
            file.execute("INSERT INTO entry (id, stand, date, kind) VALUES (?, 1, '2026-01-01', 'note')", (1000 + i,))
            file.execute("INSERT INTO value VALUES (?, 'text', NULL, ?)", (1000 + i, "x" * 150))
        journal = self.db.with_name(self.db.name + "-journal")
        self.assertTrue(journal.exists())
        shutil.copy(self.db, crashed)
        shutil.copy(journal, crashed.with_name(crashed.name + "-journal"))
        file.execute("ROLLBACK")
        file.close()
        self.db = crashed
        self.assertEqual(self.shown()["entries"], before)
        self.assertEqual(self.sound(), len(before))


if __name__ == "__main__":
    harness.main()
