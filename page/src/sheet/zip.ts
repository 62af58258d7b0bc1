// The parts of a workbook file: a ZIP archive, unpacked within limits. The browser inflates; the directory is read here
// (APPNOTE.TXT 6.3.3, sections 4.3 and 4.5: end record, central directory, sizes beyond 32 bits).

/** Why a workbook is not read. `accepted` says what would be. */
export class Unreadable extends Error {
  constructor(what: string, readonly accepted: string, readonly cell = '') {
    super(what);
  }
}

export const workbookWanted = 'a workbook saved as .xlsx, or the sheet as CSV';
export const mostPacked = 32 * 2 ** 20; // bytes of the file
export const mostOfAPart = 64 * 2 ** 20; // bytes, unpacked
export const mostUnpacked = 128 * 2 ** 20; // bytes of all parts that are read

const megabytes = (bytes: number): string => `${bytes >> 20} MB`;
const begins = (bytes: Uint8Array, with_: readonly number[]): boolean => with_.every((one, i) => bytes[i] === one);

export const isZip = (bytes: Uint8Array): boolean => begins(bytes, [0x50, 0x4b, 3, 4]);
/** An .xls, or a workbook with a password: both are OLE files. */
export const isOle = (bytes: Uint8Array): boolean => begins(bytes, [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);

interface Entry {
  at: number; // of its local header
  packed: number; // bytes
  method: number; // 0 as it is, 8 deflated
  encrypted: boolean;
  check: number; // CRC-32
}

const damaged = (what: string) => new Unreadable(`the file begins as a workbook but is damaged: ${what}`, workbookWanted);

export class Archive {
  private readonly view: DataView;
  private readonly entries: Map<string, Entry>;
  private readonly small = new Map<string, string>(); // names without their capitals
  private total = 0;

  /** Throws Unreadable when the bytes are no archive, or too many. */
  constructor(private readonly bytes: Uint8Array) {
    if (bytes.length > mostPacked) throw new Unreadable(`the workbook is larger than ${megabytes(mostPacked)}`, workbookWanted);
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    try {
      this.entries = this.directory();
    } catch (error) {
      throw error instanceof RangeError ? damaged('its directory ends too early') : error;
    }
    for (const name of this.entries.keys()) this.small.set(name.toLowerCase(), name);
  }

  /** True when a part of that name is there; case does not count. */
  has(part: string): boolean {
    return this.find(part) !== undefined;
  }

  /** The bytes of a part; throws Unreadable when it is missing, encrypted, damaged or too large. */
  async unpacked(part: string): Promise<Uint8Array> {
    const entry = this.find(part);
    if (!entry) throw new Unreadable(`the workbook has no part ${part}`, workbookWanted);
    if (entry.encrypted) throw new Unreadable('the workbook is encrypted', 'a workbook without a password');
    const from = this.content(entry, part);
    const packed = this.bytes.subarray(from, from + entry.packed);
    const whole = await this.counted(packed, entry.method, part);
    if (crc32(whole) !== entry.check) throw new Unreadable(`part ${part} is damaged: its check sum is wrong`, workbookWanted);
    return whole;
  }

  private find(part: string): Entry | undefined {
    return this.entries.get(part) ?? this.entries.get(this.small.get(part.toLowerCase()) ?? '');
  }

  private u16 = (at: number) => this.view.getUint16(at, true);
  private u32 = (at: number) => this.view.getUint32(at, true);
  private u64 = (at: number) => Number(this.view.getBigUint64(at, true));

  private directory(): Map<string, Entry> {
    const end = this.endRecord();
    let at = this.u32(end + 16);
    let count = this.u16(end + 10);
    if (at === 0xffffffff || count === 0xffff) {
      const long = this.u64(end - 20 + 8); // the locator of the long end record stands right before the end record
      if (this.u32(end - 20) !== 0x07064b50 || this.u32(long) !== 0x06064b50) throw damaged('its long directory is missing');
      count = this.u64(long + 32);
      at = this.u64(long + 48);
    }
    const entries = new Map<string, Entry>();
    for (let i = 0; i < count; ++i) at = this.directoryEntry(at, entries);
    return entries;
  }

  private endRecord(): number {
    const last = this.bytes.length - 22;
    for (let at = last; at >= 0 && at >= last - 0xffff; --at) if (this.u32(at) === 0x06054b50) return at;
    throw damaged('its directory is missing');
  }

  private directoryEntry(at: number, into: Map<string, Entry>): number {
    if (this.u32(at) !== 0x02014b50) throw damaged('its directory is broken');
    const [nameSize, extraSize, commentSize] = [this.u16(at + 28), this.u16(at + 30), this.u16(at + 32)];
    const name = new TextDecoder().decode(this.bytes.subarray(at + 46, at + 46 + nameSize));
    const long = this.longSizes(at + 46 + nameSize, extraSize, [this.u32(at + 24), this.u32(at + 20), this.u32(at + 42)]);
    into.set(name, { at: long[2]!, packed: long[1]!, method: this.u16(at + 10), encrypted: (this.u16(at + 8) & 1) !== 0, check: this.u32(at + 16) });
    return at + 46 + nameSize + extraSize + commentSize;
  }

  /** Sizes and place, those that need more than 32 bits from the extra field for them. */
  private longSizes(at: number, size: number, sizes: number[]): number[] {
    for (let end = at + size; at + 4 <= end; at += 4 + this.u16(at + 2)) {
      if (this.u16(at) !== 1) continue;
      let from = at + 4;
      return sizes.map((one) => (one === 0xffffffff ? this.u64((from += 8) - 8) : one));
    }
    return sizes;
  }

  /** Where the packed bytes of an entry begin. */
  private content(entry: Entry, part: string): number {
    const { at, packed } = entry;
    const header = at + 30 <= this.bytes.length && this.u32(at) === 0x04034b50;
    const from = header ? at + 30 + this.u16(at + 26) + this.u16(at + 28) : 0;
    if (!header || from + packed > this.bytes.length) throw new Unreadable(`part ${part} is damaged: it lies outside of the file`, workbookWanted);
    return from;
  }

  /** What comes out is counted; what the directory says of its size is not believed. */
  private async counted(packed: Uint8Array, method: number, part: string): Promise<Uint8Array> {
    if (method !== 0 && method !== 8) throw new Unreadable(`part ${part} cannot be unpacked: it is packed in way ${method}`, workbookWanted);
    const plain = new Blob([packed as Uint8Array<ArrayBuffer>]).stream();
    const reader = (method === 0 ? plain : plain.pipeThrough(new DecompressionStream('deflate-raw'))).getReader();
    const chunks: Uint8Array[] = [];
    let size = 0;
    for (;;) {
      const got = await reader.read().catch(() => {
        throw new Unreadable(`part ${part} is damaged`, workbookWanted);
      });
      if (got.done) break;
      chunks.push(got.value);
      size += got.value.length;
      this.total += got.value.length;
      if (size > mostOfAPart || this.total > mostUnpacked) {
        void reader.cancel().catch(() => undefined);
        throw new Unreadable(`part ${part} unpacks to more than ${megabytes(size > mostOfAPart ? mostOfAPart : mostUnpacked)}`, 'a workbook with the jobs alone');
      }
    }
    return joined(chunks, size);
  }
}

function joined(chunks: readonly Uint8Array[], size: number): Uint8Array {
  const whole = new Uint8Array(size);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

const crcTable = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; ++k) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c;
});

export function crc32(bytes: Uint8Array): number {
  let c = 0xffffffff;
  for (let i = 0; i < bytes.length; ++i) c = crcTable[(c ^ bytes[i]!) & 0xff]! ^ (c >>> 8);
  return (c ^ 0xffffffff) >>> 0;
}
