"""Workbooks as people keep them, and workbooks made to do harm; what the program writes, read back."""

import csv
import io
import json
import os
import struct
import subprocess
import time
import zipfile

import harness
import workbooks
from workbooks import cell, packed, parts, rows_xml, sheet_xml, simple

STAND = harness.PROJECT / "examples" / "02-film-laminator.toml"
TRIALS = harness.PROJECT / "examples" / "02-film-laminator-trials.csv"
HEAD = ["Job", "Web", "Roll", "Line speed (m/min)", "Tension (N)"]
ROW = ["a", "PET 23", "800 on 152", 300, 150]


class Xlsx(harness.Case):
    def book(self, content, name="mix.xlsx"):
        path = self.folder / name
        path.write_bytes(content)
        return path

    def checked(self, content, *options):
        """The answer of check, as JSON, with the jobs of the workbook."""
        return json.loads(self.answered("check", STAND, "--jobs", self.book(content), "--json", *options))

    def job(self, content, name="a", *options):
        return next(job for job in self.checked(content, *options)["check"]["jobs"] if job["job"] == name)

    def told(self, content, *options):
        """What is said of a workbook that is not taken."""
        text = self.refused("check", STAND, "--jobs", self.book(content), *options)
        self.assertIn("mix.xlsx", text)
        self.assertIn("accepted: ", text)
        return text


