// Data that lies beside the scripts.

/** The content of a file of the build; rejects when it cannot be had. */
export async function fetched<T>(address: string): Promise<T> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  return (await response.json()) as T;
}
