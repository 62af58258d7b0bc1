// Line icons drawn for this page; each stands beside its word.
const paths = {
  open: 'M3 17V5h6l2 2h8v3M3 17l3-7h15l-3 7Z',
  save: 'M12 3v11m-4-4 4 4 4-4M4 16v4h16v-4',
  undo: 'M8 5 4 9l4 4M4 9h10a5 5 0 0 1 0 10h-4',
  redo: 'm16 5 4 4-4 4m4-4H10a5 5 0 0 0 0 10h4',
  light: 'M12 8a4 4 0 1 0 0 8 4 4 0 0 0 0-8ZM12 2v3m0 14v3M2 12h3m14 0h3M5 5l2 2m10 10 2 2M19 5l-2 2M7 17l-2 2',
  dark: 'M20 14A8.5 8.5 0 0 1 10 4a8.5 8.5 0 1 0 10 10Z',
  print: 'M7 8V3h10v5M7 17H4V8h16v9h-3M7 14h10v7H7Z',
  copy: 'M8 8h12v12H8zM16 8V4H4v12h4',
  remove: 'M5 7h14M9 7V4h6v3m2 0-1 13H8L7 7',
  plus: 'M12 5v14M5 12h14',
} as const;

export type IconName = keyof typeof paths;

export function Icon({ name }: { name: IconName }) {
  return (
    <svg class="icon" viewBox="0 0 24 24" width="20" height="20" aria-hidden="true" focusable="false">
      <path d={paths[name]} />
    </svg>
  );
}