class Reading(Xlsx):
    def test_a_mix_of_500_jobs_is_read_as_its_csv(self):
        rows = [HEAD] + [[f"job {i}", "PET 23", "800 on 152", 100 + i / 7, 100 + i / 3] for i in range(500)]
        text = io.StringIO()
        csv.writer(text).writerows(rows)
        plain = json.loads(self.answered("check", STAND, "--jobs", self.file("mix.csv", text.getvalue()), "--json"))
        sheet = self.checked(simple(rows))
        self.assertEqual(sheet["check"], plain["check"])
        self.assertEqual(len(sheet["check"]["jobs"]), len(json.loads(self.answered("check", STAND, "--json"))["check"]["jobs"]) + 500)

    def test_an_example_written_as_a_workbook_is_read_as_its_csv(self):
        path = self.folder / "trials.xlsx"
        self.assertEqual(harness.run("example", "film-laminator-trials", "--xlsx", path).returncode, 0)
        sheet = json.loads(self.answered("size", STAND, "--jobs", path, "--json"))
        self.assertEqual(sheet["choice"], json.loads(self.answered("size", STAND, "--jobs", TRIALS, "--json"))["choice"])
        self.assertIn("--force", self.refused("example", "film-laminator-trials", "--xlsx", path))
        self.assertIn("table", self.refused("example", "film-laminator", "--xlsx", self.folder / "stand.xlsx"))

    def test_what_columns_were_read_as_is_said(self):
        answer = self.checked(simple([HEAD + ["Operator"], ROW + ["Tom"]]))
        self.assertEqual([(read["column"], read["field"], read["unit"]) for read in answer["columns"]],
                         [("A", "name", ""), ("B", "web", ""), ("C", "roll", ""), ("D", "speed", "m/min"), ("E", "tension", "N"), ("F", "", "")])
        self.assertEqual(answer["problems"][0]["severity"], "warning")
        self.assertEqual(answer["problems"][0]["cell"], "F1")
        for command in ("check", "size", "plan"):
            text = self.answered(command, STAND, "--jobs", self.book(simple([HEAD, ROW])))
            self.assertIn("Columns read from ", text)
            self.assertRegex(text, r"D +Line speed \(m/min\) +speed +m/min")
        keys = self.answered("check", STAND, "--jobs", self.book(simple([["name", "web", "roll", "speed [m/min]"], ROW[:4]])))
        self.assertIn("each by its key: name, web, roll, speed [m/min]", keys)
        self.assertNotIn("Columns", self.answered("check", STAND))

    def test_numbers_keep_their_digits(self):
        self.assertEqual(self.job(simple([HEAD, ROW[:4] + [0.1 + 0.2 + 100]]))["tension"]["setpoint"], 0.1 + 0.2 + 100)
        self.assertEqual(self.job(simple([HEAD, ["1024.50", *ROW[1:]]]), "1024.50")["tension"]["setpoint"], 150)
        self.assertEqual(self.job(simple([HEAD, [1024, *ROW[1:]]]), "1024")["tension"]["setpoint"], 150)

    def test_per_cent_cells_are_per_cent_whatever_the_header_says(self):
        styles = ('<numFmts count="1"><numFmt numFmtId="170" formatCode="0.0&quot; of all&quot;\\ %"/>'
                  '<numFmt numFmtId="171" formatCode="0.0&quot; %&quot;"/></numFmts>'
                  '<cellXfs><xf numFmtId="0"/><xf numFmtId="9"/><xf numFmtId="170"/><xf numFmtId="171"/></cellXfs>')
        head = [*HEAD, "Tolerance (%)"]
        for style, stored, wanted in (("", 7, 0.07), ("1", 0.07, 0.07), ("2", 0.07, 0.07), ("3", 7, 0.07)):
            data = rows_xml([head]) + '<row r="2">' + "".join(cell(f"{'ABCDE'[x]}2", value) for x, value in enumerate(ROW)) + cell(
                "F2", stored, style) + "</row>"
            tension = self.job(packed(parts([("Mix", sheet_xml(data), "")], styles=styles)))["tension"]
            self.assertAlmostEqual(tension["high"] / tension["setpoint"] - 1, wanted, 12, style)

    def test_texts_of_every_kind(self):
        texts = ('<si><t>PET 23</t></si><si><r><t xml:space="preserve">800</t></r><r><rPr><b/></rPr><t xml:space="preserve"> </t></r>'
                 '<r><t>on 152</t></r><rPh sb="0" eb="1"><t>no</t></rPh></si><si><t xml:space="preserve">  a &amp; b_x000D_ </t></si>'
                 "<si><t><![CDATA[Job]]></t></si>")
        data = ('<row r="1">' + cell("A1", ("s", "<v>3</v>")) + "".join(cell(f"{'ABCDE'[x]}1", HEAD[x]) for x in range(1, 5)) + "</row>"
                + '<row r="2">' + cell("A2", ("s", "<v>2</v>")) + cell("B2", ("s", "<v>0</v>")) + cell("C2", ("s", "<v>1</v>"))
                + cell("D2", ("str", "<f>C9</f><v>300 m/min</v>")) + '<c r="E2"><f>75*2</f><v>150</v></c></row>')
        job = self.job(packed(parts([("Mix", sheet_xml(data), "")], texts=texts)), "a & b")
        self.assertEqual((job["web"], job["roll"], job["tension"]["setpoint"]), ("PET 23", "800 on 152", 150))

    def test_gaps_titles_units_and_empty_rows(self):
        data = ('<row r="2"><c r="B2" t="inlineStr"><is><t>Mix of the laminator</t></is></c></row>'
                + '<row r="5">' + "".join(cell(f"{'CDEFG'[x]}5", ["Job", "Web", "Roll", "Speed", "Tension"][x]) for x in range(5)) + "</row>"
                + '<row r="6">' + cell("F6", "m/min") + cell("G6", "[N]") + "</row>"
                + '<row r="9">' + "".join(cell(f"{'CDEFG'[x]}9", ROW[x]) for x in range(5)) + "</row>"
                + '<row r="1048576"><c r="XFD1048576" s="0"/></row>')
        answer = self.checked(packed(parts([("Mix", sheet_xml(data, '<mergeCells><mergeCell ref="B2:G2"/></mergeCells>'), "")])))
        self.assertEqual([read["column"] for read in answer["columns"]], list("CDEFG"))
        self.assertEqual(answer["problems"], [])
        self.assertEqual(answer["check"]["jobs"][-1]["job"], "a")

    def test_rows_and_cells_may_do_without_places(self):
        data = "".join("<row>" + "".join(cell("", value).replace(' r=""', "") for value in row) + "</row>" for row in (HEAD, ROW))
        self.assertEqual(self.job(packed(parts([("Mix", sheet_xml(data), "")])))["tension"]["setpoint"], 150)

    def test_names_may_carry_prefixes(self):
        made = parts([("Mix", sheet_xml(rows_xml([HEAD, ROW])), "")])
        for name, text in made.items():
            if "rels" not in name:
                text = text.replace("<", "<x:").replace("<x:/", "</x:").replace("<x:?", "<?").replace("xmlns=", "xmlns:x=")
                made[name] = text
        self.assertEqual(self.job(packed(made))["tension"]["setpoint"], 150)

    def test_parts_are_found_by_relations(self):
        made = parts([("Mix", "", ""), ("Other", "", "")])
        made = {name: text for name, text in made.items() if "sheets/" not in name}
        made["xl/_rels/workbook.xml.rels"] = workbooks.relations(
            [("r2", "worksheet", "worksheets/sheet1.xml"), ("r1", "worksheet", "/data/Mix.XML")])
        made["xl/worksheets/sheet1.xml"] = sheet_xml("")
        made["data/mix.xml"] = sheet_xml(rows_xml([HEAD, ROW]))
        self.assertEqual(self.job(packed(made))["tension"]["setpoint"], 150)

    def test_the_first_sheet_that_is_shown_or_the_named_one(self):
        sheets = [("Old", sheet_xml(rows_xml([HEAD, ["old", *ROW[1:]]])), "hidden"), ("Deep", sheet_xml(""), "veryHidden"),
                  ("May & June", sheet_xml(rows_xml([HEAD, ROW])), "visible"), ("Jul", sheet_xml(rows_xml([HEAD, ["b", *ROW[1:]]])), "")]
        content = packed(parts(sheets))
        self.job(content, "a")
        self.job(content, "old", "--sheet", "Old")
        self.job(content, "b", "--sheet", "jul")
        self.assertIn("one of: Old, Deep, May & June, Jul", self.told(content, "--sheet", "August"))
        self.assertIn("empty", self.told(content, "--sheet", "Deep"))
        self.assertIn("shows no worksheet", self.told(packed(parts(sheets[:2]))))
        self.assertIn("--jobs", self.refused("check", STAND, "--sheet", "Jul"))
        self.assertIn("text", self.refused("check", STAND, "--jobs", TRIALS, "--sheet", "Jul"))

    def test_standard_input_may_be_a_workbook(self):
        done = subprocess.run([harness.PROGRAM, "check", STAND, "--jobs", "-"], input=simple([HEAD, ROW]), capture_output=True,
                                      env=harness.ENVIRONMENT, check=False)
        self.assertEqual(done.returncode, 0, done.stderr)

    def test_problems_name_cells(self):
        rows = [HEAD, ROW, ["b", "PET 32", *ROW[2:]], ["c", *ROW[1:3], "fast", True], ["d", *ROW[1:4], ("e", "<f>1/0</f><v>#DIV/0!</v>")],
                [("e", "<v>#N/A</v>"), *ROW[1:]], ["f", *ROW[1:3], ("n", "<f>D2*2</f>"), 150]]
        text = self.refused("check", STAND, "--jobs", self.book(simple(rows)))
        for place, word in (("B3", "no web has this name"), ("D4", "'fast'"), ("E4", "TRUE"), ("E5", "#DIV/0!"), ("A6", "#N/A"), ("D7", "formula")):
            self.assertRegex(text, rf"mix\.xlsx:{place}: error: .*\n(.*\n)?.*{word}|mix\.xlsx:{place}: error: .*{word}")
        self.assertNotIn(" | ", text)
        done = harness.run("check", STAND, "--jobs", self.folder / "mix.xlsx", "--json")
        self.assertEqual([problem["cell"] for problem in json.loads(done.stdout)["problems"]], ["B3", "D4", "E4", "E5", "A6", "D7"])

    def test_a_long_list_of_problems_is_cut(self):
        book = self.book(simple([HEAD] + [[f"j{i}", *ROW[1:3], "fast", 150] for i in range(1500)]))
        text = self.refused("check", STAND, "--jobs", book)
        self.assertEqual(text.count("error: "), 200)
        self.assertIn("… and 1 300 more\n1 500 errors\n", text)
        answer = json.loads(harness.run("check", STAND, "--jobs", book, "--json").stdout)
        self.assertEqual((len(answer["problems"]), answer["problems_found"]), (1000, 1500))


