// The words of cases that are kept on this device, wherever they are listed.

export const KEPT = {
  title: "On this device",
  casesMore: "rename, copy, save as a file, delete",
  answers: (n: number): string => (n === 1 ? "1 answer" : `${n} answers`),
};
