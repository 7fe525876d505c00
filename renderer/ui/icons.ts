/** Our icons: thin strokes on a 18-unit square, drawn like the carpenter's boxes. */
export const ICONS = {
  undo: 'M3 7h8a4 4 0 0 1 0 8H8M3 7l4-4M3 7l4 4',
  redo: 'M15 7H7a4 4 0 0 0 0 8h3M15 7l-4-4M15 7l-4 4',
  widen: 'M3 7V3h4M11 3h4v4M15 11v4h-4M7 15H3v-4',
  narrow: 'M7 3v4H3M15 7h-4V3M11 15v-4h4M3 11h4v4',
  close: 'M4 4l10 10M14 4L4 14',
  previous: 'M11 3L5 9l6 6',
  next: 'M7 3l6 6-6 6',
  first: 'M4 3v12M14 3L8 9l6 6',
  last: 'M14 3v12M4 3l6 6-6 6',
  tick: 'M3 9l4 4 8-9',
  skip: 'M4 9h10',
  add: 'M9 3v12M3 9h12',
  copy: 'M6 6V3h9v9h-3M3 6h9v9H3z',
  remove: 'M4 5h10M7 5V3h4v2M5 5l1 10h6l1-10',
  search: 'M8 3a5 5 0 1 0 0 10A5 5 0 0 0 8 3M12 12l3 3',
  more: 'M3 5h12M3 9h12M3 13h12',
  file: 'M4 2h7l3 3v11H4zM11 2v3h3',
  print: 'M5 6V2h8v4M5 13H3V6h12v7h-2M5 11h8v5H5z',
  sun: 'M9 6a3 3 0 1 0 0 6 3 3 0 0 0 0-6M9 1v2M9 15v2M1 9h2M15 9h2M3.5 3.5l1.4 1.4M13.1 13.1l1.4 1.4M3.5 14.5l1.4-1.4M13.1 4.9l1.4-1.4',
  moon: 'M12 2a7.5 7.5 0 1 0 4 9.5A6 6 0 0 1 12 2',
  ember: 'M9 2c1 3 4 4.5 4 8.500a4 4 0 0 1-8 0C5 8 6.500 7.500 7 5.500 8 6.500 8 8 9 8.500 10 7 9.500 4.500 9 2',
  lock: 'M4 8h10v8H4zM6 8V5a3 3 0 0 1 6 0v3',
  turn: 'M4 9a5 5 0 1 1 2 4M4 9L2 6M4 9l3-1.500',
  warn: 'M9 2l7.500 13h-15zM9 7v4M9 12.500v.5',
} as const

export type IconName = keyof typeof ICONS
