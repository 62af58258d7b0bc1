// Files in and out. A byte-order mark at the beginning is kept: what is saved unchanged is the file that was opened.

export const mostBytes = 33_554_432; // as much as a workbook may have

export async function bytesOf(file: File, most = mostBytes): Promise<Uint8Array> {
  if (file.size > most) throw new Error(`${file.name} has ${(file.size / 1e6).toFixed(0)} MB; at most ${(most / 1e6).toFixed(0)} MB are read.`);
  return new Uint8Array(await file.arrayBuffer());
}

export function textOf(name: string, bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new Error(`${name} is no text in UTF-8. A stand file is a TOML text; jobs come as a workbook (.xlsx) or CSV.`);
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
