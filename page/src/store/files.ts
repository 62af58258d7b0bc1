// Files in and out. A byte-order mark at the beginning is kept: what is saved unchanged is the file that was opened.

export const mostBytes = 20_000_000;

export async function textOf(file: File): Promise<string> {
  if (file.size > mostBytes) throw new Error(`${file.name} has ${(file.size / 1e6).toFixed(0)} MB; at most ${mostBytes / 1e6} MB are read.`);
  const bytes = new Uint8Array(await file.arrayBuffer());
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new Error(`${file.name} is no text in UTF-8. A stand file is a TOML text; a workbook goes to the command line: holdback size stand.toml --jobs ${file.name}`);
  }
}

/** Hands a text or SVG to the browser as a download. */
export function save(name: string, content: string, type = 'application/toml'): void {
  const url = URL.createObjectURL(new Blob([content], { type: `${type};charset=utf-8` }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser reads the Blob after the click; a minute is ample.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
