// Workbooks made here byte by byte (ECMA-376 part 1, APPNOTE.TXT), so that the reader is judged by the file format alone.
import { deflateRawSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { cellName, clean, inPerCent, placeOf, shortest, showsPerCent } from '../src/sheet/cells';
import { sheetsOf } from '../src/sheet/workbook';
import { readXml } from '../src/sheet/xml';
import { Archive, crc32, Unreadable } from '../src/sheet/zip';

const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const rel = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const packageRel = 'http://schemas.openxmlformats.org/package/2006/relationships';

interface Made { [part: string]: string | Buffer }

/** A ZIP archive; `how` spoils it. */
function zipped(parts: Made, how: { method?: number; flags?: number; size?: number; check?: number } = {}): Uint8Array {
  const local: Buffer[] = [];
  const directory: Buffer[] = [];
  let at = 0;
  for (const [name, content] of Object.entries(parts)) {
    const raw = Buffer.from(content);
    const method = how.method ?? 8;
    const packed = method === 8 ? deflateRawSync(raw) : raw;
    const check = how.check ?? crc32(raw);
    const head = Buffer.alloc(30);
    [0x04034b50].forEach((one) => head.writeUInt32LE(one, 0));
    head.writeUInt16LE(20, 4); head.writeUInt16LE(how.flags ?? 0, 6); head.writeUInt16LE(method, 8);
    head.writeUInt32LE(check, 14); head.writeUInt32LE(packed.length, 18); head.writeUInt32LE(how.size ?? raw.length, 22); head.writeUInt16LE(name.length, 26);
    const entry = Buffer.alloc(46);
    entry.writeUInt32LE(0x02014b50, 0); entry.writeUInt16LE(20, 4); entry.writeUInt16LE(20, 6); entry.writeUInt16LE(how.flags ?? 0, 8); entry.writeUInt16LE(method, 10);
    entry.writeUInt32LE(check, 16); entry.writeUInt32LE(packed.length, 20); entry.writeUInt32LE(how.size ?? raw.length, 24); entry.writeUInt16LE(name.length, 28); entry.writeUInt32LE(at, 42);
    local.push(head, Buffer.from(name), packed);
    directory.push(entry, Buffer.from(name));
    at += 30 + name.length + packed.length;
  }
  const size = directory.reduce((sum, one) => sum + one.length, 0);
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0); end.writeUInt16LE(Object.keys(parts).length, 8); end.writeUInt16LE(Object.keys(parts).length, 10); end.writeUInt32LE(size, 12); end.writeUInt32LE(at, 16);
  return new Uint8Array(Buffer.concat([...local, ...directory, end]));
}

const relations = (links: [string, string, string][]): string =>
  `<Relationships xmlns="${packageRel}">${links.map(([id, kind, target]) => `<Relationship Id="${id}" Type="${rel}/${kind}" Target="${target}"/>`).join('')}</Relationships>`;
const sheet = (data: string): string => `<?xml version="1.0" encoding="UTF-8"?><worksheet xmlns="${main}"><sheetData>${data}</sheetData></worksheet>`;

