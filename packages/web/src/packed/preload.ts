// Stands in for the bundler's own way to fetch a screen, which is three times as long: what belongs to the
// screen is asked for beside its file, and its styles are there before it is shown.

const asked = new Map<string, Promise<void>>();

/** Settles with what `load` gives; rejects when that or a style cannot be had. `near`: an address beside which the files lie. */
export async function __vitePreload<T>(
  load: () => Promise<T>,
  files: readonly string[] = [],
  near?: string,
): Promise<T> {
  await Promise.all(files.map((file) => ask(new URL(file, near).href)));
  return load();
}

function ask(address: string): Promise<void> | undefined {
  const known = asked.get(address);
  if (known) return known;
  const link = document.createElement("link");
  const isStyle = address.endsWith(".css");
  link.rel = isStyle ? "stylesheet" : "modulepreload";
  link.href = address;
  const done = new Promise<void>((resolve, reject) => {
    if (!isStyle) resolve();
    link.onload = () => resolve();
    link.onerror = () => {
      asked.delete(address);
      link.remove();
      reject(new Error(address));
    };
  });
  asked.set(address, done);
  document.head.append(link);
  return done;
}
