// After vite: gives the page its name and refuses one that is too large or reaches outside.
import { readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const dist = join(dirname(fileURLToPath(import.meta.url)), '..', 'dist');
const file = join(dist, 'holdback.html');

// The page may reach nothing outside itself, by its own policy. Not on the dev server, which needs a socket.
const policy = [
  "default-src 'none'", "script-src 'unsafe-inline' 'wasm-unsafe-eval'", "style-src 'unsafe-inline'", 'worker-src blob:',
  'img-src data: blob:', "connect-src 'none'", "form-action 'none'", "base-uri 'none'",
].join('; ');
const mark = '<!-- policy -->';
const made = readFileSync(join(dist, 'index.html'), 'utf8');
if (!made.includes(mark)) throw new Error(`index.html has no ${mark}`);
writeFileSync(file, inAscii(made.replace(mark, () => `<meta http-equiv="Content-Security-Policy" content="${policy}" />`)));
rmSync(join(dist, 'index.html'));

/** One other character makes a browser hold a stretch of the text twice as wide, and take three times as long to read it. */
function inAscii(html) {
  if (/(?<!\\)(?:\\\\)*\\[^\x00-\x7f]/.test(html)) throw new Error('a backslash before a character that is no ASCII: it would take the wrong one with it');
  const hex = (c) => c.codePointAt(0).toString(16);
  const script = (text) => text.replace(/[^\x00-\x7f]/g, (c) => `\\u${hex(c).padStart(4, '0')}`);
  const style = (text) => text.replace(/[^\x00-\x7f]/gu, (c) => `\\${hex(c)} `);
  const within = (tag, write) => (text) => text.replace(new RegExp(`(<${tag}[^>]*>)([^]*?)(</${tag}>)`, 'g'), (_, begin, inside, end) => begin + write(inside) + end);
  return within('style', style)(within('script', script)(html)).replace(/[^\x00-\x7f]/gu, (c) => `&#x${hex(c)};`);
}

const most = 2.5e6;
const size = statSync(file).size;
if (size > most) throw new Error(`${file} has ${size} bytes; at most ${most} are accepted.`);
const outside = /<(?:script|link|img)[^>]+(?:src|href)="(?!data:)[^"]+"/i.exec(readFileSync(file, 'utf8'));
if (outside) throw new Error(`${file} asks for something outside itself: ${outside[0]}`);
console.log(`${file}: ${(size / 1e6).toFixed(2)} MB`);