interface Given { name: string; xml: string; state?: string }
function parts(sheets: Given[], more: { texts?: string; styles?: string } = {}): Made {
  const links: [string, string, string][] = sheets.map((_, i) => [`r${i + 1}`, 'worksheet', `worksheets/sheet${i + 1}.xml`]);
  const made: Made = Object.fromEntries(sheets.map((one, i) => [`xl/worksheets/sheet${i + 1}.xml`, one.xml]));
  if (more.texts !== undefined) { links.push(['s', 'sharedStrings', 'sharedStrings.xml']); made['xl/sharedStrings.xml'] = `<sst xmlns="${main}">${more.texts}</sst>`; }
  if (more.styles !== undefined) { links.push(['t', 'styles', 'styles.xml']); made['xl/styles.xml'] = `<styleSheet xmlns="${main}">${more.styles}</styleSheet>`; }
  const listed = sheets.map((one, i) => `<sheet name="${one.name}" sheetId="${i + 1}" r:id="r${i + 1}"${one.state ? ` state="${one.state}"` : ''}/>`).join('');
  return {
    '_rels/.rels': relations([['m', 'officeDocument', 'xl/workbook.xml']]),
    'xl/workbook.xml': `<workbook xmlns="${main}" xmlns:r="${rel}"><sheets>${listed}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': relations(links),
    ...made,
  };
}
const oneSheet = (data: string, more: { texts?: string; styles?: string } = {}): Uint8Array => zipped(parts([{ name: 'Mix', xml: sheet(data) }], more));
const csv = async (data: string, more = {}): Promise<string> => (await sheetsOf(oneSheet(data, more)))[0]!.text;
const refusal = async (bytes: Uint8Array): Promise<Unreadable> => sheetsOf(bytes).then(
  () => { throw new Error('it was read'); },
  (error: unknown) => { expect(error).toBeInstanceOf(Unreadable); return error as Unreadable; });
const row = (n: number, cells: string): string => `<row r="${n}">${cells}</row>`;

describe('a worksheet as CSV', () => {
  it('has a line for each row of the sheet, cells in their columns', async () => {
    expect(await csv(row(2, '<c r="B2" t="inlineStr"><is><t>a, "b"</t></is></c><c r="D2"><v>3</v></c>') + row(4, '<c r="A4"><v>1.5</v></c>'))).toBe('\n,"a, ""b""",,3\n\n1.5\n');
    expect(await csv('<row><c><v>1</v></c><c><v>2</v></c></row><row><c><v>3</v></c></row>')).toBe('1,2\n3\n');
  });
  it('takes shared and rich texts, without readings, with escapes read', async () => {
    const texts = '<si><t>plain</t></si><si><r><rPr/><t xml:space="preserve">rich </t></r><r><t>text</t></r><rPh><t>reading</t></rPh></si><si><t>a_x000A_b &amp; &#181;m</t></si>';
    expect(await csv(row(1, '<c r="A1" t="s"><v>0</v></c><c r="B1" t="s"><v>1</v></c><c r="C1" t="s"><v>2</v></c>'), { texts })).toBe('plain,rich text,"a\nb & µm"\n');
  });
  it('writes numbers with all their digits, per cent as such, booleans and errors as words, formulas by their value', async () => {
    const styles = '<numFmts><numFmt numFmtId="164" formatCode="0.0%"/><numFmt numFmtId="165" formatCode="0&quot;%&quot;"/></numFmts><cellXfs><xf numFmtId="0"/><xf numFmtId="9"/><xf numFmtId="164"/><xf numFmtId="165"/></cellXfs>';
    const cells = '<c r="A1"><v>0.30000000000000004</v></c><c r="B1" s="1"><v>0.07</v></c><c r="C1" s="2"><v>0.125</v></c><c r="D1" s="3"><v>5</v></c>'
      + '<c r="E1" t="b"><v>1</v></c><c r="F1" t="e"><v>#N/A</v></c><c r="G1"><f>A1*2</f><v>0.6</v></c><c r="H1"><f>A1*3</f></c><c r="I1" t="str"><f>T(1)</f></c><c r="J1" s="0"><v>45000</v></c>';
    expect(await csv(row(1, cells), { styles })).toBe('0.30000000000000004,7 %,12.5 %,5,TRUE,#N/A,0.6,=A1*3,,45000\n');
  });
  it('reads any prefix, CDATA and comments, and expands no entity of a document type', async () => {
    const data = `<!DOCTYPE a [<!ENTITY b "ha"><!ENTITY c SYSTEM "file:///x">]><x:worksheet xmlns:x="${main}"><x:sheetData><!-- <x:row/> --><x:row r="1"><x:c r="A1" t="inlineStr"><x:is><x:t><![CDATA[<&>]]>&b;</x:t></x:is></x:c></x:row></x:sheetData></x:worksheet>`;
    const [only] = await sheetsOf(zipped(parts([{ name: 'Mix', xml: data }])));
    expect(only!.text).toBe('<&>&b;\n');
  });
  it('reads UTF-16 and bytes that are no UTF-8', async () => {
    const made = parts([{ name: 'Mix', xml: sheet(row(1, '<c r="A1" t="inlineStr"><is><t>µ</t></is></c>')) }]);
    const utf16 = zipped({ ...made, 'xl/worksheets/sheet1.xml': Buffer.from('\ufeff' + String(made['xl/worksheets/sheet1.xml']), 'utf16le') });
    expect((await sheetsOf(utf16))[0]!.text).toBe('µ\n');
    const wrong = zipped({ ...made, 'xl/worksheets/sheet1.xml': Buffer.from(String(made['xl/worksheets/sheet1.xml']), 'latin1') });
    expect((await sheetsOf(wrong))[0]!.text).toBe('\ufffd\n');
  });
});

describe('a workbook', () => {
  const cell = (text: string) => sheet(row(1, `<c r="A1" t="inlineStr"><is><t>${text}</t></is></c>`));
  it('gives its sheets that are shown and hold something', async () => {
    const sheets = [{ name: 'Old', xml: cell('old'), state: 'hidden' }, { name: 'Deep', xml: cell('deep'), state: 'veryHidden' }, { name: 'May &amp; June', xml: cell('a'), state: 'visible' }, { name: 'Empty', xml: sheet('') }, { name: 'Jul', xml: cell('b') }];
    expect(await sheetsOf(zipped(parts(sheets)))).toEqual([{ name: 'May & June', text: 'a\n' }, { name: 'Jul', text: 'b\n' }]);
    expect((await refusal(zipped(parts(sheets.slice(0, 2))))).message).toContain('shows no worksheet');
    expect((await refusal(zipped(parts([{ name: 'Mix', xml: sheet('') }])))).message).toContain('empty');
  });
  it('may be stored without packing, and name its parts in any case', async () => {
    const made = parts([{ name: 'Mix', xml: cell('a') }]);
    const moved: Made = { ...made, 'xl/_rels/workbook.xml.rels': relations([['r1', 'worksheet', '/DATA/Mix.XML']]), 'data/mix.xml': cell('b') };
    expect((await sheetsOf(zipped(moved, { method: 0 })))[0]!.text).toBe('b\n');
  });
  it('says what else a file is', async () => {
    expect((await refusal(new Uint8Array(Buffer.from('d0cf11e0a1b11ae1' + '00'.repeat(600), 'hex')))).message).toContain('.xls');
    expect((await refusal(new Uint8Array(Buffer.from('name,web\n')))).message).toContain('no workbook');
    expect((await refusal(zipped({ 'readme.txt': 'hello' }))).message).toContain('holds no workbook');
    expect((await refusal(zipped({ 'content.xml': '<a/>' }))).message).toContain('OpenDocument');
    expect((await refusal(zipped(parts([{ name: 'Mix', xml: cell('a') }]), { flags: 1 }))).message).toContain('encrypted');
    expect((await refusal(zipped({ '_rels/.rels': relations([['m', 'officeDocument', 'xl/workbook.bin']]), 'xl/workbook.bin': '' }))).message).toContain('.xlsb');
  });
});

describe('a hostile workbook', () => {
  const good = () => parts([{ name: 'Mix', xml: sheet(row(1, '<c r="A1"><v>1</v></c>')) }]);
  it('that unpacks without end is stopped, whatever its directory says', async () => {
    const made = { ...good(), 'xl/worksheets/sheet1.xml': sheet(' '.repeat(80 * 2 ** 20)) };
    const bytes = zipped(made, { size: 100 });
    expect(bytes.length).toBeLessThan(2 ** 20);
    expect((await refusal(bytes)).message).toContain('more than 64 MB');
  }, 30_000);
  it('that is too large is not opened', () => {
    expect(() => new Archive(new Uint8Array(33 * 2 ** 20))).toThrow('32 MB');
  });
  it('with a wrong check sum, a cut or a missing part is damaged', async () => {
    expect((await refusal(zipped(good(), { check: 1 }))).message).toContain('check sum');
    const bytes = zipped(good());
    for (const size of [4, 30, 100, bytes.length >> 1, bytes.length - 10]) await refusal(bytes.slice(0, size));
    const { 'xl/worksheets/sheet1.xml': _, ...without } = good();
    expect((await refusal(zipped(without))).message).toContain('has no part');
  });
  it('with any byte wrong is read or refused, and never anything else', async () => {
    const bytes = zipped(good());
    for (let at = 0; at < bytes.length; at += 3) {
      const wrong = bytes.slice();
      wrong[at]! ^= 0x55;
      await sheetsOf(wrong).catch((error: unknown) => expect(error).toBeInstanceOf(Unreadable));
    }
  });
  it('with cells out of place, shared texts that are not there or too many rows is refused by cell', async () => {
    for (const data of ['<row r="0"/>', '<row r="-1"/>', '<row r="x"/>', '<row r="99999999999999999999"/>', row(2, '<c r="A3"><v>1</v></c>'), row(2, '<c r="a2"><v>1</v></c>'), row(2, '<c r="A2"><v>1</v></c>') + row(2, '<c r="A2"><v>1</v></c>')])
      await refusal(oneSheet(data));
    for (const index of ['1', '-1', '99999999999999999999', 'x'])
      expect((await refusal(oneSheet(row(2, `<c r="A2" t="s"><v>${index}</v></c>`), { texts: '<si><t>one</t></si>' }))).cell).toBe('A2');
    for (const place of ['A100001', 'IW2', 'XFD1048576', 'A99999999'])
      expect((await refusal(oneSheet(row(Number(place.replace(/[A-Z]/g, '')), `<c r="${place}"><v>1</v></c>`)))).message).toContain('100000 rows');
  });
  it('whose XML is none is refused', async () => {
    for (const text of ['', '<', '<worksheet>', 'no xml', '<a><b></a>', '<a></a><b/>', '<a b=c/>', '<a', "<?xml version='1.0'?>"])
      await refusal(zipped({ ...good(), 'xl/worksheets/sheet1.xml': text }));
    expect(() => readXml('<a>'.repeat(2_000_000), 'x', {})).toThrow(Unreadable);
  });
});

describe('numbers and places', () => {
  // The first: plain from 1e-4 to 1e15, as C++ libraries write the shortest digits. The second: '%.*g' of Python, fewest digits that are the value again.
  it('are written as the command line writes them', () => {
    expect([0, 1, -2.5, 0.0001, 0.00001, 1e15, 1e16, 123456789.125, 5e-324].map(shortest)).toEqual(['0', '1', '-2.5', '0.0001', '1e-05', '1000000000000000', '1e+16', '123456789.125', '5e-324']);
    expect([0, 0.07, 1, 0.333, 12.5, 1e-9].map(inPerCent)).toEqual(['0 %', '7 %', '1e+02 %', '33.300000000000004 %', '1.25e+03 %', '1.0000000000000001e-07 %']);
  });
  it('are found', () => {
    expect(placeOf('AA27')).toEqual({ row: 27, column: 27 });
    expect(['A0', 'a1', '1', 'A', 'A-1', 'A1B', ''].map(placeOf)).toEqual([null, null, null, null, null, null, null]);
    expect([1, 26, 27, 256].map((column) => cellName(3, column))).toEqual(['A3', 'Z3', 'AA3', 'IV3']);
  });
  it('of texts are cleaned', () => {
    expect(clean('\u00a0 a\u0007b\r\nc \t')).toBe('a b\nc');
    expect(['0%', '0"%"', '0\\%', '#.0 %;-0'].map(showsPerCent)).toEqual([true, false, false, true]);
  });
});