class Hostile(Xlsx):
    def setUp(self):
        super().setUp()
        self.began = time.monotonic()

    def tearDown(self):
        self.assertLess(time.monotonic() - self.began, 60, "it takes too long to refuse")

    def good(self, **changed):
        return parts([("Mix", sheet_xml(rows_xml([HEAD, ROW])), "")], **changed)

    def test_a_part_that_unpacks_without_end(self):
        made = self.good()
        made["xl/worksheets/sheet1.xml"] = sheet_xml(" " * (200 << 20))
        content = packed(made)
        self.assertLess(len(content), 1 << 20)
        self.assertIn("more than 64 MB", self.told(content))

    def test_parts_that_are_too_much_together(self):
        made = parts([("Mix", sheet_xml(rows_xml([HEAD, ROW]) + " " * (60 << 20)), "")], texts=" " * (60 << 20), styles=" " * (60 << 20))
        self.assertIn("more than 128 MB", self.told(packed(made)))

    def test_a_size_that_is_a_lie(self):
        made = self.good()
        made["xl/worksheets/sheet1.xml"] = sheet_xml(" " * (70 << 20))
        content = bytearray(packed(made))
        for at in range(len(content) - 4):
            if content[at:at + 4] == b"PK\x01\x02" and b"sheet1.xml" in content[at + 46:at + 80]:
                content[at + 24:at + 28] = struct.pack("<I", 100)  # unpacked size in the directory
        self.told(bytes(content))

    def test_a_file_that_is_too_large(self):
        self.assertIn("32 MB", self.told(simple([HEAD, ROW]) + bytes(33 << 20)))

    def test_missing_parts(self):
        for part in ("xl/workbook.xml", "xl/worksheets/sheet1.xml"):
            made = self.good()
            del made[part]
            self.told(packed(made))
        made = self.good()
        del made["xl/_rels/workbook.xml.rels"]
        self.assertIn("no worksheet", self.told(packed(made)))
        made = self.good(texts="")
        del made["xl/sharedStrings.xml"]
        self.assertIn("sharedStrings.xml", self.told(packed(made)))
        self.assertIn("no workbook", self.told(packed({"readme.txt": "hello"})))
        self.assertIn("OpenDocument", self.told(packed({"content.xml": "<a/>"})))

    def test_shared_texts_that_are_not_there(self):
        for index in ("1", "-1", "99999999999999999999", "x"):
            rows = rows_xml([HEAD]) + f'<row r="2"><c r="A2" t="s"><v>{index}</v></c></row>'
            self.assertIn("A2", self.told(packed(parts([("Mix", sheet_xml(rows), "")], texts="<si><t>one</t></si>"))))
        self.assertIn("A2", self.told(packed(parts([("Mix", sheet_xml(rows), "")]))))

    def test_xml_that_is_none(self):
        for text in ("", "<", "<worksheet>", "no xml", "<a><b></a>", "<?xml version='1.0' encoding='UTF-16'?>"):
            made = self.good()
            made["xl/worksheets/sheet1.xml"] = text
            self.told(packed(made))

    def test_entities_are_not_expanded(self):
        bomb = '<!DOCTYPE a [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;"><!ENTITY c SYSTEM "file:///etc/passwd">]>'
        for entity in ("&b;", "&c;"):
            made = self.good()
            made["xl/worksheets/sheet1.xml"] = sheet_xml(rows_xml([HEAD, ["NAME", *ROW[1:]]])).replace("?>", "?>" + bomb).replace("NAME", entity)
            self.assertEqual(self.job(packed(made), entity)["web"], "PET 23")

    def test_nesting_without_end(self):
        made = self.good()
        made["xl/worksheets/sheet1.xml"] = "<a>" * 3_000_000
        self.told(packed(made))
        made["xl/worksheets/sheet1.xml"] = sheet_xml("<row>" * 1_000_000 + "</row>" * 1_000_000)
        self.told(packed(made))

    def test_rows_and_columns_beyond_all_bounds(self):
        for place in ("A100001", "IW2", "XFD1048576", "A99999999"):
            row = place.lstrip("ABCDEFGHIJKLMNOPQRSTUVWXYZ")
            rows = rows_xml([HEAD]) + f'<row r="{row}">{cell(place, 1)}</row>'
            self.assertIn("100000 rows", self.told(packed(parts([("Mix", sheet_xml(rows), "")]))))
        made = self.good()
        made["xl/worksheets/sheet1.xml"] = made["xl/worksheets/sheet1.xml"].replace("<sheetData>", '<dimension ref="A1:XFD1048576"/><sheetData>')
        self.job(packed(made))

    def test_rows_and_cells_out_of_place(self):
        for data in ('<row r="0"/>', '<row r="-1"/>', '<row r="x"/>', '<row r="99999999999999999999"/>',
                     f'<row r="2">{cell("A3", 1)}</row>', f'<row r="2">{cell("2", 1)}</row>', f'<row r="2">{cell("a2", 1)}</row>',
                     f'<row r="2">{cell("A2", 1)}</row><row r="2">{cell("A2", 1)}</row>'):
            self.told(packed(parts([("Mix", sheet_xml(rows_xml([HEAD]) + data), "")])))

    def test_one_text_in_many_cells(self):
        texts = f"<si><t>{'x' * 1_000_000}</t></si>"
        rows = "".join(f'<row r="{y}"><c r="A{y}" t="s"><v>0</v></c></row>' for y in range(1, 1000))
        self.assertIn("64 MB of text", self.told(packed(parts([("Mix", sheet_xml(rows), "")], texts=texts))))

    def test_old_encrypted_and_other_files(self):
        ole = bytes.fromhex("D0CF11E0A1B11AE1") + bytes(5000)
        self.assertIn(".xls", self.told(ole))
        self.assertIn("password", self.told(ole))
        self.assertIn("no workbook", self.told(b"name,web\n"))
        content = bytearray(simple([HEAD, ROW]))
        for at in range(len(content) - 4):  # the mark of an encrypted entry, in both headers
            if content[at:at + 4] == b"PK\x03\x04":
                content[at + 6] |= 1
            if content[at:at + 4] == b"PK\x01\x02":
                content[at + 8] |= 1
        self.assertIn("encrypted", self.told(bytes(content)))

    def test_damaged_archives(self):
        content = simple([HEAD, ROW])
        for size in (4, 30, 100, len(content) // 2, len(content) - 10):
            self.told(content[:size])
        self.told(b"PK\x03\x04" + os.urandom(2000))
        flipped = bytearray(content)
        with zipfile.ZipFile(io.BytesIO(content)) as archive:
            entry = archive.getinfo("xl/worksheets/sheet1.xml")
        at = entry.header_offset + 30 + len(entry.filename) + entry.compress_size // 2
        flipped[at] ^= 0xFF
        self.assertIn("damaged", self.told(bytes(flipped)))

    def test_any_byte_may_be_wrong(self):
        content = simple([HEAD, ROW])
        for at in range(0, len(content), 7):
            wrong = bytearray(content)
            wrong[at] ^= 0x55
            done = harness.run("check", STAND, "--jobs", self.book(bytes(wrong)))
            self.assertIn(done.returncode, (0, 2), (at, done.stderr))

    def test_bytes_that_are_no_utf8(self):
        made = self.good()
        made["xl/worksheets/sheet1.xml"] = sheet_xml(rows_xml([HEAD, ["caf\u00e9", *ROW[1:]]])).encode().replace(b"\xc3\xa9", b"\xe9")
        self.job(packed(made), "caf\ufffd")


class Writing(Xlsx):
    def written(self, *arguments):
        path = self.folder / "out.xlsx"
        text = self.answered(*arguments, "--xlsx", path)
        self.assertEqual(text, self.answered(*arguments), "the answer itself stays as it is")
        return workbooks.read(path)

    def assert_same_table(self, sheet, text):
        rows = list(csv.reader(io.StringIO(text, newline=""), strict=True))
        found = workbooks.table(sheet)
        self.assertEqual(found[0], rows[0])
        self.assertEqual(len(found), len(rows))
        for row, wanted in zip(found[1:], rows[1:]):
            for value, stated in zip(row, wanted, strict=True):
                if isinstance(value, float):
                    self.assertAlmostEqual(value, float(stated), delta=abs(value) * 1e-9)
                else:
                    self.assertEqual(value, stated)

    def test_jobs_are_those_of_the_csv(self):
        for example in harness.EXAMPLES:
            for call in (["check"], ["size"], ["size", "--all"], ["plan"], ["size", "--units", "us"]):
                book = self.written(*call, example)
                self.assert_same_table(book["Jobs"], self.answered(*call, example, "--csv"))
                self.assertEqual("Limits" in book, call[0] == "size")

    def test_limits_are_those_of_the_json(self):
        example = harness.EXAMPLES[0]
        answer = json.loads(self.answered("size", example, "--json"))
        rows = workbooks.table(self.written("size", example)["Limits"])
        wanted = [(job["job"], limit) for job in answer["choice"]["recommended"]["jobs"] for limit in job["limits"]]
        self.assertEqual(len(rows) - 1, len(wanted))
        for row, (job, limit) in zip(rows[1:], wanted):
            line = dict(zip(rows[0], row))
            self.assertEqual((line["job"], line["limit"], line["state"]), (job, limit["name"], limit["state"]))
            self.assertAlmostEqual(line["margin"], limit["margin"], delta=1e-9)
            if line["unit"] == "bar":
                self.assertAlmostEqual(line["value"] * 1e5, limit["value"], delta=1e-6 * abs(limit["value"]))
            if line["diameter [mm]"] != "":
                self.assertAlmostEqual(line["diameter [mm]"] / 1000, limit["diameter"], delta=1e-9)

    def test_the_answer_is_there_in_words(self):
        example = harness.EXAMPLES[0]
        answer = json.loads(self.answered("size", example, "--json"))
        sheet = self.written("size", example)["Answer"]
        facts = {label: sheet.get("B" + place[1:]) for place, label in sheet.items() if place[0] == "A"}
        self.assertEqual(facts["command"], "size")
        self.assertEqual(facts["outcome"], answer["outcome"])
        self.assertIn(answer["choice"]["recommended"]["fit"]["brake"], facts["fit"])
        self.assertEqual(facts["why"], answer["choice"]["why"]["text"])
        for caution in answer["choice"]["cautions"]:
            self.assertIn(caution["text"], sheet.values())

    def test_heads_are_bold_and_stay_in_view(self):
        self.written("size", harness.EXAMPLES[0])
        with zipfile.ZipFile(self.folder / "out.xlsx") as archive:
            sheet = archive.read("xl/worksheets/sheet1.xml").decode()
            self.assertIn('state="frozen"', sheet)
            self.assertIn("<cols>", sheet)
            self.assertIn("<b/>", archive.read("xl/styles.xml").decode())

    def test_equal_answers_give_equal_bytes(self):
        self.written("size", harness.EXAMPLES[0])
        first = (self.folder / "out.xlsx").read_bytes()
        time.sleep(2.1)  # a ZIP archive counts in steps of two seconds
        self.written("size", harness.EXAMPLES[0])
        self.assertEqual(first, (self.folder / "out.xlsx").read_bytes())

    def test_a_name_is_never_a_formula(self):
        job = "=1+1"
        book = self.written("check", STAND, "--jobs", self.file("mix.csv", f"name,web,roll,speed [m/min]\n{job},PET 23,800 on 152,300\n"))
        self.assertIn(job, book["Jobs"].values())

    def test_it_goes_with_json_and_csv_and_a_file(self):
        example = harness.EXAMPLES[0]
        for option in ("--json", "--csv"):
            self.assertIn("Limits", self.written("size", example, option))
        done = harness.run("size", example, "--out", self.folder / "a.txt", "--xlsx", self.folder / "b.xlsx")
        self.assertIn(done.returncode, (0, 1))
        self.assertEqual(done.stdout, "")
        self.assertEqual(sorted(path.name for path in self.folder.iterdir()), ["a.txt", "b.xlsx", "out.xlsx"], "nothing is left beside")

    def test_bad_input_writes_nothing_and_files_that_are_read_stay(self):
        stand = self.file("stand.toml", "[line]\n")
        self.refused("size", stand, "--xlsx", self.folder / "out.xlsx")
        self.assertFalse((self.folder / "out.xlsx").exists())
        book = self.book(simple([HEAD, ROW]))
        self.assertIn("--xlsx", self.refused("size", STAND, "--jobs", book, "--xlsx", book))
        self.assertIn("same file", self.refused("size", STAND, "--out", self.folder / "a", "--xlsx", self.folder / "a"))
        self.assertIn("cannot be written", self.refused("size", STAND, "--xlsx", self.folder / "no" / "out.xlsx"))


if __name__ == "__main__":
    harness.main()
