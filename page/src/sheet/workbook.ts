// A workbook (.xlsx) as the table of jobs that the core reads: the same text that the command line makes of it
// (ECMA-376, Office Open XML: relations, shared texts, styles, worksheets).
import { sheetAsCsv, showsPerCent, withoutEscapes, type Shared } from './cells';
import { attribute, decoded, readXml, type Attributes } from './xml';
import { Archive, isOle, isZip, Unreadable, workbookWanted } from './zip';

export interface SheetText {
  name: string;
  text: string; // CSV, a line for each row of the sheet
}

/** A part that another one refers to. */
interface Relation {
  id: string;
  type: string; // last word of its type: "worksheet"
  part: string;
}

/** "xl/workbook.xml" + "worksheets/sheet1.xml" → "xl/worksheets/sheet1.xml"; "/xl/a.xml" → "xl/a.xml". */
export function partFrom(base: string, target: string): string {
  if (target.startsWith('/')) return target.slice(1);
  let folder = base.slice(0, base.lastIndexOf('/') + 1);
  let rest = target;
  while (rest.startsWith('../')) {
    rest = rest.slice(3);
    folder = folder.slice(0, folder.lastIndexOf('/', folder.length - 2) + 1);
  }
  return folder + rest.replace(/^\.\//, '');
}

interface Found {
  path: string;
  attributes: Attributes;
}

class Book {
  private main = '';
  private relations: Relation[] = [];

  constructor(private readonly archive: Archive) {}

  async read(): Promise<SheetText[]> {
    const roots = await this.relationsOf('');
    this.main = roots.find((one) => one.type === 'officeDocument')?.part ?? 'xl/workbook.xml';
    if (!this.archive.has(this.main)) this.refuseOtherFiles();
    if (this.main.endsWith('.bin')) throw new Unreadable('the workbook is saved in the binary form (.xlsb)', workbookWanted);
    this.relations = await this.relationsOf(this.main);
    const sheets = await this.worksheets();
    const shown = sheets.filter((one) => !one.hidden);
    if (shown.length === 0)
      throw new Unreadable('the workbook shows no worksheet', sheets.length === 0 ? workbookWanted : `one that is shown; hidden here: ${sheets.map((one) => one.name).join(', ')}`);
    return this.contents(shown, { texts: await this.texts(), perCent: await this.perCentStyles() });
  }

  private refuseOtherFiles(): never {
    if (this.archive.has('content.xml')) throw new Unreadable('this is an OpenDocument file', workbookWanted);
    throw new Unreadable('the file is an archive, but holds no workbook', workbookWanted);
  }

  /** The first sheet must be readable; of the others those that are not are no candidates. */
  private async contents(shown: { name: string; part: string }[], shared: Shared): Promise<SheetText[]> {
    const found: SheetText[] = [];
    for (const [i, { name, part }] of shown.entries()) {
      try {
        const text = sheetAsCsv(await this.xml(part), part, shared);
        if (text !== '') found.push({ name, text });
      } catch (error) {
        if (i === 0 || !(error instanceof Unreadable)) throw error;
      }
    }
    if (found.length === 0) throw new Unreadable(shown.length > 1 ? 'every sheet is empty' : 'the sheet is empty', 'a table of jobs: a header row, and a row for each job');
    return found;
  }

  private async xml(part: string): Promise<string> {
    return decoded(await this.archive.unpacked(part));
  }

  /** Elements of a part, each with the names of those around it: "workbook/sheets/sheet". */
  private async elements(part: string): Promise<Found[]> {
    const found: Found[] = [];
    readXml(await this.xml(part), part, { open: (path, attributes) => void found.push({ path: path.join('/'), attributes }) });
    return found;
  }

  private async relationsOf(part: string): Promise<Relation[]> {
    const name = part.lastIndexOf('/') + 1;
    const list = `${part.slice(0, name)}_rels/${part.slice(name)}.rels`;
    if (!this.archive.has(list)) return [];
    return (await this.elements(list)).filter((one) => one.path === 'Relationships/Relationship').map(({ attributes }) => ({
      id: attribute(attributes, 'Id'),
      type: attribute(attributes, 'Type').split('/').pop() ?? '',
      part: partFrom(part, attribute(attributes, 'Target')),
    }));
  }

  /** In the order of the workbook; sheets of charts are none. */
  private async worksheets(): Promise<{ name: string; part: string; hidden: boolean }[]> {
    const listed = (await this.elements(this.main)).filter((one) => one.path === 'workbook/sheets/sheet');
    return listed.flatMap(({ attributes }) => {
      const id = attribute(attributes, 'id', true);
      const part = this.relations.find((one) => one.id === id && one.type === 'worksheet')?.part;
      const state = attribute(attributes, 'state');
      return part ? [{ name: attribute(attributes, 'name'), part, hidden: state !== '' && state !== 'visible' }] : [];
    });
  }

  /** Texts that cells share: plain, or runs of rich text; readings of foreign signs are left out. */
  private async texts(): Promise<string[] | null> {
    const part = this.relations.find((one) => one.type === 'sharedStrings')?.part;
    if (part === undefined) return null;
    const all: string[] = [];
    let text = '';
    readXml(await this.xml(part), part, {
      open: (path) => void (path.join('/') === 'sst/si' && (text = '')),
      text: (path, more) => void (/^sst\/si\/(?:r\/)?t$/.test(path.join('/')) && (text += more)),
      close: (path) => void (path.join('/') === 'sst/si' && all.push(withoutEscapes(text))),
    });
    return all;
  }

  /** Styles whose number format shows per cent: 9 and 10 of the built-in ones, and those of the workbook's own. */
  private async perCentStyles(): Promise<ReadonlySet<number>> {
    const part = this.relations.find((one) => one.type === 'styles')?.part;
    if (part === undefined) return new Set();
    const all = await this.elements(part);
    const formats = new Set(['9', '10']);
    for (const { path, attributes } of all)
      if (path === 'styleSheet/numFmts/numFmt' && showsPerCent(attribute(attributes, 'formatCode'))) formats.add(attribute(attributes, 'numFmtId'));
    const styles = all.filter((one) => one.path === 'styleSheet/cellXfs/xf');
    return new Set(styles.flatMap(({ attributes }, i) => (formats.has(attribute(attributes, 'numFmtId')) ? [i] : [])));
  }
}

const isWorkbookName = (name: string): boolean => /\.(?:xlsx|xlsm)$/i.test(name);

/** True for a file that is to be read as a workbook, or refused as one. */
export const looksLikeWorkbook = (name: string, bytes: Uint8Array): boolean => isZip(bytes) || isOle(bytes) || isWorkbookName(name) || /\.(?:xls|xlsb|ods)$/i.test(name);

/**
 * The sheets of a workbook that are shown and hold something, in its order. Throws Unreadable with what is wrong and what
 * is accepted.
 */
export async function sheetsOf(bytes: Uint8Array): Promise<SheetText[]> {
  if (isOle(bytes)) throw new Unreadable('the file is an old workbook (.xls) or one with a password', 'a workbook saved as .xlsx without a password, or the sheet as CSV');
  if (!isZip(bytes)) throw new Unreadable('the file is no workbook, whatever its name says', workbookWanted);
  return new Book(new Archive(bytes)).read();
}
