// Invented stands to start from: the same files that the command line prints.
const raw = import.meta.glob('@repo/examples/*.toml', { query: '?raw', import: 'default', eager: true }) as Record<string, string>;

export interface Example {
  name: string;
  title: string;
  text: string;
}

const titleIn = (text: string): string => /^title = "(.*)"/m.exec(text)?.[1] ?? '';

export const examples: Example[] = Object.entries(raw)
  .map(([path, text]) => ({ name: path.split('/').pop() ?? path, title: titleIn(text), text }))
  .sort((a, b) => a.name.localeCompare(b.name));
